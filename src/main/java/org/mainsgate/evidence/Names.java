package org.mainsgate.evidence;

import java.util.HashSet;
import java.util.Set;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.Check;

/** The properties that a check's outcome rests on. */
final class Names {
  private Names() {}

  static Set<String> of(Check check) {
    Set<String> names = new HashSet<>();
    check.applies().ifPresent(formula -> add(names, formula));
    add(names, check.requirement());
    check.provided().forEach(condition -> add(names, condition.that()));
    return names;
  }

  private static void add(Set<String> names, TruthFormula formula) {
    formula.inputs().forEach(input -> names.addAll(input.reference().path()));
  }
}
