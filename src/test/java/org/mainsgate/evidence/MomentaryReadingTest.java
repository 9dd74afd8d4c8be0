package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.ruleset.PaperRules;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;
import org.mainsgate.verdict.Said;

/** A reading that speaks of its own visit alone, and stands with the other readings of it. */
class MomentaryReadingTest {
  private static final String WORDS =
      """
      quantities:
        own_witness:
          of: instrument
          title: witness
          nature: measured
          function: resistance
          units: [Ω]
          least: 0 Ω
          momentary: yes
          tier: note
        test_current: {of: [earth_resistance, lead_earth_resistance, own_witness]}
      observations:
        own_bent: {of: exposed_part, title: bent, values: yes_no, momentary: yes, tier: note}
      """;
  private static final String PROFILE =
      """
      depends:
        - on: instrument
          does: [powered]
          voids: [own_witness, unplugged, nothing_connected]
      limits:
        own_most: {value: 11 Ω, source: practice, standing: common practice}
        own_current: {value: 0.1 A, source: practice, standing: common practice}
      checks:
        own-witness:
          title: A witness
          protects: from readings that reach nothing
          stage: cold
          over: exposed_part
          requirement: earth_resistance.own_witness <= own_most
          consequence: hold
          provided:
            - {that: earth_resistance.own_witness.test_current >= own_current, otherwise: more current}
          source: {of: practice, standing: common practice}
      """;
  private static final Rules RULES = PaperRules.with(WORDS, PROFILE);
  private static final String TEN =
      "own_witness: {value: 10.00 Ω, meter: low-ohm, nulled: yes, test_current: 0.2 A}";
  private static final Notebook SOUND = Notebook.under(RULES).found("instrument: {" + TEN + "}");

  private static Map<String, Fact> with(Notebook book, String thing) {
    return book.fact(thing, "earth_resistance").orElseThrow().with();
  }

  private static Fact.Amount witness(Notebook book) {
    return (Fact.Amount) Objects.requireNonNull(with(book, "case").get("own_witness"));
  }

  @Test
  void itStandsWithEachReadingOfItsVisitWithTheErrorOfItsMeter() {
    // 10 Ω ± (2 % + 3 digits of 0.01 Ω), by hand.
    assertEquals("[9.77, 10.23]", witness(SOUND).range().exact().toString());
    assertEquals(Outcome.PASS, SOUND.outcome("own-witness", "case"));
  }

  @Test
  void itsErrorCountsWhereItIsCompared() {
    Notebook near = SOUND.found("instrument: {own_witness: {value: 10.90 Ω}}");
    assertEquals(Outcome.HOLD, near.outcome("own-witness", "case"));
    Notebook over = SOUND.found("instrument: {own_witness: {value: 12.00 Ω}}");
    assertEquals(List.of(Reason.NOT_MET), over.reasons("own-witness", "case"));
  }

  @Test
  void whatWasRecordedWithItGoesAlong() {
    assertEquals(Set.of("test_current"), witness(SOUND).with().keySet());
    Notebook less = SOUND.found("instrument: {own_witness: {test_current: 0.05 A}}");
    assertEquals(List.of(Reason.NOT_AS_ASKED), less.reasons("own-witness", "case"));
  }

  @Test
  void withoutItNothingIsKnownOfIt() {
    Notebook without = Notebook.under(RULES);
    assertFalse(with(without, "case").containsKey("own_witness"));
    assertTrue(without.reasons("own-witness", "case").contains(Reason.NOT_RECORDED));
  }

  @Test
  void itSpeaksOfItsOwnVisitAlone() {
    Notebook later =
        SOUND.then("b", "2026-12-01", "a", "found: {case: {earth_resistance: 0.09 Ω}}\n");
    assertFalse(with(later, "case").containsKey("own_witness"));
    assertEquals(
        List.of("true for that visit only"), later.setAside("found.instrument.own_witness"));
    Notebook only =
        SOUND.then("b", "2026-12-01", "a", "found: {instrument: {own_witness: 9.00 Ω}}\n");
    assertEquals("10.00 Ω", witness(only).said().get(0).text(), "the reading keeps its own");
  }

  @Test
  void workThatVoidsItTakesItFromReadingsAfterThatWorkAlone() {
    Notebook powered =
        SOUND.worked("{act: powered, on: instrument}", "case: {earth_resistance: 0.09 Ω}");
    Notebook left = powered.unfound("case/earth_resistance");
    assertFalse(with(left, "case").containsKey("own_witness"));
    Notebook before = SOUND.worked("{act: powered, on: instrument}", "");
    assertTrue(with(before, "case").containsKey("own_witness"));
    Notebook both = powered;
    assertFalse(with(both, "case").containsKey("own_witness"), "one of the two has none");
    Notebook again =
        SOUND
            .worked(
                "{act: powered, on: instrument}",
                "instrument: {"
                    + TEN.replace("10.00", "9.00")
                    + "}, case: {earth_resistance: 0.09 Ω}")
            .unfound("case/earth_resistance");
    assertEquals(List.of("9.00 Ω"), witness(again).said().stream().map(Said::text).toList());
  }

  @Test
  void workThatDoesNotVoidItLeavesItWithReadingsAfterIt() {
    Notebook after =
        SOUND
            .worked("{act: repaired, on: case}", "case: {earth_resistance: 0.09 Ω}")
            .unfound("case/earth_resistance");
    assertEquals("10.00 Ω", witness(after).said().get(0).text());
  }

  @Test
  void twoOfOneMomentCountTogether() {
    Notebook two =
        Notebook.under(RULES)
            .found(
                "instrument: {own_witness: [{value: 9.90 Ω, meter: low-ohm, nulled: yes}, {value: 10.00 Ω, meter: low-ohm, nulled: yes}]}");
    assertEquals("[9.672, 10.23]", witness(two).range().exact().toString());
  }

  @Test
  void whatIsWithdrawnDoesNotCount() {
    Notebook taken =
        SOUND
            .found("instrument: {own_witness: {id: w1}}")
            .with("visit: {withdrawn: [{entry: w1, reason: misread}]}");
    assertFalse(with(taken, "case").containsKey("own_witness"));
  }

  @Test
  void itDoesNotStandWithItself() {
    assertFalse(
        SOUND.fact("instrument", "own_witness").orElseThrow().with().containsKey("own_witness"));
  }

  @Test
  void itIsAnEntryOfItsOwnAndNoWordInsideAnother() {
    String inside =
        SOUND.found("case: {earth_resistance: {value: 0.08 Ω, own_witness: 9 Ω}}").complaints();
    assertTrue(inside.contains("`own_witness` is measured, and an entry of its own"), inside);
    String method = SOUND.with("bench: {methods: {earth: {own_witness: 9 Ω}}}").complaints();
    assertTrue(method.contains("`own_witness` is measured, and an entry of its own"), method);
  }

  @Test
  void whatIsSaidOfOneThingStandsWithItsOwnReadings() {
    Notebook two =
        SOUND
            .with("instrument: {things: {panel: {kind: exposed_part}}}")
            .found("panel: {part_path: bonded, earth_resistance: 0.09 Ω, own_bent: yes}");
    assertTrue(with(two, "panel").containsKey("own_bent"));
    assertFalse(with(two, "case").containsKey("own_bent"));
    assertTrue(with(two, "panel").containsKey("own_witness"));
    assertTrue(with(two, "panel").containsKey("unplugged"));
  }

  @Test
  void itIsOfAThingAndWrittenInAVisit() {
    String bench = WORDS.replace("of: instrument\n", "of: bench\n    file: bench\n");
    assertTrue(PaperRules.complaints(bench, "").contains("`own_witness` can't be momentary"));
    String inner = WORDS.replace("of: instrument\n", "of: earth_resistance\n");
    String complaints = PaperRules.complaints(inner, "");
    assertTrue(complaints.contains("`own_witness` can't be momentary"), complaints);
    assertTrue(complaints.contains("measured, but said with another entry"), complaints);
  }
}
