package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What stands on a tag stands on it whole: whoever ties it on compares the key that is last. */
class TagSheetTest {
  private static final double POINTS_PER_MM = 72 / 25.4;

  /** The longest limit that a tag quotes, and the longest of what else it may say. */
  private static final String CAUTION =
      "Only: "
          + "shown on the bench only, looked at again before. ".repeat(2)
          + "Attended only, indoors, dry, behind a residual current device. After a knock, damp or"
          + " smoke: stop, unplug, have it looked at.";

  private static final String KEY = "51775 42125 21088 25464 53834 00921 41611 03825 01900 03980";

  private static TagSheet.Tag longest(boolean connects) {
    return new TagSheet.Tag(
        "NL-10",
        "Nordhavn twelve-valve communications receiver, serial number 1052-4431-A",
        connects ? "Yearly examination: pass, restricted" : Handover.NOT_FOR_CONNECTION,
        connects,
        "yearly examination, nothing opened: pass, 2026-11-25, profile new-equipment",
        "2027-11-25",
        "1234",
        KEY,
        "0123 4567 89ab cdef",
        CAUTION,
        "mainsgate 1 NL-10 1234 " + "0".repeat(64) + " " + "1".repeat(64));
  }

  /**
   * @param millimetres from the top of the page to where the first tag ends
   */
  @ParameterizedTest
  @CsvSource({"SHEET, true, 72.5", "SHEET, false, 70.6", "SMALL, true, 38.5", "SMALL, false, 36.8"})
  void nothingOfATagIsCutOff(TagSheet.Form form, boolean connects, double millimetres)
      throws IOException {
    ByteArrayOutputStream page = new ByteArrayOutputStream();
    TagSheet sheet = new TagSheet(form, List.of(longest(connects)));
    new Pdf().write(sheet, LocalDate.of(2026, 11, 25), page);
    List<TextPosition> glyphs = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(page.toByteArray())) {
      PDFTextStripper reader =
          new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition glyph) {
              glyphs.add(glyph);
              super.processTextPosition(glyph);
            }
          };
      String text = reader.getText(document).replaceAll("\\s+", " ");
      assertEquals(1, document.getNumberOfPages());
      assertTrue(text.strip().endsWith("key " + KEY), text);
    }
    double lowest = glyphs.stream().mapToDouble(TextPosition::getYDirAdj).max().orElseThrow();
    assertTrue(
        lowest / POINTS_PER_MM < millimetres, "the last line is at " + lowest / POINTS_PER_MM);
  }
}
