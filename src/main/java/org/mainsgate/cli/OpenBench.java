package org.mainsgate.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
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

  /** The instruments that were asked for and can be read, judged; complaints about the others. */
  List<Dossier> dossiers(List<String> tags, Setting setting, Consumer<String> unreadable) {
    return judged(tags, setting, unreadable).stream().map(Desk.Judged::dossier).toList();
  }

  /** One instrument with what is to do next at it; empty if it can't be read. */
  Optional<Outlook> outlook(String tag, Setting setting) {
    return judged(List.of(tag), setting, unreadable -> {}).stream()
        .findFirst()
        .map(Desk.Judged::outlook);
  }

  private List<Desk.Judged> judged(
      List<String> tags, Setting setting, Consumer<String> unreadable) {
    folder().notes().forEach(note -> app.err().println("note: " + note));
    List<Desk.Sighting> sightings = desk.sight(tags, setting);
    for (Desk.Sighting sighting : sightings) {
      String tag = sighting.stored().tag();
      sighting.notes().forEach(note -> app.err().println("note: " + tag + ": " + note));
      complain(sighting.stored(), unreadable);
    }
    return sightings.stream().flatMap(sighting -> sighting.judged().stream()).toList();
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
