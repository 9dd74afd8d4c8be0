package org.mainsgate.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.mainsgate.desk.Desk;
import org.mainsgate.desk.Profiles;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Outlook;
import org.mainsgate.report.Setting;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.store.StoredInstrument;

/** A bench on disk, opened for a command: what is wrong goes to the error stream. */
record OpenBench(App app, Desk desk) {

  /**
   * Opens a bench under its own profile, or another; complaints go to the error stream.
   *
   * @param profile another profile than the bench's, if there is one
   */
  static Optional<OpenBench> open(App app, Path path, @Nullable String profile) {
    Complaints complaints = new Complaints();
    Optional<Desk> desk =
        BenchFolder.open(path, complaints).flatMap(folder -> open(folder, profile, complaints));
    app.err().print(complaints.renderAll());
    return desk.filter(found -> complaints.isEmpty()).map(found -> new OpenBench(app, found));
  }

  private static Optional<Desk> open(
      BenchFolder folder, @Nullable String profile, Complaints complaints) {
    return profile == null
        ? Desk.open(folder, new Shelf(), complaints)
        : GivenProfile.of(profile, complaints)
            .flatMap(found -> Profiles.underOverlays(folder, found, complaints))
            .flatMap(found -> Desk.open(folder, new Shelf(), found, complaints));
  }

  BenchFolder folder() {
    return desk.folder();
  }

  Bench bench() {
    return desk.bench();
  }

  RecordReader records() {
    return desk.records();
  }

  Rules rules() {
    return desk.rules();
  }

  /** The day that is meant: as given, else today at the bench. */
  LocalDate day(@Nullable LocalDate given) {
    return given == null ? LocalDate.now(app.clock().withZone(bench().zone())) : given;
  }

  /** One instrument with what is to do next at it; empty if it can't be read. */
  Optional<Outlook> outlook(String tag, Setting setting) {
    notes();
    Desk.Sighting sighting = desk.sight(tag, setting);
    complain(sighting, unreadable -> {});
    return sighting.judged().map(Desk.Judged::outlook);
  }

  /** Something that is told of an instrument while others are still judged. */
  private record Told<T>(Desk.Sighting sighting, Optional<T> judged) {}

  /**
   * Judges what was asked for; complaints go to the error stream.
   *
   * @param look what is wanted of each that can be read; asked for several at the same time
   * @param judged is told that, in the order of the tags
   * @param unreadable is told the tags of the others
   */
  <T> void each(
      List<String> tags,
      Setting setting,
      Desk.Pictures pictures,
      Function<Dossier, T> look,
      Consumer<T> judged,
      Consumer<String> unreadable) {
    notes();
    desk.<Told<T>>sight(
        tags,
        setting,
        pictures,
        sighting ->
            new Told<>(
                withoutRecord(sighting), sighting.judged().map(Desk.Judged::dossier).map(look)),
        told -> {
          complain(told.sighting(), unreadable);
          told.judged().ifPresent(judged);
        });
  }

  /** What is still needed of a sighting once it was looked at; the rest may go. */
  private static Desk.Sighting withoutRecord(Desk.Sighting sighting) {
    return new Desk.Sighting(sighting.stored(), Optional.empty(), sighting.notes());
  }

  private void notes() {
    folder().notes().forEach(note -> app.err().println("note: " + note));
  }

  private void complain(Desk.Sighting sighting, Consumer<String> unreadable) {
    String tag = sighting.stored().tag();
    sighting.notes().forEach(note -> app.err().println("note: " + tag + ": " + note));
    complain(sighting.stored(), unreadable);
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
}
