package org.mainsgate.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.DictionaryEntries;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import org.mainsgate.seal.Made;
import org.mainsgate.seal.Seal;
import org.mainsgate.seal.Verification;
import org.mainsgate.seal.VerificationText;

/**
 * Any bytes, and a sealed record with some of its bytes altered: never an exception, and never
 * unbroken unless nothing was altered.
 */
class VerifierFuzzTest {
  private static final int MOST_EDITS = 12;

  @DictionaryEntries({
    "%PDF-1.6\\x0A", "1 0 obj\\x0A", "\\x0Aendobj\\x0A", "<< ", " >>", "[", "]", "stream\\x0A",
        "\\x0Aendstream",
    "startxref\\x0A", "%%EOF\\x0A", "/Type", "/XRef", "/W", "/Index", "/Prev", "/Root", "/Length",
    "/Filter /FlateDecode", "/ByteRange", "/Contents <", "/EmbeddedFiles", "/Size", "1 0 R"
  })
  @FuzzTest(maxDuration = "8m")
  void anAlteredRecordIsBroken(FuzzedDataProvider data) throws IOException {
    switch (data.consumeInt(0, 7)) {
      case 0 -> assertBroken(data.consumeRemainingAsBytes());
      case 1 -> signedAnew(edited(Sealed.UNSIGNED, data));
      case 2 -> assertBroken(edited(Sealed.FILE, data));
      default -> assertTakenApartOrBroken(edited(Sealed.FILE, data));
    }
  }

  private static void assertBroken(byte[] file) {
    if (!Arrays.equals(file, Sealed.FILE)) {
      assertFalse(verified(file).broken().isEmpty(), "altered and not broken");
    }
  }

  /** The same without the pages made anew, which take most of the time, where that can be told. */
  private static void assertTakenApartOrBroken(byte[] file) {
    if (!Arrays.equals(file, Sealed.FILE)) {
      assertFalse(Made.brokenIn(file).isEmpty(), "altered and not broken");
    }
  }

  /**
   * A stranger may sign what he wrote himself. It may even be unbroken: other spaces between the
   * same objects say the same.
   */
  private static void signedAnew(byte[] unsigned) throws IOException {
    if (Arrays.equals(unsigned, Sealed.UNSIGNED)) {
      return;
    }
    byte[] file;
    try {
      file = Seal.certify(unsigned, Made.signing(false), Made.NOW);
    } catch (IllegalArgumentException noRecord) {
      return;
    }
    verified(file);
  }

  private static Verification verified(byte[] file) {
    Verification found = Made.verify(file);
    VerificationText.screen("f", found, List.of());
    VerificationText.json(found, List.of(), 0);
    return found;
  }

  private static byte[] edited(byte[] original, FuzzedDataProvider data) {
    byte[] bytes = original;
    int edits = data.consumeInt(1, MOST_EDITS);
    for (int i = 0; i < edits && data.remainingBytes() > 0; i++) {
      int at = data.consumeInt(0, bytes.length);
      int end = Math.min(bytes.length, at + data.consumeInt(0, 64));
      boolean again = data.consumeBoolean();
      byte[] piece = again ? piece(bytes, data) : data.consumeBytes(data.consumeInt(0, 64));
      bytes = spliced(bytes, at, end, piece);
    }
    return bytes;
  }

  /** A piece from elsewhere in the file. */
  private static byte[] piece(byte[] bytes, FuzzedDataProvider data) {
    int from = data.consumeInt(0, bytes.length);
    return Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + data.consumeInt(0, 2000)));
  }

  private static byte[] spliced(byte[] bytes, int from, int to, byte[] piece) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(bytes, 0, from);
    out.writeBytes(piece);
    out.write(bytes, to, bytes.length - to);
    return out.toByteArray();
  }

  /** One sealed file for all. */
  private static final class Sealed {
    static final byte[] UNSIGNED;
    static final byte[] FILE;

    static {
      try {
        Made made = Made.of("NL-01");
        UNSIGNED = made.unsigned();
        FILE = made.sealed();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
