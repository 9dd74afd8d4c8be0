package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The page of paper as a person asks for it, for every instrument of the demo bench. */
class PaperTest {
  /** Where an independent judge looks for pages to judge. */
  private static final Path REPORTS = Path.of("target/reports");

  private static final Path DEMO = Path.of("demo-data/north-light");
  private static final String BLANK =
      """
      format: 1
      tag: NL-99
      uid: 5a2b3c4d-6a52-4c0e-9d0f-0a3b1f2c7e99
      what: wobbulator
      """;

  @TempDir Path folder;

  static List<String> tags() {
    try (Stream<Path> tags = Files.list(DEMO.resolve("instruments"))) {
      return tags.map(tag -> tag.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @MethodSource("tags")
  void allThatTheScreenAsksStandsOnTwoSidesAtMost(String tag) throws IOException {
    Path file = REPORTS.resolve("paper-" + tag + ".pdf");
    Run screen = Run.of("next", DEMO, tag, "--all");
    Run paper = Run.of("next", DEMO, tag, "--paper", "-o", file);
    assertEquals(screen.code(), paper.code(), paper.err());
    assertEquals("written: " + file + "\n", paper.out());
    assertTrue(pages(file) <= 2);
    String text = text(file);
    for (String asked : asked(screen)) {
      assertTrue(text.contains(asked), () -> asked + " is not on the page: " + text);
    }
    assertEquals(
        screen.out().lines().filter(line -> line.startsWith("STOP")).count(),
        text.split("STOP ", -1).length - 1);
  }

  @Test
  void anInstrumentOfWhichNothingIsKnownGetsLinesForWhatWillBeFound() throws IOException {
    Path bench = Run.copy(DEMO, folder.resolve("bench"));
    Path file = folder.resolve("page.pdf");
    Path own = Files.createDirectories(bench.resolve("instruments/NL-99"));
    Files.writeString(own.resolve("instrument.yaml"), BLANK);
    assertEquals(10, Run.of("next", bench, "NL-99", "--paper", "-o", file).code());
    assertTrue(pages(file) <= 2);
    String text = text(file);
    assertTrue(text.contains("exposed metal parts ☐ none ☐ these are all: 1 2 3 4"), text);
    assertTrue(text.contains("earth path, each exposed metal part 1 2 3 4 Ω"), text);
    assertTrue(text.contains("sheath and insulation, each mains lead sound"), text);
    assertTrue(text.indexOf("STOP Charge stop") < text.indexOf("STOP Earth stop"), text);
    assertFalse(text.contains("`counts_as_fixed`"), text);
  }

  @Test
  void theSameRecordGivesTheSamePageAndReplacesTheOldOne() throws IOException {
    Path file = Files.writeString(folder.resolve("page.pdf"), "an old page");
    Run.of("next", DEMO, "NL-02", "--paper", "-o", file);
    byte[] first = Files.readAllBytes(file);
    Run.of("next", DEMO, "NL-02", "--paper", "-o", file);
    assertArrayEquals(first, Files.readAllBytes(file));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(List.of(file), files.toList());
    }
  }

  @Test
  void paperAndItsFileAreAskedForTogether() {
    Run noFile = Run.of("next", DEMO, "NL-02", "--paper");
    assertEquals(2, noFile.code());
    assertTrue(noFile.err().contains("--out"), noFile.err());
    Run noPaper = Run.of("next", DEMO, "NL-02", "-o", folder.resolve("page.pdf"));
    assertEquals(2, noPaper.code());
    assertTrue(noPaper.err().contains("--paper"), noPaper.err());
    assertFalse(Files.exists(folder.resolve("page.pdf")));
  }

  @Test
  void aPageThatCantBeWrittenSaysSo() throws IOException {
    Files.writeString(folder.resolve("taken"), "a file");
    Run run = Run.of("next", DEMO, "NL-02", "--paper", "-o", folder.resolve("taken/page.pdf"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("taken"), run.err());
    assertFalse(run.err().contains("\tat "), run.err());
    assertFalse(run.err().contains("Exception"), run.err());
  }

  @Test
  void anInstrumentThatIsNotThereLeavesNoPage() {
    Path file = folder.resolve("page.pdf");
    assertEquals(3, Run.of("next", DEMO, "NL-77", "--paper", "-o", file).code());
    assertFalse(Files.exists(file));
  }

  /** The first lines of what the screen asks, as far as a line of a terminal holds them. */
  private static List<String> asked(Run screen) {
    return screen
        .out()
        .lines()
        .filter(line -> line.startsWith("  - "))
        .map(line -> line.substring(4).replaceFirst("^all ", ""))
        .toList();
  }

  private static int pages(Path file) throws IOException {
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      return document.getNumberOfPages();
    }
  }

  private static String text(Path file) throws IOException {
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      return new PDFTextStripper().getText(document).replace('\u00a0', ' ').replaceAll("\\s+", " ");
    }
  }
}
