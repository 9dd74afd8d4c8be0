package org.mainsgate.laws;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mainsgate.ruleset.Rules;

/** The laws are tried on something: each check has evidence that passes it, to be spoilt. */
class SoundTest {

  @Test
  void everyCheckPassesOnSomethingOnceItsValuesAreConfirmed() {
    List<String> never = new ArrayList<>();
    for (Rules rules : Rulebook.every()) {
      for (String check : rules.checks().keySet()) {
        if (!Sound.of(Slice.of(rules, check)).found()) {
          never.add(rules.profile() + " " + check);
        }
      }
    }
    assertEquals(List.of(), never);
  }
}
