package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Judge;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.Rules;

/** Why an addition is refused where a person may judge: it would let a judgement release more. */
class OverlayTrapTest {
  private static final String MORE =
      """
      format: 1
      overlay: ours
      title: Ours
      edition: own
      language: 1
      for: "2026.1"
      amend:
        earth-fixing:
          requirement: chassis_tie is none
      """;
  private static final String ON_MY_WORD =
      "relaxes: [{what: earth-fixing, because: to show it, by: a test}]\n";

  /** A fixing that is one of two, a chassis that is tied, and a person who lets the fixing be. */
  private static final Evidence DOUBTFUL =
      new Evidence(
          Map.of(),
          Map.of(),
          Map.of(
              "instrument",
              Map.of(
                  "class", named("I"),
                  "earth_fixing", named("own_locked", "soldered"),
                  "chassis_tie", named("direct"))),
          List.of(
              new Judged(
                  "v/j",
                  "earth-fixing",
                  "instrument",
                  "somebody",
                  "a licence",
                  "seen",
                  "",
                  LocalDate.of(2026, 11, 25))));

  private static Fact named(String... values) {
    return new Fact.Named(Set.of(values), true, false, List.of(), Map.of());
  }

  @Test
  void whatIsUndecidedHoldsWhateverAPersonSays() {
    assertEquals(Outcome.HOLD, earthFixing(Rulebook.gb()));
  }

  @Test
  void withOneMoreConjunctTheSameJudgementWouldReleaseIt() {
    assertEquals(Outcome.PASS, earthFixing(Rulebook.under("gb", MORE + ON_MY_WORD)));
  }

  @Test
  void soItIsRefusedUnlessItFailsOrIsRelaxedByName() {
    assertTrue(Rulebook.ifAccepted("gb", MORE).isEmpty());
    Rules failing = Rulebook.under("gb", MORE + "    consequence: fail\n");
    assertEquals(Outcome.FAIL, earthFixing(failing));
  }

  private static Outcome earthFixing(Rules rules) {
    return Judge.ENGINE.judge(rules, DOUBTFUL).findings().stream()
        .filter(finding -> finding.check().id().equals("earth-fixing"))
        .findFirst()
        .orElseThrow()
        .outcome();
  }
}
