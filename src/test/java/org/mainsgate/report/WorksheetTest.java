package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The page of paper: how much of it there is, and that nothing gets lost on it. */
class WorksheetTest {
  private static final Path REPORTS = Path.of("target/reports");
  private static final Worksheet.Item TICK =
      new Worksheet.Item(
          "plug out and in sight",
          "",
          List.of(new Worksheet.Part("", Worksheet.Mark.BOX, List.of("yes", "no"), List.of(), "")));
  private static final Worksheet.Item READING =
      new Worksheet.Item(
          "earth path, case",
          "expect 0.12 Ω or less",
          List.of(
              new Worksheet.Part("", Worksheet.Mark.BOX, List.of(), List.of(""), "Ω"),
              new Worksheet.Part("test current", Worksheet.Mark.BOX, List.of(), List.of(""), "A")));
  private static final Worksheet.Item EACH =
      new Worksheet.Item(
          "sheath, each mains lead",
          "",
          List.of(
              new Worksheet.Part(
                  "", Worksheet.Mark.NUMBERS, List.of("sound", "hardened"), List.of(), "")));

  private final Pdf pdf = new Pdf();

  @Test
  void whatFitsOnOneSideIsOnOneSide() throws IOException {
    String text = text(bytes(sheet(List.of(step("Plug out", TICK), step("Earth", READING)))), 1);
    assertTrue(text.contains("plug out and in sight ☐ yes ☐ no"), text);
    assertTrue(text.contains("earth path, case expect 0.12 Ω or less Ω test current A"), text);
    assertTrue(text.contains("Nothing is judged on paper"), text);
  }

  @Test
  void aStopStandsBetweenItsStepAndTheNext() throws IOException {
    Worksheet.Step stopped =
        new Worksheet.Step(
            "Discharge",
            "Touch nothing.",
            List.of("It can kill."),
            List.of(READING),
            "Charge stop. No hand goes in.",
            "sections discharged");
    String text = text(bytes(sheet(List.of(stopped, step("Inside", TICK)))), 1);
    List<String> inOrder =
        List.of("Discharge", "It can kill.", "earth path", "STOP Charge stop.", "Until", "Inside");
    List<Integer> places = inOrder.stream().map(text::indexOf).toList();
    assertEquals(places.stream().sorted().toList(), places, text);
    assertFalse(places.contains(-1), text);
  }

  @Test
  void moreThanOneSideIsSetCloserAndThenTakesTheOtherSide() throws IOException {
    List<Worksheet.Item> many = Collections.nCopies(70, READING);
    Worksheet sheet = sheet(List.of(new Worksheet.Step("Earth", "", List.of(), many, "", "")));
    assertEquals(2, pages(bytes(sheet)));
    List<Worksheet.Item> fewer = Collections.nCopies(40, READING);
    assertEquals(
        1, pages(bytes(sheet(List.of(new Worksheet.Step("Earth", "", List.of(), fewer, "", ""))))));
  }

  @Test
  void whatHasNoRoomOnTwoSidesIsNamed() throws IOException {
    List<Worksheet.Step> steps =
        List.of("first", "second", "third", "fourth", "fifth").stream()
            .map(
                title ->
                    new Worksheet.Step(
                        title, "", List.of(), Collections.nCopies(40, READING), "", ""))
            .toList();
    byte[] bytes = bytes(sheet(steps));
    assertEquals(2, pages(bytes));
    String text = text(bytes, 2);
    assertTrue(text.contains("Then"), text);
    for (String title : List.of("fourth", "fifth")) {
      assertTrue(text.contains(title), text);
    }
    assertTrue(text(bytes, 1).contains("first"));
  }

  @Test
  void numbersAreExplainedWhereThereAreLinesForThem() throws IOException {
    String with = text(bytes(sheet(List.of(step("Lead", EACH)))), 1);
    String without = text(bytes(sheet(List.of(step("Lead", TICK)))), 1);
    assertTrue(with.contains("Number the things that you list"), with);
    assertTrue(with.contains("sheath, each mains lead sound hardened"), with);
    assertFalse(without.contains("Number the things"), without);
  }

  @Test
  void theSameSheetGivesTheSameBytes() throws IOException {
    Worksheet sheet = sheet(List.of(step("Plug out", TICK)));
    assertArrayEquals(bytes(sheet), bytes(sheet));
  }

  @Test
  void aCharacterWithoutAGlyphIsNamedWithItsField() {
    Worksheet sheet = sheet(List.of(step("Plug out 漢", TICK)));
    List<String> complaints = pdf.complaints(sheet);
    assertEquals(1, complaints.size());
    assertTrue(complaints.get(0).startsWith("steps 1, title: `Plug out 漢`"), complaints.get(0));
    assertThrows(
        IllegalArgumentException.class,
        () -> pdf.write(sheet, Samples.ON, new ByteArrayOutputStream()));
  }

  @Test
  void theJudgeOfPagesGetsOne() throws IOException {
    Files.createDirectories(REPORTS);
    Worksheet sheet = sheet(List.of(step("Plug out", TICK, READING, EACH), step("Earth", READING)));
    byte[] bytes = bytes(sheet);
    Files.write(REPORTS.resolve("worksheet.pdf"), bytes);
    try (PDDocument document = Loader.loadPDF(bytes)) {
      assertTrue(document.getDocumentCatalog().getMarkInfo().isMarked());
      assertEquals(
          "NL-09: valve voltmeter, to be filled in", document.getDocumentInformation().getTitle());
    }
  }

  private static Worksheet.Step step(String title, Worksheet.Item... items) {
    return new Worksheet.Step(title, "", List.of(), List.of(items), "", "");
  }

  private static Worksheet sheet(List<Worksheet.Step> steps) {
    return new Worksheet(
        "NL-09",
        "valve voltmeter",
        "2026-11-25",
        "cold stage",
        "gb, edition 2026.1",
        Worksheet.Closeness.WIDE,
        List.of(),
        List.of(new Worksheet.Matter("put right", "Protection class", List.of("Find out."))),
        steps,
        List.of());
  }

  private byte[] bytes(Worksheet sheet) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    pdf.write(sheet, Samples.ON, out);
    return out.toByteArray();
  }

  private static int pages(byte[] bytes) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes)) {
      return document.getNumberOfPages();
    }
  }

  private static String text(byte[] bytes, int page) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setStartPage(page);
      stripper.setEndPage(page);
      return stripper.getText(document).replace('\u00a0', ' ').replaceAll("\\s+", " ");
    }
  }
}
