package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Property;
import org.mainsgate.store.PaperBench;

/** The widths are worked out by hand from the accuracies in the bench's file and the ruleset. */
class ReadingTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  private static Reading reading(Entry entry, LocalDate day) {
    Property property = PaperBench.ruleset().vocabulary().property(entry.property()).orElseThrow();
    return Reading.of(
        entry, (Property.Quantity) property, Paper.BENCH, Paper.READER.meterKinds(), day);
  }

  private static Reading earth(String written) {
    return reading(Paper.onTheCase("earth_resistance: {" + written + "}"), DAY);
  }

  private static ExactInterval between(String lo, String hi) {
    return ExactInterval.of(Rational.of(lo), Rational.of(hi));
  }

  private static ExactInterval atMost(String hi) {
    return ExactInterval.atMost(Rational.of(hi));
  }

  /** 2 % of 0.13 is 0.0026, 3 digits are 0.003. */
  @Test
  void theMetersOwnDataCount() {
    Reading reading = earth("value: 0.13 Ω");
    assertEquals(between("0.1244", "0.1356"), reading.bounds());
    assertEquals("low-ohm tester, Fallowmere LT-2, range 1.999 Ω, 2 % + 3 digits", reading.how());
    assertTrue(reading.display().isPresent());
  }

  /** In the coarser range 3 digits are 0.03. */
  @Test
  void aNamedRangeCounts() {
    assertEquals(between("0.0974", "0.1626"), earth("value: 0.13 Ω, range: 19.99 Ω").bounds());
  }

  /** 3 % of 0.13 is 0.0039, 3 digits of 0.01 are 0.03. */
  @Test
  void beforeTheMetersDataThoseOfItsKindCount() {
    Entry entry = Paper.onTheCase("earth_resistance: {value: 0.13 Ω, range: 19.99 Ω}");
    Reading reading = reading(entry, LocalDate.of(2026, 1, 11));
    assertEquals(between("0.0961", "0.1639"), reading.bounds());
    assertTrue(reading.how().contains("common practice"), reading.how());
  }

  /** 1 % of 0.2 is 0.002, 3 digits of 0.1 are 0.3: 0.302 more. */
  @Test
  void leadsOfWhichNothingIsSaidMakeAnUpperBound() {
    Reading reading = earth("value: 0.2 Ω, meter: pocket");
    assertEquals(atMost("0.502"), reading.bounds());
    assertTrue(reading.how().endsWith("test leads not nulled"), reading.how());
    assertEquals(atMost("0.1356"), earth("value: 0.13 Ω, nulled: no").bounds());
  }

  /** 0.13 ± 0.0056 less 0.1 ± 0.005. */
  @Test
  void whatAShortReadsIsTakenOffWithItsOwnError() {
    assertEquals(
        between("0.0194", "0.0406"), earth("value: 0.13 Ω, nulled: short reads 0.1 Ω").bounds());
  }

  @Test
  void limitsThatThePersonStatedStandAsTyped() {
    Reading reading = earth("value: 0.13 ± 0.02 Ω");
    assertEquals(between("0.11", "0.15"), reading.bounds());
    assertEquals(Optional.empty(), reading.display());
    assertEquals(atMost("0.15"), earth("value: 0.13 ± 0.02 Ω, nulled: no").bounds());
  }

  /** The range ends at 1.999; 2 % of it and 3 digits are 0.04298. */
  @Test
  void overRangeIsAboveTheEndOfTheRange() {
    assertEquals(
        ExactInterval.atLeast(Rational.of("1.95602")), earth("value: OL, range: 1.999 Ω").bounds());
  }

  /** One step more than the range shows: 2 less 2 % and 0.003. */
  @Test
  void moreThanTheRangeCanShowMayBeWritten() {
    assertEquals(ExactInterval.atLeast(Rational.of("1.957")), earth("value: '> 2 Ω'").bounds());
  }

  @Test
  void lessThanHasTheMetersErrorOnTop() {
    assertEquals(atMost("0.0132"), earth("value: '< 0.01 Ω'").bounds());
  }

  /** 0.12 less 0.0054 to 0.14 and 0.0058. */
  @Test
  void aDisplayThatWanderedHasTheErrorAtBothEnds() {
    assertEquals(between("0.1146", "0.1458"), earth("value: 0.12 to 0.14 Ω").bounds());
  }

  @Test
  void whatIsMarkedStandsAsWritten() {
    Visit visit = Paper.draft(Paper.HEAD + "found: {mains-lead: {lead_length: 2.5 m}}\n");
    Reading reading = reading(visit.found().get(0), DAY);
    assertEquals(ExactInterval.point(Rational.of("2.5")), reading.bounds());
    assertEquals("", reading.how());
  }

  /** Voltage knows no nulling: 1.5 % of 238 is 3.57, 5 digits of 1 V are 5. */
  @Test
  void aVoltageKnowsNoLeads() {
    Entry socket =
        Paper.BENCH.site().stream()
            .filter(entry -> entry.property().equals("socket_voltage"))
            .findFirst()
            .orElseThrow();
    assertEquals(between("229.43", "246.57"), reading(socket, DAY).bounds());
  }
}
