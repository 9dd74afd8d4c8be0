package org.mainsgate.docs;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.StrictYaml;

/**
 * A file of some kind that an editor and our reader both look at.
 *
 * @param kind what its schema is called
 * @param path where it comes from
 * @param text its text
 */
@NullMarked
record Sample(String kind, Path path, String text) {
  private static final Path DEMO = Path.of("demo-data/north-light");
  private static final Map<String, Schema> SCHEMAS = new ConcurrentHashMap<>();
  private static final Rules RULES =
      new Shelf().open(Shelf.Choice.named("gb"), new Complaints()).orElseThrow();
  private static final RecordReader READER = RecordReader.of(RULES);

  static Sample of(String kind, Path path) {
    return new Sample(kind, path, read(path));
  }

  Sample with(String other) {
    return new Sample(kind, path, other);
  }

  /** Every file of the demo bench that has a schema. */
  static List<Sample> ofTheDemo() {
    List<Sample> samples = new ArrayList<>(List.of(of("bench", DEMO.resolve("bench.yaml"))));
    for (Path path : below(DEMO.resolve("instruments"))) {
      String name = String.valueOf(path.getFileName());
      if (name.equals("instrument.yaml")) {
        samples.add(of("instrument", path));
      } else if (name.endsWith(".yaml")) {
        samples.add(of("visit", path));
      }
    }
    return samples;
  }

  /** Every file of the rules. */
  static List<Sample> ofTheRules() {
    List<Sample> samples = new ArrayList<>();
    for (Path path : below(Path.of("rulesets/2026.1"))) {
      String name = String.valueOf(path.getFileName());
      if (name.endsWith(".tests.yaml")) {
        samples.add(of("tests", path));
      } else if (name.equals("vocabulary.yaml")) {
        samples.add(of("vocabulary", path));
      } else if (name.endsWith(".yaml")) {
        samples.add(of("rules", path));
      }
    }
    return samples;
  }

  private static List<Path> below(Path folder) {
    try (Stream<Path> paths = Files.walk(folder)) {
      return paths.filter(Files::isRegularFile).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String read(Path path) {
    try {
      return Files.readString(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What an editor would mark. */
  List<String> marked() {
    Schema schema = SCHEMAS.computeIfAbsent(kind, Sample::schema);
    return schema.validate(text, InputFormat.YAML).stream().map(Error::toString).toList();
  }

  private static Schema schema(String kind) {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(read(Path.of("docs/schema", kind + ".schema.json")));
  }

  /** What our reader complains of; empty if of nothing. */
  String refused() {
    Complaints complaints = new Complaints();
    byte[] bytes = text.getBytes(UTF_8);
    switch (kind) {
      case "rules" -> new Shelf().open(Shelf.Choice.file("rules.yaml", bytes), complaints);
      case "overlay" ->
          new Shelf()
              .open(Shelf.Choice.named("gb").under(Map.of("overlay.yaml", bytes)), complaints);
      default ->
          StrictYaml.readFields(path.toString(), bytes, complaints)
              .ifPresent(fields -> record(fields, complaints));
    }
    return complaints.renderAll();
  }

  private void record(Fields fields, Complaints complaints) {
    switch (kind) {
      case "bench" -> READER.bench(fields, complaints);
      case "instrument" -> READER.instrument(fields, bench(), complaints);
      case "visit" -> visit(fields, complaints);
      default -> throw new IllegalStateException(kind);
    }
  }

  private void visit(Fields fields, Complaints complaints) {
    String name = String.valueOf(path.getFileName());
    boolean draft = name.contains(".draft.");
    READER.visit(
        fields,
        name.substring(0, name.indexOf('.')),
        draft ? Optional.empty() : Optional.of("0".repeat(64)),
        bench(),
        instrument(path.resolve("../../instrument.yaml").normalize()),
        complaints);
  }

  private static Bench bench() {
    return fields(DEMO.resolve("bench.yaml"))
        .flatMap(fields -> READER.bench(fields, new Complaints()))
        .orElseThrow();
  }

  private static Instrument instrument(Path path) {
    return fields(path)
        .flatMap(fields -> READER.instrument(fields, bench(), new Complaints()))
        .orElseThrow();
  }

  private static Optional<Fields> fields(Path path) {
    return StrictYaml.readFields(path.toString(), read(path).getBytes(UTF_8), new Complaints());
  }
}
