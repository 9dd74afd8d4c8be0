package org.mainsgate.laws;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Units;

/** The second opinion's own reading of a formula. It knows the whole language. */
final class PhraseReader {
  private static final Pattern TOKEN =
      Pattern.compile("[0-9]+\\.[0-9]+|[\\p{L}0-9_°%²·]+|<=|>=|[-+*/<>(),:.]");
  private static final Map<String, String> SPELLINGS =
      Map.of("×", "*", "÷", "/", "−", "-", "≤", "<=", "≥", ">=");
  private static final Set<String> RELATIONS = Set.of("<=", "<", ">=", ">");
  private static final Set<String> CONNECTIVES = Set.of("and", "or", "implies", "is", "in", "not");

  private final String formula;
  private final List<String> tokens = new ArrayList<>();
  private int next;

  PhraseReader(String formula) {
    this.formula = formula;
    String plain = formula;
    for (Map.Entry<String, String> spelling : SPELLINGS.entrySet()) {
      plain = plain.replace(spelling.getKey(), spelling.getValue());
    }
    Matcher matcher = TOKEN.matcher(plain);
    while (matcher.find()) {
      tokens.add(matcher.group());
    }
  }

  Phrase phrase() {
    Phrase whole = implication();
    if (next < tokens.size()) {
      throw stops();
    }
    return whole;
  }

  private IllegalStateException stops() {
    return new IllegalStateException("the second opinion stops at " + peek() + " of " + formula);
  }

  private String peek() {
    return next < tokens.size() ? tokens.get(next) : "the end";
  }

  private boolean take(String token) {
    boolean there = peek().equals(token);
    next += there ? 1 : 0;
    return there;
  }

  private String word() {
    String word = peek();
    next++;
    return word;
  }

  private void expect(String token) {
    if (!take(token)) {
      throw stops();
    }
  }

  private Phrase implication() {
    Phrase left = disjunction();
    return take("implies") ? new Phrase.Joined("or", new Phrase.Not(left), implication()) : left;
  }

  private Phrase disjunction() {
    Phrase all = conjunction();
    while (take("or")) {
      all = new Phrase.Joined("or", all, conjunction());
    }
    return all;
  }

  private Phrase conjunction() {
    Phrase all = negation();
    while (take("and")) {
      all = new Phrase.Joined("and", all, negation());
    }
    return all;
  }

  private Phrase negation() {
    return take("not") ? new Phrase.Not(negation()) : statement();
  }

  private Phrase statement() {
    Phrase left = sum();
    if (RELATIONS.contains(peek())) {
      String relation = word();
      Phrase right = sum();
      boolean strict = relation.length() == 1;
      return relation.startsWith("<")
          ? new Phrase.Below(left, right, strict)
          : new Phrase.Below(right, left, strict);
    }
    if (take("in")) {
      return new Phrase.Is(left, words());
    }
    if (take("is")) {
      boolean negated = take("not");
      Phrase is = new Phrase.Is(left, Set.of(path()));
      return negated ? new Phrase.Not(is) : is;
    }
    return left;
  }

  private Set<String> words() {
    Set<String> words = new java.util.LinkedHashSet<>();
    expect("(");
    do {
      words.add(path());
    } while (take(","));
    expect(")");
    return words;
  }

  private String path() {
    StringBuilder path = new StringBuilder(word());
    while (take(".")) {
      path.append('.').append(word());
    }
    return path.toString();
  }

  private Phrase sum() {
    Phrase all = product();
    while (Set.of("+", "-").contains(peek())) {
      all = new Phrase.Reckoned(word(), all, product());
    }
    return all;
  }

  private Phrase product() {
    Phrase all = signed();
    while (Set.of("*", "/").contains(peek())) {
      all = new Phrase.Reckoned(word(), all, signed());
    }
    return all;
  }

  private Phrase signed() {
    return take("-")
        ? new Phrase.Reckoned("-", new Phrase.Fixed(Ends.of(Fraction.ZERO)), signed())
        : primary();
  }

  private Phrase primary() {
    if (take("(")) {
      Phrase inner = implication();
      expect(")");
      return inner;
    }
    if (Set.of("all", "any", "sum").contains(peek())) {
      return each(word());
    }
    if (take("pi")) {
      return new Phrase.Fixed(Ends.PI);
    }
    Optional<Rational> number = Rational.parse(peek());
    if (number.isPresent()) {
      next++;
      unit();
      return new Phrase.Fixed(Ends.of(Fraction.of(number.get())));
    }
    boolean call = next + 1 < tokens.size() && tokens.get(next + 1).equals("(");
    return call ? call(word()) : new Phrase.Named(List.of(path().split("\\.")));
  }

  /** Only a zero has a unit, and zero is zero in all of those that are allowed. */
  private void unit() {
    if (CONNECTIVES.contains(peek()) || Units.find(peek()).isEmpty()) {
      return;
    }
    String first = word();
    boolean quotient =
        peek().equals("/")
            && next + 1 < tokens.size()
            && Units.find(first + "/" + tokens.get(next + 1)).isPresent();
    next += quotient ? 2 : 0;
  }

  private Phrase each(String quantifier) {
    String variable = word();
    expect("in");
    String kind = word();
    expect(":");
    Phrase body = quantifier.equals("sum") ? sum() : implication();
    return new Phrase.Each(quantifier, variable, kind, body);
  }

  private Phrase call(String name) {
    expect("(");
    Phrase first = implication();
    if (name.equals("min") || name.equals("max")) {
      while (take(",")) {
        first = new Phrase.Reckoned(name, first, implication());
      }
      expect(")");
      return first;
    }
    expect(")");
    return switch (name) {
      case "sqrt", "ln", "exp2" -> new Phrase.Function(name, first);
      case "highest", "lowest", "nominal" ->
          new Phrase.Extreme(name, ((Phrase.Named) first).path());
      default -> cell(name, first);
    };
  }

  private Phrase cell(String table, Phrase key) {
    expect(".");
    return new Phrase.Cell(table, key, word());
  }
}
