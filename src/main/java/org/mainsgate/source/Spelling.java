package org.mainsgate.source;

/**
 * How a scalar is spelled in a YAML file: its style, and the part of the file it takes.
 *
 * @param start the index of the first char in the file, an opening quote or block sign included
 * @param end the index after the last one
 */
record Spelling(Style style, int start, int end) {

  enum Style {
    AS_IT_IS,
    PLAIN,
    SINGLE_QUOTED,
    DOUBLE_QUOTED,
    LITERAL,
    FOLDED
  }

  static Spelling asItIs(int start, int end) {
    return new Spelling(Style.AS_IT_IS, start, end);
  }

  boolean quoted() {
    return style == Style.SINGLE_QUOTED || style == Style.DOUBLE_QUOTED;
  }

  /** For each char of the value, and for the place after the last one, its index in the file. */
  int[] places(String file, String value) {
    return new Walk(file, value).places();
  }

  /**
   * Walks the value and its spelling side by side. The value is known already, so that each step
   * only has to find where the next char of it stands; should the two ever fall out of step, the
   * rest stays at the last place.
   */
  private final class Walk {

    private final String file;
    private final String value;
    private final int[] places;
    private int at;
    private int done;
    // Long runs of spaces are looked through once.
    private int noBreakBefore;

    Walk(String file, String value) {
      this.file = file;
      this.value = value;
      this.places = new int[value.length() + 1];
      this.at = quoted() ? start + 1 : start;
    }

    int[] places() {
      switch (style) {
        case AS_IT_IS -> asItIs();
        case PLAIN, SINGLE_QUOTED, DOUBLE_QUOTED -> flow();
        case LITERAL, FOLDED -> block();
      }
      int last = Math.min(at, quoted() ? end - 1 : end);
      while (done < places.length) {
        places[done++] = last;
      }
      return places;
    }

    private void asItIs() {
      while (done < value.length()) {
        int from = at++;
        put(from);
      }
    }

    private void flow() {
      while (done < value.length() && at < end) {
        if (isBreakAhead()) {
          fold();
        } else if (style == Style.DOUBLE_QUOTED && file.charAt(at) == '\\') {
          escape();
        } else {
          int from = at;
          at += style == Style.SINGLE_QUOTED && file.charAt(at) == '\'' ? 2 : 1;
          put(from);
        }
      }
    }

    private boolean isBreakAhead() {
      if (at < noBreakBefore) {
        return false;
      }
      int i = at;
      while (i < end && isBlank(file.charAt(i))) {
        i++;
      }
      noBreakBefore = i;
      return i < end && isBreak(file.charAt(i));
    }

    // One line break is a space in the value; of several the first is nothing and each other one a
    // line feed.
    private void fold() {
      boolean first = true;
      int space = at;
      while (at < end && (isBlank(file.charAt(at)) || isBreak(file.charAt(at)))) {
        if (file.charAt(at) == '\n') {
          if (!first && next('\n')) {
            put(at);
            space = -1;
          }
          first = false;
        }
        at++;
      }
      if (space >= 0 && next(' ')) {
        put(space);
      }
    }

    private void escape() {
      int from = at;
      char sign = at + 1 < end ? file.charAt(at + 1) : ' ';
      if (isBreak(sign)) {
        joinLines();
        return;
      }
      int digits = sign == 'x' ? 2 : sign == 'u' ? 4 : sign == 'U' ? 8 : 0;
      boolean pair = sign == 'U' && Character.isHighSurrogate(value.charAt(done));
      at += 2 + digits;
      put(from);
      if (pair && done < value.length()) {
        put(from);
      }
    }

    // An escaped line break is nothing, blank lines after it are line feeds, and the next line's
    // indentation is nothing.
    private void joinLines() {
      boolean first = true;
      at++;
      while (at < end && (isBlank(file.charAt(at)) || isBreak(file.charAt(at)))) {
        if (file.charAt(at) == '\n') {
          if (!first && next('\n')) {
            put(at);
          }
          first = false;
        }
        at++;
      }
    }

    private void block() {
      at = endOfLine(at) + 1;
      int indent = indent();
      while (done < value.length() && at < end) {
        int lineEnd = Math.min(endOfLine(at), end);
        int textEnd = lineEnd > at && file.charAt(lineEnd - 1) == '\r' ? lineEnd - 1 : lineEnd;
        at = Math.min(at + indent, textEnd);
        while (at < textEnd && done < value.length()) {
          int from = at++;
          put(from);
        }
        if (style == Style.LITERAL ? next('\n') : next('\n') || next(' ')) {
          put(textEnd);
        }
        at = done < value.length() ? lineEnd + 1 : textEnd;
      }
    }

    // The value's first line that is not empty is as it stands in the file, but for the
    // indentation.
    private int indent() {
      int line = at;
      while (line < end && isBlankLine(line)) {
        line = endOfLine(line) + 1;
      }
      return Math.max(0, spaces(file, line) - spaces(value, firstText()));
    }

    private boolean isBlankLine(int line) {
      int i = line + spaces(file, line);
      return i >= end || isBreak(file.charAt(i));
    }

    private int firstText() {
      int i = 0;
      while (i < value.length() && value.charAt(i) == '\n') {
        i++;
      }
      return i;
    }

    private int spaces(String text, int from) {
      int i = from;
      while (i < text.length() && text.charAt(i) == ' ') {
        i++;
      }
      return i - from;
    }

    private int endOfLine(int from) {
      int found = file.indexOf('\n', from);
      return found < 0 ? file.length() : found;
    }

    private boolean next(char c) {
      return done < value.length() && value.charAt(done) == c;
    }

    private void put(int place) {
      places[done++] = place;
    }

    private static boolean isBlank(char c) {
      return c == ' ' || c == '\t';
    }

    private static boolean isBreak(char c) {
      return c == '\n' || c == '\r';
    }
  }
}
