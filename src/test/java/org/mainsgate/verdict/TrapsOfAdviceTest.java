package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;

/**
 * Advice that can injure or destroy, traps A12, A14, A16 and A22 to A25: what has to be said is
 * said, and what must never be said stands nowhere. The custom of the trade, without a source
 * unless one is named.
 */
class TrapsOfAdviceTest {

  private static List<String> values(String observation) {
    return ((Property.Observation) Rulebook.gb().vocabulary().property(observation).orElseThrow())
        .values()
        .values();
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
          "display of the earth",
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

  // A14 and A16: what is never tested, and what is never lifted.

  private static Property property(String name) {
    return Rulebook.gb().vocabulary().property(name).orElseThrow();
  }

  private static void says(String text, String... passages) {
    for (String passage : passages) {
      assertTrue(text.contains(passage), () -> "`" + passage + "` is not in: " + text);
    }
  }

  @Test
  void theInsulationTestSaysWhatIsNeverTested() {
    says(
        property("insulation_resistance").heading().caution(),
        "Only line and neutral joined against the chassis",
        "never line against neutral",
        "never HT against chassis",
        "never heaters against cathodes",
        "never across electrolytics, transistors, selenium or meters",
        "not at all on an instrument whose chassis is tied to the supply");
  }

  @Test
  void theInsulationTestBeginsLowLiftsNothingAndEndsWithADischarge() {
    says(
        property("insulation_resistance").heading().method(),
        "First 250 V; go to 500 V only if it holds above 2 MΩ",
        "Lift nothing for it",
        "Discharge afterwards, then measure");
    says(property("part_insulation").heading().method(), "First 250 V", "Discharge afterwards");
    for (Rules rules : Rulebook.all()) {
      for (String check : List.of("insulation-floor", "insulation")) {
        says(check(rules, check).caution(), "Discharge afterwards, then measure");
        says(
            check(rules, check).remedies().get(0).says(),
            "Lift what is to be thrown away anyway",
            "test again with the new part");
      }
    }
  }

  private static Check check(Rules rules, String id) {
    return Objects.requireNonNull(rules.checks().get(id), id);
  }

  /** Insulation is never asked for before the chassis is known to be free, nor without an earth. */
  @Test
  void noInsulationIsAskedForOnATiedChassis() {
    for (Rules rules : Rulebook.all()) {
      List<String> first = check(rules, "insulation").requires();
      assertTrue(first.containsAll(List.of("chassis-free", "chassis-resistance", "witness")));
      assertTrue(first.contains("earth-continuity"));
    }
  }

  // A22: what isolates and what does not.

  @Test
  void theIsolatingTransformerIsOnlySpokenOfWithItsLimits() {
    for (Rules rules : Rulebook.all()) {
      says(
          String.join(" ", rules.firstStage().cautions()),
          "keeps its earth on first connection; no isolating transformer there",
          "A variable transformer isolates nothing",
          "limits current, not shock");
      assertEquals(
          List.of(),
          sentences(rules)
              .filter(sentence -> sentence.contains("isolating transformer"))
              .filter(
                  sentence ->
                      !sentence.contains("no isolating transformer there")
                          && !sentence.contains("does not act"))
              .toList());
    }
  }

  @Test
  void noInstrumentIsToldToGiveUpItsEarth() {
    for (Rules rules : Rulebook.all()) {
      says(String.join(" ", rules.firstStage().cautions()), "Never lift or defeat the protective");
    }
    for (String advice : List.of("lift the earth", "float the", "disconnect the earth")) {
      never(advice);
    }
  }

  // A23: what a residual current device does not do.

  @Test
  void theResidualCurrentDeviceIsSaidNotToMakeTouchingHarmless() {
    says(
        property("rcd").heading().method(),
        "does not act between line and neutral, on HT, or behind an isolating transformer",
        "does not limit the current before it opens",
        "type A is wanted");
    assertTrue(values("rcd").containsAll(List.of("type_a", "type_ac", "none")));
    for (String promise : List.of("protected by the residual", "safe to touch", "is safe")) {
      never(promise);
    }
  }

  // A24: reforming through a valve rectifier.

  @Test
  void reformingIsOutOfCircuitThroughAResistorOrNotAtAll() {
    says(
        property("leakage").heading().method(),
        "Out of circuit, or with the rectifier out, through 50 to 100 kΩ",
        "Never through the instrument's own valve rectifier",
        "Discharge afterwards");
    for (Rules rules : Rulebook.all()) {
      List<String> reforming = sentences(rules).filter(s -> s.contains("reform it")).toList();
      assertFalse(reforming.isEmpty());
      for (String sentence : reforming) {
        says(sentence, "out of circuit", "50 to 100 kω", "below 5 ma");
      }
    }
  }

  // A25: a current that burns what it goes through.

  @Test
  void noRuleInServiceAsksForMoreThanTwoTenthsOfAnAmpere() {
    for (Rules rules : Rulebook.all()) {
      Rational asked =
          Objects.requireNonNull(rules.limits().get("earth_test_current")).value().hi();
      boolean typeTest = rules.profile().equals("new-equipment");
      assertEquals(typeTest, Objects.requireNonNull(asked).compareTo(Rational.of("0.2")) > 0);
      says(
          check(rules, "earth-continuity").caution(),
          "Never push test current through a braid, a printed track or a resistor");
    }
    says(property("earth_resistance").heading().caution(), "Never push test current through");
  }

  // What stands in no text at all.

  private static void never(String passage) {
    for (Rules rules : Rulebook.all()) {
      assertEquals(List.of(), sentences(rules).filter(s -> s.contains(passage)).toList(), passage);
    }
  }

  /** A20: the part that is nearest in a shop is not the part for the set. */
  @Test
  void noPartIsAdvisedByItsPreferredValueOrByYClassAlone() {
    never("preferred value");
    never("a y class");
  }

  @Test
  void nothingIsEverCalledSafe() {
    for (Rules rules : Rulebook.all()) {
      assertEquals(
          List.of(), sentences(rules).filter(s -> s.matches(".*\\bsafe(ly)?\\b.*")).toList());
    }
  }

  @Test
  void whatIsReadForTheseTestsIsAllThatTheRulesSay() {
    assertTrue(sentences(Rulebook.gb()).count() > 400);
  }

  /** Every sentence that the rules can say to somebody, in small letters. */
  private static Stream<String> sentences(Rules rules) {
    List<String> texts = new ArrayList<>();
    for (Stage stage : rules.stages().values()) {
      texts.addAll(List.of(stage.says(), stage.pass(), stage.hold(), stage.fail()));
      texts.addAll(stage.cautions());
    }
    for (Check check : rules.checks().values()) {
      texts.addAll(List.of(check.title(), check.protects(), check.caution()));
      check.remedies().forEach(remedy -> texts.add(remedy.says()));
      check.notes().forEach(note -> texts.add(note.says()));
      check.provided().forEach(condition -> texts.add(condition.otherwise()));
      check.plausible().forEach(condition -> texts.add(condition.otherwise()));
    }
    for (Property property : rules.vocabulary().properties().values()) {
      Property.Heading heading = property.heading();
      texts.addAll(List.of(heading.title(), heading.method(), heading.caution()));
    }
    rules.order().forEach(step -> texts.addAll(List.of(step.title(), step.says(), step.caution())));
    rules.order().forEach(step -> step.stop().ifPresent(stop -> texts.add(stop.says())));
    return texts.stream()
        .flatMap(text -> Stream.of(text.toLowerCase(Locale.ROOT).split("[.] +|[.]$")))
        .filter(sentence -> !sentence.isBlank());
  }
}
