package org.mainsgate.source;

import java.util.Objects;

/**
 * A scalar of a YAML file, as text: {@code no}, {@code 010} and {@code ~} mean what the person
 * wrote.
 *
 * <p>Knows where each of its characters stands in the file. Two are equal if they say the same at
 * the same position.
 */
public final class Text implements Node {

  private final SourceText source;
  private final int start;
  private final String value;
  private final Spelling spelling;

  Text(SourceText source, int start, String value, Spelling spelling) {
    this.source = source;
    this.start = start;
    this.value = value;
    this.spelling = spelling;
  }

  /** A whole source text as one scalar, for text that stands in no YAML file. */
  public static Text whole(SourceText source) {
    return new Text(source, 0, source.text(), Spelling.asItIs(0, source.text().length()));
  }

  public String value() {
    return value;
  }

  int start() {
    return start;
  }

  @Override
  public Position at() {
    return source.position(start);
  }

  /**
   * Where a char of the value stands in the file.
   *
   * <p>Exact for a scalar of any style; where line folding makes one char of several, the first of
   * them.
   *
   * @param offset counted from 0, in UTF-16 chars of the value; its length gives the place after
   *     the last one
   * @throws IndexOutOfBoundsException if the offset is outside the value
   */
  public Position at(int offset) {
    Objects.checkIndex(offset, value.length() + 1);
    return source.position(spelling.places(source.text(), value)[offset]);
  }

  /** Whether it stands in single or double quotes. */
  public boolean quoted() {
    return spelling.quoted();
  }

  /** Whether nothing at all was written where a value is due; {@code ""} in quotes is not blank. */
  public boolean isBlank() {
    return value.isEmpty() && !spelling.quoted();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Text text && value.equals(text.value) && at().equals(text.at());
  }

  @Override
  public int hashCode() {
    return value.hashCode();
  }

  /** The value. */
  @Override
  public String toString() {
    return value;
  }
}
