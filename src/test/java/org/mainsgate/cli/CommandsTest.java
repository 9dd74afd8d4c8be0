package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.Golden;

/**
 * The commands as a person types them: what they print, how they end, and what they leave behind.
 */
class CommandsTest {
  private static final String DRAFT = "instruments/NL-01/visits/2026-11-25-AR-7f3a.draft.yaml";
  private static final String CLOSED = "instruments/NL-01/visits/2026-11-25-AR-7f3a.yaml";

  @TempDir Path folder;

  @Test
  void theHelpTeachesWithinEightyColumns() {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("mainsgate", help());
    for (String command :
        List.of(
            "start",
            "add",
            "next",
            "check",
            "report",
            "close",
            "identity",
            "seal",
            "handover",
            "verify",
            "accept",
            "tag",
            "rules")) {
      pages.put(command, help(command));
    }
    for (String command : List.of("new", "show", "trust")) {
      pages.put("identity-" + command, help("identity", command));
    }
    for (String command : List.of("show", "check", "test", "pages", "schema", "trust")) {
      pages.put("rules-" + command, help("rules", command));
    }
    Golden.check("cli/help", pages);
  }

  @Test
  void checkPrintsTheVerdictAndWhatWouldSettleIt() {
    Path bench = Run.smallBench(folder);
    Map<String, String> screens = new LinkedHashMap<>();
    screens.put("gb", screen(10, bench));
    screens.put("what-if-eu", screen(0, bench, "--profile", "eu"));
    screens.put("json", Run.of("check", bench, "--json").out());
    Golden.check("cli/small", screens);
  }

  @Test
  void aFolderThatCantBeMadeIsNamedInWords() throws IOException {
    Path file = Files.createFile(folder.resolve("a-file"));
    Run run = Run.of("rules", "schema", "-o", file.resolve("schemas"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("a-file"), run.err());
    assertTrue(run.err().contains("half-written"), run.err());
  }

  @Test
  void checkWritesNothing() {
    Path bench = Run.smallBench(folder);
    Map<String, String> before = Run.everything(folder);
    Run.of("check", bench);
    assertEquals(before, Run.everything(folder));
  }

  @Test
  void theDayIsTheBenchsOwnToday() {
    Path bench = Run.smallBench(folder);
    String json = Run.of("check", bench, "--json").out();
    assertTrue(json.contains("\"on\": \"2026-11-25\""), json.substring(0, 80));
    assertEquals(json, Run.of("check", bench, "--json", "--on", "2026-11-25").out());
  }

  @Test
  void theSameRecordGivesTheSameBytesInAnyCountry() {
    Path bench = Run.smallBench(folder);
    String here = Run.of("check", bench, "--json").out() + Run.of("check", bench).out();
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      for (String tag : List.of("tr-TR", "de-DE", "ar-EG", "th-TH-u-nu-thai")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
        String there = Run.of("check", bench, "--json").out() + Run.of("check", bench).out();
        assertEquals(here, there, tag);
      }
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void reportWritesOnePageForEachInstrumentAndTheSameOneAgain() throws IOException {
    Path bench = Run.smallBench(folder);
    Path pages = folder.resolve("new/pages");
    Run first = Run.of("report", bench, "-o", pages);
    assertEquals(10, first.code(), first.err());
    Path page = pages.resolve("NL-01_2026-11-25.pdf");
    byte[] bytes = Files.readAllBytes(page);
    assertEquals("%PDF-", new String(bytes, 0, 5, StandardCharsets.US_ASCII));
    assertEquals(10, Run.of("report", bench, "-o", pages).code());
    assertTrue(Arrays.equals(bytes, Files.readAllBytes(page)));
    try (Stream<Path> files = Files.list(pages)) {
      assertEquals(List.of(page), files.toList());
    }
  }

  @Test
  void aReportThatCantBeWrittenSaysSoAndLeavesNothing() throws IOException {
    Path bench = Run.smallBench(folder);
    Path file = Files.writeString(folder.resolve("pages"), "a file");
    Run run = Run.of("report", bench, "-o", file);
    assertEquals(3, run.code());
    assertFalse(run.err().contains("\tat "), run.err());
    assertEquals("a file", Files.readString(file));
  }

  @Test
  void closeTurnsTheDraftIntoAFileThatKeepsItsWords() throws IOException {
    Path bench = Run.smallBench(folder);
    String draft = Files.readString(bench.resolve(DRAFT));
    Run run = Run.of("close", bench, "NL-01");
    assertEquals(0, run.code(), run.err());
    assertFalse(Files.exists(bench.resolve(DRAFT)));
    String closed = Files.readString(bench.resolve(CLOSED));
    assertTrue(closed.startsWith(draft), closed);
    assertEquals(10, Run.of("check", bench).code());
    Run again = Run.of("close", bench, "NL-01");
    assertEquals(3, again.code());
    assertEquals(closed, Files.readString(bench.resolve(CLOSED)));
  }

  @Test
  void anInstrumentThatCantBeReadStopsNoOther() throws IOException {
    Path bench = Run.smallBench(folder);
    Path other = bench.resolve("instruments/NL-02");
    Run.copy(bench.resolve("instruments/NL-01"), other);
    Run run = Run.of("check", bench);
    assertEquals(3, run.code());
    assertTrue(run.err().contains("instruments/NL-02/instrument.yaml"), run.err());
    assertTrue(run.out().contains("NL-01"), run.out());
  }

  @Test
  void rulesCheckNamesEachProfileWithItsIdentity() {
    Run run = Run.of("rules", "check");
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().startsWith("gb: "), run.out());
    assertTrue(run.out().contains("\neu: "), run.out());
  }

  private String screen(int code, Object... arguments) {
    Object[] all = Stream.concat(Stream.of("check"), Stream.of(arguments)).toArray();
    Run run = Run.of(all);
    assertEquals(code, run.code(), run.err());
    assertEquals("", run.err());
    return run.out();
  }

  private static String help(String... command) {
    Object[] all = Stream.concat(Stream.of(command), Stream.of("--help")).toArray();
    Run run = Run.of(all);
    assertEquals(0, run.code());
    assertTrue(run.out().lines().allMatch(line -> line.length() <= 80), run.out());
    return run.out();
  }
}
