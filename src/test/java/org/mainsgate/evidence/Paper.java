package org.mainsgate.evidence;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Optional;
import java.util.function.BiFunction;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.store.PaperBench;

/** The small bench read from texts, without a disk. */
final class Paper {
  static final RecordReader READER = PaperBench.reader();
  static final Bench BENCH = bench(PaperBench.BENCH_TEXT);
  static final Instrument INSTRUMENT = instrument(PaperBench.INSTRUMENT_TEXT);

  /** What every visit starts with. */
  static final String HEAD = "format: 1\ndate: 2026-11-25\nby: AR\n";

  private Paper() {}

  static Bench bench(String text) {
    return read("bench.yaml", text, READER::bench);
  }

  static Instrument instrument(String text) {
    return read("instrument.yaml", text, (f, c) -> READER.instrument(f, BENCH, c));
  }

  static Visit draft(String text) {
    return draft(text, BENCH);
  }

  static Visit draft(String text, Bench bench) {
    return read(
        "visit.yaml",
        text,
        (f, c) -> READER.visit(f, PaperBench.DRAFT_ID, Optional.empty(), bench, INSTRUMENT, c));
  }

  /** The only entry of a visit in which nothing but this was found on the case. */
  static Entry onTheCase(String said) {
    return draft(HEAD + "found: {case: {" + said + "}}\n").found().get(0);
  }

  private static <T> T read(
      String name, String text, BiFunction<Fields, Complaints, Optional<T>> as) {
    Complaints complaints = new Complaints();
    Optional<T> read =
        StrictYaml.readFields(name, text.getBytes(UTF_8), complaints)
            .flatMap(fields -> as.apply(fields, complaints));
    if (!complaints.isEmpty()) {
      throw new AssertionError(complaints.renderAll());
    }
    return read.orElseThrow();
  }
}
