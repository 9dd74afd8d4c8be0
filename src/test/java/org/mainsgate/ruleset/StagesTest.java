package org.mainsgate.ruleset;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Engine;
import org.mainsgate.verdict.Outcome;

/** A check belongs to one stage or to several. */
class StagesTest {
  private static final String TWICE_A_YEAR =
      """
      stages:
        twice-a-year:
          title: Twice a year
          clears: nothing
          says: Looks at little.
          pass: Nothing stands in the way.
          hold: Something is open.
          fail: Put it right.
      """;

  private static String check(String id, String stage, String more) {
    return """
        %s:
          title: A check of our own
          protects: from nothing yet
          stage: %s
          over: lead
        %s  requirement: cores is three
          consequence: fail
          source: {of: practice, standing: common practice}
        """
        .formatted(id, stage, more)
        .indent(2);
  }

  private static Rules rules(String... checks) {
    return PaperRules.with("", TWICE_A_YEAR + "checks:\n" + String.join("", checks));
  }

  private static String complaints(String stage) {
    return PaperRules.complaints("", TWICE_A_YEAR + "checks:\n" + check("own", stage, ""));
  }

  private static List<String> of(Rules rules, String stage) {
    return rules.checksOf(rules.stage(stage).orElseThrow()).stream().map(Check::id).toList();
  }

  @Test
  void aCheckOfTwoStagesIsJudgedInBoth() {
    Rules rules = rules(check("own", "[twice-a-year, cold]", ""));
    assertEquals(List.of("own"), of(rules, "twice-a-year"));
    assertTrue(of(rules, "cold").contains("own"));
    assertEquals(
        List.of("twice-a-year", "cold"),
        Objects.requireNonNull(rules.checks().get("own")).stages());
  }

  @Test
  void aCheckOfOneStageIsNotJudgedInAnother() {
    Rules rules = rules(check("own", "twice-a-year", ""));
    assertFalse(of(rules, "cold").contains("own"));
    assertFalse(of(rules, "twice-a-year").contains("lead-cores"));
  }

  @Test
  void whatComesFirstIsJudgedThoughItIsOfAnotherStage() {
    Rules rules = rules(check("own", "twice-a-year", "  requires: [lead-sheath]\n"));
    Stage stage = rules.stage("twice-a-year").orElseThrow();
    Notebook sound = Notebook.under(rules);
    Assessment pass = new Engine(rules).assess(stage, sound.evidence());
    Assessment hold =
        new Engine(rules).assess(stage, sound.found("mains-lead: {sheath: damaged}").evidence());
    assertEquals(Outcome.PASS, pass.findings().get(0).outcome());
    assertEquals(Outcome.HOLD, hold.findings().get(0).outcome());
    assertEquals(1, hold.findings().size(), "the other check is no finding of this stage");
  }

  @Test
  void aStageThatNobodyDeclaredIsComplainedOfWithTheNearest() {
    String complaint = complaints("[cold, twice-a-yaer]");
    assertTrue(complaint.contains("unknown stage `twice-a-yaer`"), complaint);
    assertTrue(complaint.contains("nearest: `twice-a-year`"), complaint);
  }

  @Test
  void aListOfStagesIsNeitherEmptyNorDouble() {
    assertTrue(complaints("[]").contains("no stage"), complaints("[]"));
    String twice = complaints("[cold, cold]");
    assertTrue(twice.contains("`cold` stands twice"), twice);
    String nested = complaints("[{a: b}]");
    assertTrue(nested.contains("not the name of a stage"), nested);
  }
}
