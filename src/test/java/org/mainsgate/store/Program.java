package org.mainsgate.store;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.NullMarked;
import org.mainsgate.evidence.Bench;
import org.mainsgate.source.Complaints;

/** What a command does at the store, from the opening of the bench to what it tells the person. */
@NullMarked
interface Program {
  LocalDate DAY = LocalDate.of(2026, 11, 27);
  String NEW = "NL-09";
  String RECORD = "_2026-11-27_record.pdf";

  /**
   * Does it on the bench in a folder.
   *
   * @return what is acknowledged; empty if it is refused, with complaints
   */
  Optional<String> on(Path folder, Complaints complaints) throws IOException;

  /** What is done at a bench that is there. */
  interface AtBench {
    Optional<String> at(BenchFolder folder, Bench bench, Complaints complaints) throws IOException;
  }

  static Program at(AtBench work) {
    return (folder, complaints) -> {
      Optional<BenchFolder> open = BenchFolder.open(folder, complaints);
      Optional<Bench> bench = open.flatMap(b -> b.bench(PaperBench.reader(), complaints));
      return bench.isEmpty()
          ? Optional.empty()
          : work.at(open.orElseThrow(), bench.get(), complaints);
    };
  }

  /** Closes a draft; tells the visit and its hash. */
  static Program close(String draft) {
    return close(draft, DAY);
  }

  /** The same on another day, which makes other bytes of the same draft. */
  static Program close(String draft, LocalDate on) {
    return at(
        (folder, bench, complaints) ->
            folder
                .close(
                    PaperBench.TAG, Optional.of(draft), on, bench, PaperBench.reader(), complaints)
                .map(closed -> closed.path() + " " + closed.hash()));
  }

  /** Adds an instrument; tells its file. */
  static Program add(String tag) {
    return at(
        (folder, bench, complaints) ->
            folder.add(tag, PaperBench.INSTRUMENT_TEXT.replace(PaperBench.TAG, tag), complaints));
  }

  /** Makes a draft; tells its file. */
  static Program draft(String id) {
    return at(
        (folder, bench, complaints) ->
            folder.draft(
                PaperBench.TAG,
                id,
                "format: 1\ndate: " + id.substring(0, 10) + "\nby: AR\n",
                complaints));
  }

  /** Keeps a sealed record; tells its file. */
  static Program keep(String words) {
    return at(
        (folder, bench, complaints) -> {
          try (RecordNumber number = folder.nextRecord(PaperBench.TAG)) {
            String name = "000" + number.number() + words;
            return number.keep(
                name, words.getBytes(java.nio.charset.StandardCharsets.UTF_8), complaints);
          }
        });
  }

  /** Starts a bench; tells what it is. */
  static Program start(String text) {
    return (folder, complaints) ->
        BenchFolder.start(folder, text, "* -text", complaints)
            ? Optional.of(text)
            : Optional.empty();
  }

  /** Reads the instrument; tells its visits and what is wrong. */
  static Program read() {
    return at(
        (folder, bench, complaints) -> {
          StoredInstrument found = folder.instrument(PaperBench.TAG, bench, PaperBench.reader());
          complaints.addAll(found.complaints());
          StringBuilder visits = new StringBuilder();
          found.record().orElseThrow().visits().forEach(v -> visits.append(v.id()).append(' '));
          return Optional.of(visits.toString().strip());
        });
  }
}
