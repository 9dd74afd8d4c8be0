package org.mainsgate.source;

/**
 * The part of a source line around a column that fits a width, with a caret below that column.
 *
 * @param line the source line
 * @param column counted from 1, in code points; one past the end is the place after the last
 *     character
 * @param width in terminal cells
 */
record Excerpt(String line, int column, int width) {

  static final int INDENT = 4;
  private static final String CUT = "…";

  /** Two lines, each ended by a line feed. */
  String render() {
    int caret =
        line.offsetByCodePoints(0, Math.min(column - 1, line.codePointCount(0, line.length())));
    String before = tail(line.substring(0, caret), leftRoom(caret));
    String after = head(line.substring(caret), width - Visible.width(before));
    String margin = " ".repeat(INDENT);
    String excerpt = (margin + before + after).stripTrailing();
    return excerpt + "\n" + margin + " ".repeat(Visible.width(before)) + "^\n";
  }

  // The line's start is kept as long as at least a third of the width is left for what follows the
  // caret.
  private int leftRoom(int caret) {
    String after = head(line.substring(caret), width);
    return width - Math.max(1, Math.min(Visible.width(after), width / 3));
  }

  private static String head(String text, int room) {
    StringBuilder kept = new StringBuilder();
    int used = 0;
    int chars = 0;
    while (chars < text.length() && kept.length() <= 4 * room) {
      int c = text.codePointAt(chars);
      String seen = Visible.character(c);
      used += Visible.width(seen);
      if (used > room) {
        return shorten(kept, room - 1) + CUT;
      }
      kept.append(seen);
      chars += Character.charCount(c);
    }
    return chars < text.length() ? kept + CUT : kept.toString();
  }

  private static String shorten(StringBuilder text, int room) {
    while (Visible.width(text.toString()) > room) {
      text.setLength(text.offsetByCodePoints(text.length(), -1));
    }
    return text.toString();
  }

  private static String tail(String text, int room) {
    StringBuilder kept = new StringBuilder();
    int used = 0;
    int chars = text.length();
    while (chars > 0 && kept.length() <= 4 * room) {
      int c = text.codePointBefore(chars);
      String seen = Visible.character(c);
      used += Visible.width(seen);
      if (used > room) {
        return CUT + drop(kept, room - 1);
      }
      kept.insert(0, seen);
      chars -= Character.charCount(c);
    }
    return chars > 0 ? CUT + kept : kept.toString();
  }

  private static String drop(StringBuilder text, int room) {
    while (Visible.width(text.toString()) > room) {
      text.delete(0, text.offsetByCodePoints(0, 1));
    }
    return text.toString();
  }
}
