package org.mainsgate.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mainsgate.source.Complaints;

/**
 * Two programs on one bench, in orders of their steps that a seed says; in every third, one of them
 * is stopped on the way.
 */
class TwoProgramsTest {
  private static final String OTHER_ID = "2026-11-26-AR-0b1c";
  private static final String NEW_ID = "2026-11-27-AR-9999";
  private static final int MOST_STEPS = 1 << 20;

  @TempDir Path folder;

  private enum Pair {
    CLOSE_AND_CLOSE,
    CLOSE_AND_CLOSE_ANOTHER,
    CLOSE_AND_READ,
    CLOSE_AND_DRAFT,
    DRAFT_AND_DRAFT,
    ADD_AND_ADD,
    ADD_AND_ADD_IN_SMALL_LETTERS,
    ADD_AND_READ,
    KEEP_AND_KEEP,
    KEEP_AND_READ,
    START_AND_START;

    Program first() {
      return switch (this) {
        case CLOSE_AND_CLOSE, CLOSE_AND_CLOSE_ANOTHER, CLOSE_AND_READ, CLOSE_AND_DRAFT ->
            Program.close(PaperBench.DRAFT_ID);
        case DRAFT_AND_DRAFT -> Program.draft(NEW_ID);
        case ADD_AND_ADD, ADD_AND_ADD_IN_SMALL_LETTERS, ADD_AND_READ -> Program.add(Program.NEW);
        case KEEP_AND_KEEP, KEEP_AND_READ -> Program.keep(Program.RECORD);
        case START_AND_START -> Program.start(PaperBench.BENCH_TEXT);
      };
    }

    Program second() {
      return switch (this) {
        case CLOSE_AND_CLOSE_ANOTHER -> Program.close(OTHER_ID);
        case CLOSE_AND_READ, ADD_AND_READ, KEEP_AND_READ -> Program.read();
        case CLOSE_AND_DRAFT -> Program.draft(NEW_ID);
        case ADD_AND_ADD_IN_SMALL_LETTERS -> Program.add(Program.NEW.toLowerCase(Locale.ROOT));
        case KEEP_AND_KEEP -> Program.keep("_2026-11-27_lending.pdf");
        case START_AND_START -> Program.start(PaperBench.BENCH_TEXT + "# other\n");
        case CLOSE_AND_CLOSE -> Program.close(PaperBench.DRAFT_ID, Program.DAY.plusDays(1));
        case DRAFT_AND_DRAFT, ADD_AND_ADD -> first();
      };
    }
  }

  /**
   * What one program told.
   *
   * @param acknowledged what it promised; empty if it refused, failed or was stopped
   * @param stopped whether it was stopped
   */
  private record Told(Optional<String> acknowledged, boolean stopped, String complaints) {}

  @ParameterizedTest
  @EnumSource(Pair.class)
  void nothingAcknowledgedIsLostInAnyOrder(Pair pair) throws Exception {
    int orders = System.getProperty("everything") == null ? 150 : 5_000;
    for (int seed = 0; seed < orders; seed++) {
      Path place = folder.resolve("bench");
      prepare(pair, place);
      int most = seed % 3 == 0 ? new Random(seed).nextInt(120) : MOST_STEPS;
      try {
        judge(pair, place, run(pair, place, seed, most));
      } catch (AssertionError | RuntimeException e) {
        throw new AssertionError(pair + ", seed " + seed + ", stopped after " + most, e);
      }
      delete(place);
    }
  }

  private static void prepare(Pair pair, Path place) throws IOException {
    if (pair == Pair.START_AND_START) {
      Files.createDirectories(place);
      return;
    }
    PaperBench bench = new PaperBench(place);
    bench.write(
        PaperBench.VISITS + OTHER_ID + ".draft.yaml", "format: 1\ndate: 2026-11-26\nby: AR\n");
  }

  private static List<Told> run(Pair pair, Path place, long seed, int most) throws Exception {
    Turns turns = new Turns(seed);
    FutureTask<Told> first = Turns.task(() -> told(pair.first(), place, turns.of(0, most)));
    FutureTask<Told> second = Turns.task(() -> told(pair.second(), place, turns.of(1, MOST_STEPS)));
    turns.run(first, second);
    try {
      return List.of(first.get(), second.get());
    } catch (ExecutionException e) {
      throw new AssertionError(e.getCause());
    }
  }

  private static Told told(Program program, Path place, SteppedDisk.Steps steps)
      throws IOException {
    Complaints complaints = new Complaints();
    try {
      Optional<String> said = program.on(SteppedDisk.path(place, steps), complaints);
      return new Told(said, false, complaints.renderAll());
    } catch (Turns.Stopped stopped) {
      return new Told(Optional.empty(), true, "");
    }
  }

  private void judge(Pair pair, Path place, List<Told> told) throws IOException {
    for (Told each : told) {
      assertTrue(
          each.stopped() || each.acknowledged().isPresent() || !each.complaints().isEmpty(),
          "it neither did it nor said why");
    }
    switch (pair) {
      case CLOSE_AND_CLOSE, CLOSE_AND_CLOSE_ANOTHER -> closings(pair, place, told);
      case CLOSE_AND_READ -> {
        closed(place, told.get(0));
        assertEquals("", told.get(1).complaints());
        assertEquals(
            PaperBench.DRAFT_ID + " " + OTHER_ID, told.get(1).acknowledged().orElseThrow());
      }
      case CLOSE_AND_DRAFT, DRAFT_AND_DRAFT -> {
        closed(place, told.get(0));
        told.forEach(each -> isThere(place, each));
        assertTrue(told.get(1).acknowledged().isPresent() || pair == Pair.DRAFT_AND_DRAFT);
        readable(place);
      }
      case ADD_AND_ADD, ADD_AND_ADD_IN_SMALL_LETTERS, ADD_AND_READ -> added(pair, place, told);
      case KEEP_AND_KEEP, KEEP_AND_READ -> kept(place, told);
      case START_AND_START -> started(place, told);
    }
    assertEquals(Set.of(), temporary(place, told.get(0).stopped()), "left over");
  }

  private static void closings(Pair pair, Path place, List<Told> told) throws IOException {
    told.forEach(each -> closed(place, each));
    if (pair == Pair.CLOSE_AND_CLOSE_ANOTHER && !told.get(0).stopped()) {
      told.forEach(each -> assertEquals("", each.complaints()));
    }
    if (!told.get(0).stopped()) {
      assertTrue(told.stream().anyMatch(each -> each.acknowledged().isPresent()));
    }
    readable(place);
    // Whatever is still open can be closed by the same command.
    Path draft = place.resolve(PaperBench.DRAFT);
    if (Files.exists(draft)) {
      Complaints complaints = new Complaints();
      Optional<String> again = Program.close(PaperBench.DRAFT_ID).on(place, complaints);
      assertTrue(again.isPresent(), complaints::renderAll);
      assertFalse(Files.exists(draft));
      readable(place);
    }
  }

  /** What was said to be closed is, with these bytes. */
  private static void closed(Path place, Told told) {
    String said = told.acknowledged().filter(text -> text.contains(".yaml ")).orElse("");
    if (!said.isEmpty()) {
      String[] words = said.split(" ", -1);
      assertEquals(words[1], StoredFile.sha256(bytes(place.resolve(words[0]))));
      assertTrue(Files.exists(place.resolve(words[0] + Sidecar.ENDING)));
    }
  }

  private static void isThere(Path place, Told told) {
    told.acknowledged()
        .filter(path -> path.endsWith(".yaml") || path.endsWith(".pdf"))
        .ifPresent(path -> assertTrue(Files.exists(place.resolve(path)), path));
  }

  private static StoredInstrument readable(Path place) {
    StoredInstrument found = instrument(place, PaperBench.TAG);
    assertEquals("", found.complaints().renderAll());
    assertFalse(found.altered());
    return found;
  }

  private static StoredInstrument instrument(Path place, String tag) {
    Complaints complaints = new Complaints();
    BenchFolder bench =
        BenchFolder.open(place, complaints)
            .orElseThrow(() -> new AssertionError(complaints.renderAll()));
    return bench.instrument(
        tag, bench.bench(PaperBench.reader(), complaints).orElseThrow(), PaperBench.reader());
  }

  private static void added(Pair pair, Path place, List<Told> told) {
    readable(place);
    List<String> made =
        told.stream()
            .flatMap(each -> each.acknowledged().stream())
            .filter(path -> path.endsWith(".yaml"))
            .toList();
    assertTrue(made.size() <= 1, "both were told that theirs is the instrument");
    for (String path : made) {
      StoredInstrument found = instrument(place, path.split("/", -1)[1]);
      assertEquals("", found.complaints().renderAll());
    }
    if (pair == Pair.ADD_AND_READ) {
      assertEquals("", told.get(1).complaints());
    }
    if (pair == Pair.ADD_AND_ADD && !told.get(0).stopped()) {
      assertEquals(1, made.size(), "one of them makes it");
    }
  }

  private static void kept(Path place, List<Told> told) throws IOException {
    Set<String> numbers = new HashSet<>();
    for (String name : names(place.resolve("instruments/" + PaperBench.TAG + "/reports"))) {
      if (name.endsWith(".pdf")) {
        assertTrue(numbers.add(name.substring(0, 4)), "two records of one number: " + name);
      }
    }
    told.forEach(each -> assertEquals("", each.complaints()));
    told.forEach(each -> isThere(place, each));
    assertTrue(told.get(0).stopped() || told.get(0).acknowledged().isPresent());
    assertTrue(told.get(1).acknowledged().isPresent());
    readable(place);
  }

  private static void started(Path place, List<Told> told) throws IOException {
    List<Told> made = told.stream().filter(each -> each.acknowledged().isPresent()).toList();
    assertTrue(made.size() <= 1, "both were told that theirs is the bench");
    for (Told each : made) {
      assertEquals(
          each.acknowledged().orElseThrow(), Files.readString(place.resolve("bench.yaml")));
    }
    if (Files.exists(place.resolve("bench.yaml"))) {
      assertEquals("* -text\n", Files.readString(place.resolve(".gitattributes")));
      assertTrue(Files.isDirectory(place.resolve("instruments")));
    } else {
      assertTrue(told.get(0).stopped());
    }
  }

  /** Only a program that was stopped leaves something, and what it leaves is told. */
  private static Set<String> temporary(Path place, boolean stopped) throws IOException {
    Set<String> left = new TreeSet<>();
    try (Stream<Path> all = Files.walk(place)) {
      all.map(Path::getFileName)
          .map(Path::toString)
          .filter(name -> TemporaryFile.isName(name) || RecordNumber.isName(name))
          .forEach(left::add);
    }
    return stopped ? Set.of() : left;
  }

  private static List<String> names(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  private static byte[] bytes(Path path) {
    try {
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void delete(Path place) throws IOException {
    List<Path> all = new ArrayList<>();
    try (Stream<Path> inside = Files.walk(place)) {
      inside.sorted(Comparator.reverseOrder()).forEach(all::add);
    }
    for (Path each : all) {
      Files.delete(each);
    }
  }
}
