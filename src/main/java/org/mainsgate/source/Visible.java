package org.mainsgate.source;

import java.util.Objects;
import java.util.Optional;

/**
 * Text from a stranger made fit for a terminal: what can't be seen, or could move or reorder what
 * is seen, is spelled out as an escape such as {@code \t} or <code>&#92;u202e</code>.
 *
 * <p>The list of such characters is our own and does not change with the version of the Java
 * runtime.
 */
public final class Visible {

  private Visible() {}

  /** The text with each unseen character spelled out; the result is one line. */
  public static String text(String text) {
    StringBuilder seen = new StringBuilder(text.length());
    text.codePoints().forEach(c -> seen.append(character(c)));
    return seen.toString();
  }

  /** The first character that may not stand in one line of a person's words, in words. */
  public static Optional<String> faultIn(String line) {
    return line.codePoints()
        .mapToObj(c -> c == '\n' ? "a line end" : c == '\t' ? "a tab" : PlainText.faultOf(c))
        .filter(Objects::nonNull)
        .findFirst()
        .map(String::valueOf);
  }

  /** A person's own words in backticks, cut where they are longer than 60 characters. */
  public static String quoted(String words) {
    return "`" + cut(words, 60) + "`";
  }

  /** The text, or its start and an ellipsis where it has more chars than that. */
  static String cut(String text, int chars) {
    if (text.length() <= chars) {
      return text;
    }
    int end = Character.isHighSurrogate(text.charAt(chars - 2)) ? chars - 2 : chars - 1;
    return text.substring(0, end) + "…";
  }

  static String character(int codePoint) {
    return switch (codePoint) {
      case '\t' -> "\\t";
      case '\n' -> "\\n";
      case '\r' -> "\\r";
      default -> isUnseen(codePoint) ? escape(codePoint) : Character.toString(codePoint);
    };
  }

  /** Whether the character has no glyph of its own, or changes the order of those around it. */
  static boolean isUnseen(int c) {
    return c < 0x20
        || in(c, 0x7F, 0x9F)
        || c == 0xAD
        || c == 0x34F
        || in(c, 0x115F, 0x1160)
        || in(c, 0x180B, 0x180F)
        || in(c, 0x200B, 0x200F)
        || in(c, 0x2028, 0x202E)
        || in(c, 0x2060, 0x206F)
        || c == 0x3164
        || in(c, 0xD800, 0xDFFF)
        || in(c, 0xFE00, 0xFE0F)
        || c == 0xFEFF
        || c == 0xFFA0
        || in(c, 0xFFF0, 0xFFFB)
        || (c & 0xFFFE) == 0xFFFE
        || in(c, 0xE0000, 0xE0FFF)
        || isBidiControl(c);
  }

  /**
   * Whether the character is one of those that reorder the text around them (Unicode's
   * Bidi_Control).
   */
  static boolean isBidiControl(int c) {
    return c == 0x61C || in(c, 0x200E, 0x200F) || in(c, 0x202A, 0x202E) || in(c, 0x2066, 0x2069);
  }

  /** The number of terminal cells that a visible character takes: 0, 1 or 2. */
  static int width(int c) {
    int type = Character.getType(c);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
      return 0;
    }
    return isWide(c) ? 2 : 1;
  }

  /** The number of terminal cells that a visible text takes. */
  public static int width(String text) {
    return text.codePoints().map(Visible::width).sum();
  }

  // The main East Asian wide ranges and the emoji; a character missed here shifts a caret by one
  // cell, no more.
  private static boolean isWide(int c) {
    return in(c, 0x1100, 0x115F)
        || in(c, 0x2E80, 0x303E)
        || in(c, 0x3041, 0xA4CF)
        || in(c, 0xAC00, 0xD7A3)
        || in(c, 0xF900, 0xFAFF)
        || in(c, 0xFE30, 0xFE6F)
        || in(c, 0xFF01, 0xFF60)
        || in(c, 0xFFE0, 0xFFE6)
        || in(c, 0x1F300, 0x1F64F)
        || in(c, 0x1F680, 0x1F9FF)
        || in(c, 0x20000, 0x3FFFD);
  }

  private static boolean in(int c, int first, int last) {
    return first <= c && c <= last;
  }

  private static String escape(int codePoint) {
    String digits = Integer.toHexString(codePoint);
    return "\\u"
        + (codePoint > 0xFFFF ? "{" + digits + "}" : "0".repeat(4 - digits.length()) + digits);
  }
}
