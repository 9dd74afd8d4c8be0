package org.mainsgate.agenda;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.NullMarked;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Engine;
import org.mainsgate.verdict.Evidence;

/** The demo bench, its instruments as they are and with less recorded. */
@NullMarked
final class Demo {
  static final Rules RULES =
      new Shelf().open(Shelf.Choice.named("gb"), new Complaints()).orElseThrow();
  static final LocalDate ON = LocalDate.of(2026, 11, 25);

  private static final RecordReader READER = RecordReader.of(RULES);
  private static final BenchFolder FOLDER =
      BenchFolder.open(Path.of("demo-data/north-light"), new Complaints()).orElseThrow();
  private static final Bench BENCH = FOLDER.bench(READER, new Complaints()).orElseThrow();

  private Demo() {}

  /** What is to do, and what it was read from. */
  record Look(Evidence evidence, Assessment assessment, Agenda agenda) {
    /** Whether an entry of this property is asked for, behind stops too. */
    boolean asks(String property) {
      return asks(agenda.tasks(), property);
    }

    boolean offers(String property) {
      return asks(
          agenda.offered().stream().flatMap(step -> step.tasks().stream()).toList(), property);
    }

    private static boolean asks(List<Task> tasks, String property) {
      return tasks.stream().anyMatch(task -> task.subject().equals(property));
    }
  }

  static List<String> tags() {
    return FOLDER.tags();
  }

  static InstrumentRecord record(String tag) {
    return FOLDER.instrument(tag, BENCH, READER).record().orElseThrow();
  }

  static Look look(InstrumentRecord record, LocalDate on) {
    Evidence evidence = InForce.of(RULES, record, on).evidence();
    Assessment assessment = new Engine(RULES).assess(RULES.firstStage(), evidence);
    return new Look(evidence, assessment, Agenda.of(RULES, record, evidence, assessment, on));
  }

  /** The same instrument of which nobody has written anything but what is on it. */
  static InstrumentRecord blank(InstrumentRecord record) {
    return new InstrumentRecord(record.bench(), plate(record.instrument(), e -> false), List.of());
  }

  static Instrument plate(Instrument i, Predicate<Entry> kept) {
    return new Instrument(
        i.tag(),
        i.uid(),
        i.what(),
        i.maker(),
        i.model(),
        i.serial(),
        i.made(),
        i.photos(),
        i.things(),
        i.plate().stream().filter(kept).toList());
  }

  /** The sitting in which an instrument was first looked at, without what was taken back. */
  static Visit first(InstrumentRecord record) {
    Visit visit = record.visits().get(0);
    List<String> back = visit.withdrawn().stream().map(Visit.Withdrawal::entry).toList();
    return with(
        visit,
        visit.found().stream().filter(entry -> !back.contains(entry.id())).toList(),
        visit.foundLists(),
        List.of());
  }

  /** A draft of the same sitting with these words in it. */
  static Visit with(
      Visit v, List<Entry> found, List<Visit.Looked> lists, List<Visit.Judgement> judged) {
    return new Visit(
        v.id(),
        v.date(),
        v.by(),
        found,
        lists,
        List.of(),
        List.of(),
        List.of(),
        judged,
        List.of(),
        "",
        Optional.empty(),
        v.at());
  }

  /** All decisions that people have written down. */
  static List<Visit.Judgement> judged(InstrumentRecord record) {
    List<Visit.Judgement> judged = new ArrayList<>();
    record.visits().forEach(visit -> judged.addAll(visit.judged()));
    return judged;
  }
}
