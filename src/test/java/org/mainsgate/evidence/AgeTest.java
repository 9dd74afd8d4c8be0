package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.ruleset.PaperRules;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;
import org.mainsgate.verdict.Said;

/** How old an entry is follows from its day alone. */
class AgeTest {
  private static final String AGE =
      """
      quantities:
        age:
          of: [earth_resistance, insulation_resistance, part_insulation, sheath, plug_state, when_moved, anchorage, socket_voltage, socket_proven, supply_resistance, supply_capacitance, ht_rail_resistance, set_voltage, rated_power]
          title: age
          nature: marked
          units: [d]
          least: 0 d
          derived: age
          tier: note
      """;
  private static final String CHECKS =
      """
      limits:
        own_fresh: {value: 7 d, source: practice, standing: common practice}
      checks:
        own-fresh:
          title: A fresh reading
          protects: from readings of last year
          stage: cold
          over: exposed_part
          requirement: earth_resistance.age <= own_fresh
          consequence: hold
          source: {of: practice, standing: common practice}
        own-plate:
          title: A fresh look at the plate
          protects: from plates of last year
          stage: cold
          requirement: rated_power.age <= own_fresh and socket_voltage.age <= own_fresh
          consequence: hold
          source: {of: practice, standing: common practice}
        own-sheath:
          title: A fresh look at the sheath
          protects: from looks of last year
          stage: cold
          over: lead
          requirement: sheath.age <= own_fresh
          consequence: hold
          source: {of: practice, standing: common practice}
      """;
  private static final Rules RULES = PaperRules.with(AGE, CHECKS);
  private static final Notebook SOUND = Notebook.under(RULES);

  private static Fact.Amount age(Notebook book, String thing, String property) {
    Fact with = book.fact(thing, property).orElseThrow().with().get("age");
    return (Fact.Amount) Objects.requireNonNull(with, thing + " " + property);
  }

  private static String days(Notebook book, String thing, String property) {
    Fact.Amount age = age(book, thing, property);
    assertTrue(age.recorded());
    return String.join(", ", age.said().stream().map(Said::text).toList());
  }

  @Test
  void aReadingOfTheDayThatIsAskedAboutIsNoughtDaysOld() {
    assertEquals("0 d", days(SOUND, "case", "earth_resistance"));
    assertEquals("[0, 0]", age(SOUND, "case", "earth_resistance").range().exact().toString());
  }

  @Test
  void theAgeIsAnExactNumberOfDays() {
    Fact.Amount age = age(SOUND.on("2026-12-02"), "case", "earth_resistance");
    assertEquals("[604800, 604800]", age.range().exact().toString(), "7 × 86400 s");
    assertEquals("365 d", days(SOUND.on("2027-11-25"), "mains-lead", "sheath"));
    assertEquals("1096 d", days(SOUND.on("2029-11-25"), "mains-lead", "sheath"), "2028 is leap");
  }

  @Test
  void sevenDaysAreFreshAndEightAreNot() {
    assertEquals(Outcome.PASS, SOUND.on("2026-12-02").outcome("own-fresh", "case"));
    assertEquals(Outcome.HOLD, SOUND.on("2026-12-03").outcome("own-fresh", "case"));
    assertEquals(List.of(Reason.NOT_MET), SOUND.on("2026-12-03").reasons("own-fresh", "case"));
    assertEquals(Outcome.HOLD, SOUND.on("2026-12-03").outcome("own-sheath", "mains-lead"));
  }

  @Test
  void anObservationHasItsAgeToo() {
    assertEquals("0 d", days(SOUND, "mains-lead", "sheath"));
  }

  @Test
  void theOldestOfSeveralReadingsDecides() {
    Notebook apart =
        SOUND
            .then("b", "2026-12-01", "", "found: {case: {earth_resistance: 0.08 Ω}}\n")
            .on("2026-12-04");
    Fact.Amount age = age(apart, "case", "earth_resistance");
    assertEquals("[259200, 777600]", age.range().exact().toString(), "3 d to 9 d");
    assertEquals(Outcome.HOLD, apart.outcome("own-fresh", "case"));
  }

  @Test
  void whatIsOnlyOnTheBenchIsAsOldAsItSays() {
    Notebook dated =
        SOUND
            .with("bench: {site: {socket_voltage: {value: 238 V, on: 2026-11-20}}}")
            .with("instrument: {plate: {rated_power: {value: 48 VA, on: 2026-11-24}}}");
    assertEquals("5 d", days(dated, "bench", "socket_voltage"));
    assertEquals("1 d", days(dated, "instrument", "rated_power"));
    assertEquals(Outcome.PASS, dated.outcome("own-plate", "instrument"));
  }

  @Test
  void whatHasNoDateHasNoAge() {
    Notebook undated =
        SOUND.with("bench: {site: {socket_voltage: {value: 238 V, on: 2026-11-20}}}");
    assertFalse(undated.fact("instrument", "rated_power").orElseThrow().with().containsKey("age"));
    assertEquals(Outcome.HOLD, undated.outcome("own-plate", "instrument"));
    assertEquals(List.of(Reason.NOT_RECORDED), undated.reasons("own-plate", "instrument"));
  }

  @Test
  void whatIsDatedAfterTheDayThatIsAskedAboutHasNoAge() {
    Notebook later = SOUND.with("bench: {site: {socket_voltage: {value: 238 V, on: 2026-11-26}}}");
    assertFalse(later.fact("bench", "socket_voltage").orElseThrow().with().containsKey("age"));
  }

  @Test
  void whereNothingIsRecordedTheAgeIsUnknown() {
    Notebook without = SOUND.unfound("case/earth_resistance");
    assertEquals(List.of(Reason.NOT_RECORDED), without.reasons("own-fresh", "case"));
  }

  private static String complaints(String found) {
    return SOUND.found(found).complaints();
  }

  @Test
  void nobodyTypesIt() {
    String with = complaints("case: {earth_resistance: {value: 0.08 Ω, age: 3 d}}");
    assertTrue(with.contains("`age`"), with);
    String alone = complaints("case: {age: 3 d}");
    assertTrue(alone.contains("`age`"), alone);
    String observed = complaints("mains-lead: {sheath: {is: sound, age: 3 d}}");
    assertTrue(observed.contains("`age`"), observed);
  }

  @Test
  void nothingElseIsDerived() {
    String word = AGE.replace("derived: age", "derived: aeg");
    assertTrue(PaperRules.complaints(word, "").contains("nearest: `age`"));
  }
}
