package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class PdfTest {

  /** Where an independent judge looks for reports to judge. */
  private static final Path REPORTS = Path.of("target/reports");

  private final Pdf pdf = new Pdf();

  @Test
  void everyPageNamesTheInstrumentAndTheVerdict() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes("near", Samples.near()))) {
      int pages = document.getNumberOfPages();
      for (int page = 1; page <= pages; page++) {
        String text = text(document, page);
        assertTrue(text.contains("NL-03, 2026-11-25: hold, cold stage"), text);
        assertTrue(text.contains("page " + page + " of " + pages), text);
      }
    }
  }

  @Test
  void theFirstPageSaysTheVerdictAndWhatWouldSettleIt() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes("near", Samples.near()))) {
      String first = text(document, 1).replace('\n', ' ');
      assertTrue(first.contains("HOLD"), first);
      assertTrue(first.contains("0.13 Ω (0.097 to 0.163) against 0.1 Ω + 0.0585 Ω"), first);
      assertTrue(first.contains("0.12 Ω or less would pass"), first);
      assertTrue(first.contains("until the next yearly check, indoors only"), first);
      assertTrue(first.contains("Never lift or defeat the protective earth"), first);
    }
  }

  @Test
  void textOfTheRecordIsPrintedAndNeverRead() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes("near", Samples.near()))) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertTrue(text.contains("<over its whole length> & both ends"), text);
    }
  }

  @Test
  void theLastPageLeavesTheLastWordToOthers() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes("sound", Samples.sound()))) {
      String text = text(document, document.getNumberOfPages()).replaceAll("\\s+", " ");
      assertTrue(text.contains(Sheet.LAST_WORD), text);
    }
  }

  @Test
  void theSameSheetGivesTheSameBytes() throws IOException {
    assertArrayEquals(bytes("near", Samples.near()), bytes("near", Samples.near()));
    Sheet sheet = Sheet.of(Samples.unearthed());
    assertArrayEquals(print(new Pdf(), sheet), print(new Pdf(), sheet));
  }

  @Test
  void theDocumentIsTaggedAndSaysSo() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes("unearthed", Samples.unearthed()))) {
      PDDocumentCatalog catalog = document.getDocumentCatalog();
      assertTrue(catalog.getMarkInfo().isMarked());
      assertFalse(catalog.getStructureTreeRoot().getKids().isEmpty());
      assertEquals("en", catalog.getLanguage());
      assertEquals(1, catalog.getOutputIntents().size());
      String packet = new String(catalog.getMetadata().toByteArray(), StandardCharsets.UTF_8);
      assertTrue(packet.contains("<pdfaid:part>3</pdfaid:part>"), packet);
      assertTrue(packet.contains("<pdfaid:conformance>A</pdfaid:conformance>"), packet);
      assertTrue(packet.contains("<pdfuaid:part>1</pdfuaid:part>"), packet);
      assertTrue(packet.contains("2026-11-25T00:00:00Z"), packet);
    }
  }

  @Test
  void everyFontIsInside() throws IOException {
    List<String> fonts = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(bytes("blank", Samples.blank()))) {
      for (PDPage page : document.getPages()) {
        PDResources resources = page.getResources();
        for (COSName name : resources.getFontNames()) {
          PDFont font = resources.getFont(name);
          assertTrue(font.isEmbedded(), font.getName());
          fonts.add(font.getName());
        }
      }
    }
    assertFalse(fonts.isEmpty());
    fonts.forEach(name -> assertTrue(name.contains("DejaVuSans"), name));
  }

  @Test
  void aCharacterWithoutAGlyphIsNamedWithItsField() {
    Sheet sheet = sheet("signal generator 漢");
    assertEquals(
        List.of(
            "what: `signal generator 漢` has the character U+6F22, which the fonts of the report"
                + " can't print"),
        pdf.complaints(sheet));
    assertThrows(
        IllegalArgumentException.class,
        () -> pdf.write(sheet, Samples.ON, new ByteArrayOutputStream()));
  }

  @Test
  void aFieldIsNamedAsThePageNamesIt() {
    List<String> told = new ArrayList<>();
    new Texts((field, text) -> told.add(field + " = " + text)).of(Sheet.of(Samples.near()));
    assertTrue(told.contains("what = RC oscillator"), told.toString());
    assertTrue(told.contains("identity 4, serial number = 1187"), told.toString());
    assertTrue(
        told.contains("judgements 1, restriction = until the next yearly check, indoors only"),
        told.toString());
    assertTrue(told.contains("visits 2, lines 5, note = Dry room, 19 °C."), told.toString());
  }

  @Test
  void whatWouldBePrintedOtherwiseThanItWasWrittenIsRefused() {
    // Right-to-left text needs reordering, and controls have no form; both would be printed wrong.
    for (String text : List.of("\u05d0", "\u0627", "a\u202eb", "\u0000", "\ue000", "\ud800")) {
      assertEquals(1, pdf.complaints(sheet(text)).size(), () -> "U+" + (int) text.charAt(0));
    }
  }

  @Test
  void theCharactersOfTheTradeArePrinted() {
    assertEquals(
        List.of(), pdf.complaints(sheet("Ω Ω µ μ ± ≤ ≥ × ÷ − ° ² ³ → √ π é ß Ж λ “q” — …")));
  }

  @Test
  void aLetterInTwoPartsIsPrintedAsOne() throws IOException {
    Sheet sheet = sheet("re\u0301cepteur");
    assertEquals(List.of(), pdf.complaints(sheet));
    try (PDDocument document = Loader.loadPDF(print(pdf, sheet))) {
      assertTrue(text(document, 1).contains("récepteur"));
    }
  }

  @Test
  void placeAndTimeOfTheMachineChangeNothing() throws IOException {
    byte[] here = print(pdf, Sheet.of(Samples.near()));
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      // Turkish has an i of its own, Arabic its own digits; both places are on other days.
      for (String place : List.of("tr-TR", "ar-EG-u-nu-arab")) {
        Locale.setDefault(Locale.forLanguageTag(place));
        TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
        assertArrayEquals(here, print(new Pdf(), Sheet.of(Samples.near())), place);
      }
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void aWordWithoutEndStaysOnThePage() throws IOException {
    Sheet sheet = sheet("x".repeat(400));
    try (PDDocument document = Loader.loadPDF(print(pdf, sheet))) {
      String text = text(document, 1);
      long longest =
          text.lines()
              .filter(line -> line.matches(" *x+ *"))
              .mapToInt(String::length)
              .max()
              .orElse(0);
      assertTrue(longest > 10 && longest < 100, text);
    }
  }

  @Test
  void nothingOfTheMachineIsTouched() throws IOException {
    Path cache = Path.of(System.getProperty("user.home"), ".pdfbox.cache");
    boolean before = Files.exists(cache);
    print(pdf, Sheet.of(Samples.near()));
    assertEquals(before, Files.exists(cache));
  }

  private static Sheet sheet(String what) {
    Sheet sheet = Sheet.of(Samples.blank());
    return new Sheet(
        sheet.tag(),
        what,
        sheet.on(),
        sheet.stage(),
        sheet.verdict(),
        sheet.meaning(),
        sheet.reach(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of("Unplug it."),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        Optional.empty());
  }

  private byte[] bytes(String name, Dossier dossier) throws IOException {
    byte[] bytes = print(pdf, Sheet.of(dossier));
    Files.createDirectories(REPORTS);
    Files.write(REPORTS.resolve(name + ".pdf"), bytes);
    return bytes;
  }

  private static byte[] print(Pdf pdf, Sheet sheet) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    pdf.write(sheet, Samples.ON, out);
    return out.toByteArray();
  }

  private static String text(PDDocument document, int page) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    return stripper.getText(document).replace('\u00a0', ' ');
  }
}
