package org.mainsgate.report;

import org.mainsgate.source.Visible;

/** Text for a terminal, wrapped between words so that no line is wider than 80 cells. */
public final class Lines {

  private static final int WIDTH = 80;

  private final StringBuilder out = new StringBuilder();

  /** An empty line. */
  public Lines blank() {
    out.append('\n');
    return this;
  }

  /** A paragraph; what can't be seen in it is spelled out. */
  public Lines add(int indent, String text) {
    return add(indent, "", text);
  }

  /**
   * A paragraph that begins with something of its own; the lines that follow stand below its text.
   *
   * @param lead already fit for a terminal; what it takes may include escape sequences
   */
  public Lines add(int indent, String lead, int leadWidth, String text) {
    int hang = indent + leadWidth;
    out.append(" ".repeat(indent)).append(lead);
    int used = hang;
    boolean first = true;
    for (String bound : Spacing.bound(Visible.text(text)).split(" ", -1)) {
      String word = bound.replace(Spacing.BOUND, ' ');
      if (word.isEmpty()) {
        continue;
      }
      if (!first && used + 1 + Visible.width(word) > WIDTH) {
        used = next(hang);
      } else if (!first) {
        out.append(' ');
        used++;
      }
      used = word(word, used, hang);
      first = false;
    }
    out.append('\n');
    return this;
  }

  Lines add(int indent, String lead, String text) {
    return add(indent, lead, Visible.width(lead), text);
  }

  private int next(int hang) {
    out.append('\n').append(" ".repeat(hang));
    return hang;
  }

  /** A word; one that no line can hold is broken where the line ends. */
  private int word(String word, int start, int hang) {
    int used = start;
    for (int i = 0; i < word.length(); i += Character.charCount(word.codePointAt(i))) {
      String character = Character.toString(word.codePointAt(i));
      int width = Visible.width(character);
      if (used + width > WIDTH) {
        used = next(hang);
      }
      out.append(character);
      used += width;
    }
    return used;
  }

  /** All lines, each ended by a line feed and without blanks at its end. */
  @Override
  public String toString() {
    return out.toString();
  }
}
