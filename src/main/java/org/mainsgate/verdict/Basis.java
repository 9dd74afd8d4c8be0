package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mainsgate.formula.Input;
import org.mainsgate.formula.Reference;
import org.mainsgate.formula.RowUse;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.Limit;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;

/**
 * What a formula rests on: what was recorded, and the values of the rules.
 *
 * @param rules the rules
 * @param evidence what is in force
 * @param facts the same, as formulas ask for it, about one thing
 */
record Basis(Rules rules, Evidence evidence, Known facts) {

  /** What a formula asks for, with what is in force of it. */
  List<Finding.Input> inputs(TruthFormula formula) {
    List<Finding.Input> inputs = new ArrayList<>();
    for (Input input : formula.inputs()) {
      expand(input, input.within(), facts, inputs);
    }
    return inputs;
  }

  /** An input inside a quantifier is one for each thing on the list. */
  private void expand(
      Input input, List<Input.Binding> within, Known bound, List<Finding.Input> inputs) {
    if (within.isEmpty()) {
      inputs.add(input(input.reference(), bound));
      return;
    }
    Input.Binding first = within.get(0);
    for (String item : bound.items(first.kind()).items()) {
      expand(input, within.subList(1, within.size()), bound.with(first.variable(), item), inputs);
    }
  }

  private Finding.Input input(Reference reference, Known bound) {
    Property property = bound.property(reference);
    List<String> owners = bound.owners(reference).stream().sorted().toList();
    return new Finding.Input(
        String.join(".", reference.path()),
        title(bound, reference, property),
        String.join(" or ", owners.stream().map(evidence::title).sorted().toList()),
        owners,
        property,
        bound.fact(reference),
        bound.lost(reference));
  }

  /** Its own title; of what is computed from an entry, that of the entry too. */
  private static String title(Known bound, Reference reference, Property property) {
    List<String> path = reference.path();
    boolean derived = property instanceof Property.Quantity quantity && quantity.derived();
    return derived && path.size() > 1
        ? property.title()
            + " of "
            + bound
                .property(new Reference(reference.variable(), path.subList(0, path.size() - 1)))
                .title()
        : property.title();
  }

  /** The limits and rows that formulas compare with. */
  List<Finding.Used> used(List<TruthFormula> formulas) {
    Map<String, Finding.Used> used = new LinkedHashMap<>();
    for (TruthFormula formula : formulas) {
      formula.limits().forEach(name -> used.put(name, limit(name)));
      formula.rowsTouched(facts).forEach(row -> used.put(row.table() + row.rowId(), row(row)));
    }
    return List.copyOf(used.values());
  }

  private Finding.Used limit(String name) {
    Limit limit = rules.limits().get(name);
    if (limit == null) {
      throw new IllegalStateException("no limit " + name);
    }
    return new Finding.Used(name, limit.title(), limit.text(), limit.citation());
  }

  private Finding.Used row(RowUse use) {
    Rules.CitedTable table = rules.tables().get(use.table());
    if (table == null) {
      throw new IllegalStateException("no table " + use.table());
    }
    return new Finding.Used(
        use.table() + "[" + use.rowId() + "]",
        table.table().title(),
        table.texts().getOrDefault(use.rowId(), ""),
        table.citation(use.rowId()));
  }
}
