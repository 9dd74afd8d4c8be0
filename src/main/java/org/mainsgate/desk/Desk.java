package org.mainsgate.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
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

/** A bench opened together with its rules. */
public final class Desk {
  private final BenchFolder folder;
  private final Rules rules;
  private final Bench bench;
  private final RecordReader records;

  private Desk(BenchFolder folder, Rules rules, Bench bench, RecordReader records) {
    this.folder = folder;
    this.rules = rules;
    this.bench = bench;
    this.records = records;
  }

  /** Opens a bench under the profile and the overlays that it names itself, or complains. */
  public static Optional<Desk> open(BenchFolder folder, Shelf shelf, Complaints complaints) {
    return Profiles.ofBench(folder, shelf, complaints)
        .flatMap(choice -> Profiles.underOverlays(folder, choice, complaints))
        .flatMap(choice -> open(folder, shelf, choice, complaints));
  }

  /** Opens a bench under rules of its reader's choice, or complains. */
  public static Optional<Desk> open(
      BenchFolder folder, Shelf shelf, Shelf.Choice choice, Complaints complaints) {
    Optional<Rules> rules = Profiles.rules(shelf, choice, complaints);
    return rules.flatMap(
        found -> {
          RecordReader records =
              new RecordReader(found.vocabulary(), found.meterKinds(), found.checks().keySet());
          return folder
              .bench(records, complaints)
              .filter(bench -> complaints.isEmpty())
              .map(bench -> new Desk(folder, found, bench, records));
        });
  }

  /** The folder of the bench. */
  public BenchFolder folder() {
    return folder;
  }

  /** The bench itself. */
  public Bench bench() {
    return bench;
  }

  /** The reader of its records. */
  public RecordReader records() {
    return records;
  }

  /** The rules that it is opened under. */
  public Rules rules() {
    return rules;
  }

  /** Reads one instrument and judges it, if it can be read. */
  public Sighting sight(String tag, Setting setting) {
    return sight(tag, setting, Pictures.SHOWN);
  }

  /** Whether the pictures of an instrument are wanted: they take far longer than the verdict. */
  public enum Pictures {
    SHOWN,
    LEFT_OUT
  }

  /**
   * Reads instruments, all if none is named, and judges those that can be read, on all processors.
   *
   * @param look what is wanted of each; asked for several at the same time, in any order
   * @param each is told what came of it, one after the other, in the order of the tags
   */
  public <T> void sight(
      List<String> tags,
      Setting setting,
      Pictures pictures,
      Function<Sighting, T> look,
      Consumer<T> each) {
    InTurn.each(folder.wanted(tags), tag -> look.apply(sight(tag, setting, pictures)), each);
  }

  /**
   * An instrument as it was found on the bench.
   *
   * @param stored what was read of it, with complaints
   * @param judged what follows; empty if there are complaints
   * @param notes what a person should know besides
   */
  public record Sighting(StoredInstrument stored, Optional<Judged> judged, List<String> notes) {

    /** Keeps the list as it is. */
    public Sighting {
      notes = List.copyOf(notes);
    }
  }

  /**
   * An instrument that was judged.
   *
   * @param record what is recorded of it
   * @param evidence what of that is in force
   * @param dossier all that is reported
   */
  public record Judged(InstrumentRecord record, Evidence evidence, Dossier dossier) {

    /** The same with what is to do next. */
    public Outlook outlook() {
      Setting setting = dossier.setting();
      return new Outlook(
          dossier,
          evidence,
          Agenda.of(setting.rules(), record, evidence, dossier.assessment(), setting.on()));
    }
  }

  private Sighting sight(String tag, Setting setting, Pictures pictures) {
    StoredInstrument stored = folder.instrument(tag, bench, records);
    List<String> notes = new ArrayList<>(stored.notes());
    stored.record().stream()
        .flatMap(record -> record.visits().stream())
        .forEach(visit -> RecordReader.notAfter(visit, setting.on(), stored.complaints()));
    Optional<Judged> judged =
        stored
            .record()
            .filter(record -> stored.complaints().isEmpty())
            .map(record -> judged(record, stored, setting, pictures, notes));
    return new Sighting(stored, judged, notes);
  }

  private Judged judged(
      InstrumentRecord record,
      StoredInstrument stored,
      Setting setting,
      Pictures pictures,
      List<String> notes) {
    InForce.Result inForce = InForce.of(rules, record, setting.on());
    Assessment assessment = new Engine(rules).assess(setting.stage(), inForce.evidence());
    List<Picture> photos =
        record.instrument().photos().stream()
            .filter(path -> pictures == Pictures.SHOWN)
            .flatMap(path -> picture(stored.tag(), path, notes).stream())
            .toList();
    Dossier dossier =
        new Dossier(
            setting,
            record.instrument(),
            record.visits(),
            assessment,
            inForce.setAside(),
            stored.heads(),
            photos);
    return new Judged(record, inForce.evidence(), dossier);
  }

  private Optional<Picture> picture(String tag, String path, List<String> notes) {
    Complaints complaints = new Complaints();
    Optional<StoredFile> file = folder.file(BenchFolder.photo(tag, path), complaints);
    complaints.sorted().forEach(found -> notes.add("no picture `" + path + "`: " + found.what()));
    return file.map(StoredFile::bytes)
        .flatMap(bytes -> folder.isPacked() ? Picture.asPrinted(bytes) : Picture.of(bytes));
  }
}
