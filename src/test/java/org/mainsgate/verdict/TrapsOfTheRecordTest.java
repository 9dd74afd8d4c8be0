package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.mainsgate.verdict.BothRegions.instrument;
import static org.mainsgate.verdict.BothRegions.sound;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mainsgate.agenda.Agenda;
import org.mainsgate.agenda.Task;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.InForce;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;

/**
 * Records that are true and prove nothing, traps A1, A9, A10 and A28: the custom of the trade,
 * without a source.
 *
 * <p>The first connection itself lies outside the cold stage. Where a trap is one of work with
 * power (A15, A22, A23, parts of A10 and A21), the tests see what the cold stage says about it.
 */
class TrapsOfTheRecordTest {
  private static final String EARTH = "earth-continuity";

  @Test
  void theSoundRecordPasses() {
    sound().passes();
  }

  // A1: the part that nobody listed.

  @Test
  void aPartThatNobodyListedTakesThePassAway() {
    BothRegions two =
        sound().second("handle", "exposed_part", "part_path: bonded, earth_resistance: 0.09 Ω");
    two.passes();
    BothRegions less = two.but(b -> b.without("instrument/things/handle", "visit/found/handle"));
    less.holds(EARTH, "exposed_part", Reason.LIST_OPEN);
    less.found("looked: {exposed_part: 1}").passes();
  }

  @Test
  void anEmptyListThatNobodyClosedIsNoPass() {
    sound()
        .but(
            book ->
                book.without(
                    "instrument/things/case",
                    "visit/found/case",
                    "visit/found/looked/exposed_part"))
        .holds(EARTH, "exposed_part", Reason.LIST_OPEN);
  }

  @Test
  void noListMayStayOpen() {
    for (Notebook book : sound().books()) {
      for (Kind kind : Rulebook.gb().vocabulary().listedKinds()) {
        Notebook open = unclosed(book, kind.name());
        assertEquals(Verdict.HOLD, open.assess().verdict(), kind.name());
        assertTrue(holdsFor(open, Reason.LIST_OPEN), kind.name());
      }
    }
  }

  private static Notebook unclosed(Notebook book, String kind) {
    if (!BothRegions.ABSENT.contains(kind)) {
      return book.unfound("looked/" + kind);
    }
    Set<String> rest = new LinkedHashSet<>(BothRegions.ABSENT);
    rest.remove(kind);
    return book.found("looked: {none: [" + String.join(", ", rest) + "]}");
  }

  private static boolean holdsFor(Notebook book, Reason reason) {
    return book.assess().findings().stream()
        .flatMap(finding -> finding.holds().stream())
        .anyMatch(hold -> hold.reason() == reason);
  }

  @Test
  void aPartThatIsRememberedAfterTheLookOpensItsListAgain() {
    for (Notebook book : sound().books()) {
      for (Kind kind : Rulebook.gb().vocabulary().listedKinds()) {
        Notebook more = book.with(BothRegions.thing("late", kind.name()));
        assertEquals(Verdict.HOLD, more.assess().verdict(), kind.name());
        assertTrue(holdsFor(more, Reason.LIST_OPEN), kind.name());
      }
    }
  }

  // A9: what the last work voids, whether anybody remembers it or not.

  @Test
  void aNewLeadLeavesNothingOfTheEarthRecord() {
    BothRegions fresh = sound().but(book -> book.worked("{act: replaced, on: mains-lead}", ""));
    fresh.holds("earth-fixing-present", "instrument", Reason.NOT_RECORDED);
    fresh.holds(EARTH, "case", Reason.NOT_RECORDED);
    fresh.holds("insulation", "instrument", Reason.NOT_RECORDED);
    fresh.holds("witness", "instrument", Reason.NOT_RECORDED);
    for (String check :
        List.of(
            "earth-steady",
            "earth-strands",
            "lead-sheath",
            "lead-current",
            "anchorage",
            "cores-right",
            "plug-state")) {
      fresh.holds(check, "mains-lead");
    }
  }

  @Test
  void theReadingsThatClearAStageAreTakenAfterFinalAssembly() {
    BothRegions closed = sound().but(book -> book.worked("{act: refitted, on: cover}", ""));
    closed.holds(EARTH, "case", Reason.NOT_RECORDED);
    closed.holds("insulation", "instrument", Reason.NOT_RECORDED);
    closed.says(EARTH, "case", "void since work on cover");
    BothRegions again =
        sound()
            .but(
                book ->
                    book.worked(
                        "{act: refitted, on: cover}",
                        "cover: {closed_up: yes}, case: {earth_resistance: 0.08 Ω},"
                            + " instrument: {insulation_resistance: \"> 199.9 MΩ\"}"));
    again.passes();
  }

  @Test
  void aWirePinchedUnderTheCoverIsNotSeenWithTheCoverOff() {
    sound().found("cover: {closed_up: no}").holds("insulation", "instrument", Reason.NOT_AS_ASKED);
    sound().found("cover: {closed_up: no}").holds("earth-closed-up", "case", Reason.NOT_MET);
    sound().unfound("cover/closed_up").holds("earth-closed-up", "case", Reason.NOT_RECORDED);
  }

  @Test
  void aPassWithPartsLiftedIsNoneOfTheInstrumentAsItStands() {
    instrument("insulation_resistance: {value: \"> 199.9 MΩ\", lifted: parts}")
        .holds("insulation", "instrument", Reason.NOT_AS_ASKED);
  }

  // A10: a green tick from another day.

  @Test
  void pullingThePlugYesterdayProvesNothingForAReadingOfToday() {
    BothRegions today =
        sound()
            .but(
                book ->
                    book.then(
                        "b", "2026-11-26", "a", "found: {case: {earth_resistance: 0.07 Ω}}\n"));
    today.holds(EARTH, "case", Reason.NOT_RECORDED);
    today.says(EARTH, "case", "plug out and in sight");
  }

  @Test
  void whatWasMeasuredMoreThanAWeekAgoOpensNoFirstConnection() {
    sound().but(book -> book.on("2026-12-02")).passes();
    BothRegions late = sound().but(book -> book.on("2026-12-03"));
    late.holds("fresh-lead", "mains-lead", Reason.NOT_MET);
    late.holds("fresh-earth", "case", Reason.NOT_MET);
    late.holds("fresh-insulation", "instrument", Reason.NOT_MET);
  }

  @Test
  void aCarrierVoidsTheGateReadings() {
    BothRegions sent = sound().but(book -> book.worked("{act: carried, on: instrument}", ""));
    sent.holds(EARTH, "case", Reason.NOT_RECORDED);
    sent.holds("insulation", "instrument", Reason.NOT_RECORDED);
    sent.holds("lead-sheath", "mains-lead", Reason.NOT_RECORDED);
  }

  @Test
  void powerReformingAndAnInsulationTestMakeDischargedUntrue() {
    for (String act : List.of("powered", "insulation_tested", "reformed")) {
      sound()
          .but(book -> book.worked("{act: " + act + ", on: instrument}", ""))
          .holds("stored-charge", "reservoir", Reason.NOT_RECORDED);
    }
  }

  @Test
  void aLaterSittingBeginsWithThePlugOutAndTrustsNoMomentaryWord() {
    for (Rules rules : List.of(Rulebook.gb(), Rulebook.eu())) {
      Notebook book = Notebook.under(rules);
      Notebook other = book.unfound("case/earth_resistance").on("2026-11-26");
      Agenda agenda = agenda(rules, other);
      List<String> first = agenda.offered().get(0).tasks().stream().map(Task::subject).toList();
      assertEquals(List.of("unplugged", "nothing_connected", "meters_proved"), first);
      for (String momentary : first) {
        assertFalse(other.fact("instrument", momentary).isPresent(), momentary);
        assertTrue(book.fact("instrument", momentary).isPresent(), momentary);
      }
    }
  }

  private static Agenda agenda(Rules rules, Notebook book) {
    InForce.Result inForce = book.inForce();
    return Agenda.of(
        rules, book.record(), inForce.evidence(), book.assess(), LocalDate.of(2026, 11, 26));
  }

  // A28: a pass from a part of the checks.

  @Test
  void everyLineOfTheSoundRecordIsNeededForItsPass() {
    for (Notebook book : sound().books()) {
      for (Entry entry : book.record().visits().get(0).found()) {
        Notebook less = book.unfound(entry.thing() + "/" + entry.property());
        assertNotEquals(Verdict.PASS, less.assess().verdict(), entry.id());
      }
    }
  }

  @Test
  void onlyTheStageThatJudgesAllOfItClearsAFirstConnection() {
    for (Rules rules : Rulebook.all()) {
      List<Stage> clears =
          rules.stages().values().stream()
              .filter(stage -> stage.clears().contains("first connection"))
              .toList();
      assertEquals(List.of(rules.firstStage()), clears);
      for (String family :
          List.of(
              "stored-charge",
              "fuse-present",
              "mains-capacitor-class",
              "touch-capacitor",
              "modification-traced",
              "hazard-contained",
              "witness",
              "chassis-capacitance",
              "insulation",
              "anchorage")) {
        assertTrue(
            rules.checksOf(rules.firstStage()).stream()
                .anyMatch(check -> check.id().equals(family)),
            family);
      }
    }
  }

  @Test
  void aYearlyPassClearsNoFirstConnection() {
    for (Rules rules : List.of(Rulebook.gb(), Rulebook.eu())) {
      Stage yearly = rules.stage("yearly").orElseThrow();
      Assessment assessment = new Engine(rules).assess(yearly, Notebook.under(rules).evidence());
      assertEquals(Verdict.PASS, assessment.verdict());
      assertFalse(yearly.clears().contains("connection"), yearly.clears());
      assertTrue(yearly.says().contains("takes the place of no cold stage"));
    }
  }
}
