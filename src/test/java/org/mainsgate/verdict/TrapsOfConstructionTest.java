package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.mainsgate.verdict.BothRegions.instrument;
import static org.mainsgate.verdict.BothRegions.sound;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Rules;

/**
 * What an instrument is made of and looks sound, traps A13, A15 to A21, A26 and A27, and the
 * instrument that set this off: the custom of the trade, without a source unless one is named.
 */
class TrapsOfConstructionTest {
  private static final String EARTH = "earth-continuity";

  private static BothRegions lead(String found) {
    return sound().found("mains-lead: {" + found + "}");
  }

  private static BothRegions reservoir(String found) {
    return sound().found("reservoir: {" + found + "}");
  }

  // What sets this off.

  /** IEC 61140, published: class I has its metal joined to protective earth. */
  @Test
  void aTwoCoreLeadOnAClassOneInstrumentFails() {
    for (Rules rules : Rulebook.all()) {
      Notebook book = Notebook.under(rules).found("mains-lead: {cores: two}");
      assertEquals(Outcome.FAIL, book.outcome("lead-cores", "mains-lead"));
      assertEquals(Verdict.FAIL, book.assess().verdict());
    }
  }

  @Test
  void metalWithoutEarthOrMarkIsNotAccepted() {
    instrument("class: \"0\"").fails("class-accepted", "instrument");
    instrument("class: {is: II, shown_by: assumed}")
        .holds("class-two-shown", "instrument", Reason.NOT_MET);
  }

  // A13: a bad insulation that is made good by arithmetic.

  /** Computed: halving for each 10 K would make 1.33 MΩ at 20 °C of 0.62 MΩ at 31 °C. */
  @Test
  void aWarmRoomMakesNoBadInsulationGood() {
    instrument("ambient_temperature: 31 °C").passes();
    instrument("ambient_temperature: 31 °C, insulation_resistance: 0.62 MΩ")
        .fails("insulation", "instrument");
    for (Rules rules : Rulebook.all()) {
      for (Check check : rules.checks().values()) {
        assertTrue(
            check.statements().stream()
                .flatMap(statement -> statement.inputs().stream())
                .noneMatch(in -> in.reference().path().contains("ambient_temperature")),
            check.id());
      }
    }
  }

  // A15: 250 V, which is weaker evidence.

  @Test
  void insulationTakenAt250VoltsPassesAndSaysWhatItOwes() {
    BothRegions weak =
        instrument("insulation_resistance: {value: \"> 199.9 MΩ\", test_voltage: 250 V}").passes();
    weak.says("insulation", "instrument", "has to be measured at first connection");
    for (Notebook book : sound().books()) {
      assertEquals(List.of(), book.finding("insulation", "instrument").notes());
    }
  }

  // A16 and A17: a charge that waits.

  @Test
  void anInsulationTestLeavesAChargeUntilItIsMeasuredAgain() {
    BothRegions tested =
        sound().but(book -> book.worked("{act: insulation_tested, on: instrument}", ""));
    tested.holds("stored-charge", "reservoir", Reason.NOT_RECORDED);
    sound()
        .but(
            book ->
                book.worked(
                    "{act: insulation_tested, on: instrument}",
                    "instrument: {unplugged: yes, nothing_connected: yes, meters_proved: yes},"
                        + " reservoir: {residual_voltage: 0.2 V, residual_later: 0.4 V}"))
        .passes();
  }

  /** A charge says what the minute is like, not the instrument: it stops the work. */
  @Test
  void aChargeIsAHoldAndNoFail() {
    reservoir("residual_voltage: 40.0 V").holds("stored-charge", "reservoir", Reason.NOT_MET);
    reservoir("residual_later: 40.0 V").holds("stored-charge", "reservoir", Reason.NOT_MET);
    reservoir("residual_later: 40.0 V").says("stored-charge", "reservoir", "Stop.");
  }

  @Test
  void oneSectionThatWasMeasuredSaysNothingOfTheOther() {
    String whole = "ht_state: new, working_voltage: 450 V, residual_voltage: 0.2 V";
    BothRegions can =
        sound().second("second-can", "ht_capacitor", whole + ", residual_later: 0.3 V").passes();
    can.unfound("second-can/residual_voltage")
        .holds("stored-charge", "second-can", Reason.NOT_RECORDED);
    can.unfound("second-can/residual_later")
        .holds("stored-charge", "second-can", Reason.NOT_RECORDED);
  }

  @Test
  void moreThanAVoltIsSaidBeforeAnOhmmeterIsPutOnIt() {
    reservoir("residual_later: 4.0 V").passes().says("stored-charge", "reservoir", "ohmmeter");
  }

  private static BothRegions mains(String found) {
    return sound()
        .having(
            "C9",
            "mains_capacitor",
            "make: film, safety_class: y2, mains_position: across_line, rated_ac: 275 V,"
                + " marked_capacitance: 100 nF")
        .found("C9: {" + found + "}");
  }

  /** IEC 60335-1 22.5, published: up to 0.1 µF at the plug is exempt. */
  @Test
  void aCapacitorAtThePlugKeepsItsChargeAfterThePlugIsOut() {
    mains("").passes();
    mains("marked_capacitance: 220 nF").holds("plug-charge", "C9", Reason.NOT_RECORDED);
    mains("marked_capacitance: 220 nF, bleeder: none").holds("plug-charge", "C9", Reason.NOT_MET);
    mains("marked_capacitance: 220 nF, bleeder: fitted").passes();
  }

  // A18: extra-high tension.

  @Test
  void extraHighTensionStopsTheWorkUntilSomebodyCompetentHasJudged() {
    BothRegions tube =
        sound().having("tube", "hazard", "hazard_kind: eht, hazard_state: contained");
    tube.holds("eht", "tube", Reason.PERSON_MUST_JUDGE);
    tube.says("eht", "tube", "only a probe that is rated for it");
    tube.says("eht", "tube", "clipped to the chassis first");
    tube.says("eht", "tube", "spindle couplers are the barrier");
  }

  // A19: the voltage before the valves are warm.

  /** Computed: √2 × 250 V × 253 V ÷ 240 V is 372.7 V. */
  @Test
  void aCapacitorForTheMarkedVoltageFailsAtThePeakOffLoad() {
    reservoir("working_voltage: 350 V").fails("ht-capacitor-voltage", "reservoir");
    reservoir("working_voltage: 372 V").fails("ht-capacitor-voltage", "reservoir");
    reservoir("working_voltage: 373 V").passes();
  }

  @Test
  void siliconInPlaceOfAValveIsSomebodysToJudge() {
    BothRegions changed =
        sound()
            .having(
                "diode",
                "modification",
                "modification_place: elsewhere, modification_traced: traced, what_changed: other")
            .passes()
            .found("diode: {what_changed: rectifier}");
    changed.holds("modification-rectifier", "diode", Reason.PERSON_MUST_JUDGE);
    changed.says("modification-rectifier", "diode", "before the valves are warm");
  }

  // A20: a part that is right in a shop and wrong in the set.

  private static BothRegions exchanged(String now, String before) {
    return sound()
        .having(
            "change",
            "modification",
            "modification_place: elsewhere, modification_traced: traced, what_changed: reservoir,"
                + " new_reservoir: "
                + now
                + ", maker_reservoir: "
                + before);
  }

  @Test
  void aReservoirThatTheRectifierDoesNotSurviveFails() {
    exchanged("12 µF", "8 µF").passes();
    exchanged("12.1 µF", "8 µF").fails("modification-reservoir", "change");
    exchanged("47 µF", "8 µF").fails("modification-reservoir", "change");
  }

  private static BothRegions suppressor(String position, String safety, String rated) {
    return sound()
        .having(
            "C9",
            "mains_capacitor",
            "make: film, marked_capacitance: 1 nF, mains_position: "
                + position
                + ", safety_class: "
                + safety
                + ", rated_ac: "
                + rated);
  }

  private static void suits(Outcome outcome, String position, String... safety) {
    for (String one : safety) {
      for (Notebook book : suppressor(position, one, "275 V").books()) {
        assertEquals(outcome, book.outcome("mains-capacitor-class", "C9"), position + " " + one);
      }
    }
  }

  /** IEC 60384-14, published; that two equal Y2 stand for a Y1, reported. */
  @Test
  void whatBridgesTheBarrierIsY1OrTwoY2AndNothingLess() {
    suits(Outcome.PASS, "to_unearthed", "y1", "two_y2");
    suits(Outcome.FAIL, "to_unearthed", "y2", "y3", "y4", "x1", "x2", "x3", "none");
    suits(Outcome.PASS, "to_earthed", "y1", "y2", "two_y2");
    suits(Outcome.FAIL, "to_earthed", "y3", "y4", "x1", "x2", "x3", "none");
    suits(Outcome.PASS, "across_line", "x1", "x2", "y1", "y2", "two_y2");
    suits(Outcome.FAIL, "across_line", "x3", "none");
  }

  @Test
  void aCapacitorAcrossTheLineIsForTheHighestSupply() {
    suppressor("across_line", "x2", "275 V").passes();
    suppressor("across_line", "x2", "250 V").fails("mains-capacitor-voltage", "C9");
    suppressor("across_line", "x2", "250 V")
        .says("mains-capacitor-voltage", "C9", "275 V where that is 253 V");
  }

  @Test
  void theAdviceNamesTheClassForThePositionAndTheMakersReservoir() {
    suppressor("to_unearthed", "y2", "275 V")
        .says("mains-capacitor-class", "C9", "only Y1, or two equal Y2 in series");
    suppressor("to_earthed", "x2", "275 V").says("mains-capacitor-class", "C9", "Y2 or Y1");
    sound()
        .found("reservoir: {ht_state: condemned}")
        .says("ht-capacitor-decided", "reservoir", "up to about half as much again");
  }

  // A21: off is not off.

  @Test
  void aWeldedPoleBehindOneThatOpensIsSeen() {
    instrument("switch: stuck").fails("switch-works", "instrument");
    instrument("switch_off_resistance: 62.0 Ω").fails("switch-off", "instrument");
    sound().unfound("instrument/switch").holds("switch-works", "instrument", Reason.NOT_RECORDED);
  }

  @Test
  void aCapacitorAcrossTheSwitchIsSaidToMakeOffNotOff() {
    mains("").passes();
    mains("mains_position: across_switch")
        .passes()
        .says("switch-off", "instrument", "off is not off");
    for (Notebook book : mains("").books()) {
      assertEquals(List.of(), book.finding("switch-off", "instrument").notes());
    }
  }

  @Test
  void aFuseInTheNeutralLeavesEverythingLive() {
    sound()
        .found("mains-fuse: {fuse_pole: neutral}")
        .holds("fuse-pole", "mains-fuse", Reason.PERSON_MUST_JUDGE);
    sound()
        .found("mains-fuse: {fuse_pole: both}")
        .holds("fuse-pole", "mains-fuse", Reason.PERSON_MUST_JUDGE);
  }

  @Test
  void aSinglePoleIsNeverRightWhereThePlugGoesInEitherWayRound() {
    instrument("switch: line_pole").passes();
    instrument("switch: neutral_pole")
        .holds("switch-in-line", "instrument", Reason.PERSON_MUST_JUDGE);
    BothRegions either =
        instrument("switch: line_pole")
            .found("mains-lead: {plug: cee_7_7}")
            .but(book -> book.with("bench: {site: {plug_pattern: cee_7_7}}"));
    either.holds("switch-in-line", "instrument", Reason.PERSON_MUST_JUDGE);
    either.says("switch-in-line", "instrument", "off is still live");
    either.says("fuse-pole", "mains-fuse", "everything may still be live");
  }

  // A26: what lies in the box with it.

  @Test
  void theLeadsThatNobodySellsAnyMoreFail() {
    for (String plug : List.of("two_pin_old", "lampholder", "none")) {
      lead("plug: " + plug).fails("plug-pattern", "mains-lead");
      lead("plug: " + plug).fails("plug-earth", "mains-lead");
    }
    lead("attachment: detachable, connector: exposed_pins").fails("lead-connector", "mains-lead");
    lead("attachment: detachable, connector: other").holds("lead-connector", "mains-lead");
  }

  @Test
  void anInstrumentPassesWithTheLeadThatItWasMeasuredWith() {
    BothRegions named =
        lead("attachment: detachable, connector: c13, lead_earth_resistance: 0.06 Ω").passes();
    named
        .unfound("mains-lead/lead_earth_resistance")
        .holds("detachable-lead-earth", "mains-lead", Reason.NOT_RECORDED);
    BothRegions spare = named.second("spare-lead", "lead", "sheath: damaged");
    spare.fails("lead-sheath", "spare-lead");
    spare.holds(EARTH, "case");
  }

  @Test
  void aSecondLeadThatIsFixedIsNoticed() {
    sound()
        .second("old-lead", "lead", "attachment: fixed, sheath: sound")
        .holds("single-fixed-lead", "instrument", Reason.NOT_MET);
  }

  // A27: what the lead's size does to the limit.

  @Test
  void aCoreOfDoubtfulAreaIsAllowedTheLeastCopper() {
    Notebook near = Notebook.gb().found("case: {earth_resistance: 0.14 Ω}");
    Notebook thin = near.found("mains-lead: {core_area: 0.75 mm²}");
    Notebook doubtful = near.found("mains-lead: {core_area: 0.75 to 1.0 mm²}");
    assertEquals(Outcome.PASS, thin.outcome(EARTH, "case"));
    assertEquals(List.of(Reason.TOO_NEAR), doubtful.reasons(EARTH, "case"));
    assertEquals(
        List.of(Reason.NOT_RECORDED), near.unfound("mains-lead/core_area").reasons(EARTH, "case"));
  }

  @Test
  void aLengthOfDoubtIsAllowedTheShorter() {
    Notebook british = Notebook.gb().found("case: {earth_resistance: 0.12 Ω}");
    assertEquals(Outcome.PASS, british.outcome(EARTH, "case"));
    assertEquals(
        List.of(Reason.TOO_NEAR),
        british.found("mains-lead: {lead_length: 2 to 3 m}").reasons(EARTH, "case"));
    Notebook stepped =
        Notebook.eu()
            .found("case: {earth_resistance: 0.35 Ω}, mains-lead: {lead_length: 5.5 to 6 m}");
    assertEquals(Outcome.PASS, stepped.outcome(EARTH, "case"));
    assertEquals(
        List.of(Reason.TOO_NEAR),
        stepped.found("mains-lead: {lead_length: 4 to 6 m}").reasons(EARTH, "case"));
  }

  @Test
  void moreThanTheCopperExplainsIsNotedInEveryProfile() {
    for (Rules rules : Rulebook.all()) {
      Notebook rusty =
          Notebook.under(rules)
              .found("mains-lead: {lead_length: 1.5 m}, case: {earth_resistance: 0.25 Ω}");
      assertTrue(
          rusty.finding(EARTH, "case").notes().get(0).says().contains("look at them"),
          rules.profile());
    }
    Notebook passes =
        Notebook.eu().found("mains-lead: {lead_length: 1.5 m}, case: {earth_resistance: 0.25 Ω}");
    assertEquals(Outcome.PASS, passes.outcome(EARTH, "case"));
    assertEquals(List.of(), Notebook.gb().finding(EARTH, "case").notes());
  }
}
