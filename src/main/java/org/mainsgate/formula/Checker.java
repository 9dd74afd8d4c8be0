package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Unit;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/**
 * The check of a formula against its scope: what each name means, and whether units and values fit.
 *
 * <p>Every method that makes a node returns null after a complaint, and goes on with the other side
 * first, so that a formula with several faults gets several complaints.
 */
final class Checker {
  private static final int MAX_NODES = 10_000;
  private static final int MAX_DEPTH = 1_000;
  private static final int MAX_NESTING = 3;
  private static final String STATEMENT = "a statement, such as `a <= b` or `x is y`";

  private final Text source;
  private final Scope scope;
  private final Complaints complaints;
  private final Names names;

  Checker(Text source, Scope scope, Complaints complaints) {
    this.source = source;
    this.scope = scope;
    this.complaints = complaints;
    this.names = new Names(source, scope, complaints);
  }

  Optional<TruthFormula> truthFormula(Syntax syntax) {
    TruthNode node = truth(syntax, scope.variables());
    if (node == null) {
      return Optional.empty();
    }
    return survey(node).map(survey -> new TruthFormula(text(), node, survey));
  }

  Optional<NumberFormula> numberFormula(Syntax syntax, @Nullable Dimension expected) {
    NumberNode node = number(syntax, scope.variables());
    if (node == null) {
      return Optional.empty();
    }
    if (expected != null && !expected.equals(node.dimension())) {
      String what = "a formula for " + Words.one(node.dimension());
      complain(syntax.span().from(), what, "one for " + Words.one(expected));
      return Optional.empty();
    }
    return survey(node).map(survey -> new NumberFormula(text(), node, survey));
  }

  /** Steps of steps can double a formula at each level; what is too much to evaluate is refused. */
  private Optional<Survey> survey(Node node) {
    Survey survey = Survey.of(node, scope.variables());
    if (survey.nodes() > MAX_NODES || survey.depth() > MAX_DEPTH) {
      complain(0, "a formula that is too large with the steps it uses", "fewer steps of steps");
      return Optional.empty();
    }
    if (survey.nesting() > MAX_NESTING) {
      String right = "at most " + MAX_NESTING + " of `all`, `any` and `sum`";
      complain(0, "too many lists inside each other", right);
      return Optional.empty();
    }
    return Optional.of(survey);
  }

  private @Nullable TruthNode truth(Syntax syntax, Map<String, String> variables) {
    if (syntax instanceof Syntax.Junction junction) {
      TruthNode left = truth(junction.left(), variables);
      TruthNode right = truth(junction.right(), variables);
      return left == null || right == null
          ? null
          : new TruthNode.Joined(junction.connective(), left, right);
    }
    if (syntax instanceof Syntax.Not not) {
      TruthNode statement = truth(not.argument(), variables);
      return statement == null ? null : new TruthNode.Denied(statement);
    }
    if (syntax instanceof Syntax.Order order) {
      return compared(order, variables);
    }
    if (syntax instanceof Syntax.Naming naming) {
      return chosen(naming, variables);
    }
    if (syntax instanceof Syntax.Each each && each.quantifier() != Syntax.Quantifier.SUM) {
      return each(each, variables);
    }
    if (syntax instanceof Syntax.Path path) {
      return statement(path, variables);
    }
    refuse(syntax, "a number where a statement is due", STATEMENT);
    return null;
  }

  private @Nullable TruthNode compared(Syntax.Order order, Map<String, String> variables) {
    NumberNode left = number(order.left(), variables);
    NumberNode right = number(order.right(), variables);
    if (left == null || right == null) {
      return null;
    }
    if (!left.dimension().equals(right.dimension())) {
      mismatch(order.span().at(), "compare", left.dimension(), right.dimension());
      return null;
    }
    Unit unit = PrintUnit.ofBoth(left, right);
    return new TruthNode.Compared(
        order.relation(), side(order.left(), left), side(order.right(), right), unit);
  }

  private TruthNode.Side side(Syntax syntax, NumberNode node) {
    List<TruthNode.Addend> addends = new ArrayList<>();
    addends(syntax, node, false, addends);
    return new TruthNode.Side(slice(syntax), node, List.copyOf(addends));
  }

  private void addends(
      Syntax syntax, NumberNode node, boolean subtracted, List<TruthNode.Addend> addends) {
    if (syntax instanceof Syntax.Operation sum
        && node instanceof NumberNode.Operated operated
        && (sum.operator() == Arithmetic.PLUS || sum.operator() == Arithmetic.MINUS)) {
      boolean minus = sum.operator() == Arithmetic.MINUS;
      addends(sum.left(), operated.left(), subtracted, addends);
      addends(sum.right(), operated.right(), subtracted != minus, addends);
    } else {
      boolean titled = node instanceof NumberNode.Stepped;
      String label = titled ? ((NumberNode.Stepped) node).step().title() : slice(syntax);
      addends.add(new TruthNode.Addend(label, node, subtracted));
    }
  }

  private @Nullable TruthNode chosen(Syntax.Naming naming, Map<String, String> variables) {
    Meaning meaning = names.meaning(naming.subject(), variables);
    if (meaning == null) {
      return null;
    }
    if (!(meaning instanceof Meaning.Observation observation)) {
      String what = "`" + naming.subject().text() + "` has no named values";
      refuse(naming.subject(), what, "");
      return null;
    }
    String text = naming.subject().text();
    if (naming.listed()) {
      boolean known = names.areValues(naming.values(), observation.values());
      List<String> wanted = naming.values().stream().map(Syntax.Word::text).toList();
      return known ? new TruthNode.Chosen(observation, text, false, wanted) : null;
    }
    Syntax.Word word = naming.values().get(0);
    Optional<Meaning.Observation> other = names.observation(word, variables);
    boolean value = observation.values().values().contains(word.text());
    if (value && other.isPresent()) {
      String what = "`" + word.text() + "` is both a value and the name of an observation";
      complain(word.at(), what, "`in (" + word.text() + ")` for the value");
      return null;
    }
    if (value) {
      return new TruthNode.Chosen(observation, text, naming.negated(), List.of(word.text()));
    }
    if (other.isPresent()) {
      return agreed(naming, observation, other.get());
    }
    names.areValues(naming.values(), observation.values());
    return null;
  }

  private @Nullable TruthNode agreed(
      Syntax.Naming naming, Meaning.Observation left, Meaning.Observation right) {
    if (left.values().equals(right.values())) {
      return new TruthNode.Agreed(left, right, slice(naming), naming.negated());
    }
    String what = "`" + naming.values().get(0).text() + "` has other values";
    String right1 = "an observation with the values of `" + left.values().name() + "`";
    complain(naming.values().get(0).at(), what, right1);
    return null;
  }

  private @Nullable TruthNode each(Syntax.Each each, Map<String, String> variables) {
    Map<String, String> inside = bound(each, variables);
    TruthNode body = truth(each.body(), inside);
    boolean known = names.mayBind(each, variables);
    boolean all = each.quantifier() == Syntax.Quantifier.ALL;
    return body != null && known ? new TruthNode.Each(all, binding(each), body) : null;
  }

  private @Nullable TruthNode statement(Syntax.Path path, Map<String, String> variables) {
    Meaning meaning = names.meaning(path, variables);
    if (meaning instanceof Meaning.TruthStep step) {
      boolean bound = names.bindsFree(path, step.value().survey(), variables);
      return bound ? new TruthNode.Stepped(step) : null;
    }
    if (meaning instanceof Meaning.Observation) {
      String right = "`" + path.text() + " is ...` or `" + path.text() + " in (...)`";
      refuse(path, "`" + path.text() + "` has named values", right);
      return null;
    }
    if (meaning != null) {
      refuse(path, "`" + path.text() + "` is a number, not a statement", STATEMENT);
    }
    return null;
  }

  private @Nullable NumberNode number(Syntax syntax, Map<String, String> variables) {
    if (syntax instanceof Syntax.Literal literal) {
      Unit unit = literal.unit();
      Dimension dimension = unit == null ? Dimension.NONE : unit.dimension();
      return new NumberNode.Fixed(dimension, Range.of(ExactInterval.point(literal.value())));
    }
    if (syntax instanceof Syntax.Pi) {
      return new NumberNode.Fixed(Dimension.NONE, Range.of(ExactInterval.PI));
    }
    if (syntax instanceof Syntax.Operation operation) {
      return operated(operation, variables);
    }
    if (syntax instanceof Syntax.Single single) {
      return applied(single, variables);
    }
    if (syntax instanceof Syntax.Extreme extreme) {
      return names.picked(extreme, variables);
    }
    if (syntax instanceof Syntax.Lookup lookup) {
      return cell(lookup, variables);
    }
    if (syntax instanceof Syntax.Path path) {
      return names.number(path, variables);
    }
    if (syntax instanceof Syntax.Each each && each.quantifier() == Syntax.Quantifier.SUM) {
      NumberNode body = number(each.body(), bound(each, variables));
      boolean known = names.mayBind(each, variables);
      return body != null && known ? new NumberNode.Total(binding(each), body) : null;
    }
    refuse(syntax, "a statement where a number is due", "a number");
    return null;
  }

  private @Nullable NumberNode operated(Syntax.Operation operation, Map<String, String> variables) {
    NumberNode left = number(operation.left(), variables);
    NumberNode right = number(operation.right(), variables);
    if (left == null || right == null) {
      return null;
    }
    Arithmetic operator = operation.operator();
    Dimension first = left.dimension();
    Dimension second = right.dimension();
    Dimension dimension =
        switch (operator) {
          case TIMES -> first.times(second);
          case OVER -> first.per(second);
          case PLUS, MINUS, MIN, MAX -> first;
        };
    boolean alike = operator == Arithmetic.TIMES || operator == Arithmetic.OVER;
    if (!alike && !first.equals(second)) {
      mismatch(operation.span().at(), operator.verb(), first, second);
      return null;
    }
    return new NumberNode.Operated(operator, left, right, dimension);
  }

  private @Nullable NumberNode applied(Syntax.Single single, Map<String, String> variables) {
    NumberNode argument = number(single.argument(), variables);
    if (argument == null) {
      return null;
    }
    Dimension dimension = argument.dimension();
    Optional<Dimension> result =
        switch (single.function()) {
          case MINUS -> Optional.of(dimension);
          case SQRT -> dimension.root();
          case LN, EXP2 -> Optional.of(dimension).filter(Dimension.NONE::equals);
        };
    if (result.isEmpty()) {
      boolean root = single.function() == Function.SQRT;
      String right = root ? "a square, such as `x * x`" : "a plain number, such as `x / y`";
      refuse(single.argument(), "a function of " + Words.one(dimension), right);
      return null;
    }
    return new NumberNode.Applied(single.function(), argument, result.get());
  }

  private @Nullable NumberNode cell(Syntax.Lookup lookup, Map<String, String> variables) {
    Table table = names.table(lookup);
    if (table == null) {
      return null;
    }
    Cell.Key key = key(table, lookup.key(), variables);
    Table.Column column = names.column(table, lookup.column());
    return key == null || column == null ? null : new Cell(table, column, key);
  }

  private Cell.@Nullable Key key(Table table, Syntax syntax, Map<String, String> variables) {
    if (table.key() instanceof Table.NumberKey wanted) {
      NumberNode number = number(syntax, variables);
      if (number == null || number.dimension().equals(wanted.dimension())) {
        return number == null ? null : new Cell.ByNumber(number, wanted.mode());
      }
      String what = Words.one(number.dimension()) + " as key of `" + table.name() + "`";
      refuse(syntax, what, Words.one(wanted.dimension()));
      return null;
    }
    Table.NamedKey wanted = (Table.NamedKey) table.key();
    Meaning meaning = syntax instanceof Syntax.Path path ? names.meaning(path, variables) : null;
    if (meaning instanceof Meaning.Observation observation
        && observation.values().equals(wanted.values())) {
      return new Cell.ByName(observation);
    }
    boolean told = syntax instanceof Syntax.Path && meaning == null;
    if (!told) {
      String right = "an observation with the values of `" + wanted.values().name() + "`";
      refuse(syntax, "another key than `" + table.name() + "` has", right);
    }
    return null;
  }

  private static Map<String, String> bound(Syntax.Each each, Map<String, String> variables) {
    Map<String, String> inside = new LinkedHashMap<>(variables);
    inside.put(each.variable().text(), each.kind().text());
    return inside;
  }

  private static Input.Binding binding(Syntax.Each each) {
    return new Input.Binding(each.variable().text(), each.kind().text());
  }

  private void mismatch(int at, String verb, Dimension left, Dimension right) {
    boolean swapped = verb.equals("subtract");
    Dimension first = swapped ? right : left;
    Dimension second = swapped ? left : right;
    String and = swapped ? " from " : " and ";
    String what = "can't " + verb + " " + Words.one(first) + and + Words.one(second);
    boolean plain = left.equals(Dimension.NONE) || right.equals(Dimension.NONE);
    Dimension named = left.equals(Dimension.NONE) ? right : left;
    String zero = "`0 " + PrintUnit.of(named).symbol() + "`";
    complain(at, what, plain ? "a unit on both sides, such as " + zero + ", or on none" : "");
  }

  private void refuse(Syntax syntax, String what, String right) {
    complain(syntax.span().from(), what, right);
  }

  private void complain(int at, String what, String right) {
    complaints.add(source.at(at), what, right);
  }

  private String text() {
    return Words.oneLine(source.value());
  }

  private String slice(Syntax syntax) {
    Syntax.Span span = syntax.span();
    return Words.oneLine(source.value().substring(span.from(), span.to()));
  }
}
