package org.mainsgate.source;

import java.util.Comparator;
import java.util.stream.Collectors;

/**
 * What to tell a person about a piece of text that can't be understood: where it is, what is wrong,
 * and what would be right.
 *
 * <p>Complaints are about text, never about the state of an instrument.
 *
 * @param at where the piece of text starts
 * @param line the line it stands on; empty where the line is not known
 * @param what what is wrong: lower case, no final period, the person's own words in backticks
 * @param right what would be right, to be read after the word "expected"; may be empty
 * @param nearest the nearest valid name, without backticks; may be empty
 */
public record Complaint(Position at, String line, String what, String right, String nearest)
    implements Comparable<Complaint> {

  private static final int WIDTH = 80;
  private static final int LONGEST = 2000;

  private static final Comparator<Complaint> ORDER =
      Comparator.comparing(Complaint::at)
          .thenComparing(Complaint::what)
          .thenComparing(Complaint::right)
          .thenComparing(Complaint::nearest)
          .thenComparing(Complaint::line);

  public Complaint {
    if (what.isBlank()) {
      throw new IllegalArgumentException("a complaint must say what is wrong");
    }
    what = Visible.cut(what, LONGEST);
    right = Visible.cut(right, LONGEST);
    nearest = Visible.cut(nearest, LONGEST);
  }

  /** By file, line and column; at one place by what they say. */
  @Override
  public int compareTo(Complaint other) {
    return ORDER.compare(this, other);
  }

  /**
   * The complaint as lines of text, each ended by a line feed and at most 80 terminal cells wide as
   * far as it can be broken, with nothing in them that could move or reorder a terminal:
   *
   * <pre>
   * bench.yaml:4:1: unknown field `profil`
   *     profil: gb
   *     ^
   *   expected: one of `people`, `profile`, `zone`
   *   nearest: `profile`
   * </pre>
   */
  public String render() {
    StringBuilder out = new StringBuilder(wrap("", at + ": " + what));
    if (!line.isEmpty()) {
      out.append(new Excerpt(line, at.column(), WIDTH - Excerpt.INDENT).render());
    }
    if (!right.isEmpty()) {
      out.append(wrap("  ", "expected: " + right));
    }
    if (!nearest.isEmpty()) {
      out.append(wrap("  ", "nearest: `" + nearest + "`"));
    }
    return out.toString();
  }

  private static String wrap(String indent, String text) {
    StringBuilder out = new StringBuilder(indent);
    int used = indent.length();
    String separator = "";
    for (String word : Visible.text(text).split(" ", -1)) {
      int width = Visible.width(word);
      if (!separator.isEmpty() && used + 1 + width > WIDTH) {
        separator = "\n" + indent + "  ";
        used = indent.length() + 2 + width;
      } else {
        used += separator.length() + width;
      }
      out.append(separator).append(word);
      separator = " ";
    }
    return out.append('\n')
        .toString()
        .lines()
        .map(String::stripTrailing)
        .collect(Collectors.joining("\n", "", "\n"));
  }
}
