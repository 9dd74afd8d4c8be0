package org.mainsgate.report;

import java.util.HexFormat;
import java.util.List;
import java.util.function.Consumer;

/** A JSON text as it grows: indented, with the fields in the order in which they are told. */
public final class JsonText {

  private final StringBuilder out = new StringBuilder();
  private int depth;
  private boolean first = true;
  private boolean named;
  private boolean onOneLine;

  public JsonText open() {
    return begin('{');
  }

  public JsonText close() {
    return end('}');
  }

  public JsonText openList() {
    return begin('[');
  }

  public JsonText closeList() {
    return end(']');
  }

  /** Begins a list of short values on one line; no list or object stands in it. */
  public JsonText openRow() {
    openList();
    onOneLine = true;
    return this;
  }

  public JsonText closeRow() {
    closeList();
    onOneLine = false;
    return this;
  }

  /** The name of the value that comes next. */
  public JsonText name(String name) {
    place();
    quoted(name);
    out.append(": ");
    named = true;
    return this;
  }

  public JsonText text(String value) {
    place();
    quoted(value);
    return this;
  }

  public JsonText text(String name, String value) {
    return name(name).text(value);
  }

  public JsonText number(String name, int value) {
    name(name).place();
    out.append(value);
    return this;
  }

  public JsonText truth(String name, boolean value) {
    name(name).place();
    out.append(value);
    return this;
  }

  public JsonText nothing() {
    place();
    out.append("null");
    return this;
  }

  public <T> JsonText list(String name, List<T> values, Consumer<? super T> told) {
    name(name).openList();
    values.forEach(told);
    return closeList();
  }

  /** A list of short texts or numbers, on one line. */
  public JsonText row(String name, List<String> values) {
    name(name).openRow();
    values.forEach(this::text);
    return closeRow();
  }

  /** What was told since this was asked last; a long text goes out piece by piece. */
  public String taken() {
    String told = out.toString();
    out.setLength(0);
    return told;
  }

  /** A value that stands {@code depth} levels deep in another text. */
  static JsonText within(int depth) {
    JsonText text = new JsonText();
    text.depth = depth;
    text.named = true;
    return text;
  }

  /** Puts in a value that was told before, at this depth. */
  JsonText told(String value) {
    place();
    out.append(value);
    return this;
  }

  /** The whole text, ended by a line feed. */
  @Override
  public String toString() {
    return out + "\n";
  }

  private JsonText begin(char bracket) {
    place();
    out.append(bracket);
    depth++;
    first = true;
    return this;
  }

  private JsonText end(char bracket) {
    depth--;
    if (!first && !onOneLine) {
      line();
    }
    out.append(bracket);
    first = false;
    return this;
  }

  /** Goes to where the next value or name stands. */
  private void place() {
    if (named) {
      named = false;
      return;
    }
    if (!first) {
      out.append(onOneLine ? ", " : ",");
    }
    if (depth > 0 && !onOneLine) {
      line();
    }
    first = false;
  }

  private void line() {
    out.append('\n').append("  ".repeat(depth));
  }

  private void quoted(String text) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      character(text, i);
    }
    out.append('"');
  }

  private void character(String text, int index) {
    char c = text.charAt(index);
    if (c == '"' || c == '\\') {
      out.append('\\').append(c);
    } else if (c < 0x20 || c == 0x7F || isAlone(text, index) || isUnseen(c)) {
      out.append("\\u").append(HexFormat.of().toHexDigits(c));
    } else {
      out.append(c);
    }
  }

  /** A surrogate without its other half has no bytes in UTF-8. */
  private static boolean isAlone(String text, int index) {
    char c = text.charAt(index);
    if (Character.isHighSurrogate(c)) {
      return index + 1 == text.length() || !Character.isLowSurrogate(text.charAt(index + 1));
    }
    return Character.isLowSurrogate(c)
        && (index == 0 || !Character.isHighSurrogate(text.charAt(index - 1)));
  }

  /** What could end a line or reorder a screen, for people who read it there. */
  private static boolean isUnseen(char c) {
    return (c >= 0x80 && c <= 0x9F)
        || (c >= 0x200B && c <= 0x200F)
        || (c >= 0x2028 && c <= 0x202E)
        || (c >= 0x2060 && c <= 0x206F)
        || c == 0xFEFF;
  }
}
