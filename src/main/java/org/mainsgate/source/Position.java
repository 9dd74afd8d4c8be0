package org.mainsgate.source;

import java.util.Comparator;

/**
 * A place in a text: the character at a line and a column, as an editor counts them.
 *
 * @param file the name under which the text was read, as it is to be printed
 * @param line counted from 1
 * @param column counted from 1, in code points; a tab counts as one
 */
public record Position(String file, int line, int column) implements Comparable<Position> {

  private static final Comparator<Position> ORDER =
      Comparator.comparing(Position::file)
          .thenComparingInt(Position::line)
          .thenComparingInt(Position::column);

  public Position {
    if (line < 1 || column < 1) {
      throw new IllegalArgumentException("line and column count from 1: " + line + ":" + column);
    }
  }

  @Override
  public int compareTo(Position other) {
    return ORDER.compare(this, other);
  }

  /** {@code file:line:column}, as compilers print it. */
  @Override
  public String toString() {
    return file + ":" + line + ":" + column;
  }
}
