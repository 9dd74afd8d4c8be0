package org.mainsgate.formula;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.NearestName;
import org.mainsgate.source.Text;

/** The names of a formula, looked up in its scope; what is not there is complained of. */
final class Names {
  private final Text source;
  private final Scope scope;
  private final Complaints complaints;

  Names(Text source, Scope scope, Complaints complaints) {
    this.source = source;
    this.scope = scope;
    this.complaints = complaints;
  }

  /** The meaning of a path, null after a complaint. */
  @Nullable Meaning meaning(Syntax.Path path, Map<String, String> variables) {
    Optional<Meaning> meaning = scope.meaning(path.parts(), variables);
    if (meaning.isEmpty()) {
      unknown(path, variables);
    }
    return meaning.orElse(null);
  }

  private void unknown(Syntax.Path path, Map<String, String> variables) {
    int at = path.span().from();
    String first = path.parts().get(0);
    boolean ofItem = variables.containsKey(first);
    if (ofItem && path.parts().size() == 1) {
      complain(
          at,
          "`" + first + "` is a thing, not a value",
          "a name of it, such as `" + first + ".x`",
          "");
      return;
    }
    String prefix = ofItem ? first + "." : "";
    String wrong = path.text().substring(prefix.length());
    if (scope.names().contains(wrong)) {
      String right = "a name of what the check runs over, or of what exists once";
      complain(at, "`" + path.text() + "` is not said of the thing meant here", right, "");
      return;
    }
    Optional<String> nearest = NearestName.of(wrong, scope.names()).map(prefix::concat);
    complain(at, "unknown name `" + path.text() + "`", "", nearest.orElse(""));
  }

  /** The number that a path means. */
  @Nullable NumberNode number(Syntax.Path path, Map<String, String> variables) {
    Meaning meaning = meaning(path, variables);
    String name = "`" + path.text() + "`";
    if (meaning instanceof Meaning.Quantity quantity) {
      return quantity.nature() == Nature.VARIES
          ? refuse(path, name + " varies", ends(path.text()))
          : new NumberNode.Known(quantity);
    }
    if (meaning instanceof Meaning.Limit limit) {
      return new NumberNode.Limited(limit, Range.of(limit.value()));
    }
    if (meaning instanceof Meaning.Step step) {
      boolean bound = bindsFree(path, step.value().survey(), variables);
      return bound ? new NumberNode.Stepped(step) : null;
    }
    return meaning == null ? null : refuse(path, name + " is no number", "a number");
  }

  private static String ends(String name) {
    return "one of `highest(" + name + ")`, `lowest(" + name + ")`, `nominal(" + name + ")`";
  }

  /** The highest, lowest or nominal value that is meant. */
  @Nullable NumberNode picked(Syntax.Extreme extreme, Map<String, String> variables) {
    String right = "the name of a quantity that varies";
    if (!(extreme.argument() instanceof Syntax.Path path)) {
      return refuse(extreme.argument(), "an expression where a name is due", right);
    }
    Meaning meaning = meaning(path, variables);
    if (meaning instanceof Meaning.Quantity quantity && quantity.nature() == Nature.VARIES) {
      return new NumberNode.Picked(quantity, extreme.end());
    }
    return meaning == null ? null : refuse(path, "`" + path.text() + "` does not vary", right);
  }

  /** The observation that a word after {@code is} may mean; no complaint if it means none. */
  Optional<Meaning.Observation> observation(Syntax.Word word, Map<String, String> variables) {
    return scope
        .meaning(List.of(word.text().split("\\.")), variables)
        .filter(Meaning.Observation.class::isInstance)
        .map(Meaning.Observation.class::cast);
  }

  /** Whether all words are values of a list, none twice. */
  boolean areValues(List<Syntax.Word> words, ValueList list) {
    Set<String> seen = new HashSet<>();
    boolean fit = true;
    for (Syntax.Word word : words) {
      if (!list.values().contains(word.text())) {
        fit = unknownOf(list.values(), word, "value of `" + list.name() + "`");
      } else if (!seen.add(word.text())) {
        fit = false;
        complain(word.at(), "`" + word.text() + "` stands twice", "", "");
      }
    }
    return fit;
  }

  private boolean unknownOf(Collection<String> valid, Syntax.Word word, String thing) {
    complaints.addUnknown(source.at(word.at()), thing, word.text(), valid);
    return false;
  }

  @Nullable Table table(Syntax.Lookup lookup) {
    Optional<Table> table = scope.table(lookup.table());
    if (table.isEmpty()) {
      String nearest = NearestName.of(lookup.table(), scope.names()).orElse("");
      complain(lookup.span().from(), "unknown table `" + lookup.table() + "`", "", nearest);
    }
    return table.orElse(null);
  }

  Table.@Nullable Column column(Table table, Syntax.Word word) {
    Optional<Table.Column> column = table.column(word.text());
    if (column.isEmpty()) {
      List<String> valid = table.columns().stream().map(Table.Column::name).toList();
      unknownOf(valid, word, "column of `" + table.name() + "`");
    }
    return column.orElse(null);
  }

  /** Whether a quantifier names a kind, and a variable that means nothing yet. */
  boolean mayBind(Syntax.Each each, Map<String, String> variables) {
    Syntax.Word variable = each.variable();
    Syntax.Word kind = each.kind();
    boolean taken =
        variables.containsKey(variable.text())
            || scope.names().contains(variable.text())
            || scope.meaning(List.of(variable.text()), variables).isPresent();
    if (taken) {
      complain(
          variable.at(), "`" + variable.text() + "` already means something", "a new name", "");
    }
    boolean known = scope.isKind(kind.text());
    if (!known) {
      String nearest = NearestName.of(kind.text(), scope.names()).orElse("");
      complain(kind.at(), "unknown kind of thing `" + kind.text() + "`", "", nearest);
    }
    return known && !taken;
  }

  /**
   * Whether the variables that a step was written for are bound, to the same kinds, where it is
   * used.
   */
  boolean bindsFree(Syntax.Path path, Survey step, Map<String, String> variables) {
    for (Map.Entry<String, String> free : step.free().entrySet()) {
      if (!free.getValue().equals(variables.get(free.getKey()))) {
        String what = "`" + path.text() + "` speaks of one `" + free.getKey() + "`";
        String right = "`" + free.getKey() + " in " + free.getValue() + "` around it";
        complain(path.span().from(), what, right, "");
        return false;
      }
    }
    return true;
  }

  private @Nullable NumberNode refuse(Syntax syntax, String what, String right) {
    complain(syntax.span().from(), what, right, "");
    return null;
  }

  private void complain(int at, String what, String right, String nearest) {
    complaints.add(source.at(at), what, right, nearest);
  }
}
