package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;

/**
 * Records that are true and prove nothing, advice that can hurt, and good readings that must not be
 * held: the custom of the trade, without a source unless one is named.
 */
class TrapsTest {
  private static final String EARTH = "earth-continuity";

  private static Notebook earth(String reading) {
    return Notebook.gb().found("case: {earth_resistance: " + reading + "}");
  }

  private static List<String> values(String observation) {
    return ((Property.Observation) Rulebook.gb().vocabulary().property(observation).orElseThrow())
        .values()
        .values();
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
    Notebook book = Notebook.gb().found("instrument: {class: 0}");
    assertEquals(Outcome.FAIL, book.outcome("class-accepted", "instrument"));
  }

  // A1: the part that nobody listed.

  @Test
  void aPartThatNobodyListedTakesThePassAway() {
    Notebook book =
        Notebook.gb()
            .with("instrument: {things: {handle: {kind: exposed_part}}}")
            .found(
                "handle: {part_path: bonded, earth_resistance: 0.09 Ω}, looked: {exposed_part: 2}");
    assertEquals(Verdict.PASS, book.assess().verdict());
    Notebook less = book.without("instrument/things/handle", "visit/found/handle");
    assertEquals(Verdict.HOLD, less.assess().verdict());
    assertEquals(List.of(Reason.LIST_OPEN), less.reasons(EARTH, "exposed_part"));
    assertEquals(
        Verdict.PASS, less.found("looked: {exposed_part: 1}").assess().verdict(), "counted anew");
  }

  @Test
  void anEmptyListThatNobodyClosedIsNoPass() {
    Notebook book =
        Notebook.gb()
            .without(
                "instrument/things/case", "visit/found/case", "visit/found/looked/exposed_part");
    assertEquals(Verdict.HOLD, book.assess().verdict());
  }

  // A5: a small current, one strand.

  /** UK Code of Practice, published: 20 mA at least; IEC 61557-4, published: 200 mA at least. */
  @Test
  void aReadingWithASmallTestCurrentIsOnlyAnIndication() {
    for (Notebook book : List.of(Notebook.gb(), Notebook.eu())) {
      Notebook small = book.found("case: {earth_resistance: {value: 0.08 Ω, test_current: 1 mA}}");
      assertEquals(List.of(Reason.NOT_AS_ASKED), small.reasons(EARTH, "case"));
    }
    Notebook between =
        Notebook.eu().found("case: {earth_resistance: {value: 0.08 Ω, test_current: 190 mA}}");
    assertEquals(List.of(Reason.NOT_AS_ASKED), between.reasons(EARTH, "case"));
  }

  /** Computed: one strand of 0.2 mm in the terminal adds 16 mΩ, which every profile passes. */
  @Test
  void oneStrandInTheTerminalFailsHoweverWellItMeasures() {
    Notebook book = Notebook.gb().found("mains-lead: {strands: strands_out}");
    assertEquals(Outcome.PASS, book.outcome(EARTH, "case"));
    assertEquals(Outcome.FAIL, book.outcome("earth-strands", "mains-lead"));
    assertEquals(
        Outcome.HOLD,
        Notebook.gb().unfound("mains-lead/strands").outcome("earth-strands", "mains-lead"));
  }

  // A6: a second path.

  @Test
  void aSecondPathToEarthTakesThePassAway() {
    Notebook book = Notebook.gb().found("instrument: {nothing_connected: no}");
    assertEquals(List.of(Reason.NOT_AS_ASKED), book.reasons(EARTH, "case"));
    assertEquals(
        List.of(Reason.NOT_RECORDED),
        Notebook.gb().unfound("instrument/nothing_connected").reasons(EARTH, "case"));
  }

  // A8: measured until it passes.

  @Test
  void measuringAgainDoesNotReplaceABadReading() {
    Notebook book = earth("[0.46 Ω, 0.11 Ω]");
    assertEquals(Outcome.HOLD, book.outcome(EARTH, "case"));
    assertTrue(book.reasons(EARTH, "case").contains(Reason.DISAGREE));
    assertEquals(Outcome.HOLD, earth("[0.46 Ω, 0.11 Ω, 0.11 Ω, 0.11 Ω]").outcome(EARTH, "case"));
  }

  // A9: what a new lead and a closed cover void.

  @Test
  void aNewLeadLeavesNothingOfTheEarthRecord() {
    Notebook book = Notebook.gb().worked("{act: replaced, on: mains-lead}", "");
    for (String check :
        List.of(
            "earth-fixing-present",
            EARTH,
            "earth-steady",
            "earth-strands",
            "lead-sheath",
            "plug-fuse",
            "lead-current")) {
      assertTrue(
          book.assess().findings().stream()
              .filter(finding -> finding.check().id().equals(check))
              .allMatch(finding -> finding.outcome() == Outcome.HOLD),
          check);
    }
  }

  @Test
  void theReadingsThatClearAStageAreTakenAfterFinalAssembly() {
    Notebook book = Notebook.gb().worked("{act: refitted, on: cover}", "");
    assertEquals(List.of(Reason.NOT_RECORDED), book.reasons(EARTH, "case"));
    assertTrue(
        book.finding(EARTH, "case").holds().get(0).text().contains("void since work on cover"));
    assertEquals(
        Outcome.PASS,
        Notebook.gb()
            .worked("{act: refitted, on: cover}", "case: {earth_resistance: 0.08 Ω}")
            .outcome(EARTH, "case"));
  }

  // A10: a green tick from another day.

  @Test
  void pullingThePlugYesterdayProvesNothingForAReadingOfToday() {
    Notebook book =
        Notebook.gb().then("b", "2026-11-26", "a", "found: {case: {earth_resistance: 0.07 Ω}}\n");
    assertTrue(
        book.finding(EARTH, "case").holds().stream()
            .anyMatch(hold -> hold.text().startsWith("plug out and in sight")));
  }

  // A12: an earth on a chassis that is tied to the supply.

  /** What a sentence says that speaks of an earth and does not advise one. */
  private static final List<String> WARNINGS =
      List.of(
          "do not ",
          "no earth",
          "cannot say",
          "leave the earth as it is",
          "a live earth",
          "measure the earth",
          "earth readings",
          "to earthed metal",
          "not earthed",
          "socket's earth",
          "earth core, where there is one",
          "earthed instrument hangs");

  private static boolean advisesAnEarth(String remedy) {
    return Stream.of(remedy.toLowerCase(Locale.ROOT).split("[.:;] *"))
        .filter(sentence -> sentence.contains("earth") || sentence.contains("three-core"))
        .anyMatch(sentence -> WARNINGS.stream().noneMatch(sentence::contains));
  }

  /** Every remedy that makes an earth good is bound to a chassis that is known to be free. */
  @Test
  void noRemedyAdvisesAnEarthWithoutACondition() {
    for (Rules rules : Rulebook.all()) {
      for (Check check : rules.checks().values()) {
        for (Check.Remedy remedy : check.remedies()) {
          boolean bound =
              remedy
                  .when()
                  .map(when -> when.text().matches(".*(chassis_untied|may_be_earthed).*"))
                  .orElse(false);
          assertTrue(bound || !advisesAnEarth(remedy.says()), check.id() + ": " + remedy.says());
        }
      }
    }
  }

  /** An earth where there was none: two windings, insulation, and nothing that ties the chassis. */
  @Test
  void onlyAChassisThatIsShownToBeFreeGetsAdviceToFitAnEarth() {
    Notebook free = Notebook.gb().found("instrument: {class: \"0\", earth_fixing: none}");
    assertTrue(free.finding("class-accepted", "instrument").remedy().startsWith("Make it class I"));
    for (String less :
        List.of(
            "supply_arrangement: {is: two_winding_transformer, basis: assumed}",
            "supply_arrangement: unknown",
            "chassis_tie: resistor",
            "chassis_tie: capacitor",
            "insulation_resistance: 4.0 MΩ",
            "insulation_resistance: {value: 40 MΩ, test_voltage: 250 V}",
            "insulation_resistance: {value: 40 MΩ, joined: one_pole}",
            "insulation_resistance: {value: 40 MΩ, switched: \"off\"}",
            "primary_resistance: {value: OL, range: 19.99 MΩ}",
            "supply_resistance: 40 kΩ")) {
      Notebook book = free.found("instrument: {" + less + "}");
      assertFalse(advisesAnEarth(book.finding("class-accepted", "instrument").remedy()), less);
    }
    for (String gone :
        List.of(
            "insulation_resistance", "supply_resistance", "primary_resistance", "chassis_tie")) {
      Notebook book = free.unfound("instrument/" + gone);
      assertFalse(advisesAnEarth(book.finding("class-accepted", "instrument").remedy()), gone);
    }
  }

  @Test
  void aTiedChassisNeverGetsAdviceToEarthIt() {
    for (String tied :
        List.of("autotransformer", "series_heaters", "direct_on_line", "capacitor_dropper")) {
      noAdviceToEarth(
          spoilt().found("instrument: {supply_arrangement: {is: " + tied + ", basis: traced}}"));
    }
    noAdviceToEarth(spoilt().found("instrument: {chassis_tie: direct}"));
  }

  @Test
  void aChassisThatNobodyKnowsGetsFindOutAndNoAdviceToEarthIt() {
    noAdviceToEarth(spoilt().found("instrument: {supply_arrangement: unknown}"));
    noAdviceToEarth(spoilt().unfound("instrument/supply_arrangement"));
    noAdviceToEarth(spoilt().unfound("instrument/chassis_tie"));
    noAdviceToEarth(
        spoilt()
            .found("instrument: {supply_arrangement: [two_winding_transformer, autotransformer]}"));
  }

  /** An instrument on which every check of the earth finds something to put right. */
  private static Notebook spoilt() {
    return Notebook.gb()
        .found(
            "instrument: {earth_fixing: none}, mains-lead: {cores: two, attachment: detachable, connector: c7,"
                + " lead_earth_resistance: 1.5 Ω, plug: lampholder, strands: strands_out, when_moved: changed},"
                + " case: {part_path: bonded, earth_resistance: 1.5 Ω}");
  }

  private static void noAdviceToEarth(Notebook book) {
    for (String fixing : values("earth_fixing")) {
      for (String kind : values("class")) {
        Notebook one =
            book.found("instrument: {class: " + kind + ", earth_fixing: " + fixing + "}");
        for (Finding finding : one.assess().findings()) {
          assertFalse(
              advisesAnEarth(finding.remedy()), finding.check().id() + ": " + finding.remedy());
        }
      }
    }
  }

  @Test
  void aTiedChassisIsWorkForAQualifiedPerson() {
    Notebook book =
        spoilt().found("instrument: {supply_arrangement: {is: series_heaters, basis: traced}}");
    for (String check : Set.of("chassis-free", "earth-fixing-present")) {
      assertTrue(book.finding(check, "instrument").remedy().contains("qualified person"), check);
    }
    assertTrue(book.finding("lead-cores", "mains-lead").remedy().contains("qualified person"));
  }

  // A27: what the lead's size does to the limit.

  @Test
  void aCoreOfDoubtfulAreaIsAllowedTheLeastCopper() {
    Notebook thin = earth("0.14 Ω").found("mains-lead: {core_area: 0.75 mm²}");
    Notebook doubtful = earth("0.14 Ω").found("mains-lead: {core_area: 0.75 to 1.0 mm²}");
    assertEquals(Outcome.PASS, thin.outcome(EARTH, "case"));
    assertEquals(List.of(Reason.TOO_NEAR), doubtful.reasons(EARTH, "case"));
    assertEquals(
        List.of(Reason.NOT_RECORDED),
        earth("0.14 Ω").unfound("mains-lead/core_area").reasons(EARTH, "case"));
  }

  @Test
  void aLengthOfDoubtIsAllowedTheShorter() {
    Notebook book = earth("0.12 Ω").found("mains-lead: {lead_length: 2 to 3 m}");
    assertEquals(Outcome.PASS, earth("0.12 Ω").outcome(EARTH, "case"));
    assertEquals(List.of(Reason.TOO_NEAR), book.reasons(EARTH, "case"));
  }

  @Test
  void moreThanTheCopperExplainsIsNotedInEveryProfile() {
    for (Notebook book : List.of(Notebook.gb(), Notebook.eu())) {
      Notebook rusty =
          book.found("mains-lead: {lead_length: 1.5 m}, case: {earth_resistance: 0.25 Ω}");
      Finding finding = rusty.finding(EARTH, "case");
      assertTrue(finding.notes().get(0).says().contains("look at them"));
      assertEquals(List.of(), Notebook.gb().finding(EARTH, "case").notes());
    }
    Notebook passes =
        Notebook.eu().found("mains-lead: {lead_length: 1.5 m}, case: {earth_resistance: 0.25 Ω}");
    assertEquals(Outcome.PASS, passes.outcome(EARTH, "case"));
  }

  // W2: a good reading of a poor meter.

  /** Computed: 0.07 Ω ± 30 % reaches below 0.052 Ω, which is the copper of 3 m of 1.0 mm². */
  @Test
  void aGoodReadingOfAPoorMeterIsPlausible() {
    assertEquals(Outcome.PASS, earth("0.07 ± 0.021 Ω").outcome(EARTH, "case"));
    assertEquals(Outcome.PASS, earth("0.05 ± 0.015 Ω").outcome(EARTH, "case"));
  }

  @Test
  void onlyAReadingThatIsImpossibleAsAWholeIsImplausible() {
    assertEquals(List.of(Reason.IMPLAUSIBLE), earth("0.02 ± 0.02 Ω").reasons(EARTH, "case"));
  }

  @Test
  void implausibilityNeverSoftensAFail() {
    Notebook book =
        Notebook.eu()
            .found(
                "mains-lead: {core_area: 0.5 mm², lead_length: 20 m}, case: {earth_resistance: 0.53 ± 0.01 Ω}");
    assertEquals(Outcome.FAIL, book.outcome(EARTH, "case"));
  }

  // W3 and W4: below zero, and test leads that nobody nulled.

  @Test
  void aNulledMeterMayShowALittleBelowZero() {
    Notebook book = earth("-0.01 Ω").found("mains-lead: {lead_length: 0.1 m}");
    assertEquals(Outcome.PASS, book.outcome(EARTH, "case"));
    assertTrue(earth("-0.5 Ω").reasons(EARTH, "case").contains(Reason.IMPLAUSIBLE));
  }

  @Test
  void aReadingWithTheTestLeadsInItPassesButCannotFail() {
    assertEquals(Outcome.PASS, earth("{value: 0.12 Ω, nulled: no}").outcome(EARTH, "case"));
    assertEquals(
        List.of(Reason.TOO_NEAR), earth("{value: 0.46 Ω, nulled: no}").reasons(EARTH, "case"));
    assertEquals(
        Outcome.PASS, earth("{value: 0.40 Ω, nulled: short reads 0.32 Ω}").outcome(EARTH, "case"));
  }
}
