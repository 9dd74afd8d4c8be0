package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.Rules;

/** The table of outcomes, line by line, and each reason to hold by itself. */
class OutcomeTest {
  private static final String EARTH = "earth-continuity";
  private static final String COPPER_SHARE =
      """
          value: 1
          source: iet-cop
          standing: published
      """;

  /** The rules of gb with one value that somebody has from memory. */
  private static Rules fromMemory(String confirmed) {
    String memory = COPPER_SHARE.replace("published", "from memory") + confirmed;
    return Rulebook.of(Rulebook.changed(Rulebook.text("profiles/gb.yaml"), COPPER_SHARE, memory));
  }

  private static Notebook earth(String reading) {
    return Notebook.gb().found("case: {earth_resistance: " + reading + "}");
  }

  // The lines of the table.

  @Test
  void whatDoesNotApplySaysWhichObservationSaysSo() {
    Finding finding =
        Notebook.gb()
            .found("instrument: {class: {is: II, shown_by: mark}}")
            .finding("lead-cores", "mains-lead");
    assertEquals(Outcome.NOT_APPLICABLE, finding.outcome());
    assertEquals("protection class: class II", finding.because());
  }

  @Test
  void whatMayApplyIsAHold() {
    Notebook book = Notebook.gb().found("instrument: {class: unknown}, mains-lead: {cores: two}");
    assertEquals(Outcome.HOLD, book.outcome("lead-cores", "mains-lead"));
  }

  @Test
  void aRequirementThatIsNotMetHasTheConsequenceFail() {
    assertEquals(Outcome.FAIL, earth("0.46 Ω").outcome(EARTH, "case"));
  }

  @Test
  void aRequirementThatIsNotMetHasTheConsequenceHold() {
    assertEquals(
        Outcome.HOLD,
        Notebook.gb().found("case: {part_path: floating}").outcome("part-path", "case"));
  }

  @Test
  void aRequirementThatIsMetOnEvidenceInOrderIsAPass() {
    assertEquals(Outcome.PASS, Notebook.gb().outcome(EARTH, "case"));
    assertEquals(Verdict.PASS, Notebook.gb().assess().verdict());
  }

  @Test
  void aFailStandsWhateverElseIsMissing() {
    Notebook book =
        earth("{value: 0.46 Ω, test_current: 1 mA}")
            .unfound("instrument/unplugged")
            .unfound("instrument/earth_fixing");
    assertEquals(Outcome.FAIL, book.outcome(EARTH, "case"));
  }

  // A limit from memory.

  @Test
  void aPassOnALimitFromMemoryIsAHold() {
    assertEquals(
        List.of(Reason.LIMIT_UNCONFIRMED), Notebook.under(fromMemory("")).reasons(EARTH, "case"));
  }

  @Test
  void aFailOnALimitFromMemoryIsAHold() {
    Notebook book = Notebook.under(fromMemory("")).found("case: {earth_resistance: 0.46 Ω}");
    assertEquals(List.of(Reason.LIMIT_UNCONFIRMED), book.reasons(EARTH, "case"));
  }

  @Test
  void aConfirmedLimitPassesAndFails() {
    Rules rules = fromMemory("    confirmed: {by: KO, on: 2026-11-01, edition: 5th}\n");
    assertEquals(Outcome.PASS, Notebook.under(rules).outcome(EARTH, "case"));
    assertEquals(
        Outcome.FAIL,
        Notebook.under(rules).found("case: {earth_resistance: 0.46 Ω}").outcome(EARTH, "case"));
  }

  @Test
  void aRowFromMemoryHoldsWhereItIsUsedAndNowhereElse() {
    String row = "- {at: 0.75 mm², short: 0 A, long: 6 A,";
    Rules rules =
        Rulebook.of(
            Rulebook.changed(
                Rulebook.text("profiles/gb.yaml"), row, row + " standing: from memory,"));
    assertEquals(Outcome.PASS, Notebook.under(rules).outcome("lead-current", "mains-lead"));
    Notebook thin = Notebook.under(rules).found("mains-lead: {core_area: 0.75 mm²}");
    assertEquals(List.of(Reason.LIMIT_UNCONFIRMED), thin.reasons("lead-current", "mains-lead"));
  }

  @Test
  void aRowFromMemoryThatSomebodyHasConfirmedPassesAndFails() {
    String row = "- {at: 0.75 mm², short: 0 A, long: 6 A,";
    String confirmed = " standing: from memory, confirmed: {by: KO, on: 2026-11-01, edition: 5th},";
    Rules rules =
        Rulebook.of(Rulebook.changed(Rulebook.text("profiles/gb.yaml"), row, row + confirmed));
    Notebook thin = Notebook.under(rules).found("mains-lead: {core_area: 0.75 mm²}");
    assertEquals(Outcome.PASS, thin.outcome("lead-current", "mains-lead"));
    Notebook hungry = thin.with("instrument: {plate: {rated_power: 2 kVA}}");
    assertEquals(Outcome.FAIL, hungry.outcome("lead-current", "mains-lead"));
  }

  @Test
  void aTableIsConfirmedAsAWhole() {
    String us = Rulebook.text("profiles/us.yaml");
    String clause = "    clause: 400.5(A)\n";
    Rules rules =
        Rulebook.of(
            Rulebook.changed(
                us,
                clause,
                clause + "    confirmed: {by: KO, on: 2026-11-01, edition: \"2023\"}\n"));
    Notebook before = Notebook.under(Rulebook.of(us));
    assertEquals(List.of(Reason.LIMIT_UNCONFIRMED), before.reasons("lead-current", "mains-lead"));
    assertEquals(Outcome.PASS, Notebook.under(rules).outcome("lead-current", "mains-lead"));
  }

  /** The rules of gb with a check that applies above a current which somebody has from memory. */
  private static Rules appliesFromMemory(String limit) {
    String limits =
        "limits:\n  strong: {value: "
            + limit
            + ", title: strong current, source: practice, standing: from memory}\n";
    String check =
        """
        checks:
          strong-lead:
            title: A strong lead for a strong current
            protects: from heat
            stage: cold
            over: lead
            applies: rated_current >= strong
            requirement: cores is two
            consequence: fail
            source: {of: practice, standing: common practice}
        """;
    String text = Rulebook.changed(Rulebook.text("profiles/gb.yaml"), "limits:\n", limits);
    return Rulebook.of(text + "\n" + check);
  }

  @Test
  void thatACheckDoesNotApplyIsNeverTakenFromMemory() {
    Notebook book = Notebook.under(appliesFromMemory("1 A"));
    assertEquals(List.of(Reason.LIMIT_UNCONFIRMED), book.reasons("strong-lead", "mains-lead"));
  }

  @Test
  void aFailIsNeverTakenFromACheckThatAppliesFromMemory() {
    Notebook book = Notebook.under(appliesFromMemory("0.1 A"));
    assertEquals(List.of(Reason.LIMIT_UNCONFIRMED), book.reasons("strong-lead", "mains-lead"));
  }

  // The reasons to hold.

  private record Example(Notebook book, String check, String thing) {}

  private static Map<Reason, Example> examples() {
    Map<Reason, Example> examples = new EnumMap<>(Reason.class);
    examples.put(
        Reason.NOT_RECORDED,
        new Example(Notebook.gb().unfound("mains-lead/sheath"), "lead-sheath", "mains-lead"));
    examples.put(
        Reason.LIST_OPEN, new Example(Notebook.gb().unfound("looked/lead"), "lead-sheath", "lead"));
    examples.put(Reason.TOO_NEAR, new Example(earth("0.13 Ω"), EARTH, "case"));
    examples.put(Reason.IMPLAUSIBLE, new Example(earth("0.01 Ω"), EARTH, "case"));
    examples.put(Reason.DISAGREE, new Example(earth("[0.01 Ω, 0.09 Ω]"), EARTH, "case"));
    examples.put(
        Reason.NOT_AS_ASKED,
        new Example(earth("{value: 0.08 Ω, test_current: 19 mA}"), EARTH, "case"));
    examples.put(
        Reason.PREREQUISITE_OPEN,
        new Example(Notebook.gb().unfound("instrument/earth_fixing"), EARTH, "case"));
    examples.put(
        Reason.APPLICABILITY_UNKNOWN,
        new Example(Notebook.gb().unfound("instrument/class"), EARTH, "case"));
    examples.put(
        Reason.LIMIT_UNCONFIRMED, new Example(Notebook.under(fromMemory("")), EARTH, "case"));
    examples.put(
        Reason.PERSON_MUST_JUDGE,
        new Example(
            Notebook.gb().found("instrument: {earth_fixing: shared}"),
            "earth-fixing",
            "instrument"));
    examples.put(
        Reason.NOT_MET,
        new Example(Notebook.gb().found("case: {part_path: floating}"), "part-path", "case"));
    return examples;
  }

  @ParameterizedTest
  @EnumSource
  void eachReasonHoldsByItselfAndSaysWhatWouldSettleIt(Reason reason) {
    Map<Reason, Example> examples = examples();
    assertEquals(EnumSet.allOf(Reason.class), examples.keySet());
    Example example = examples.getOrDefault(reason, new Example(Notebook.gb(), EARTH, "case"));
    Finding finding = example.book().finding(example.check(), example.thing());
    assertEquals(Outcome.HOLD, finding.outcome());
    assertEquals(List.of(reason), finding.holds().stream().map(Finding.Hold::reason).toList());
    assertEquals(Verdict.HOLD, example.book().assess().verdict());
    // What comes first has its own finding, which says what would settle it.
    assertEquals(reason == Reason.PREREQUISITE_OPEN, finding.settles().isEmpty());
  }

  // Judgement.

  private static Notebook judged(Notebook book, String check, String item) {
    return book.with(
        "visit: {judged: [{check: "
            + check
            + ", item: "
            + item
            + ", decision: accepted, by: KO, because: seen}]}");
  }

  @Test
  void aJudgementReleasesAHoldThatItMay() {
    Notebook book = Notebook.gb().found("mains-lead: {sheath: hardened}");
    assertEquals(Outcome.HOLD, book.outcome("lead-sheath-age", "mains-lead"));
    Notebook released = judged(book, "lead-sheath-age", "mains-lead");
    assertEquals(Outcome.PASS, released.outcome("lead-sheath-age", "mains-lead"));
    assertTrue(released.finding("lead-sheath-age", "mains-lead").judged().isPresent());
  }

  @Test
  void aJudgementReleasesNoFailNoGapAndNoOtherHold() {
    assertEquals(Outcome.FAIL, judged(earth("0.46 Ω"), EARTH, "case").outcome(EARTH, "case"));
    assertEquals(Outcome.HOLD, judged(earth("0.13 Ω"), EARTH, "case").outcome(EARTH, "case"));
    assertEquals(Outcome.HOLD, judged(earth("0.01 Ω"), EARTH, "case").outcome(EARTH, "case"));
    Notebook gap = Notebook.gb().unfound("mains-lead/sheath");
    assertEquals(
        Outcome.HOLD,
        judged(gap, "lead-sheath-age", "mains-lead").outcome("lead-sheath-age", "mains-lead"));
    Notebook floating = Notebook.gb().found("case: {part_path: floating}");
    assertEquals(Outcome.HOLD, judged(floating, "part-path", "case").outcome("part-path", "case"));
  }

  @Test
  void aJudgementOfOneThingSaysNothingOfAnother() {
    Notebook book =
        judged(Notebook.gb().found("mains-lead: {sheath: hardened}"), "lead-sheath-age", "case");
    assertEquals(Outcome.HOLD, book.outcome("lead-sheath-age", "mains-lead"));
  }

  // The stage.

  @Test
  void aStageOnWhichNothingPassedIsAHold() {
    assertEquals(Verdict.HOLD, Verdict.of(List.of()));
    assertEquals(Verdict.HOLD, Verdict.of(List.of(Outcome.NOT_APPLICABLE)));
    assertEquals(Verdict.PASS, Verdict.of(List.of(Outcome.NOT_APPLICABLE, Outcome.PASS)));
    assertEquals(Verdict.HOLD, Verdict.of(List.of(Outcome.HOLD, Outcome.PASS)));
    assertEquals(Verdict.FAIL, Verdict.of(List.of(Outcome.PASS, Outcome.HOLD, Outcome.FAIL)));
  }

  // What would settle it.

  /** 0.12 Ω is 0.12 x 1.02 + 0.03 = 0.1524 Ω at most, 0.13 Ω is 0.1626 Ω; the limit is 0.1585 Ω. */
  @Test
  void theLargestDisplayThatWouldPassIsNamed() {
    assertEquals(
        List.of("A display of 0.12 Ω or less would pass"),
        earth("0.13 Ω").finding(EARTH, "case").settles());
  }

  @Test
  void theNamedDisplayIsTheLargestOfAllThatPass() {
    int largest = -1;
    for (int hundredths = 0; hundredths <= 60; hundredths++) {
      String reading = hundredths / 100 + "." + "%02d".formatted(hundredths % 100) + " Ω";
      Finding finding = earth(reading).finding(EARTH, "case");
      boolean implausible =
          finding.holds().stream().anyMatch(hold -> hold.reason() == Reason.IMPLAUSIBLE);
      if (finding.outcome() == Outcome.PASS || implausible) {
        assertEquals(largest + 1, hundredths, "no gap below");
        largest = hundredths;
      }
      boolean near = finding.holds().stream().anyMatch(hold -> hold.reason() == Reason.TOO_NEAR);
      if (near) {
        assertEquals(List.of("A display of 0.12 Ω or less would pass"), finding.settles());
      }
    }
    assertEquals(12, largest);
  }

  /** A digit of 0.1 Ω, three of them: no display of this meter says less than 0.3 Ω. */
  @Test
  void aMeterThatIsTooCoarseIsNamedAsSuch() {
    Notebook book =
        Notebook.gb()
            .with("bench: {meters: {pocket: {title: pocket meter, kind: multimeter, history: []}}}")
            .found(
                "case: {earth_resistance: {value: 0.1 Ω, meter: pocket, nulled: yes, test_current: 0.2 A, measured_from: plug_pin}}");
    assertTrue(
        book.finding(EARTH, "case").settles().get(0).startsWith("No display of this meter"),
        book.finding(EARTH, "case").settles()::toString);
  }

  @Test
  void aValueThatNoRowOfATableFitsIsSaidToFitNone() {
    Finding finding =
        Notebook.gb().found("looked: {lead: 2}").finding("single-fixed-lead", "instrument");
    assertEquals(
        List.of(
            new Finding.Hold(Reason.LIMIT_UNCONFIRMED, "no table row fits 0"),
            new Finding.Hold(Reason.LIMIT_UNCONFIRMED, "no table row fits 1")),
        finding.holds());
    assertEquals(
        List.of("Look at what was recorded, and at the tables `counts_as_fixed`"),
        finding.settles());
  }

  // What to do.

  @Test
  void theRemedyIsThatOfTheFirstCaseThatFits() {
    assertEquals("", Notebook.gb().finding("lead-sheath-age", "mains-lead").remedy());
    String hardened = "mains-lead: {sheath: hardened}";
    String earthed =
        Notebook.gb().found(hardened).finding("lead-sheath-age", "mains-lead").remedy();
    assertTrue(earthed.startsWith("Replace the lead"), earthed);
    String tied =
        Notebook.gb()
            .found(hardened + ", instrument: {class: 0, chassis_tie: direct}")
            .finding("lead-sheath-age", "mains-lead")
            .remedy();
    assertTrue(tied.startsWith("Leave it without a plug"), tied);
  }

  // Before anything is recorded.

  @Test
  void noCheckSaysAnythingButHoldBeforeAnythingIsRecorded() {
    Rulebook.all().forEach(rules -> assertEquals(List.of(), new Engine(rules).blind()));
  }

  @Test
  void aCheckThatNeedsNoEvidenceIsFoundOut() {
    for (String requirement : List.of("1 <= 2", "not (cores is two and cores is three)")) {
      String check =
          """
          checks:
            blind:
              title: Blind
              protects: from nothing
              stage: cold
              over: lead
              requirement: REQUIREMENT
              consequence: fail
              source: {of: practice, standing: common practice}
          """
              .replace("REQUIREMENT", requirement);
      Rules rules = Rulebook.of(Rulebook.text("profiles/gb.yaml") + "\n" + check);
      boolean blind = requirement.equals("1 <= 2");
      assertEquals(blind ? 1 : 0, new Engine(rules).blind().size(), requirement);
    }
  }
}
