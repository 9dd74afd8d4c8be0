package org.mainsgate.agenda;

import org.mainsgate.source.Visible;

/**
 * The text of a file to fill in, of three sorts of lines: lines that stand as they are; lines to
 * fill in, which say nothing until their {@code #} is taken away; and words for the reader, which
 * have two of them. Words are wrapped to 100 columns.
 */
final class Commented {
  private static final int WIDTH = 100;
  private static final int WORDS = 48;

  private final StringBuilder text = new StringBuilder();

  /** A line as it stands. */
  Commented line(String line) {
    text.append(line).append('\n');
    return this;
  }

  /** Words for the reader, of as many lines as it takes; none for an empty text. */
  Commented comment(int indent, String words) {
    if (words.isBlank()) {
      return this;
    }
    String start = " ".repeat(indent) + "##";
    StringBuilder line = new StringBuilder(start);
    for (String word : onOneLine(words).split(" ", -1)) {
      if (line.length() > start.length() && line.length() + 1 + word.length() > WIDTH) {
        line(line.toString());
        line = new StringBuilder(start);
      }
      line.append(' ').append(word);
    }
    return line(line.toString());
  }

  /** A line to fill in. */
  Commented open(int indent, String line) {
    return line(" ".repeat(indent) + "# " + line);
  }

  /** A line to fill in, with words about it behind it, or above it where they are too long. */
  Commented open(int indent, String line, String words) {
    return about(indent, "# " + line, words);
  }

  /** A heading as it stands, with words about it. */
  Commented heading(int indent, String name, String words) {
    return about(indent, name + ":", words);
  }

  private Commented about(int indent, String start, String words) {
    String line = " ".repeat(indent) + start;
    String about = onOneLine(words);
    String behind = line + " ".repeat(Math.max(0, WORDS - line.length())) + "  # " + about;
    if (about.isEmpty()) {
      return line(line);
    }
    return behind.length() <= WIDTH ? line(behind) : comment(indent, about).line(line);
  }

  /** No text of a stranger ends a comment, or hides in it. */
  private static String onOneLine(String words) {
    return Visible.text(words.strip().replaceAll("\\s+", " "));
  }

  /** What a file says of a value in double quotes, so that it means these characters. */
  static String quoted(String value) {
    return "\"" + value.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
