package org.mainsgate.seal;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;

/**
 * Makes something else of a sealed file, the way that attackers do: after the signature forgeries
 * of 2019, the shadow attacks of 2020 and those on certified documents of 2021, as published.
 */
final class Forger {
  /** The subtypes of annotations of ISO 32000-1, table 169. */
  private static final List<String> ANNOTATIONS =
      List.of(
          "Text",
          "Link",
          "FreeText",
          "Line",
          "Square",
          "Circle",
          "Polygon",
          "PolyLine",
          "Highlight",
          "Underline",
          "Squiggly",
          "StrikeOut",
          "Stamp",
          "Caret",
          "Ink",
          "Popup",
          "FileAttachment",
          "Sound",
          "Movie",
          "Widget",
          "Screen",
          "PrinterMark",
          "TrapNet",
          "Watermark",
          "3D",
          "Redact");

  private final byte[] sealed;
  private final byte[] accepted;
  private final Random random;

  Forger(byte[] sealed, byte[] accepted, long seed) {
    this.sealed = sealed;
    this.accepted = accepted;
    this.random = new Random(seed);
  }

  /** One way to forge. */
  interface Forgery {
    byte[] of() throws IOException;
  }

  /** What is done to a document that is then saved after itself. */
  private interface Change {
    void to(PDDocument document) throws IOException;
  }

  /** Every family, one file of each. */
  Map<String, Forgery> families() {
    Map<String, Forgery> all = new LinkedHashMap<>();
    all.put("page content replaced", () -> later(this::content));
    all.put("annotation added", () -> later(this::annotation));
    all.put("field filled", () -> later(this::fill));
    all.put("field added", () -> later(this::field));
    all.put("embedded record swapped", () -> later(this::swap));
    all.put("names changed", () -> later(d -> catalog(d).setItem("Names", new COSDictionary())));
    all.put("page added or taken away", () -> later(this::pages));
    all.put("metadata changed", () -> later(this::metadata));
    all.put(
        "optional content",
        () -> later(d -> catalog(d).setItem("OCProperties", new COSDictionary())));
    all.put("action", () -> later(this::action));
    all.put(
        "certification taken from the catalog",
        () -> later(d -> catalog(d).removeItem(COSName.getPDFName("Perms"))));
    all.put("visible second signature", () -> later(this::visible));
    all.put("trailing bytes", this::trailing);
    all.put("written by hand", this::byHand);
    all.put("certification cut off", this::cut);
    all.put("byte range moved", this::range);
    all.put("contents null or short", this::contents);
    all.put("revisions out of order", this::order);
    all.put("bytes put in", this::putIn);
    all.put("truncated", () -> Arrays.copyOf(accepted, random.nextInt(accepted.length)));
    all.put("two files in one", this::joined);
    return all;
  }

  private byte[] any() {
    return random.nextBoolean() ? sealed : accepted;
  }

  private byte[] later(Change change) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(any())) {
      change.to(document);
      catalog(document).setNeedToBeUpdated(true);
      document.saveIncremental(out);
    }
    return out.toByteArray();
  }

  private static COSDictionary catalog(PDDocument document) {
    return document.getDocumentCatalog().getCOSObject();
  }

  private PDPage page(PDDocument document) {
    PDPage page = document.getPage(random.nextInt(document.getNumberOfPages()));
    page.getCOSObject().setNeedToBeUpdated(true);
    return page;
  }

  private void content(PDDocument document) throws IOException {
    byte[] words = "BT /F1 20 Tf 100 700 Td (pass) Tj ET".getBytes(StandardCharsets.US_ASCII);
    PDStream stream = new PDStream(document, new ByteArrayInputStream(words));
    stream.getCOSObject().setNeedToBeUpdated(true);
    page(document).setContents(stream);
  }

  private void annotation(PDDocument document) throws IOException {
    COSDictionary note = new COSDictionary();
    note.setName(COSName.TYPE, "Annot");
    note.setName(COSName.SUBTYPE, ANNOTATIONS.get(random.nextInt(ANNOTATIONS.size())));
    COSArray box = new COSArray();
    for (int side : List.of(40, 600, 560, 800)) {
      box.add(COSInteger.get(side));
    }
    note.setItem(COSName.RECT, box);
    note.setString(COSName.CONTENTS, "pass");
    note.setNeedToBeUpdated(true);
    PDPage page = page(document);
    List<PDAnnotation> all = page.getAnnotations();
    all.add(PDAnnotation.createAnnotation(note));
    page.setAnnotations(all);
  }

  private void fill(PDDocument document) {
    PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
    List<PDField> fields = form.getFields();
    COSDictionary field = fields.get(random.nextInt(fields.size())).getCOSObject();
    field.setString(COSName.getPDFName(random.nextBoolean() ? "V" : "TU"), "pass");
    field.setNeedToBeUpdated(true);
  }

  private void field(PDDocument document) {
    COSDictionary field = new COSDictionary();
    field.setName(COSName.FT, random.nextBoolean() ? "Tx" : "Sig");
    field.setString(COSName.T, "accept-" + (6 + random.nextInt(3)));
    field.setNeedToBeUpdated(true);
    COSDictionary form = document.getDocumentCatalog().getAcroForm(null).getCOSObject();
    form.getCOSArray(COSName.FIELDS).add(field);
    form.setNeedToBeUpdated(true);
  }

  private void swap(PDDocument document) throws IOException {
    COSArray names =
        (COSArray)
            catalog(document)
                .getCOSDictionary(COSName.getPDFName("Names"))
                .getCOSDictionary(COSName.getPDFName("EmbeddedFiles"))
                .getDictionaryObject(COSName.getPDFName("Names"));
    int pair = random.nextInt(names.size() / 2);
    COSDictionary file = (COSDictionary) names.getObject(2 * pair + 1);
    COSStream stream = (COSStream) file.getCOSDictionary(COSName.EF).getDictionaryObject(COSName.F);
    byte[] old = stream.createInputStream().readAllBytes();
    old[random.nextInt(old.length)] ^= 1;
    try (var out = stream.createOutputStream(COSName.FLATE_DECODE)) {
      out.write(old);
    }
    stream.setNeedToBeUpdated(true);
  }

  private void pages(PDDocument document) {
    if (random.nextBoolean()) {
      document.addPage(new PDPage());
    } else {
      document.removePage(random.nextInt(document.getNumberOfPages()));
    }
    document.getPages().getCOSObject().setNeedToBeUpdated(true);
  }

  private void metadata(PDDocument document) throws IOException {
    PDMetadata other = new PDMetadata(document, new ByteArrayInputStream(new byte[] {'x'}));
    other.getCOSObject().setNeedToBeUpdated(true);
    document.getDocumentCatalog().setMetadata(other);
  }

  private void action(PDDocument document) {
    COSDictionary action = new COSDictionary();
    action.setName(
        COSName.S, List.of("JavaScript", "Launch", "URI", "GoToR").get(random.nextInt(4)));
    action.setString(COSName.getPDFName("JS"), "app.alert(1)");
    catalog(document)
        .setItem(COSName.getPDFName(random.nextBoolean() ? "OpenAction" : "AA"), action);
  }

  private void visible(PDDocument document) {
    PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
    COSDictionary field = form.getField("accept-" + (1 + random.nextInt(5))).getCOSObject();
    COSArray box = new COSArray();
    for (int side : List.of(40, 600, 560, 800)) {
      box.add(COSInteger.get(side));
    }
    field.setItem(COSName.RECT, box);
    field.setNeedToBeUpdated(true);
  }

  private byte[] trailing() {
    byte[] file = any();
    byte[] longer = Arrays.copyOf(file, file.length + 1 + random.nextInt(64));
    byte[] more = new byte[longer.length - file.length];
    if (random.nextBoolean()) {
      random.nextBytes(more);
    } else {
      Arrays.fill(more, (byte) "\n \0%".charAt(random.nextInt(4)));
    }
    System.arraycopy(more, 0, longer, file.length, more.length);
    return longer;
  }

  /** A revision with a table in the old style, which names another catalog. */
  private byte[] byHand() {
    byte[] file = any();
    String text = new String(file, StandardCharsets.ISO_8859_1);
    String previous = text.substring(text.lastIndexOf("startxref\n") + 10).split("\n", 2)[0];
    int number = 1 + random.nextInt(40);
    String object = number + " 0 obj\n<< /Type /Catalog /Pages 3 0 R >>\nendobj\n";
    int table = file.length + object.length();
    String rest =
        "xref\n"
            + number
            + " 1\n"
            + String.format(java.util.Locale.ROOT, "%010d 00000 n \n", file.length)
            + "trailer\n<< /Size 9000 /Root "
            + number
            + " 0 R /Prev "
            + previous
            + " >>\nstartxref\n"
            + table
            + "\n%%EOF\n";
    return (text + object + rest).getBytes(StandardCharsets.ISO_8859_1);
  }

  private byte[] cut() {
    String text = new String(sealed, StandardCharsets.ISO_8859_1);
    int end = text.lastIndexOf("%%EOF\n", text.lastIndexOf("/Type /Sig"));
    int more = random.nextInt(40);
    return Arrays.copyOf(sealed, end + 6 + (random.nextBoolean() ? 0 : more));
  }

  private byte[] range() {
    String text = new String(any(), StandardCharsets.ISO_8859_1);
    int at = text.indexOf("/ByteRange [");
    int end = text.indexOf(']', at);
    String[] numbers = text.substring(at + 12, end).split(" ", -1);
    int which = random.nextInt(4);
    long value = Long.parseLong(numbers[which]) + random.nextInt(200) - 100;
    numbers[which] = String.valueOf(Math.max(0, value));
    String moved = String.join(" ", numbers);
    if (moved.equals(text.substring(at + 12, end))) {
      moved = moved + " 0";
    }
    return (text.substring(0, at + 12) + moved + text.substring(end))
        .getBytes(StandardCharsets.ISO_8859_1);
  }

  private byte[] contents() {
    String text = new String(any(), StandardCharsets.ISO_8859_1);
    int at = text.indexOf("/Contents <") + 10;
    int end = text.indexOf('>', at);
    String old = text.substring(at, end + 1);
    String other =
        switch (random.nextInt(5)) {
          case 0 -> "null" + " ".repeat(old.length() - 4);
          case 1 -> "<" + "0".repeat(old.length() - 2) + ">";
          case 2 -> "<>" + " ".repeat(old.length() - 2);
          case 3 -> old.toLowerCase(java.util.Locale.ROOT);
          default -> old.substring(0, old.length() - 3) + "01>";
        };
    return text.replace(old, other).getBytes(StandardCharsets.ISO_8859_1);
  }

  /** The acceptance without the seal, the seal twice, or the acceptance twice. */
  private byte[] order() {
    int unsigned = endOf(sealed);
    byte[] base = Arrays.copyOf(sealed, unsigned);
    byte[] seal = Arrays.copyOfRange(sealed, unsigned, sealed.length);
    byte[] accept = Arrays.copyOfRange(accepted, sealed.length, accepted.length);
    return switch (random.nextInt(4)) {
      case 0 -> joined(base, accept);
      case 1 -> joined(base, accept, seal);
      case 2 -> joined(base, seal, seal);
      default -> joined(base, seal, accept, accept);
    };
  }

  private static int endOf(byte[] file) {
    String text = new String(file, StandardCharsets.ISO_8859_1);
    return text.lastIndexOf("%%EOF\n", text.indexOf("<< /Type /Sig /Filter")) + 6;
  }

  private byte[] putIn() {
    byte[] file = any();
    int at = random.nextInt(file.length);
    byte[] more = new byte[1 + random.nextInt(16)];
    random.nextBytes(more);
    return joined(Arrays.copyOf(file, at), more, Arrays.copyOfRange(file, at, file.length));
  }

  private byte[] joined() {
    return random.nextBoolean() ? joined(sealed, sealed) : joined(accepted, sealed);
  }

  private static byte[] joined(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }
}
