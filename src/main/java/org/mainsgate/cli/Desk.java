package org.mainsgate.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.mainsgate.agenda.Agenda;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Outlook;
import org.mainsgate.report.Picture;
import org.mainsgate.report.Setting;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.store.StoredFile;
import org.mainsgate.store.StoredInstrument;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Engine;
import org.mainsgate.verdict.Evidence;

/**
 * A bench opened together with its rules, ready to judge: the way of the data through the rooms.
 */
final class Desk {
  private final App app;
  private final BenchFolder folder;
  private final Rules rules;
  private final Bench bench;
  private final RecordReader records;

  private Desk(App app, BenchFolder folder, Rules rules, Bench bench, RecordReader records) {
    this.app = app;
    this.folder = folder;
    this.rules = rules;
    this.bench = bench;
    this.records = records;
  }

  /**
   * Opens a bench under its own profile, or another; complaints go to the error stream.
   *
   * @param profile another profile than the bench's, if there is one
   */
  static Optional<Desk> open(App app, Path path, @Nullable String profile) {
    Complaints complaints = new Complaints();
    Optional<Desk> desk =
        BenchFolder.open(path, complaints)
            .flatMap(folder -> open(app, folder, profile, complaints));
    app.err().print(complaints.renderAll());
    return complaints.isEmpty() ? desk : Optional.empty();
  }

  private static Optional<Desk> open(
      App app, BenchFolder folder, @Nullable String profile, Complaints complaints) {
    Optional<Shelf.Choice> choice =
        profile == null
            ? Profiles.ofBench(folder, complaints)
            : Profiles.given(profile, complaints);
    Optional<Rules> rules =
        choice
            .flatMap(found -> Profiles.underOverlays(folder, found, complaints))
            .flatMap(found -> Profiles.rules(found, complaints));
    return rules.flatMap(
        found -> {
          RecordReader records =
              new RecordReader(found.vocabulary(), found.meterKinds(), found.checks().keySet());
          return folder
              .bench(records, complaints)
              .map(bench -> new Desk(app, folder, found, bench, records));
        });
  }

  BenchFolder folder() {
    return folder;
  }

  Bench bench() {
    return bench;
  }

  RecordReader records() {
    return records;
  }

  Rules rules() {
    return rules;
  }

  /** The day that is meant: as given, else today at the bench. */
  LocalDate day(@Nullable LocalDate given) {
    return given == null ? LocalDate.now(app.clock().withZone(bench.zone())) : given;
  }

  /** The instruments that were asked for and can be read, judged; complaints about the others. */
  List<Dossier> dossiers(List<String> tags, Setting setting, Consumer<String> unreadable) {
    return each(
        tags, setting, unreadable, (record, stored) -> judged(record, stored, setting).dossier());
  }

  /** One instrument with what is to do next at it; empty if it can't be read. */
  Optional<Outlook> outlook(String tag, Setting setting) {
    return each(
            List.of(tag),
            setting,
            unreadable -> {},
            (record, stored) -> outlook(record, stored, setting))
        .stream()
        .findFirst();
  }

  private <T> List<T> each(
      List<String> tags,
      Setting setting,
      Consumer<String> unreadable,
      BiFunction<InstrumentRecord, StoredInstrument, T> make) {
    List<T> made = new ArrayList<>();
    folder.notes().forEach(note -> app.err().println("note: " + note));
    for (StoredInstrument stored : folder.instruments(tags, bench, records)) {
      stored.notes().forEach(note -> app.err().println("note: " + stored.tag() + ": " + note));
      stored
          .record()
          .ifPresent(
              record ->
                  record
                      .visits()
                      .forEach(
                          visit ->
                              RecordReader.notAfter(visit, setting.on(), stored.complaints())));
      complain(stored, unreadable);
      if (stored.complaints().isEmpty()) {
        stored.record().ifPresent(record -> made.add(make.apply(record, stored)));
      }
    }
    return made;
  }

  private void complain(StoredInstrument stored, Consumer<String> unreadable) {
    if (stored.altered()) {
      app.err().println(stored.tag() + ": a closed visit is not as it was closed; no verdict");
    }
    app.err().print(stored.complaints().renderAll());
    if (!stored.complaints().isEmpty()) {
      unreadable.accept(stored.tag());
    }
  }

  private record Judged(Dossier dossier, InForce.Result inForce) {}

  private Outlook outlook(InstrumentRecord record, StoredInstrument stored, Setting setting) {
    Judged judged = judged(record, stored, setting);
    Evidence evidence = judged.inForce().evidence();
    Agenda agenda = Agenda.of(rules, record, evidence, judged.dossier().assessment(), setting.on());
    return new Outlook(judged.dossier(), evidence, agenda);
  }

  private Judged judged(InstrumentRecord record, StoredInstrument stored, Setting setting) {
    InForce.Result inForce = InForce.of(rules, record, setting.on());
    Assessment assessment = new Engine(rules).assess(setting.stage(), inForce.evidence());
    Optional<Picture> photo =
        record.instrument().photo().flatMap(path -> picture(stored.tag(), path));
    Dossier dossier =
        new Dossier(
            setting,
            record.instrument(),
            record.visits(),
            assessment,
            inForce.setAside(),
            stored.heads(),
            photo);
    return new Judged(dossier, inForce);
  }

  private Optional<Picture> picture(String tag, String path) {
    Complaints complaints = new Complaints();
    Optional<StoredFile> file = folder.file("instruments/" + tag + "/" + path, complaints);
    complaints
        .sorted()
        .forEach(
            found ->
                app.err().println("note: " + tag + ": no picture `" + path + "`: " + found.what()));
    return file.flatMap(found -> Picture.of(found.bytes()));
  }
}
