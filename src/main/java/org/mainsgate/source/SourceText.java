package org.mainsgate.source;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A text with its name and its lines.
 *
 * <p>Lines end at a line feed, with or without a carriage return before it. Positions inside the
 * text are found in logarithmic time, however long its lines are.
 */
public final class SourceText {

  private final String name;
  private final String text;
  private final int[] lineStarts;
  // For each char the number of code points before it; absent where that is the char's own index.
  private final int @Nullable [] codePointsBefore;

  public SourceText(String name, String text) {
    this.name = name;
    this.text = text;
    this.lineStarts = lineStarts(text);
    this.codePointsBefore = codePointsBefore(text);
  }

  /** The name under which the text was read, as it is to be printed. */
  public String name() {
    return name;
  }

  public String text() {
    return text;
  }

  /** The number of lines; a text that ends with a line feed has an empty last line. */
  public int lines() {
    return lineStarts.length;
  }

  /**
   * A line without its end.
   *
   * @param number counted from 1
   * @throws IndexOutOfBoundsException if there is no such line
   */
  public String line(int number) {
    int start = lineStarts[number - 1];
    int end = number < lineStarts.length ? lineStarts[number] - 1 : text.length();
    if (number < lineStarts.length && end > start && text.charAt(end - 1) == '\r') {
      end--;
    }
    return text.substring(start, end);
  }

  /**
   * The position of a char of the text.
   *
   * @param index counted from 0, in UTF-16 chars; the length of the text gives the position after
   *     its last character
   * @throws IndexOutOfBoundsException if the index is outside the text
   */
  public Position position(int index) {
    if (index < 0 || index > text.length()) {
      throw new IndexOutOfBoundsException(index);
    }
    int found = Arrays.binarySearch(lineStarts, index);
    int line = found >= 0 ? found : -found - 2;
    return new Position(name, line + 1, codePoint(index) - codePoint(lineStarts[line]) + 1);
  }

  /**
   * The char index of the code point with this number, or the text's length where there is none.
   */
  int indexOfCodePoint(int number) {
    if (codePointsBefore == null) {
      return Math.min(number, text.length());
    }
    int found = Arrays.binarySearch(codePointsBefore, number);
    if (found < 0) {
      return text.length();
    }
    // Both chars of a pair have the same number of code points before the pair.
    return found > 0 && codePointsBefore[found - 1] == number ? found - 1 : found;
  }

  private int codePoint(int index) {
    return codePointsBefore == null ? index : codePointsBefore[index];
  }

  // Loops and no streams: every file of the rules comes through here at each start, before anything
  // is compiled.
  private static int[] lineStarts(String text) {
    int[] starts = new int[16 + text.length() / 32];
    int lines = 1;
    for (int i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) {
      starts = lines == starts.length ? Arrays.copyOf(starts, 2 * lines) : starts;
      starts[lines++] = i + 1;
    }
    return Arrays.copyOf(starts, lines);
  }

  private static int @Nullable [] codePointsBefore(String text) {
    if (text.codePointCount(0, text.length()) == text.length()) {
      return null;
    }
    int[] before = new int[text.length() + 1];
    int count = 0;
    for (int i = 0; i < text.length(); count++) {
      int width = Character.charCount(text.codePointAt(i));
      for (int k = 0; k < width; k++) {
        before[i + k] = count;
      }
      i += width;
    }
    before[text.length()] = count;
    return before;
  }
}
