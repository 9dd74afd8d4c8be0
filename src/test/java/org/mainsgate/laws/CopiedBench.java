package org.mainsgate.laws;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Engine;

/**
 * One instrument of a bench on disk, copied, so that one thing at a time can be changed in it as if
 * it had never been otherwise: closed visits keep their hashes whatever is changed in them.
 *
 * @param files by name: {@code bench}, {@code instrument}, and each visit's id
 * @param hashes of the closed visits, by id
 */
record CopiedBench(Map<String, Leaf> files, Map<String, String> hashes) {
  static final String BENCH = "bench";
  static final String INSTRUMENT = "instrument";

  /** Keeps the files in their order. */
  CopiedBench {
    files = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(files));
    hashes = Map.copyOf(hashes);
  }

  /** The copy of an instrument on a bench. */
  static CopiedBench of(Path folder, String tag) {
    Map<String, Leaf> files = new LinkedHashMap<>();
    Map<String, String> hashes = new TreeMap<>();
    Path own = folder.resolve("instruments").resolve(tag);
    files.put(BENCH, leaf(bytes(folder.resolve("bench.yaml"))));
    files.put(INSTRUMENT, leaf(bytes(own.resolve("instrument.yaml"))));
    for (String name : names(own.resolve("visits"))) {
      byte[] bytes = bytes(own.resolve("visits").resolve(name));
      String id = name.substring(0, name.indexOf('.'));
      if (name.endsWith(".yaml")) {
        files.put(id, leaf(bytes));
      }
      if (name.endsWith(".yaml") && !name.endsWith(".draft.yaml")) {
        hashes.put(id, sha256(bytes));
      }
    }
    return new CopiedBench(files, hashes);
  }

  /** The tags of the instruments on a bench. */
  static List<String> tags(Path folder) {
    return names(folder.resolve("instruments"));
  }

  private static List<String> names(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static Leaf leaf(byte[] bytes) {
    Complaints complaints = new Complaints();
    Optional<Fields> fields = StrictYaml.readFields("copy.yaml", bytes, complaints);
    return Leaf.of(fields.orElseThrow(() -> new AssertionError(complaints.renderAll())));
  }

  Leaf file(String name) {
    return Objects.requireNonNull(files.get(name));
  }

  /** The ids of the visits. */
  List<String> visits() {
    return files.keySet().stream()
        .filter(name -> !name.equals(BENCH) && !name.equals(INSTRUMENT))
        .toList();
  }

  /** The same with another file of this name. */
  CopiedBench with(String name, Leaf file) {
    Map<String, Leaf> others = new LinkedHashMap<>(files);
    others.put(name, file);
    return new CopiedBench(others, hashes);
  }

  /** The profile that the bench names. */
  String profile() {
    return String.valueOf(file(BENCH).at(List.of("profile")));
  }

  /**
   * What the rules say.
   *
   * @param inForce what counts, and what does not
   */
  record Opinion(InForce.Result inForce, Assessment assessment) {}

  /** What the rules say of a stage on a day; empty if something was complained of. */
  Optional<Opinion> judged(Rules rules, Stage stage, LocalDate on) {
    Complaints complaints = new Complaints();
    RecordReader reader = RecordReader.of(rules);
    Optional<Bench> bench = fields(BENCH, complaints).flatMap(f -> reader.bench(f, complaints));
    Optional<Instrument> instrument =
        bench.flatMap(
            b -> fields(INSTRUMENT, complaints).flatMap(f -> reader.instrument(f, b, complaints)));
    List<Visit> visits = new ArrayList<>();
    for (String id : visits()) {
      instrument
          .flatMap(
              i ->
                  fields(id, complaints)
                      .flatMap(
                          f -> reader.visit(f, id, hash(id), bench.orElseThrow(), i, complaints)))
          .ifPresent(visits::add);
    }
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    InstrumentRecord record =
        new InstrumentRecord(bench.orElseThrow(), instrument.orElseThrow(), visits);
    record.check(complaints);
    InForce.Result inForce = InForce.of(rules, record, on);
    return Optional.of(new Opinion(inForce, new Engine(rules).assess(stage, inForce.evidence())))
        .filter(opinion -> complaints.isEmpty());
  }

  private Optional<String> hash(String visit) {
    return Optional.ofNullable(hashes.get(visit));
  }

  private Optional<Fields> fields(String name, Complaints complaints) {
    return StrictYaml.readFields(name + ".yaml", file(name).yaml().getBytes(UTF_8), complaints);
  }
}
