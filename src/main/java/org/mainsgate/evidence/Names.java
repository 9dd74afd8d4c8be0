package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.Check;

/** The properties that a check's outcome rests on. */
final class Names {
  private Names() {}

  static Set<String> of(Check check) {
    Set<String> names = new HashSet<>();
    for (TruthFormula formula : formulas(check)) {
      formula.inputs().forEach(input -> names.addAll(input.reference().path()));
    }
    return names;
  }

  /** Whether a check asks about all things of a kind. */
  static boolean asksAboutAll(Check check, String kind) {
    return formulas(check).stream().anyMatch(formula -> formula.lists().contains(kind));
  }

  private static List<TruthFormula> formulas(Check check) {
    List<TruthFormula> formulas = new ArrayList<>();
    check.applies().ifPresent(formulas::add);
    formulas.add(check.requirement());
    check.provided().forEach(condition -> formulas.add(condition.that()));
    return formulas;
  }
}
