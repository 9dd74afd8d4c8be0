package org.mainsgate.seal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.mainsgate.seal.PdfValue.Array;
import org.mainsgate.seal.PdfValue.Chars;
import org.mainsgate.seal.PdfValue.Dictionary;
import org.mainsgate.seal.PdfValue.Name;
import org.mainsgate.seal.PdfValue.Reference;
import org.mainsgate.seal.PdfValue.Stream;
import org.mainsgate.seal.PdfValue.Word;

/**
 * Reads values of a PDF from where it stands (ISO 32000-1 7.2 and 7.3), bounded and strict: no
 * comments, no generations but 0, no name twice in a dictionary, a stream's length in its
 * dictionary.
 */
final class PdfParser {
  private static final int DEEPEST = 32;
  private static final String ENDS_WORD = "\0\t\n\f\r ()<>[]{}/%";

  private static final Pattern WORD = Pattern.compile("[+-]?[0-9]*\\.?[0-9]*|true|false|null");
  private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

  private final byte[] text;
  private int at;
  private int depth;

  /** A parser that starts there; the bytes are not copied. */
  PdfParser(byte[] text, int at) {
    this.text = text;
    this.at = at;
  }

  /** The text is not what it should be. Never leaves this room. */
  static final class Odd extends Exception {
    private static final long serialVersionUID = 1L;

    Odd(String what, int at) {
      super(what + " at byte " + at);
    }
  }

  int at() {
    return at;
  }

  /** An object with its number. */
  record Numbered(int number, PdfValue value) {}

  /** {@code 7 0 obj ... endobj} with one line end after it. */
  Numbered object() throws Odd {
    int number = whole();
    expect(" 0 obj");
    skipSpace();
    PdfValue value = value();
    if (value instanceof Dictionary dictionary && looksAt("\nstream")) {
      value = stream(dictionary);
    }
    skipSpace();
    expect("endobj\n");
    return new Numbered(number, value);
  }

  private PdfValue stream(Dictionary dictionary) throws Odd {
    expect("\nstream");
    if (looksAt("\r")) {
      at++;
    }
    expect("\n");
    long length =
        dictionary.get("Length").orElse(dictionary) instanceof Word word
            ? word.number().orElse(Long.MAX_VALUE)
            : Long.MAX_VALUE;
    if (length > text.length - at) {
      throw new Odd("a stream without its length", at);
    }
    int from = at;
    at += (int) length;
    skipSpace();
    expect("endstream");
    return new Stream(dictionary, from, from + (int) length);
  }

  /** A whole number that is not negative. */
  int whole() throws Odd {
    int from = at;
    while (at < text.length && text[at] >= '0' && text[at] <= '9' && at - from < 9) {
      at++;
    }
    if (at == from) {
      throw new Odd("no number", at);
    }
    return Integer.parseInt(ascii(from, at));
  }

  /** One value. */
  PdfValue value() throws Odd {
    if (++depth > DEEPEST) {
      throw new Odd("values too deep in each other", at);
    }
    PdfValue value =
        switch (peek()) {
          case '/' -> name();
          case '(' -> literal();
          case '[' -> array();
          case '<' -> looksAt("<<") ? dictionary() : hex();
          default -> word();
        };
    depth--;
    return value;
  }

  private PdfValue word() throws Odd {
    int from = at;
    while (at < text.length && ENDS_WORD.indexOf(text[at]) < 0) {
      at++;
    }
    String word = ascii(from, at);
    if (word.isEmpty() || !WORD.matcher(word).matches()) {
      throw new Odd("no value", from);
    }
    int after = at;
    if (looksAt(" 0 R") && WHOLE.matcher(word).matches()) {
      at += 4;
      boolean ended = at >= text.length || ENDS_WORD.indexOf(text[at]) >= 0;
      if (ended) {
        return new Reference(Integer.parseInt(word));
      }
      at = after;
    }
    return new Word(word);
  }

  private Name name() throws Odd {
    expect("/");
    StringBuilder name = new StringBuilder();
    while (at < text.length && ENDS_WORD.indexOf(text[at]) < 0) {
      if (text[at] == '#') {
        name.append((char) (digit(at + 1) * 16 + digit(at + 2)));
        at += 3;
      } else {
        name.append((char) (text[at++] & 0xFF));
      }
    }
    return new Name(name.toString());
  }

  private int digit(int where) throws Odd {
    int value = where < text.length ? Character.digit(text[where], 16) : -1;
    if (value < 0) {
      throw new Odd("no hex digit", where);
    }
    return value;
  }

  private Chars hex() throws Odd {
    expect("<");
    StringBuilder chars = new StringBuilder();
    while (peek() != '>') {
      chars.append((char) (digit(at) * 16 + digit(at + 1)));
      at += 2;
    }
    expect(">");
    return new Chars(chars.toString());
  }

  /** Escapes as PDFBox writes them: of brackets and the backslash. */
  private Chars literal() throws Odd {
    expect("(");
    StringBuilder chars = new StringBuilder();
    while (peek() != ')') {
      if (peek() == '(') {
        throw new Odd("a bracket in a string", at);
      }
      if (peek() == '\\') {
        at++;
        if ("()\\".indexOf(peek()) < 0) {
          throw new Odd("an escape that is not known", at);
        }
      }
      chars.append((char) (text[at++] & 0xFF));
    }
    expect(")");
    return new Chars(chars.toString());
  }

  private Array array() throws Odd {
    expect("[");
    List<PdfValue> items = new ArrayList<>();
    skipSpace();
    while (peek() != ']') {
      items.add(value());
      skipSpace();
    }
    expect("]");
    return new Array(items);
  }

  private Dictionary dictionary() throws Odd {
    expect("<<");
    Map<String, PdfValue> entries = new LinkedHashMap<>();
    skipSpace();
    while (!looksAt(">>")) {
      String name = name().text();
      skipSpace();
      if (entries.put(name, value()) != null) {
        throw new Odd("`" + name + "` twice", at);
      }
      skipSpace();
    }
    expect(">>");
    return new Dictionary(entries);
  }

  private int peek() throws Odd {
    if (at >= text.length) {
      throw new Odd("an end", at);
    }
    return text[at];
  }

  void skipSpace() {
    while (at < text.length && (text[at] == ' ' || text[at] == '\n' || text[at] == '\r')) {
      at++;
    }
  }

  /** Whether these characters stand here, one byte each. */
  boolean looksAt(String word) {
    if (text.length - at < word.length()) {
      return false;
    }
    for (int i = 0; i < word.length(); i++) {
      if ((text[at + i] & 0xFF) != word.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  void expect(String word) throws Odd {
    if (!looksAt(word)) {
      throw new Odd("no `" + word.strip() + "`", at);
    }
    at += word.length();
  }

  private String ascii(int from, int to) {
    return new String(text, from, to - from, StandardCharsets.ISO_8859_1);
  }
}
