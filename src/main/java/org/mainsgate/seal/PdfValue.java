package org.mainsgate.seal;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A value of a PDF (ISO 32000-1 7.3), and the one way in which this program writes it: one space
 * between tokens, strings in hex.
 */
sealed interface PdfValue {

  /** The value as this program writes it, all of it ASCII. */
  String written();

  /** A number or one of {@code true}, {@code false}, {@code null}, as it stands. */
  record Word(String text) implements PdfValue {
    @Override
    public String written() {
      return text;
    }

    /** The number, if it is a whole one that is not negative and has at most ten digits. */
    Optional<Long> number() {
      return text.matches("[0-9]{1,10}") ? Optional.of(Long.parseLong(text)) : Optional.empty();
    }
  }

  /** A name, without its slash and with its escapes undone. */
  record Name(String text) implements PdfValue {
    @Override
    public String written() {
      StringBuilder out = new StringBuilder("/");
      for (byte b : text.getBytes(StandardCharsets.ISO_8859_1)) {
        int c = b & 0xFF;
        boolean plain = c > 0x20 && c < 0x7F && "()<>[]{}/%#".indexOf(c) < 0;
        out.append(
            plain ? String.valueOf((char) c) : "#" + HexFormat.of().withUpperCase().toHexDigits(b));
      }
      return out.toString();
    }
  }

  /** A string's bytes, one character each. */
  record Chars(String text) implements PdfValue {
    @Override
    public String written() {
      return "<" + HexFormat.of().withUpperCase().formatHex(bytes()) + ">";
    }

    byte[] bytes() {
      return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    /** The text: UTF-16 after its mark, else in the encoding of ISO 32000-1, annex D.2. */
    String decoded() {
      byte[] bytes = bytes();
      boolean wide = bytes.length >= 2 && bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF;
      return wide ? new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16BE) : text;
    }

    /** Any text as a string of UTF-16. */
    static Chars of(String text) {
      String bytes =
          new String(text.getBytes(StandardCharsets.UTF_16BE), StandardCharsets.ISO_8859_1);
      return new Chars("\u00FE\u00FF" + bytes);
    }
  }

  /** A reference to an object of generation 0. */
  record Reference(int number) implements PdfValue {
    @Override
    public String written() {
      return number + " 0 R";
    }
  }

  /** Values in their order. */
  record Array(List<PdfValue> items) implements PdfValue {
    public Array {
      items = List.copyOf(items);
    }

    @Override
    public String written() {
      return "[" + String.join(" ", items.stream().map(PdfValue::written).toList()) + "]";
    }
  }

  /** Values by name, in the order in which they stand. */
  record Dictionary(Map<String, PdfValue> entries) implements PdfValue {
    public Dictionary {
      entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }

    @Override
    public String written() {
      StringBuilder out = new StringBuilder("<<");
      entries.forEach(
          (name, value) ->
              out.append(' ').append(new Name(name).written()).append(' ').append(value.written()));
      return out.append(" >>").toString();
    }

    Optional<PdfValue> get(String name) {
      return Optional.ofNullable(entries.get(name));
    }

    /** The same with one more entry at the end. */
    Dictionary with(String name, PdfValue value) {
      Map<String, PdfValue> more = new LinkedHashMap<>(entries);
      more.put(name, value);
      return new Dictionary(more);
    }

    boolean says(String name, String value) {
      return get(name).filter(new Name(value)::equals).isPresent();
    }
  }

  /**
   * A dictionary and the bytes that follow it.
   *
   * @param from where the bytes start in the text that was read
   * @param to where they end
   */
  record Stream(Dictionary dictionary, int from, int to) implements PdfValue {
    @Override
    public String written() {
      throw new IllegalStateException("no stream is ever written again");
    }
  }
}
