package org.mainsgate.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.OptionalInt;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The fonts that a report is set in, and the characters that they can print. */
final class Typeface {

  static final String FAMILY = "DejaVu Sans";

  private final List<CmapLookup> glyphs;

  private Typeface(List<CmapLookup> glyphs) {
    this.glyphs = glyphs;
  }

  /** The fonts that ship with the program. */
  static Typeface shipped() {
    return new Typeface(List.of(glyphsOf(regular()), glyphsOf(bold())));
  }

  static InputStream regular() {
    return Resources.open("/fonts/DejaVuSans.ttf");
  }

  static InputStream bold() {
    return Resources.open("/fonts/DejaVuSans-Bold.ttf");
  }

  /**
   * The first character of a text that would not be printed as it was typed: one without a glyph,
   * without a visible form, or of a script that runs from right to left.
   */
  OptionalInt unprintable(String text) {
    return text.codePoints().filter(character -> !prints(character)).findFirst();
  }

  private boolean prints(int character) {
    if (character == '\n' || character == '\t' || character == '\r') {
      return true;
    }
    return !isInvisible(character)
        && !runsLeftwards(character)
        && glyphs.stream().allMatch(font -> font.getGlyphId(character) != 0);
  }

  private static boolean isInvisible(int character) {
    return switch (Character.getType(character)) {
      case Character.CONTROL, Character.FORMAT, Character.SURROGATE, Character.PRIVATE_USE -> true;
      default -> false;
    };
  }

  private static boolean runsLeftwards(int character) {
    byte direction = Character.getDirectionality(character);
    return direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
        || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
  }

  private static CmapLookup glyphsOf(InputStream font) {
    try (font) {
      TrueTypeFont read =
          new TTFParser()
              .parse(new RandomAccessReadBuffer(new ByteArrayInputStream(font.readAllBytes())));
      return read.getUnicodeCmapLookup();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
