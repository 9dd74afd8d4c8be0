package org.mainsgate.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.util.XRLog;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * The report on one instrument as pages: a tagged PDF for print and for the archive, after ISO
 * 19005-3 level A and ISO 14289-1.
 *
 * <p>The same sheet gives the same bytes on one JDK. It opens no connection, reads no file, looks
 * at no font of the machine and writes to no log.
 */
public final class Pdf {

  private static final List<String> STYLES =
      List.of("style.css", "worksheet.css", "tags-sheet.css", "tags-small.css");
  private static final String PHOTO = "report:photo-";

  /** Kept, since the log forgets the level of a logger that nobody holds. */
  private static final List<Logger> SILENCED =
      List.of(Logger.getLogger("org.apache.pdfbox"), Logger.getLogger("org.apache.fontbox"));

  private final Typeface typeface;
  private final TemplateEngine templates;

  /** A press with the fonts and templates that ship with the program. */
  public Pdf() {
    SILENCED.forEach(logger -> logger.setLevel(Level.OFF));
    XRLog.setLoggingEnabled(false);
    FontMappers.set(NoSystemFonts.INSTANCE);
    this.typeface = Typeface.shipped();
    this.templates = TemplateEngine.createPrecompiled(ContentType.Html);
  }

  /**
   * What of a sheet can't be printed as it was recorded: for each character the first field with
   * it. A report with any of these is not made, so that no mark stands for a character that is not
   * there.
   */
  public List<String> complaints(Sheet sheet) {
    return unprintable(sheet);
  }

  /** What of a page to be filled in can't be printed. */
  public List<String> complaints(Worksheet sheet) {
    return unprintable(sheet);
  }

  private List<String> unprintable(Record sheet) {
    Map<Integer, String> complaints = new LinkedHashMap<>();
    new Texts(
            (field, text) ->
                typeface
                    .unprintable(normal(text))
                    .ifPresent(
                        character ->
                            complaints.putIfAbsent(character, complaint(field, text, character))))
        .of(sheet);
    return List.copyOf(complaints.values());
  }

  /**
   * Writes the pages.
   *
   * @param on the date that the document carries as that of its making
   * @throws IllegalArgumentException if there are {@link #complaints}
   * @throws IOException if the stream can't be written to
   */
  public void write(Sheet sheet, LocalDate on, OutputStream out) throws IOException {
    refuse(complaints(sheet));
    out.write(print(sheet, on, Optional.empty()));
  }

  /**
   * Writes a page to be filled in: on one side of a sheet if that can be read, else on two. What
   * has no room there is named only.
   *
   * @param on the date that the document carries as that of its making
   * @throws IllegalArgumentException if there are {@link #complaints}
   * @throws IOException if the stream can't be written to
   */
  public void write(Worksheet sheet, LocalDate on, OutputStream out) throws IOException {
    refuse(complaints(sheet));
    Optional<Printed> best = Optional.empty();
    for (Worksheet.Closeness closeness : Worksheet.Closeness.values()) {
      Printed printed = print(sheet.with(closeness), on);
      boolean fits = printed.pages() <= Worksheet.MOST_PAGES;
      if (printed.pages() == 1 || (fits && best.isEmpty())) {
        best = Optional.of(printed);
      }
      if (printed.pages() == 1) {
        break;
      }
    }
    Printed printed = best.isPresent() ? best.get() : shortened(sheet, on);
    printed.bytes().writeTo(out);
  }

  /** As many steps as there is room for. */
  private Printed shortened(Worksheet sheet, LocalDate on) throws IOException {
    Worksheet shorter = sheet.with(Worksheet.Closeness.TIGHT);
    Printed printed;
    do {
      shorter = shorter.shorter();
      printed = print(shorter, on);
    } while (printed.pages() > Worksheet.MOST_PAGES && !shorter.steps().isEmpty());
    return printed;
  }

  /**
   * The pages with files attached and empty signature fields: what a sealed record is before it is
   * signed. The same sheet and files give the same bytes on one JDK.
   *
   * @param on the date that the document carries as that of its making
   * @param files the bytes of the files by path
   * @param fields the names of the fields, with what each is for, in their order
   * @throws IllegalArgumentException if there are {@link #complaints}
   */
  public byte[] unsigned(
      Sheet sheet, LocalDate on, Map<String, byte[]> files, Map<String, String> fields)
      throws IOException {
    refuse(complaints(sheet));
    return print(sheet, on, Optional.of(new Enclosures(files, fields)));
  }

  /**
   * Whether pages, which another release may have made, have the words that decide: the verdict and
   * what it means, and the title of each check that was judged.
   *
   * @param pages a PDF whose objects were looked at before
   */
  public boolean says(byte[] pages, Sheet sheet) {
    try (PDDocument document = Loader.loadPDF(pages)) {
      String text = letters(new PDFTextStripper().getText(document));
      String line =
          sheet.tag() + ", " + sheet.on() + ": " + sheet.verdict().word() + ", " + sheet.stage();
      return text.contains(letters(line))
          && text.contains(letters(sheet.meaning()))
          && Stream.of(sheet.fails(), sheet.holds())
              .flatMap(List::stream)
              .allMatch(open -> text.contains(letters(open.title())))
          && sheet.checks().stream().allMatch(row -> text.contains(letters(row.title())));
    } catch (IOException | RuntimeException unreadable) {
      // Pages of a stranger: the library throws both, and asks for fonts that are refused.
      return false;
    }
  }

  /** Letters and digits alone, as they are read out. */
  private static String letters(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  private Printed print(Worksheet sheet, LocalDate on) throws IOException {
    Stamp stamp =
        new Stamp(
            sheet.tag() + ": " + sheet.what() + ", to be filled in",
            "Page to fill in for " + sheet.tag(),
            on);
    return print(page("worksheet.jte", sheet), Map.of(), stamp, Optional.empty());
  }

  private static void refuse(List<String> complaints) {
    if (!complaints.isEmpty()) {
      throw new IllegalArgumentException(String.join("; ", complaints));
    }
  }

  private byte[] print(Sheet sheet, LocalDate on, Optional<Enclosures> enclosures)
      throws IOException {
    Map<String, byte[]> photos = new LinkedHashMap<>();
    for (int i = 0; i < sheet.photos().size(); i++) {
      photos.put(PHOTO + i + ".jpg", sheet.photos().get(i).picture().jpeg());
    }
    Stamp stamp = new Stamp(sheet.tag() + ": " + sheet.what(), "Report on " + sheet.tag(), on);
    return print(page(sheet), photos, stamp, enclosures).bytes().toByteArray();
  }

  /** What of tags can't be printed. */
  public List<String> complaints(TagSheet sheet) {
    return unprintable(sheet);
  }

  /**
   * Writes tags to tie on.
   *
   * @param on the date that the document carries as that of its making
   * @throws IllegalArgumentException if there are {@link #complaints}
   * @throws IOException if the stream can't be written to
   */
  public void write(TagSheet sheet, LocalDate on, OutputStream out) throws IOException {
    refuse(complaints(sheet));
    Map<String, byte[]> squares = new LinkedHashMap<>();
    for (int i = 0; i < sheet.tags().size(); i++) {
      squares.put("report:square-" + i + ".png", Square.of(sheet.tags().get(i).code()));
    }
    Stamp stamp = new Stamp("Tags to tie on", "Tags of sealed records", on);
    print(page("tags.jte", sheet), squares, stamp, Optional.empty()).bytes().writeTo(out);
  }

  /** A finished document, and how many pages it has. */
  private record Printed(ByteArrayOutputStream bytes, int pages) {}

  private static Printed print(
      String page, Map<String, byte[]> pictures, Stamp stamp, Optional<Enclosures> enclosures)
      throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PdfBoxRenderer renderer = builder(page, pictures).buildPdfRenderer();
        PDDocument document = renderer.createPDFKeepOpen()) {
      List<byte[]> content = new ArrayList<>();
      content.add(page.getBytes(StandardCharsets.UTF_8));
      content.addAll(pictures.values());
      if (enclosures.isPresent()) {
        enclosures.get().put(document, stamp.midnight());
        content.addAll(enclosures.get().files().values());
      }
      stamp.put(document, content);
      document.save(out);
      return new Printed(out, document.getNumberOfPages());
    }
  }

  /** The page as XHTML. */
  String page(Sheet sheet) {
    return page("report.jte", sheet);
  }

  private String page(String template, Record sheet) {
    StringOutput page = new StringOutput();
    templates.render(template, sheet, page);
    return Spacing.bound(normal(page.toString()));
  }

  private static PdfRendererBuilder builder(String page, Map<String, byte[]> pictures) {
    Map<String, byte[]> known = new LinkedHashMap<>(pictures);
    for (String style : STYLES) {
      known.put("report:" + style, Resources.read("/report/" + style));
    }
    return new PdfRendererBuilder()
        .usePdfAConformance(PdfAConformance.PDFA_3_A)
        .usePdfUaAccessibility(true)
        .useColorProfile(Resources.read("/report/srgb.icc"))
        .useFont(Typeface::regular, Typeface.FAMILY, 400, FontStyle.NORMAL, true)
        .useFont(Typeface::bold, Typeface.FAMILY, 700, FontStyle.NORMAL, true)
        .useUriResolver((base, uri) -> uri)
        .useExternalResourceAccessControl(
            (uri, type) -> known.containsKey(uri),
            ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
        .useExternalResourceAccessControl(
            (uri, type) -> known.containsKey(uri),
            ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI)
        .useProtocolsStreamImplementation(
            uri -> new Bytes(known.getOrDefault(uri, new byte[0])), "report")
        .withHtmlContent(page, null);
  }

  /** Composed letters, for which the fonts have glyphs of their own; they look the same. */
  private static String normal(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC);
  }

  private static String complaint(String field, String text, int character) {
    String shown = text.length() > 40 ? text.substring(0, 40) + "…" : text;
    return String.format(
        Locale.ROOT,
        "%s: `%s` has the character U+%04X, which the fonts of the report can't print",
        field,
        shown,
        character);
  }
}
