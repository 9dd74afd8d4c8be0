package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.DeflaterOutputStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.api.Test;

/** Any file at all: never an exception, never taken for a sealed record. */
class AnyFileTest {

  private static void refused(byte[] file) {
    assertFalse(Made.verify(file).broken().isEmpty());
  }

  @Property(tries = 300)
  void anyBytes(@ForAll byte[] bytes) {
    refused(bytes);
  }

  @Property(tries = 100)
  void aSealedFileWithAPieceOfAnyBytes(@ForAll byte[] bytes, @ForAll int seed) throws IOException {
    byte[] sealed = Sealed.FILE.clone();
    int at = Math.floorMod(seed, sealed.length);
    int length = Math.min(bytes.length, sealed.length - at);
    System.arraycopy(bytes, 0, sealed, at, length);
    if (!Arrays.equals(sealed, Sealed.FILE)) {
      refused(sealed);
    }
  }

  @Test
  void halfABytesDigitInTheSignature() {
    String text = new String(Sealed.FILE, StandardCharsets.ISO_8859_1);
    int at = text.indexOf("/Contents <") + 30;
    String odd = text.substring(0, at) + ">" + text.substring(at + 1);
    refused(odd.getBytes(StandardCharsets.ISO_8859_1));
  }

  @Test
  void nothing() {
    refused(new byte[0]);
  }

  @Test
  void aPlainPdf() throws IOException {
    refused(pdf(false));
  }

  @Test
  void anEncryptedPdf() throws IOException {
    refused(pdf(true));
  }

  @Test
  void aRecordThatWasNeverSealed() throws IOException {
    refused(Made.of("NL-01").unsigned());
  }

  @Test
  void everyTruncationByAThousand() {
    for (int length = 0; length < Sealed.FILE.length; length += 997) {
      refused(Arrays.copyOf(Sealed.FILE, length));
    }
  }

  // What a stranger may sign himself: the reader of objects is bounded too.

  @Test
  void valuesThatStandDeepInEachOther() {
    String deep = "1 0 obj\n" + "[".repeat(200_000) + "]".repeat(200_000) + "\nendobj\n";
    unread(deep + "startxref\n15\n%%EOF\n");
  }

  @Test
  void aTableThatNamesItself() {
    String rows = "\1\0\0\0\17\0\0\1\0\0\0\17\0\0";
    String head = "1 0 obj\n<< /Type /XRef /Size 2 /W [1 4 2] /Root 1 0 R /Length 14 >>\nstream\n";
    unread(head + rows + "\nendstream\nendobj\nstartxref\n15\n%%EOF\n");
  }

  @Test
  void aStreamThatInflatesBeyondAllBounds() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (DeflaterOutputStream out = new DeflaterOutputStream(packed)) {
      for (int i = 0; i < 200; i++) {
        out.write(new byte[1 << 20]);
      }
    }
    String table = packed.toString(StandardCharsets.ISO_8859_1);
    unread(
        "1 0 obj\n<< /Type /XRef /Size 2 /W [1 4 2] /Filter /FlateDecode /Index [0 2] /Length "
            + table.length()
            + " >>\nstream\n"
            + table
            + "\nendstream\nendobj\nstartxref\n15\n%%EOF\n");
  }

  private static void unread(String objects) {
    String head = "%PDF-1.6\n%\u00F6\u00E4\u00FC\u00DF\n";
    assertTrue(PdfObjects.read((head + objects).getBytes(StandardCharsets.ISO_8859_1)).isEmpty());
  }

  private static byte[] pdf(boolean encrypted) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage());
      if (encrypted) {
        document.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission()));
      }
      document.save(out);
    }
    return out.toByteArray();
  }

  /** One sealed file for all. */
  private static final class Sealed {
    static final byte[] FILE;

    static {
      try {
        FILE = Made.of("NL-01").sealed();
      } catch (IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }
  }
}
