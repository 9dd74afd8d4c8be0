package org.mainsgate.agenda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.Visit;
import org.mainsgate.ruleset.Property;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;
import org.mainsgate.verdict.Verdict;

/** What is asked, when, and what is never asked. */
class AgendaTest {
  private static final InstrumentRecord WHOLE = Demo.record("NL-01");
  private static final Visit SITTING = Demo.first(WHOLE);
  private static final LocalDate DAY = SITTING.date();

  static List<String> tags() {
    return Demo.tags();
  }

  @Test
  void whoeverDoesWhatItAsksGetsFromNothingToAPassAndIsAskedNothingMore() {
    List<Entry> said = new ArrayList<>();
    List<Visit.Looked> closed = new ArrayList<>();
    List<Visit.Judgement> judged = new ArrayList<>();
    List<Entry> plate = new ArrayList<>();
    Demo.Look look = written(said, closed, judged, plate);
    while (!look.agenda().isEmpty()) {
      int before = said.size() + closed.size() + judged.size() + plate.size();
      for (Agenda.Step step : look.agenda().offered()) {
        step.tasks().forEach(task -> answer(task, said, closed, plate));
      }
      boolean decide = look.agenda().matters().stream().anyMatch(AgendaTest::isForJudgement);
      if (decide && judged.isEmpty()) {
        judged.addAll(Demo.judged(WHOLE));
      }
      int after = said.size() + closed.size() + judged.size() + plate.size();
      assertTrue(after > before, "asked what nobody can answer: " + look.agenda());
      look = written(said, closed, judged, plate);
    }
    assertEquals(Verdict.PASS, look.assessment().verdict(), look.agenda().toString());
    assertTrue(look.agenda().isEmpty(), look.agenda().toString());
  }

  private static Demo.Look written(
      List<Entry> said,
      List<Visit.Looked> closed,
      List<Visit.Judgement> judged,
      List<Entry> plate) {
    return Demo.look(
        new InstrumentRecord(
            WHOLE.bench(),
            Demo.plate(WHOLE.instrument(), plate::contains),
            List.of(Demo.with(SITTING, said, closed, judged))),
        DAY);
  }

  private static boolean isForJudgement(Matter matter) {
    return matter.kind() == Matter.Kind.JUDGE;
  }

  private static void answer(
      Task task, List<Entry> said, List<Visit.Looked> closed, List<Entry> plate) {
    if (task instanceof Task.Closing closing) {
      SITTING.foundLists().stream()
          .filter(list -> list.kind().equals(closing.kind().name()) && !closed.contains(list))
          .forEach(closed::add);
      return;
    }
    Task.Entry asked = (Task.Entry) task;
    for (Entry entry : SITTING.found()) {
      boolean same =
          entry.thing().equals(asked.thing()) && entry.property().equals(asked.property().name());
      if (same && !said.contains(entry)) {
        said.add(entry);
      }
    }
    WHOLE.instrument().plate().stream()
        .filter(entry -> entry.property().equals(asked.property().name()))
        .filter(entry -> !plate.contains(entry))
        .forEach(plate::add);
  }

  @Test
  void whateverIsTakenFromAPassIsAskedForAgain() {
    int held = 0;
    for (Entry gone : SITTING.found()) {
      List<Entry> rest =
          SITTING.found().stream()
              .filter(
                  entry ->
                      !(entry.thing().equals(gone.thing())
                          && entry.property().equals(gone.property())))
              .toList();
      Demo.Look look = Demo.look(sitting(rest), DAY);
      if (look.assessment().verdict() == Verdict.HOLD) {
        held++;
        assertTrue(look.asks(gone.property()), gone.id() + " is not in " + look.agenda());
      }
    }
    assertTrue(held > 10, "held " + held);
  }

  private static InstrumentRecord sitting(List<Entry> found) {
    return new InstrumentRecord(
        WHOLE.bench(),
        WHOLE.instrument(),
        List.of(Demo.with(SITTING, found, SITTING.foundLists(), Demo.judged(WHOLE))));
  }

  @ParameterizedTest
  @MethodSource("tags")
  void nothingThatHoldsOrFailsIsPassedOverInSilence(String tag) {
    Demo.Look look = Demo.look(Demo.record(tag), Demo.ON);
    boolean passes = look.assessment().verdict() == Verdict.PASS;
    assertEquals(passes, look.agenda().isEmpty());
    for (Finding finding : look.assessment().findings()) {
      if (finding.outcome() == Outcome.FAIL) {
        assertTrue(
            look.agenda().matters().stream().anyMatch(m -> m.finding().equals(finding)),
            finding.check().id());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("tags")
  void theSameThingIsAskedOnceAndNoNoteIsAskedAtAll(String tag) {
    List<String> asked = new ArrayList<>();
    for (Task task : Demo.look(Demo.blank(Demo.record(tag)), Demo.ON).agenda().tasks()) {
      String thing = task instanceof Task.Entry entry ? entry.thing() : "looked";
      assertFalse(asked.contains(thing + " " + task.subject()), task.toString());
      asked.add(thing + " " + task.subject());
      assertFalse(
          task instanceof Task.Entry entry
              && entry.property().heading().tier() == Property.Tier.NOTE);
    }
  }

  @Test
  void nothingBehindAStopIsOfferedBeforeItIsPassed() {
    Demo.Look look = Demo.look(Demo.blank(WHOLE), DAY);
    assertTrue(look.asks("earth_resistance"));
    assertFalse(look.offers("earth_resistance"));
    assertTrue(look.agenda().load().readings() > 0);
  }

  @Test
  void aStopThatFailsOffersNothingBehindIt() {
    Demo.Look look = Demo.look(Demo.record("NL-04"), Demo.ON);
    assertFalse(look.offers("earth_resistance"));
    assertTrue(
        look.agenda().matters().stream()
            .anyMatch(matter -> matter.finding().check().id().equals("chassis-free")));
  }

  @Test
  void anotherDayBeginsWithThePlugOutWhateverWasSaidBefore() {
    Demo.Look look = Demo.look(Demo.record("NL-02"), Demo.ON);
    Task first = look.agenda().offered().get(0).tasks().get(0);
    assertEquals("unplugged", first.subject());
    assertEquals(Why.Cause.EACH_SITTING, first.whys().get(0).cause());
  }

  @Test
  void nobodyOpensItOnAnotherDaysWordThatItIsDischarged() {
    InstrumentRecord modified =
        new InstrumentRecord(
            WHOLE.bench(),
            WHOLE.instrument(),
            WHOLE.visits().stream().map(visit -> without(visit, "modification")).toList());
    Demo.Look look = Demo.look(modified, Demo.ON);
    assertEquals(Outcome.PASS, outcome(look, "stored-charge"));
    assertTrue(look.offers("residual_voltage"), look.agenda().toString());
    assertTrue(look.asks("modification"), look.agenda().toString());
    assertFalse(look.offers("modification"), look.agenda().toString());
  }

  @Test
  void whatIsDoneWithTheCaseClosedAsksForNoDischarge() {
    Demo.Look look = Demo.look(Demo.record("NL-02"), Demo.ON);
    assertTrue(look.asks("earth_resistance"), look.agenda().toString());
    assertFalse(look.asks("residual_voltage"), look.agenda().toString());
  }

  private static Visit without(Visit visit, String list) {
    return Demo.with(
        visit,
        visit.found(),
        visit.foundLists().stream().filter(looked -> !looked.kind().equals(list)).toList(),
        visit.judged());
  }

  private static Outcome outcome(Demo.Look look, String check) {
    return look.assessment().findings().stream()
        .filter(finding -> finding.check().id().equals(check))
        .map(Finding::outcome)
        .reduce((a, b) -> a.equals(b) ? a : Outcome.HOLD)
        .orElseThrow();
  }

  @Test
  void aClosedSittingOfTheSameDayIsNotTrustedEither() {
    InstrumentRecord closed = Demo.record("NL-02");
    LocalDate itsDay = closed.visits().get(0).date();
    assertTrue(Demo.look(closed, itsDay).offers("unplugged"));
  }

  @Test
  void theDraftOfTheDayGoesOnWithItsPlugOut() {
    List<Entry> rest =
        SITTING.found().stream()
            .filter(entry -> !entry.property().equals("earth_resistance"))
            .toList();
    Demo.Look look = Demo.look(sitting(rest), DAY);
    assertTrue(look.offers("earth_resistance"));
    assertFalse(look.asks("unplugged"));
    assertTrue(Demo.look(sitting(rest), DAY.plusDays(1)).offers("unplugged"));
  }

  @Test
  void aReadingTooNearIsAskedAgainWithTheDisplayThatWouldPass() {
    Demo.Look look = Demo.look(Demo.record("NL-02"), Demo.ON);
    Task.Entry reading =
        look.agenda().tasks().stream()
            .filter(task -> task.subject().equals("earth_resistance"))
            .map(task -> (Task.Entry) task)
            .findFirst()
            .orElseThrow();
    assertEquals(Why.Cause.TOO_NEAR, reading.whys().get(0).cause());
    // The same number stands in the finding as what would settle it.
    String settles =
        look.assessment().findings().stream()
            .filter(finding -> finding.holds().stream().anyMatch(AgendaTest::isNear))
            .flatMap(finding -> finding.settles().stream())
            .findFirst()
            .orElseThrow();
    assertEquals("0.12 Ω or less", reading.expected().orElseThrow().words());
    assertEquals("A display of 0.12 Ω or less would pass", settles);
  }

  private static boolean isNear(Finding.Hold hold) {
    return hold.reason() == Reason.TOO_NEAR;
  }

  @Test
  void whatTheBenchsMethodSaysIsNotAsked() {
    Demo.Look look = Demo.look(Demo.record("NL-02"), Demo.ON);
    assertTrue(
        look.agenda().tasks().stream()
            .filter(task -> task.subject().equals("earth_resistance"))
            .allMatch(task -> ((Task.Entry) task).with().isEmpty()));
  }

  @Test
  void aConstructionThatIsNotThereIsNotAskedAbout() {
    Demo.Look unknown = Demo.look(Demo.blank(WHOLE), DAY);
    assertFalse(unknown.asks("plug_fuse"));
    List<Entry> plug =
        SITTING.found().stream().filter(entry -> entry.property().equals("plug")).toList();
    assertTrue(Demo.look(sitting(plug), DAY).asks("plug_fuse"));
    assertFalse(Demo.look(sitting(plug), DAY).asks("connector"));
  }

  @Test
  void readingsThatDisagreeAndThoseThatCantBeTrueAreAskedAgain() {
    List<Why.Cause> causes =
        Demo.look(Demo.record("NL-03"), Demo.ON).agenda().tasks().stream()
            .filter(task -> task.subject().equals("earth_resistance"))
            .map(task -> task.whys().get(0).cause())
            .toList();
    assertTrue(causes.contains(Why.Cause.DISAGREE), causes.toString());
    assertTrue(causes.contains(Why.Cause.IMPLAUSIBLE), causes.toString());
  }
}
