package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.Golden;

/** To begin and to go on: the commands that say and prepare what is to do next. */
class NextCommandsTest {
  private static final Path DEMO = Path.of("demo-data/north-light");
  private static final String WHOLE_PERSON = "--by KC --name K --competence none";

  @TempDir Path folder;

  @Test
  void nextSaysWhatToDoWithinEightyColumns() {
    Map<String, String> screens = new LinkedHashMap<>();
    screens.put("pass", next(0, DEMO, "NL-01"));
    screens.put("too-near", next(10, DEMO, "NL-02"));
    screens.put("open-list", next(10, DEMO, "NL-03"));
    screens.put("open-list-all", next(10, DEMO, "NL-03", "--all"));
    screens.put("live-chassis", next(20, DEMO, "NL-04"));
    screens.put("after-work", next(10, DEMO, "NL-05"));
    screens.put("what-if-eu", next(0, DEMO, "NL-02", "--profile", "eu"));
    Golden.check("cli/next", screens);
  }

  @Test
  void nextWritesNothing() {
    Path bench = Run.smallBench(folder);
    Map<String, String> before = Run.everything(folder);
    Run.of("next", bench, "NL-01", "--all");
    assertEquals(before, Run.everything(folder));
  }

  @Test
  void aBenchAndAnInstrumentAreBegunAndTheirFilesCanBeReadAsTheyAre() throws IOException {
    Path bench = folder.resolve("my-bench");
    Map<String, String> files = new LinkedHashMap<>();
    assertEquals(0, started(bench, "gb").code());
    files.put("bench.yaml", Files.readString(bench.resolve("bench.yaml")));
    assertEquals("* -text\n", Files.readString(bench.resolve(".gitattributes")));
    assertEquals(0, Run.of("check", bench).code());

    Run added = Run.of("add", bench, "XY-1", "--what", "signal generator: \"small\"");
    assertEquals(0, added.code(), added.err());
    Path instrument = bench.resolve("instruments/XY-1/instrument.yaml");
    files.put("instrument.yaml", Files.readString(instrument));
    assertEquals(10, Run.of("check", bench).code());

    uncomment(instrument, "  # mains-lead:", "  # case:", "  # handle:");
    Run draft = Run.of("add", bench, "XY-1");
    assertEquals(0, draft.code(), draft.err());
    files.put("visit.yaml", Files.readString(only(bench.resolve("instruments/XY-1/visits"))));
    Run check = Run.of("check", bench);
    assertEquals(10, check.code());
    assertEquals("", check.err());
    Golden.check("cli/begin", files);
  }

  @Test
  void aLineThatIsFilledInCounts() throws IOException {
    Path bench = bench();
    Run.of("add", bench, "XY-1");
    uncomment(bench.resolve("instruments/XY-1/instrument.yaml"), "  # mains-lead:");
    Run.of("add", bench, "XY-1");
    Path visit = only(bench.resolve("instruments/XY-1/visits"));
    String text = Files.readString(visit);
    assertTrue(text.contains("    # sheath: sound | hardened | damaged | no_sheath  # "), text);
    Files.writeString(visit, text.replaceAll("    # sheath: sound [^\n]*", "    sheath: damaged"));
    assertEquals(20, Run.of("check", bench).code(), Run.of("check", bench).err());
  }

  @Test
  void aPreparedDraftCanBeClosed() throws IOException {
    Path bench = bench();
    Run.of("add", bench, "XY-1");
    Run.of("add", bench, "XY-1");
    Run closed = Run.of("close", bench, "XY-1");
    assertEquals(0, closed.code(), closed.err());
    assertEquals(10, Run.of("check", bench).code());
  }

  @Test
  void aDraftThatIsThereIsLeftAsItIs() {
    Path bench = Run.smallBench(folder);
    Map<String, String> before = Run.everything(folder);
    Run run = Run.of("add", bench, "NL-01");
    assertEquals(3, run.code());
    assertTrue(run.err().contains("there is a draft already"), run.err());
    assertTrue(run.err().contains("2026-11-25-AR-7f3a.draft.yaml"), run.err());
    assertEquals(before, Run.everything(folder));
  }

  @Test
  void wherePassedInstrumentsHaveNothingOpenNoDraftIsMade() {
    Path bench = Run.copy(DEMO, folder.resolve("north-light"));
    Map<String, String> before = Run.everything(folder);
    Run run = Run.of("add", bench, "NL-01", "--by", "RS");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().contains("nothing is open"), run.out());
    assertEquals(before, Run.everything(folder));
  }

  @Test
  void aLaterDraftTellsHowTheThingWasAndAsksOnlyWhatIsOpen() throws IOException {
    Path bench = Run.copy(DEMO, folder.resolve("north-light"));
    Run run = Run.of("add", bench, "NL-05", "--by", "RS");
    assertEquals(0, run.code(), run.err());
    String path = run.out().strip().substring("made: ".length());
    String text = Files.readString(bench.resolve(path));
    assertTrue(text.contains("# as last time: "), text);
    assertTrue(text.contains("# earth_fixing: own_locked"), text);
    assertFalse(text.contains("# sheath: "), text);
    Golden.check("cli/draft", Map.of("after-work", text));
  }

  @Test
  void whatCantBeDoneIsSaidInPlainWordsAndNothingIsWritten() throws IOException {
    Path bench = Run.copy(DEMO, folder.resolve("north-light"));
    Files.writeString(folder.resolve("a-file"), "a file");
    Map<String, String> before = Run.everything(folder);
    Map<String, String> said = new LinkedHashMap<>();
    said.put("next-unknown-tag", refused("next", bench, "NL-2"));
    said.put("next-unknown-stage", refused("next", bench, "NL-02", "--stage", "warm"));
    said.put("next-unknown-profile", refused("next", bench, "NL-02", "--profile", "gbr"));
    said.put("add-unknown-person", refused("add", bench, "NL-05", "--by", "RX"));
    said.put("add-several-people", refused("add", bench, "NL-05"));
    said.put("add-no-tag", refused("add", bench, "NL 7"));
    said.put("add-capitals", refused("add", bench, "nl-01"));
    said.put("add-blank-what", refused("add", bench, "NL-77", "--what", " "));
    said.put("start-there-already", refused("start", bench));
    said.put("start-in-a-file", refused("start", folder.resolve("a-file")));
    said.put("start-below-a-file", refused("start", folder.resolve("a-file/bench")));
    Path fresh = folder.resolve("fresh");
    said.put("start-bad-zone", refused("start", fresh, "--zone", "Europe/Londres"));
    said.put("start-bad-profile", refused("start", fresh, "--profile", "gbr"));
    said.put("start-bad-initials", refused("start", fresh, "--by", "K.C."));
    said.put("start-nameless", refused("start", fresh, "--name", "K"));
    assertEquals(before, Run.everything(folder));
    Golden.check("cli/cant", said);
  }

  @Test
  void aNewBenchThatSaysTooLittleIsAskedForTheRest() {
    Path bench = folder.resolve("my-bench");
    assertEquals(0, Run.of("start", bench, "--profile", "gb", "--by", "KC").code());
    Run check = Run.of("check", bench);
    assertEquals(3, check.code());
    for (String said : List.of("missing `title`", "missing `zone`", "`KC` is blank")) {
      assertTrue(check.err().contains(said), check.err());
    }
  }

  private Path bench() {
    Path bench = folder.resolve("my-bench");
    started(bench, "gb");
    return bench;
  }

  private static Run started(Path bench, String profile) {
    Object[] words =
        Stream.concat(
                Stream.of("start", bench, "--profile", profile, "--zone", "Europe/London"),
                Stream.concat(Stream.of("--title", "T"), Stream.of(WHOLE_PERSON.split(" ", -1))))
            .toArray();
    return Run.of(words);
  }

  private static void uncomment(Path file, String... starts) throws IOException {
    String text = Files.readString(file);
    for (String start : starts) {
      assertTrue(text.contains(start), text);
      text = text.replace(start, start.replace("# ", ""));
    }
    Files.writeString(file, text);
  }

  private static Path only(Path visits) throws IOException {
    try (Stream<Path> files = Files.list(visits)) {
      List<Path> all = files.toList();
      assertEquals(1, all.size());
      return all.get(0);
    }
  }

  private static String refused(Object... words) {
    Run run = Run.of(words);
    assertEquals(3, run.code(), run.err());
    assertEquals("", run.out());
    assertFalse(run.err().contains("\tat "), run.err());
    return run.err().replaceAll("/\\S*/(?=bench.yaml|fresh|a-file)", "");
  }

  private static String next(int code, Object... words) {
    Run run = Run.of(Stream.concat(Stream.of("next"), Stream.of(words)).toArray());
    assertEquals(code, run.code(), run.err());
    assertEquals("", run.err());
    assertTrue(run.out().lines().allMatch(line -> line.length() <= 80), run.out());
    return run.out();
  }
}
