package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.mainsgate.verdict.BothRegions.sound;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.mainsgate.laws.Notebook;

/**
 * What was wrong yesterday and is right today, with nothing done between; and work of which nobody
 * thinks that it touched anything else. The custom of the trade, without a source.
 */
class TrapsOfTheSecondLookTest {
  private static final String NEXT_DAY = "2026-11-26";

  /** The next day, closed up and unplugged, with something new found. */
  private static Notebook nextDay(Notebook book, String found) {
    boolean more = found.startsWith("instrument: {");
    String instrument = more ? ", " + found.substring(13, found.length() - 1) : "";
    String momentary = "unplugged: yes, nothing_connected: yes, meters_proved: yes" + instrument;
    return book.then(
        "b",
        NEXT_DAY,
        "a",
        "found:\n  instrument: {"
            + momentary
            + "}\n  cover: {closed_up: yes}\n"
            + (more ? "" : "  " + found + "\n"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mains-lead: {when_moved: changed} | mains-lead: {when_moved: steady} | earth-steady | mains-lead",
        "mains-lead: {sheath: damaged} | mains-lead: {sheath: sound} | lead-sheath | mains-lead",
        "case: {earth_resistance: 0.85 Ω} | case: {earth_resistance: 0.08 Ω} | earth-continuity | case",
        "instrument: {insulation_resistance: 0.05 MΩ} | instrument: {insulation_resistance: '> 199.9 MΩ', primary_resistance: 62.0 Ω} | insulation | instrument",
      })
  void whatWasWrongYesterdayIsNotRightTodayByItself(
      String bad, String good, String check, String thing) {
    for (Notebook book : sound().books()) {
      Notebook wrong = book.found(bad);
      assertNotEquals(Outcome.PASS, wrong.outcome(check, thing), check);
      Notebook today = nextDay(wrong, good);
      assertEquals(Outcome.HOLD, today.outcome(check, thing), check);
      assertTrue(today.reasons(check, thing).contains(Reason.DISAGREE), check);
      assertEquals(
          Outcome.PASS, nextDay(book, good).outcome(check, thing), "a change for no worse");
    }
  }

  @Test
  void workBetweenThemExplainsIt() {
    for (Notebook book : sound().books()) {
      Notebook mended =
          book.found("case: {earth_resistance: 0.85 Ω}")
              .worked("{act: repaired, on: case}", "case: {part_path: bonded}");
      assertEquals(
          Outcome.PASS,
          nextDay(mended, "case: {earth_resistance: 0.08 Ω}").outcome("earth-continuity", "case"));
    }
  }

  @Test
  void aWithdrawalWithItsReasonExplainsItToo() {
    for (Notebook book : sound().books()) {
      Notebook slipped =
          nextDay(
              book.found("case: {earth_resistance: {value: 0.85 Ω, id: r1}}"),
              "case: {earth_resistance: 0.08 Ω}\n"
                  + "withdrawn: [{entry: "
                  + Notebook.id("a", "2026-11-25")
                  + "/r1, reason: probe_slipped}]");
      assertEquals(Outcome.PASS, slipped.outcome("earth-continuity", "case"));
    }
  }

  @Test
  void aReadingThatWasWorseAndGoodEnoughIsNoContradiction() {
    for (Notebook book : sound().books()) {
      Notebook drifted =
          nextDay(
              book.found("case: {earth_resistance: 0.12 Ω}"), "case: {earth_resistance: 0.08 Ω}");
      assertEquals(Outcome.PASS, drifted.outcome("earth-continuity", "case"));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{act: replaced, on: rubber}",
        "{act: repaired, on: rubber}",
        "{act: removed, on: rubber}",
        "{act: removed, on: instrument}",
        "{act: fitted, on: mains-fuse}",
        "{act: changed, on: selector}",
      })
  void afterWorkNearTheMainsEarthAndInsulationAreMeasuredAnew(String work) {
    for (Notebook book : sound().books()) {
      Notebook worked =
          book.with("instrument: {things: {rubber: {kind: hazard}}}")
              .found("rubber: {hazard_kind: other, hazard_state: contained}, looked: {hazard: 1}")
              .worked(work, "");
      assertEquals(Outcome.HOLD, worked.outcome("earth-continuity", "case"));
      assertEquals(Outcome.HOLD, worked.outcome("earth-closed-up", "case"));
      assertEquals(Outcome.HOLD, worked.outcome("insulation", "instrument"));
    }
  }

  @Test
  void afterPowerTheInsulationIsMeasuredAnew() {
    sound()
        .but(book -> book.worked("{act: powered, on: instrument, note: a bang and smoke}", ""))
        .holds("insulation", "instrument", Reason.NOT_RECORDED);
  }

  @Test
  void sevenYearsAgoIsNotLatelyForAnythingThatOpensAFirstConnection() {
    for (Notebook book : sound().books()) {
      Notebook later =
          book.then("b", "2033-11-25", "a", "found: {case: {earth_resistance: 0.08 Ω}}");
      for (String check : List.of("fresh-chassis", "fresh-setting", "fresh-insulation")) {
        assertEquals(Outcome.HOLD, later.outcome(check, "instrument"), check);
      }
      assertEquals(Outcome.HOLD, later.outcome("ht-rail", "instrument"));
    }
  }
}
