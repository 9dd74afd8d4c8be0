package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.ruleset.PaperRules;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Said;

/** One reading of several, said to be the worst of them: a bound on the others. */
class WorstOfTest {
  private static final String EARTH = "earth_resistance";
  private static final String WORDS =
      """
      quantities:
        earth_resistance: {worst: highest}
        own_insulation:
          of: exposed_part
          title: insulation of the part
          nature: measured
          function: insulation
          units: [MΩ]
          least: 0 MΩ
          worst: lowest
          tier: note
      """;
  private static final Rules RULES = PaperRules.with(WORDS, "");
  private static final Notebook FOUR =
      Notebook.under(RULES)
          .with(
              "instrument: {things: {panel: {kind: exposed_part}, handle: {kind: exposed_part}, foot: {kind: exposed_part}}}")
          .with(
              "bench: {meters: {megger: {title: insulation tester, kind: insulation_tester, history: [{from: 2026-01-01}]}}}")
          .found(
              "panel: {part_path: bonded}, handle: {part_path: bonded}, foot: {part_path: bonded},"
                  + "looked: {exposed_part: [case, panel, handle, foot]}");
  private static final Notebook WORST =
      worst("{id: e1, value: 0.09 Ω, worst_of: [panel, handle, foot]}");

  private static Notebook worst(String reading) {
    return FOUR.unfound("case/earth_resistance").found("case: {earth_resistance: " + reading + "}");
  }

  private static String range(Notebook book, String thing, String property) {
    Fact.Amount amount = (Fact.Amount) book.fact(thing, property).orElseThrow();
    return amount.range().exact().toString();
  }

  private static List<String> said(Notebook book, String thing) {
    return book.fact(thing, EARTH).orElseThrow().said().stream().map(Said::text).toList();
  }

  @Test
  void theWorstIsItselfAReadingAndTheOthersAreNoWorse() {
    // 0.09 Ω ± (2 % + 3 digits of 0.01 Ω), by hand.
    assertEquals("[0.0582, 0.1218]", range(WORST, "case", EARTH));
    for (String other : List.of("panel", "handle", "foot")) {
      assertEquals("[0, 0.1218]", range(WORST, other, EARTH));
      assertEquals(List.of("at most 0.09 Ω (worst of 4)"), said(WORST, other));
      assertEquals(Outcome.PASS, WORST.outcome("earth-continuity", other));
    }
    assertEquals(List.of("0.09 Ω (worst of 4)"), said(WORST, "case"));
  }

  @Test
  void itHasTheSameIdDayMeterAndCompanions() {
    Fact worst = WORST.fact("case", EARTH).orElseThrow();
    Fact other = WORST.fact("panel", EARTH).orElseThrow();
    assertEquals(worst.with().keySet(), other.with().keySet());
    assertTrue(other.with().keySet().containsAll(Set.of("test_current", "unplugged")));
    Said a = worst.said().get(0);
    Said b = other.said().get(0);
    assertEquals(a.entry(), b.entry());
    assertEquals(a.on(), b.on());
    assertEquals(a.how(), b.how());
    assertEquals(Optional.empty(), b.display(), "no display of this part was read");
  }

  @Test
  void whereTheWorstFailsTheOthersAreNotKnown() {
    Notebook bad = worst("{value: 2.00 Ω, worst_of: [panel, handle, foot]}");
    assertEquals(Outcome.FAIL, bad.outcome("earth-continuity", "case"));
    assertEquals(Outcome.HOLD, bad.outcome("earth-continuity", "panel"));
  }

  @Test
  void aLowestWorstBoundsTheOthersFromBelow() {
    Notebook book =
        FOUR.found("case: {own_insulation: {value: 20.0 MΩ, meter: megger, worst_of: [panel]}}");
    Fact.Amount own = (Fact.Amount) book.fact("case", "own_insulation").orElseThrow();
    Fact.Amount other = (Fact.Amount) book.fact("panel", "own_insulation").orElseThrow();
    assertEquals(own.range().exact().lo(), other.range().exact().lo());
    assertEquals(null, other.range().exact().hi());
    assertEquals("at least 20.0 MΩ (worst of 2)", other.said().get(0).text());
  }

  @Test
  void aBoundThatHasNoEndOnItsSideSaysNothing() {
    Notebook book = worst("{value: OL, range: 19.99 Ω, meter: low-ohm, worst_of: [panel]}");
    assertEquals("[0, …]", range(book, "panel", EARTH));
    assertEquals(List.of("not known beside OL (worst of 2)"), said(book, "panel"));
  }

  @Test
  void aReadingOfItsOwnCountsWithTheBoundOfTheSameDay() {
    Notebook book = WORST.found("panel: {earth_resistance: 0.05 Ω}");
    assertEquals("[0, 0.1218]", range(book, "panel", EARTH));
    assertFalse(book.fact("panel", EARTH).orElseThrow().disagrees());
    Notebook worse = WORST.found("panel: {earth_resistance: 0.90 Ω}");
    assertTrue(worse.fact("panel", EARTH).orElseThrow().disagrees(), "then it was not the worst");
  }

  @Test
  void aLaterReadingOfOneThingSupersedesItsBoundAlone() {
    Notebook later =
        WORST.then("b", "2026-12-01", "a", "found: {panel: {earth_resistance: 0.05 Ω}}\n");
    assertEquals(List.of("0.05 Ω"), said(later, "panel"));
    assertEquals(List.of("at most 0.09 Ω (worst of 4)"), said(later, "handle"));
  }

  @Test
  void workOnOneThingVoidsItsBoundAlone() {
    Notebook other = WORST.worked("{act: repaired, on: panel}", "");
    assertEquals(Optional.empty(), other.fact("panel", EARTH));
    assertTrue(other.fact("handle", EARTH).isPresent());
    assertTrue(other.fact("case", EARTH).isPresent());
    Notebook worst = WORST.worked("{act: repaired, on: case}", "");
    assertEquals(Optional.empty(), worst.fact("case", EARTH));
    assertTrue(worst.fact("panel", EARTH).isPresent(), "what it was no worse than, it was");
    Notebook lead = WORST.worked("{act: replaced, on: mains-lead}", "");
    assertEquals(Optional.empty(), lead.fact("panel", EARTH));
  }

  @Test
  void takingItBackTakesItFromAll() {
    Notebook taken = WORST.with("visit: {withdrawn: [{entry: e1, reason: probe_slipped}]}");
    for (String thing : List.of("case", "panel", "handle", "foot")) {
      assertEquals(Optional.empty(), taken.fact(thing, EARTH));
    }
    assertEquals(4, taken.setAside("e1").size());
  }

  @Test
  void aBoundRecordedSinceEndsAJudgementOfThatThing() {
    Notebook judged =
        FOUR.with(
            "visit: {judged: [{check: earth-continuity, item: panel, decision: accepted, by: AR, because: seen}]}");
    assertEquals(1, judged.evidence().judged().size());
    Notebook since =
        judged.then(
            "b",
            "2026-12-01",
            "a",
            "found: {case: {earth_resistance: {value: 0.09 Ω, worst_of: [panel]}}}\n");
    assertEquals(List.of(), since.evidence().judged());
  }

  private static String complaints(String others) {
    return worst("{value: 0.09 Ω, worst_of: " + others + "}").complaints();
  }

  @Test
  void whatItIsTheWorstOfAreOtherThingsOfItsKind() {
    assertTrue(complaints("[handel]").contains("unknown other thing of its kind `handel`"));
    assertTrue(complaints("[handel]").contains("nearest: `handle`"));
    assertTrue(complaints("[mains-lead]").contains("unknown other thing of its kind `mains-lead`"));
    assertTrue(complaints("[case]").contains("unknown other thing of its kind `case`"));
    assertTrue(complaints("[panel, panel]").contains("`panel` stands here twice"));
  }

  @Test
  void onlyWhatHasAWorstEndTakesIt() {
    String lead =
        FOUR.with("instrument: {things: {spare: {kind: lead}}}")
            .found("mains-lead: {lead_earth_resistance: {value: 0.09 Ω, worst_of: [spare]}}")
            .complaints();
    assertTrue(lead.contains("`lead_earth_resistance` has no worst of several"), lead);
    String marked =
        FOUR.found("mains-lead: {lead_length: {value: 3 m, worst_of: [case]}}").complaints();
    assertTrue(marked.contains("`lead_length` has no worst of several"), marked);
    String vocabulary = "quantities: {lead_length: {worst: highest}}\n";
    assertTrue(PaperRules.complaints(vocabulary, "").contains("has no worst of several"));
  }
}
