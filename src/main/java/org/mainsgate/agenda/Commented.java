package org.mainsgate.agenda;

/** The text of a file to fill in: lines, and comments wrapped to 100 columns. */
final class Commented {
  private static final int WIDTH = 100;

  private final StringBuilder text = new StringBuilder();

  /** A line as it stands. */
  Commented line(String line) {
    text.append(line).append('\n');
    return this;
  }

  /** A comment of as many lines as it takes; none for an empty one. */
  Commented comment(int indent, String words) {
    String start = " ".repeat(indent) + "#";
    StringBuilder line = new StringBuilder(start);
    for (String word : words.strip().split("\\s+", -1)) {
      if (line.length() > start.length() && line.length() + 1 + word.length() > WIDTH) {
        line(line.toString());
        line = new StringBuilder(start);
      }
      line.append(' ').append(word);
    }
    return words.isBlank() ? this : line(line.toString());
  }

  /** A line to fill in: it says nothing until the sign before it is taken away. */
  Commented open(int indent, String line) {
    return line(" ".repeat(indent) + "# " + line);
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
