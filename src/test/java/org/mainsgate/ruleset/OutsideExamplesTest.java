package org.mainsgate.ruleset;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mainsgate.formula.Ground;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;

/**
 * Worked examples from outside that go through the real rules: each with its source and how well
 * that is known, in the words of {@link TradeFactsTest}.
 */
class OutsideExamplesTest {

  private static ExactInterval left(Notebook book, String check, String thing) {
    return comparison(book, check, thing).left();
  }

  private static ExactInterval right(Notebook book, String check, String thing) {
    return comparison(book, check, thing).right();
  }

  private static Ground.Comparison comparison(Notebook book, String check, String thing) {
    return book.finding(check, thing).deciding().orElseThrow();
  }

  /** Both ends are the printed value, to the last digit that was printed. */
  private static void near(double printed, ExactInterval found, double halfOfTheLastDigit) {
    double lo = Objects.requireNonNull(found.lo()).down();
    double hi = Objects.requireNonNull(found.hi()).up();
    assertEquals(printed, lo, halfOfTheLastDigit * 1.0001);
    assertEquals(printed, hi, halfOfTheLastDigit * 1.0001);
  }

  private static ExactInterval exactly(String number) {
    return ExactInterval.point(Rational.of(number));
  }

  // Currents through capacitors.

  private static Notebook supply(String voltage, String frequency) {
    return Notebook.gb()
        .with(
            "bench: {site: {supply_voltage: "
                + voltage
                + ", supply_frequency: "
                + frequency
                + "}}");
  }

  /**
   * 100 nF and 4.7 nF at 240 V, 50 Hz: worked examples, reported, 7.5 and 0.354 mA. The others are
   * computed from 2π f C U.
   */
  @ParameterizedTest
  @CsvSource({
    "100 nF, 240 V, 50 Hz, 7.5398e-3",
    "4.7 nF, 240 V, 50 Hz, 0.3544e-3",
    "2.2 nF, 250 V, 50 Hz, 0.1728e-3",
    "4.7 nF, 250 V, 60 Hz, 0.4430e-3",
    "10 nF, 230 V, 50 Hz, 0.7226e-3",
    "50 nF, 240 V, 50 Hz, 3.7699e-3",
    "100 nF, 120 V, 60 Hz, 4.5239e-3"
  })
  void aCapacitorToTheChassisCarriesThisCurrent(String c, String u, String f, double amperes) {
    String stated = c.replace(" nF", " ± 0.000001 nF");
    Notebook book = supply(u, f).found("instrument: {supply_capacitance: " + stated + "}");
    near(amperes, left(book, "earth-current", "instrument"), 0.00005e-3);
  }

  /** Computed: the largest capacitor that keeps to the limit at 253 V and 50 Hz. */
  @ParameterizedTest
  @CsvSource({"gb, 3.14, 3.15", "eu, 6.29, 6.30"})
  void theLargestCapacitorToATerminalKeepsToTheTouchCurrent(
      String profile, String passes, String fails) {
    assertEquals(Outcome.PASS, touching(profile, passes).outcome("part-current", "terminal"));
    assertEquals(Outcome.FAIL, touching(profile, fails).outcome("part-current", "terminal"));
  }

  private static Notebook touching(String profile, String nanofarads) {
    return Notebook.under(Rulebook.profile(profile))
        .with("instrument: {things: {terminal: {kind: exposed_part}}}")
        .found(
            "terminal: {part_path: signal_common, part_resistance: {value: OL, range: 19.99 MΩ},"
                + " part_capacitance: "
                + nanofarads
                + " ± 0.0001 nF}, looked: {exposed_part: 2}");
  }

  /** Computed: 44.0 nF for 3.5 mA at 253 V and 50 Hz. */
  @Test
  void fortyFourNanofaradsAreTheMostThatAnEarthMayCarry() {
    for (Notebook book : List.of(Notebook.gb(), Notebook.eu())) {
      Notebook most = book.found("instrument: {supply_capacitance: 44.0 ± 0.01 nF}");
      Notebook more = book.found("instrument: {supply_capacitance: 44.1 ± 0.01 nF}");
      assertEquals(Truth.MET, left(most, "earth-current", "instrument").atMost(exactly("0.0035")));
      assertEquals(Outcome.FAIL, more.outcome("earth-current", "instrument"));
    }
  }

  /**
   * Touch current of class II and of metal that is not earthed: UK Code of Practice, published, and
   * IEC 60335-1 for class II, published: 0.25 mA; EN 50678, reported: 0.5 mA; AS/NZS 3760, from
   * memory: 1 mA; IEC 60950-1, published: 0.25 mA.
   */
  @ParameterizedTest
  @CsvSource({"gb, 0.00025", "eu, 0.0005", "au-nz, 0.001", "us, 0.00025"})
  void eachRegionHasItsOwnTouchCurrent(String profile, String amperes) {
    assertEquals(exactly(amperes), right(touching(profile, "0.1"), "part-current", "terminal"));
  }

  // Old electrolytics.

  private static Notebook kept(String found) {
    return Notebook.gb()
        .found(
            "reservoir: {ht_state: kept, working_voltage: 450 V, marked_capacitance: 10 µF,"
                + " capacitance: {value: 10 ± 0.0001 µF, meter: bridge, test_frequency: 120 Hz}}")
        .found("reservoir: {" + found + "}");
  }

  /** A maker's page, reported: tan δ 0.25 at 120 Hz and 10 µF is an ESR of 33.2 Ω. */
  @Test
  void aLossOfAQuarterIsThirtyThreeOhms() {
    Notebook book =
        kept("series_resistance: {value: 33.2 ± 0.001 Ω, meter: bridge, test_frequency: 120 Hz}");
    near(0.25, left(book, "ht-capacitor-loss", "reservoir"), 0.0005);
  }

  /** JAN-C-62, reported with these two answers: 1.1 mA and 0.7 mA for 20 µF. */
  @ParameterizedTest
  @CsvSource({"450 V, 0.0011", "250 V, 0.0007"})
  void anOldElectrolyticMayLeakThis(String volts, String amperes) {
    Notebook book =
        kept(
            "marked_capacitance: 20 µF, leakage: {value: 0.50 mA, meter: pocket, test_voltage: 450 V},"
                + " working_voltage: "
                + volts);
    assertEquals(exactly(amperes), right(book, "ht-capacitor-leakage", "reservoir"));
  }

  /** Two makers' series, published: 0.20 at 350 V and 0.25 at 450 V; twice that after use. */
  @ParameterizedTest
  @CsvSource({"350 V, 0.40", "450 V, 0.50", "100 V, 0.16"})
  void anOldElectrolyticMayLoseThis(String volts, String loss) {
    Notebook book =
        kept(
            "series_resistance: {value: 33.2 Ω, meter: bridge, test_frequency: 120 Hz},"
                + " working_voltage: "
                + volts);
    assertEquals(exactly(loss), right(book, "ht-capacitor-loss", "reservoir"));
  }

  /** A peak is √2 of the r.m.s., computed: 230 V make 325 V; 350 V make 495 V. */
  @ParameterizedTest
  @CsvSource({"230 V, 325.27", "350 V, 494.97"})
  void aReservoirSeesThePeakOfItsWinding(String winding, double peak) {
    Notebook book =
        supply("240 V", "50 Hz").found("instrument: {secondary_voltage: " + winding + "}");
    near(peak, right(book, "ht-capacitor-voltage", "reservoir"), 0.005);
  }

  /** IEC 60335-1 22.5, published: 0.1 µF at the plug needs no discharge. */
  @Test
  void theExemptionAtThePlugIsATenthOfAMicrofarad() {
    Limit limit = Objects.requireNonNull(Rulebook.gb().limits().get("plug_capacitance"));
    assertEquals(exactly("0.0000001"), limit.value());
    assertEquals(Standing.PUBLISHED, limit.citation().standing());
  }

  // Heaters and the selector.

  /**
   * 6.3 V heaters by tap and supply, computed as 6.3 × supply ÷ tap, against the British 7 % and
   * the 10 % of the rest, both reported. Over 15 % nothing is connected.
   */
  @ParameterizedTest
  @CsvSource({
    "240, 230, PASS, PASS",
    "230, 240, PASS, PASS",
    "220, 230, PASS, PASS",
    "220, 240, HOLD, PASS",
    "110, 120, HOLD, PASS",
    "240, 253, PASS, PASS",
    "220, 253, HOLD, HOLD",
    "200, 240, FAIL, FAIL",
    "100, 120, FAIL, FAIL",
    "110, 230, FAIL, FAIL"
  })
  void heatersGoByTheTapAndTheSupply(int tap, int supply, Outcome british, Outcome rest) {
    assertEquals(british, selector(Notebook.gb(), tap, supply));
    assertEquals(rest, selector(Notebook.eu(), tap, supply));
  }

  private static Outcome selector(Notebook book, int tap, int supply) {
    Notebook set =
        book.with(
                "bench: {site: {supply_voltage: "
                    + supply
                    + " V ±1 %, socket_voltage: {value: "
                    + supply
                    + ".00 ± 0.001 V, on: 2026-11-20}}}")
            .found("selector: {set_voltage: " + tap + " V}");
    return set.outcome("selector-far-off", "instrument") == Outcome.FAIL
        ? Outcome.FAIL
        : set.outcome("selector-tap", "instrument");
  }

  /** 60 Hz iron carries 1.2 times the flux at 50 Hz, computed; the other way round it is cooler. */
  @Test
  void ironForSixtyHertzIsSomebodysToJudgeAtFifty() {
    Notebook sixty = Notebook.gb().with("instrument: {plate: {rated_frequency: 60 Hz}}");
    assertEquals(
        List.of(Reason.PERSON_MUST_JUDGE), sixty.reasons("supply-frequency", "instrument"));
    Notebook fifty =
        Notebook.gb()
            .with("bench: {site: {supply_frequency: 60 Hz}}")
            .with("instrument: {plate: {rated_frequency: 50 Hz}}");
    assertEquals(Outcome.PASS, fifty.outcome("supply-frequency", "instrument"));
  }

  // Supplies.

  /**
   * EN 50160, reported: +10/-15 %; ANSI C84.1 range A, reported: 114 to 126 V; equipment of its day
   * for 115 V ±10 %, reported; Japan, from memory: 101 V ± 6 V.
   */
  @ParameterizedTest
  @CsvSource({
    "230 V +10/-15 %, 195.5, 253",
    "120 V ±5 %, 114, 126",
    "115 V ±10 %, 103.5, 126.5",
    "101 ± 6 V, 95, 107"
  })
  void aSupplyOfTheWorldVariesBetweenTheseEnds(String supply, String lowest, String highest) {
    Notebook book = supply(supply, "50 Hz");
    Fact.Varying voltage = (Fact.Varying) book.fact("bench", "supply_voltage").orElseThrow();
    assertEquals(exactly(lowest), voltage.range().lowest());
    assertEquals(exactly(highest), voltage.range().highest());
  }

  // The witness from line to neutral.

  /** Common practice: 60 VA at 230 V has 9 to 180 Ω; computed, 8.8 to 176.3 Ω. */
  @Test
  void sixtyVoltAmperesAtTwoHundredAndThirtyVoltsHaveNineToHundredAndEightyOhms() {
    Notebook book =
        Notebook.gb().with("instrument: {plate: {rated_voltage: 230 V, rated_power: 60 VA}}");
    near(8.8, right(at(book, "4.0 Ω"), "witness", "instrument"), 0.05);
    near(176.3, right(at(book, "900 Ω"), "witness", "instrument"), 0.05);
    for (String usual : List.of("25.0 Ω", "70.0 Ω")) {
      assertEquals(Outcome.PASS, at(book, usual).outcome("witness", "instrument"));
    }
  }

  private static Notebook at(Notebook book, String ohms) {
    return book.found("instrument: {primary_resistance: " + ohms + "}");
  }

  // Strain relief.

  /** IEC 60335-1 25.15, published: 30 N to 1 kg, 60 N to 4 kg, 100 N above; 2 mm. */
  @ParameterizedTest
  @CsvSource({"1.0 kg, 30", "1.1 kg, 60", "4.0 kg, 60", "4.1 kg, 100", "15 kg, 100"})
  void theCordOfAHeavierInstrumentHoldsAStrongerPull(String mass, int newtons) {
    assertEquals(Outcome.PASS, pulled(mass, newtons, "2 mm"));
    assertEquals(Outcome.FAIL, pulled(mass, newtons - 1, "2 mm"));
    assertEquals(Outcome.FAIL, pulled(mass, newtons, "2.1 mm"));
  }

  private static Outcome pulled(String mass, int newtons, String moved) {
    return Notebook.under(Rulebook.profile("new-equipment"))
        .found(
            "instrument: {mass: "
                + mass
                + "}, mains-lead: {pull_test: measured, pull_force: "
                + newtons
                + " N, pull_movement: "
                + moved
                + "}")
        .outcome("anchorage-pull", "mains-lead");
  }

  // Decision rules.

  /**
   * ILAC-G8:09/2019 4.2.2 and 4.2.3, published: with a guard band as wide as the uncertainty, pass
   * ends at the limit less w, and fail begins at the limit plus w; here 0.3 Ω and ± 0.02 Ω.
   */
  @ParameterizedTest
  @CsvSource({"0.28, PASS", "0.2801, HOLD", "0.30, HOLD", "0.32, HOLD", "0.3201, FAIL"})
  void theGuardBandIsAsWideAsTheUncertainty(String ohms, Outcome outcome) {
    Notebook book = Notebook.eu().found("case: {earth_resistance: " + ohms + " ± 0.02 Ω}");
    assertEquals(outcome, book.outcome("earth-continuity", "case"));
  }

  /** The same for a limit from below: 1.0 MΩ and ± 0.1 MΩ. */
  @ParameterizedTest
  @CsvSource({"1.10, PASS", "1.0999, HOLD", "0.90, HOLD", "0.8999, FAIL"})
  void theGuardBandLiesOnTheSideOfCautionForALeastValueToo(String megohms, Outcome outcome) {
    for (Notebook book : List.of(Notebook.gb(), Notebook.eu())) {
      Notebook read = book.found("instrument: {insulation_resistance: " + megohms + " ± 0.1 MΩ}");
      assertEquals(outcome, read.outcome("insulation", "instrument"));
    }
  }

  /**
   * Least insulation, published by the manuals of two makers for VDE 0701 and by the UK Code of
   * Practice: 1.0 MΩ for class I, 2.0 MΩ for metal that is not earthed.
   */
  @Test
  void oneAndTwoMegohmsAreTheLeastInsulation() {
    for (String profile : List.of("gb", "eu")) {
      Notebook book = touching(profile, "0.1").found("terminal: {part_insulation: 50.0 MΩ}");
      assertEquals(exactly("1000000"), right(book, "insulation", "instrument"));
      assertEquals(exactly("2000000"), right(book, "part-insulation", "terminal"));
    }
  }

  /**
   * Common practice: half the voltage needs about double the fuse; computed, three times the
   * current.
   */
  @Test
  void halfTheVoltageNeedsTwiceTheFuse() {
    near(0.6, right(set("240 V"), "fuse-rating", "mains-fuse"), 0.0005);
    near(1.2, right(set("120 V"), "fuse-rating", "mains-fuse"), 0.0005);
  }

  private static Notebook set(String voltage) {
    return Notebook.gb()
        .found("selector: {set_voltage: " + voltage + "}, mains-fuse: {fuse_rating: 5 A}");
  }
}
