package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.mainsgate.verdict.BothRegions.instrument;
import static org.mainsgate.verdict.BothRegions.sound;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;

/**
 * Readings that are true and prove nothing, traps A2 to A8 and A11: the custom of the trade,
 * without a source unless one is named.
 */
class TrapsOfTheReadingTest {
  private static final String EARTH = "earth-continuity";

  private static BothRegions earth(String reading) {
    return sound().found("case: {earth_resistance: " + reading + "}");
  }

  // A2: a test that never reached the primary.

  @Test
  void theBestInsulationOfTheDayOnABareLeadProvesNothing() {
    BothRegions bare = instrument("primary_resistance: {value: OL, range: 19.99 MΩ}");
    bare.holds("witness", "instrument", Reason.NOT_MET);
    bare.holds("insulation", "instrument", Reason.PREREQUISITE_OPEN);
    bare.holds("chassis-resistance", "instrument", Reason.NOT_AS_ASKED);
    bare.holds("chassis-capacitance", "instrument", Reason.NOT_AS_ASKED);
    bare.says("witness", "instrument", "a selector link that is out");
  }

  @Test
  void insulationWithoutItsWitnessProvesNothing() {
    BothRegions alone = sound().unfound("instrument/primary_resistance");
    alone.holds("insulation", "instrument", Reason.PREREQUISITE_OPEN);
    alone.holds("chassis-resistance", "instrument", Reason.NOT_RECORDED);
  }

  /** Computed: 240 V and 48 VA make 12 to 240 Ω. */
  @Test
  void aWitnessThatIsNoWindingProvesNothing() {
    instrument("primary_resistance: 5.0 Ω").holds("witness", "instrument", Reason.NOT_MET);
    instrument("primary_resistance: {value: 260 Ω, range: 1.999 kΩ}")
        .holds("witness", "instrument", Reason.NOT_MET);
    instrument("primary_resistance: {value: 220 Ω, range: 1.999 kΩ}").passes();
  }

  @Test
  void aWitnessOfYesterdaySaysNothingOfTodaysInsulation() {
    BothRegions today =
        sound()
            .but(
                b ->
                    b.then(
                        "b",
                        "2026-11-26",
                        "a",
                        "found: {instrument: {insulation_resistance: \"> 199.9 MΩ\"}}\n"));
    today.holds("witness", "instrument", Reason.NOT_RECORDED);
    today.holds("insulation", "instrument");
  }

  @Test
  void aFuseThatWasChangedAfterwardsTakesTheWitnessWithIt() {
    sound()
        .but(book -> book.worked("{act: replaced, on: mains-fuse}", ""))
        .holds("witness", "instrument", Reason.NOT_RECORDED);
  }

  @Test
  void aPrimaryBehindAnOpenSwitchWasNotTested() {
    for (String how : List.of("switched: \"off\"", "joined: one_pole")) {
      instrument("insulation_resistance: {value: \"> 199.9 MΩ\", " + how + "}")
          .holds("insulation", "instrument", Reason.NOT_AS_ASKED);
      instrument("supply_resistance: {value: OL, range: 19.99 MΩ, " + how + "}")
          .holds("chassis-resistance", "instrument", Reason.NOT_AS_ASKED);
    }
  }

  /** A terminal that is kept from the supply by a barrier of its own, all of it measured. */
  private static BothRegions terminal(String found) {
    return sound()
        .second(
            "terminal",
            "exposed_part",
            "part_path: signal_common, part_resistance: {value: OL, range: 19.99 MΩ},"
                + " part_capacitance: 0.05 nF, part_insulation: \"> 199.9 MΩ\"")
        .found("terminal: {" + found + "}");
  }

  @Test
  void theWitnessOfTheChassisIsNoneForAPartOfAnotherDay() {
    BothRegions whole = terminal("");
    for (Notebook book : whole.books()) {
      assertEquals(Outcome.PASS, book.outcome("part-insulation", "terminal"));
    }
    BothRegions later =
        whole.but(
            book ->
                book.unfound("terminal/part_insulation")
                    .then(
                        "b",
                        "2026-11-26",
                        "a",
                        "found: {instrument: {unplugged: yes, nothing_connected: yes,"
                            + " meters_proved: yes}, cover: {closed_up: yes},"
                            + " terminal: {part_insulation: \"> 199.9 MΩ\"}}\n"));
    later.holds("part-insulation", "terminal", Reason.NOT_RECORDED);
  }

  // A3: "isolated", from a meter alone.

  @Test
  void aChassisThatOnlyAMeterCallsFreeIsNotFree() {
    instrument("supply_arrangement: unknown")
        .holds("chassis-free", "instrument", Reason.NOT_RECORDED);
    instrument("supply_arrangement: {is: two_winding_transformer, basis: assumed}")
        .holds("chassis-free", "instrument", Reason.NOT_AS_ASKED);
    sound()
        .unfound("instrument/supply_arrangement")
        .holds("chassis-free", "instrument", Reason.NOT_RECORDED);
  }

  @Test
  void seriesHeatersWithAnOpenHeaterReadOpenAndFail() {
    instrument(
            "supply_arrangement: {is: series_heaters, basis: diagram},"
                + " primary_resistance: {value: OL, range: 19.99 MΩ}")
        .fails("chassis-free", "instrument");
  }

  @Test
  void aChassisThatFloatsOnAResistorAndACapacitorIsNotClearOfTheSupply() {
    for (String ohms : List.of("470 kΩ", "680 kΩ")) {
      BothRegions floated =
          instrument("supply_resistance: " + ohms + ", supply_capacitance: 50.0 nF");
      floated.holds("chassis-resistance-clear", "instrument", Reason.NOT_MET);
      floated.holds("chassis-capacitance", "instrument", Reason.NOT_MET);
    }
    instrument("supply_resistance: 2.2 MΩ, supply_capacitance: 50.0 nF")
        .holds("chassis-capacitance", "instrument", Reason.NOT_MET);
    instrument("supply_resistance: 40 kΩ").fails("chassis-resistance", "instrument");
  }

  @Test
  void directCurrentDoesNotSeeACapacitorToTheChassis() {
    instrument("supply_capacitance: 22.0 nF")
        .holds("chassis-capacitance", "instrument", Reason.NOT_MET);
    sound()
        .unfound("instrument/supply_capacitance")
        .holds("chassis-capacitance", "instrument", Reason.NOT_RECORDED);
  }

  @Test
  void aSocketOnTheSupplyFailsHoweverFreeTheChassisIs() {
    terminal("part_resistance: 12.0 Ω").fails("part-resistance", "terminal");
    terminal("part_path: live_chassis").fails("live-metal", "terminal");
    terminal("")
        .unfound("terminal/part_resistance")
        .holds("part-resistance", "terminal", Reason.NOT_RECORDED);
  }

  // A4: a capacitor that nobody saw.

  @Test
  void aCapacitorToTheChassisThatNobodyListedIsNoticed() {
    BothRegions unseen = instrument("supply_capacitance: 5.3 nF");
    unseen.holds("chassis-capacitance", "instrument", Reason.NOT_MET);
    BothRegions listed = tied("4.7 nF").found("instrument: {supply_capacitance: 5.3 nF}");
    listed.passes();
  }

  private static BothRegions tied(String value) {
    return sound()
        .found("instrument: {chassis_tie: capacitor}")
        .having(
            "C9",
            "mains_capacitor",
            "make: film, safety_class: y2, mains_position: to_earthed, rated_ac: 275 V,"
                + " marked_capacitance: "
                + value);
  }

  /** Computed: 50 nF with 20 % on it at 253 V and 50 Hz is 4.8 mA, 30 nF is 2.9 mA. */
  @Test
  void theWorseOfTheListAndTheMeterCounts() {
    tied("30 nF").found("instrument: {supply_capacitance: 0.62 nF}").passes();
    tied("50 nF")
        .found("instrument: {supply_capacitance: 0.62 nF}")
        .fails("earth-current", "instrument");
    tied("4.7 nF")
        .found("instrument: {supply_capacitance: 60.0 nF}")
        .fails("earth-current", "instrument");
  }

  // A5: a small current, one strand.

  /** UK Code of Practice, published: 20 mA at least; IEC 61557-4, published: 200 mA at least. */
  @Test
  void aReadingWithASmallTestCurrentIsOnlyAnIndication() {
    earth("{value: 0.08 Ω, test_current: 1 mA}").holds(EARTH, "case", Reason.NOT_AS_ASKED);
    Notebook between =
        Notebook.eu().found("case: {earth_resistance: {value: 0.08 Ω, test_current: 190 mA}}");
    assertEquals(List.of(Reason.NOT_AS_ASKED), between.reasons(EARTH, "case"));
    Notebook soft =
        Notebook.gb().found("case: {earth_resistance: {value: 0.08 Ω, test_current: 20 mA}}");
    assertEquals(Outcome.PASS, soft.outcome(EARTH, "case"));
  }

  /** Computed: one strand of 0.2 mm in the terminal adds 16 mΩ, which every profile passes. */
  @Test
  void oneStrandInTheTerminalFailsHoweverWellItMeasures() {
    BothRegions hanging = sound().found("mains-lead: {strands: strands_out}");
    for (Notebook book : hanging.books()) {
      assertEquals(Outcome.PASS, book.outcome(EARTH, "case"));
    }
    hanging.fails("earth-strands", "mains-lead");
    sound().unfound("mains-lead/strands").holds("earth-strands", "mains-lead", Reason.NOT_RECORDED);
    BothRegions moulded = sound().found("mains-lead: {strands: moulded}").passes();
    moulded.says("earth-strands", "mains-lead", "could not be seen");
  }

  // A6: a second path.

  @Test
  void aSecondPathToEarthTakesThePassAway() {
    instrument("nothing_connected: no").holds(EARTH, "case", Reason.NOT_AS_ASKED);
    instrument("nothing_connected: no").holds("insulation", "instrument", Reason.NOT_AS_ASKED);
    sound().unfound("instrument/nothing_connected").holds(EARTH, "case", Reason.NOT_RECORDED);
  }

  // A7: not every reading is a test.

  @Test
  void anOpenMultimeterIsNoInsulationTest() {
    BothRegions ohmmeter =
        sound().but(book -> book.without("bench/methods/insulation/test_voltage"));
    ohmmeter.holds("insulation", "instrument", Reason.NOT_RECORDED);
    instrument("insulation_resistance: {value: \"> 199.9 MΩ\", test_voltage: 100 V}")
        .holds("insulation", "instrument", Reason.NOT_AS_ASKED);
  }

  @Test
  void lossWithoutItsFrequencyIsNoLoss() {
    String old =
        "ht_state: kept, marked_capacitance: 16 µF, leakage: {value: 0.40 mA, meter: pocket, test_voltage: 450 V},"
            + " capacitance: {value: 15.10 µF, meter: bridge, test_frequency: 100 Hz}, ";
    sound()
        .found(
            "reservoir: {"
                + old
                + "series_resistance: {value: 9.00 Ω, meter: bridge, test_frequency: 100 Hz}}")
        .passes();
    sound()
        .found("reservoir: {" + old + "series_resistance: {value: 9.00 Ω, meter: bridge}}")
        .holds("ht-capacitor-loss", "reservoir", Reason.NOT_RECORDED);
  }

  // A8: measured until it passes.

  @Test
  void measuringAgainDoesNotReplaceABadReading() {
    earth("[0.46 Ω, 0.11 Ω]").holds(EARTH, "case", Reason.DISAGREE);
    earth("[0.46 Ω, 0.11 Ω, 0.11 Ω, 0.11 Ω]").holds(EARTH, "case", Reason.DISAGREE);
    instrument("insulation_resistance: [0.20 MΩ, \"> 199.9 MΩ\"]")
        .holds("insulation", "instrument", Reason.DISAGREE);
  }

  @Test
  void aReadingIsTakenBackForAReasonOnly() {
    BothRegions slipped =
        earth("[{id: first, value: 0.46 Ω}, 0.11 Ω]")
            .but(b -> b.with("visit: {withdrawn: [{entry: first, reason: probe_slipped}]}"));
    slipped.passes();
  }

  // A11: a dead battery reads 0 V too.

  @Test
  void aMeterThatNobodyProvedShowsNothing() {
    for (String unproved : List.of("meters_proved: no", "meters_proved: unknown")) {
      BothRegions blind = instrument(unproved);
      blind.holds("stored-charge", "reservoir");
      blind.holds("insulation", "instrument");
      blind.holds(EARTH, "case");
      blind.holds("chassis-resistance", "instrument");
      blind.holds("chassis-capacitance", "instrument");
      blind.holds("switch-off", "instrument");
      blind.holds("ht-rail", "instrument");
    }
    instrument("meters_proved: no").says("stored-charge", "reservoir", "a dead battery");
  }
}
