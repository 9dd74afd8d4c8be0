package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;

/**
 * The reader of the record's files: located fields in, a bench, an instrument or a visit out.
 *
 * <p>It complains of everything in a file that can't be understood, all at once, and of nothing
 * else: what is wrong with an instrument is for the rules. Where it complained the answer is empty.
 */
public final class RecordReader {
  private final Dictionary dictionary;

  /**
   * A reader of records in these words.
   *
   * @param meterKinds the ruleset's meter kinds, by name
   * @param checks the names of the checks that a person may have decided on
   */
  public RecordReader(
      Vocabulary vocabulary, Map<String, MeterKind> meterKinds, Collection<String> checks) {
    this.dictionary = new Dictionary(vocabulary, Map.copyOf(meterKinds), List.copyOf(checks));
  }

  /** A reader of records in the words of these rules. */
  public static RecordReader of(Rules rules) {
    return new RecordReader(rules.vocabulary(), rules.meterKinds(), rules.checks().keySet());
  }

  /** The ruleset's meter kinds, by name. */
  public Map<String, MeterKind> meterKinds() {
    return dictionary.meterKinds();
  }

  /** Reads {@code bench.yaml}. */
  public Optional<Bench> bench(Fields file, Complaints complaints) {
    int before = complaints.count();
    Optional<Bench> bench = new BenchReader(dictionary, complaints).read(file);
    return bench.filter(b -> complaints.count() == before);
  }

  /** Reads {@code instrument.yaml} of an instrument on a bench. */
  public Optional<Instrument> instrument(Fields file, Bench bench, Complaints complaints) {
    int before = complaints.count();
    Optional<Instrument> instrument =
        new InstrumentReader(dictionary, bench, complaints).read(file);
    return instrument.filter(i -> complaints.count() == before);
  }

  /**
   * Reads the file of a visit to an instrument.
   *
   * @param id the name of the file without what follows the first point
   * @param hash SHA-256 of the file's bytes in lower-case hex; empty for a draft
   */
  public Optional<Visit> visit(
      Fields file,
      String id,
      Optional<String> hash,
      Bench bench,
      Instrument instrument,
      Complaints complaints) {
    int before = complaints.count();
    Optional<Visit> visit =
        new VisitReader(dictionary, bench, instrument, complaints).read(file, id, hash);
    return visit.filter(v -> complaints.count() == before);
  }

  /** Complains of a visit that is later than the day that is asked about. */
  public static void notAfter(Visit visit, LocalDate on, Complaints complaints) {
    if (visit.date().isAfter(on)) {
      complaints.add(
          visit.at(),
          "a visit on `" + visit.date() + "`",
          "a date up to `" + on + "`, the day that is asked about");
    }
  }
}
