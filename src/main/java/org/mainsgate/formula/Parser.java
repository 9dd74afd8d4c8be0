package org.mainsgate.formula;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/**
 * The reading of tokens into a syntax tree, by recursive descent, one method for each level of
 * precedence (the grammar is in {@link Formula}).
 *
 * <p>At the first fault the parser complains and moves to the end of the text, where every method
 * returns by itself; so no exception carries a fault, and no fault is told twice.
 */
final class Parser {
  private final Tokens tokens;
  private int depth;
  private int nodes;

  private Parser(Tokens tokens) {
    this.tokens = tokens;
  }

  /** The tree of a formula; empty after a complaint. */
  static Optional<Syntax> parse(Text source, Complaints complaints) {
    String text = source.value();
    if (text.length() > Language.MAX_CHARACTERS) {
      String limit = "at most " + Language.MAX_CHARACTERS + " characters";
      complaints.add(source.at(Language.MAX_CHARACTERS), "a formula that is too long", limit);
      return Optional.empty();
    }
    if (text.isBlank()) {
      complaints.add(source.at(), "an empty formula", "a number or a statement");
      return Optional.empty();
    }
    List<Token> cut = new Scanner(source, complaints).scan();
    return cut.isEmpty()
        ? Optional.empty()
        : new Parser(new Tokens(source, complaints, cut)).formula();
  }

  private Optional<Syntax> formula() {
    Syntax whole = implication();
    if (tokens.peek().kind() != Token.Kind.END) {
      tokens.unexpected("an operator, or the end");
    }
    return tokens.failed() ? Optional.empty() : Optional.of(whole);
  }

  private Syntax implication() {
    int from = tokens.peek().from();
    Optional<Syntax> tooDeep = enter();
    if (tooDeep.isPresent()) {
      return tooDeep.get();
    }
    Syntax left = junctions(Connective.OR);
    int at = tokens.peek().from();
    Syntax whole = left;
    if (tokens.take("implies")) {
      Syntax right = implication();
      whole = node(new Syntax.Junction(tokens.span(from, at), Connective.IMPLIES, left, right));
    }
    depth--;
    return whole;
  }

  /** A chain of {@code or}, or of the {@code and} inside it. */
  private Syntax junctions(Connective connective) {
    int from = tokens.peek().from();
    Syntax left = tighter(connective);
    while (tokens.peek().is(connective.word())) {
      int at = tokens.advance().from();
      Syntax right = tighter(connective);
      left = node(new Syntax.Junction(tokens.span(from, at), connective, left, right));
    }
    return left;
  }

  private Syntax tighter(Connective connective) {
    return connective == Connective.OR ? junctions(Connective.AND) : negation();
  }

  private Syntax negation() {
    int from = tokens.peek().from();
    if (!tokens.take("not")) {
      return statement();
    }
    Optional<Syntax> tooDeep = enter();
    if (tooDeep.isPresent()) {
      return tooDeep.get();
    }
    Syntax argument = negation();
    depth--;
    return node(new Syntax.Not(tokens.span(from, from), argument));
  }

  private Syntax statement() {
    int from = tokens.peek().from();
    Syntax left = terms();
    Relation relation = Language.RELATIONS.get(signOf(tokens.peek()));
    if (relation != null) {
      return order(from, left, relation);
    }
    return tokens.peek().is("is") || tokens.peek().is("in") ? naming(from, left) : left;
  }

  private static String signOf(Token token) {
    return token.kind() == Token.Kind.SIGN ? token.text() : "";
  }

  private Syntax order(int from, Syntax left, Relation relation) {
    int at = tokens.advance().from();
    Syntax right = terms();
    if (Language.RELATIONS.containsKey(signOf(tokens.peek()))) {
      return tokens.fail(
          tokens.peek().from(), "a second comparison in one", "two comparisons joined with `and`");
    }
    return node(new Syntax.Order(tokens.span(from, at), relation, left, right));
  }

  private Syntax naming(int from, Syntax left) {
    Token word = tokens.advance();
    if (!(left instanceof Syntax.Path subject)) {
      String what = "`" + word.text() + "` needs a name on its left";
      return tokens.fail(word.from(), what, "a name with named values, such as `plug is type_g`");
    }
    boolean listed = word.is("in");
    boolean negated = !listed && tokens.take("not");
    List<Syntax.Word> values = listed ? values() : List.of(value(true));
    return node(
        new Syntax.Naming(tokens.span(from, word.from()), subject, negated, listed, values));
  }

  private List<Syntax.Word> values() {
    List<Syntax.Word> values = new ArrayList<>();
    tokens.expect("(", "a list of values, such as `(I, II)`");
    do {
      values.add(value(false));
    } while (tokens.take(","));
    tokens.expect(")", "`,` or `)`");
    return values;
  }

  /**
   * A named value, which may start with a digit; or, after {@code is}, the dotted path of a name.
   */
  private Syntax.Word value(boolean pathAllowed) {
    Token first = tokens.peek();
    StringBuilder text = new StringBuilder();
    boolean more = true;
    while (more && (isWord(tokens.peek()) || tokens.peek().kind() == Token.Kind.NUMBER)) {
      Token token = tokens.advance();
      text.append(token.text());
      more = token.touches(tokens.peek());
      if (pathAllowed && tokens.take(".")) {
        text.append('.');
        more = true;
      }
    }
    boolean named = Arrays.stream(text.toString().split("\\.", -1)).allMatch(Language::isValue);
    if (!named || Language.RESERVED.contains(text.toString())) {
      return tokens.misplaced(first, "a named value");
    }
    return new Syntax.Word(text.toString(), first.from());
  }

  private static boolean isWord(Token token) {
    return token.kind() == Token.Kind.WORD;
  }

  private Syntax terms() {
    int from = tokens.peek().from();
    Syntax left = factors();
    while (tokens.peek().is("+") || tokens.peek().is("-")) {
      Token sign = tokens.advance();
      Arithmetic operator = sign.is("+") ? Arithmetic.PLUS : Arithmetic.MINUS;
      Syntax right = factors();
      left = node(new Syntax.Operation(tokens.span(from, sign.from()), operator, left, right));
    }
    return left;
  }

  private Syntax factors() {
    int from = tokens.peek().from();
    Syntax left = signed();
    while (tokens.peek().is("*") || tokens.peek().is("/")) {
      Token sign = tokens.advance();
      Arithmetic operator = sign.is("*") ? Arithmetic.TIMES : Arithmetic.OVER;
      Syntax right = signed();
      left = node(new Syntax.Operation(tokens.span(from, sign.from()), operator, left, right));
    }
    return left;
  }

  private Syntax signed() {
    int from = tokens.peek().from();
    if (!tokens.take("-")) {
      return primary();
    }
    Optional<Syntax> tooDeep = enter();
    if (tooDeep.isPresent()) {
      return tooDeep.get();
    }
    Syntax argument = signed();
    depth--;
    return node(new Syntax.Single(tokens.span(from, from), Function.MINUS, argument));
  }

  private Syntax primary() {
    Token token = tokens.peek();
    if (token.kind() == Token.Kind.NUMBER) {
      return literal(tokens.advance());
    }
    if (tokens.take("(")) {
      Syntax inner = implication();
      tokens.expect(")", "`)`");
      return inner;
    }
    if (token.kind() != Token.Kind.WORD) {
      return tokens.unexpected("a number, a name or `(`");
    }
    if (token.is("all") || token.is("any") || token.is("sum")) {
      return each(tokens.advance());
    }
    if (tokens.take("pi")) {
      return node(new Syntax.Pi(tokens.span(token.from(), token.from())));
    }
    return tokens.second().is("(") ? call(tokens.advance()) : path();
  }

  private Syntax literal(Token number) {
    if (number.text().length() > Language.MAX_NUMBER_CHARACTERS) {
      String limit = "at most " + Language.MAX_NUMBER_CHARACTERS + " digits";
      return tokens.fail(number.from(), "a number that is too long", limit);
    }
    Rational value = Rational.of(new BigDecimal(number.text()));
    Unit unit = unit();
    // A zero on a scale with an offset, 0 °C, is a number like any other and needs a source.
    if (unit != null && (value.signum() != 0 || unit.offset().signum() != 0)) {
      String what = "a limit needs a name and a source: put it under `limits`";
      return tokens.fail(number.from(), what, "");
    }
    return node(new Syntax.Literal(tokens.span(number.from(), number.from()), value, unit));
  }

  /** The longest unit that follows: {@code Ω/m} as one if there is such a unit, else {@code Ω}. */
  private @Nullable Unit unit() {
    if (tokens.peek().kind() != Token.Kind.WORD
        || Language.RESERVED.contains(tokens.peek().text())) {
      return null;
    }
    Token first = tokens.advance();
    Token slash = tokens.peek();
    if (slash.is("/") && first.touches(slash) && slash.touches(tokens.second())) {
      Optional<Unit> quotient = Units.find(first.text() + "/" + tokens.second().text());
      if (quotient.isPresent()) {
        tokens.advance();
        tokens.advance();
        return quotient.get();
      }
    }
    Optional<Unit> unit = Units.find(first.text());
    if (unit.isEmpty()) {
      tokens.misplaced(first, "an operator after the number");
    }
    return unit.orElse(null);
  }

  private Syntax each(Token word) {
    Syntax.Quantifier quantifier = Syntax.Quantifier.valueOf(word.text().toUpperCase(Locale.ROOT));
    Syntax.Word variable = name("a name for each item, as in `" + word.text() + " p in lead: ...`");
    tokens.expect("in", "`in` and a kind of thing");
    Syntax.Word kind = name("a kind of thing");
    tokens.expect(":", "`:` and what is said of each");
    Optional<Syntax> tooDeep = enter();
    if (tooDeep.isPresent()) {
      return tooDeep.get();
    }
    Syntax body = quantifier == Syntax.Quantifier.SUM ? terms() : implication();
    depth--;
    Syntax.Span span = tokens.span(word.from(), word.from());
    return node(new Syntax.Each(span, quantifier, variable, kind, body));
  }

  private Syntax call(Token word) {
    tokens.expect("(", "`(`");
    List<Syntax> arguments = new ArrayList<>();
    do {
      arguments.add(implication());
    } while (tokens.take(","));
    tokens.expect(")", "`,` or `)`");
    if (word.is("min") || word.is("max")) {
      return extremum(word, arguments);
    }
    if (arguments.size() > 1) {
      return tokens.fail(word.from(), "`" + word.text() + "` of several values", "one value");
    }
    Syntax argument = arguments.get(0);
    Syntax.Span span = tokens.span(word.from(), word.from());
    if (Language.FUNCTIONS.containsKey(word.text())) {
      return node(new Syntax.Single(span, Language.FUNCTIONS.get(word.text()), argument));
    }
    if (Language.ENDS.containsKey(word.text())) {
      return node(new Syntax.Extreme(span, Language.ENDS.get(word.text()), argument));
    }
    return lookup(word, argument);
  }

  private Syntax extremum(Token word, List<Syntax> arguments) {
    if (arguments.size() < 2) {
      return tokens.fail(word.from(), "`" + word.text() + "` of one value", "two values or more");
    }
    Arithmetic operator = word.is("min") ? Arithmetic.MIN : Arithmetic.MAX;
    Syntax whole = arguments.get(0);
    for (Syntax argument : arguments.subList(1, arguments.size())) {
      whole =
          node(
              new Syntax.Operation(
                  tokens.span(word.from(), word.from()), operator, whole, argument));
    }
    return whole;
  }

  private Syntax lookup(Token word, Syntax key) {
    if (Language.RESERVED.contains(word.text()) || !Language.isName(word.text())) {
      return tokens.fail(word.from(), word.quoted() + " is no name of a table", "");
    }
    tokens.expect(".", "`.` and a column of the table");
    Syntax.Word column = part("a column of the table");
    return node(new Syntax.Lookup(tokens.span(word.from(), word.from()), word.text(), key, column));
  }

  private Syntax path() {
    int from = tokens.peek().from();
    List<String> parts = new ArrayList<>();
    parts.add(name("a number, a name or `(`").text());
    while (tokens.take(".")) {
      parts.add(part().text());
    }
    return node(new Syntax.Path(tokens.span(from, from), parts));
  }

  private Syntax.Word name(String expected) {
    if (Language.RESERVED.contains(tokens.peek().text())) {
      tokens.unexpected(expected);
    }
    return part(expected);
  }

  private Syntax.Word part() {
    return part("a name after the point");
  }

  private Syntax.Word part(String expected) {
    Token token = tokens.peek();
    if (token.kind() != Token.Kind.WORD) {
      tokens.unexpected(expected);
    } else if (!Language.isName(token.text())) {
      String right = "a name of small letters a to z, digits and `_`";
      tokens.fail(token.from(), token.quoted() + " is no name", right);
    } else {
      tokens.advance();
    }
    return new Syntax.Word(token.text(), token.from());
  }

  private Optional<Syntax> enter() {
    depth++;
    if (depth <= Language.MAX_DEPTH) {
      return Optional.empty();
    }
    String limit = "at most " + Language.MAX_DEPTH + " levels; name a part of it under `steps`";
    return Optional.of(
        tokens.fail(tokens.peek().from(), "a formula that is nested too deep", limit));
  }

  private Syntax node(Syntax made) {
    nodes++;
    if (nodes <= Language.MAX_NODES) {
      return made;
    }
    String limit = "at most " + Language.MAX_NODES + " parts; name some of them under `steps`";
    return tokens.fail(made.span().at(), "a formula with too many parts", limit);
  }
}
