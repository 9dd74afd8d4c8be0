package org.mainsgate.benchmarks;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.mainsgate.desk.Desk;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.report.Json;
import org.mainsgate.report.Palette;
import org.mainsgate.report.Screen;
import org.mainsgate.report.Setting;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.verdict.Engine;
import org.yaml.snakeyaml.Yaml;

/**
 * What an instrument's record takes on one thread, warm: each step by itself, beside SnakeYAML
 * composing the same files.
 */
public final class RecordBenchmark {
  private static final LocalDate ON = LocalDate.of(2026, 11, 25);

  private RecordBenchmark() {}

  /**
   * Runs it.
   *
   * @param arguments the folder of a bench
   */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    Complaints complaints = new Complaints();
    BenchFolder bench = BenchFolder.open(folder, complaints).orElseThrow();
    Desk desk = Desk.open(bench, new Shelf(), complaints).orElseThrow();
    Setting setting =
        new Setting(desk.bench(), desk.rules(), false, desk.rules().firstStage(), ON);
    List<byte[]> files = files(folder);
    List<InstrumentRecord> records =
        bench.tags().stream()
            .flatMap(tag -> bench.instrument(tag, desk.bench(), desk.records()).record().stream())
            .toList();
    List<Desk.Sighting> sightings = new ArrayList<>();
    bench.tags().forEach(tag -> sightings.add(desk.sight(tag, setting)));
    Engine engine = new Engine(desk.rules());
    Screen screen = new Screen(Palette.NONE);
    new Paired()
        .with("SnakeYAML composes the files", () -> composed(files))
        .with("the same read strictly, with positions", () -> strictly(files))
        .with("files to records", () -> read(bench, desk))
        .with("records to what is in force", () -> inForce(records, desk))
        .with("evidence to findings, with arithmetic", () -> judged(engine, sightings, setting))
        .with("the screen", () -> screen(screen, sightings))
        .with("JSON", () -> json(sightings))
        .measure(10, 21, bench.tags().size(), "instrument", System.out);
    System.out.println("checks " + desk.rules().checksOf(setting.stage()).size());
  }

  /** The files of the instruments, as bytes. */
  private static List<byte[]> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder.resolve("instruments"))) {
      return all.filter(file -> file.toString().endsWith(".yaml"))
          .sorted()
          .map(RecordBenchmark::bytes)
          .toList();
    }
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static long composed(List<byte[]> files) {
    long lines = 0;
    for (byte[] file : files) {
      String text = new String(file, StandardCharsets.UTF_8);
      lines += new Yaml().compose(new StringReader(text)).getEndMark().getLine();
    }
    return lines;
  }

  private static long strictly(List<byte[]> files) {
    long read = 0;
    for (byte[] file : files) {
      read += StrictYaml.read("a file", file, new Complaints()).isPresent() ? 1 : 0;
    }
    return read;
  }

  private static long read(BenchFolder bench, Desk desk) {
    return bench.tags().stream()
        .filter(tag -> bench.instrument(tag, desk.bench(), desk.records()).record().isPresent())
        .count();
  }

  private static long inForce(List<InstrumentRecord> records, Desk desk) {
    return records.stream()
        .mapToLong(record -> InForce.of(desk.rules(), record, ON).setAside().size())
        .sum();
  }

  private static long judged(Engine engine, List<Desk.Sighting> sightings, Setting setting) {
    return sightings.stream()
        .flatMap(sighting -> sighting.judged().stream())
        .mapToLong(
            judged -> engine.assess(setting.stage(), judged.evidence()).findings().size())
        .sum();
  }

  private static long screen(Screen screen, List<Desk.Sighting> sightings) {
    return sightings.stream()
        .flatMap(sighting -> sighting.judged().stream())
        .mapToLong(judged -> screen.oneOfSeveral(judged.dossier()).length())
        .sum();
  }

  private static long json(List<Desk.Sighting> sightings) {
    return sightings.stream()
        .flatMap(sighting -> sighting.judged().stream())
        .mapToLong(judged -> Json.one(judged.dossier()).length())
        .sum();
  }
}
