package org.mainsgate.laws;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Rules;

/** The laws are tried on something: each check has evidence that passes it, to be spoilt. */
class SoundTest {

  @Test
  void everyCheckPassesOnSomethingUnlessItRestsOnAValueFromMemory() {
    List<String> never = new ArrayList<>();
    for (Rules rules : Rulebook.every()) {
      for (String check : rules.checks().keySet()) {
        boolean found = Sound.of(Slice.of(rules, check)).found();
        if (!found && !restsOnMemory(rules, check)) {
          never.add(rules.profile() + " " + check);
        }
      }
    }
    assertEquals(List.of(), never);
  }

  private static boolean restsOnMemory(Rules rules, String id) {
    return Slice.closed(rules, List.of(id)).stream()
        .flatMap(name -> Slice.formulas(check(rules, name)).stream())
        .anyMatch(formula -> restsOnMemory(rules, formula));
  }

  private static Check check(Rules rules, String id) {
    Check check = rules.checks().get(id);
    if (check == null) {
      throw new AssertionError("no check " + id);
    }
    return check;
  }

  private static boolean restsOnMemory(Rules rules, TruthFormula formula) {
    boolean limit =
        rules.limits().values().stream()
            .filter(found -> formula.limits().contains(found.name()))
            .anyMatch(found -> found.citation().isUnconfirmed());
    boolean row =
        rules.tables().values().stream()
            .filter(table -> formula.tables().contains(table.table().name()))
            .flatMap(table -> table.citations().values().stream())
            .anyMatch(citation -> citation.isUnconfirmed());
    return limit || row;
  }
}
