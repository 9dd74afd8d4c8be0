package org.mainsgate.source;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Bytes read as UTF-8, each byte that is none and each character that may not stand in a file
 * complained about.
 *
 * @param source the text as it stands in the file, for positions and excerpts
 * @param harmless the same text, as long, with a replacement character in place of each forbidden
 *     one
 * @param faults how many bytes and characters were wrong
 */
record PlainText(SourceText source, String harmless, int faults) {

  /**
   * So many faults are told one by one; a file with more of them is no text, and nothing else is
   * said about it.
   */
  static final int COMPLAINTS = 20;

  private static final char REPLACEMENT = '\uFFFD';
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  static PlainText read(String name, byte[] bytes, Complaints complaints) {
    return new Reading(name, bytes, complaints).read();
  }

  /** What is wrong with a character, in words; null if it may stand in a value. */
  static @Nullable String faultOf(int c) {
    String code = String.format(Locale.ROOT, "U+%04X", c);
    if (c == 0) {
      return "a NUL character";
    }
    if (c == '\r') {
      return "a carriage return without a line feed";
    }
    if (Visible.isBidiControl(c)) {
      return "the hidden direction mark " + code;
    }
    if (c == BYTE_ORDER_MARK) {
      return "a byte order mark inside the text";
    }
    if (c == 0x85 || c == 0x2028 || c == 0x2029) {
      return "the line separator " + code;
    }
    if ((c < 0x20 && c != '\t' && c != '\n') || (0x7F <= c && c <= 0x9F)) {
      return "the control character " + code;
    }
    boolean noCharacter =
        (c & 0xFFFE) == 0xFFFE || (0xFDD0 <= c && c <= 0xFDEF) || (0xD800 <= c && c <= 0xDFFF);
    return noCharacter ? code + ", which is no character" : null;
  }

  /** Whether a character is one of the many that need no closer look. */
  static boolean isAlwaysAllowed(int c) {
    return (0x20 <= c && c <= 0x7E) || c == '\n' || c == '\t' || (0xA0 <= c && c <= 0x5FF);
  }

  /** One reading under way. */
  private static final class Reading {

    private final ByteBuffer in;
    private final CharBuffer out;
    private final Complaints complaints;
    private final int[] badPlaces = new int[COMPLAINTS];
    private final byte[] badBytes = new byte[COMPLAINTS];
    private final String name;
    private int bad;
    private int faults;

    Reading(String name, byte[] bytes, Complaints complaints) {
      this.name = name;
      this.in = ByteBuffer.wrap(bytes);
      this.out = CharBuffer.allocate(bytes.length + 1);
      this.complaints = complaints;
    }

    PlainText read() {
      decode();
      String text = out.flip().toString();
      SourceText source = new SourceText(name, text);
      complaints.reading(source);
      for (int i = 0; i < Math.min(bad, COMPLAINTS); i++) {
        String what = String.format(Locale.ROOT, "the byte 0x%02X is not UTF-8", badBytes[i]);
        complain(source, badPlaces[i], what, "a file saved as UTF-8");
      }
      faults = bad;
      String harmless = withoutForbidden(source);
      if (faults > COMPLAINTS) {
        complaints.add(
            source.position(source.text().length()),
            (faults - COMPLAINTS) + " more such bytes or characters in this file");
      }
      return new PlainText(source, harmless, faults);
    }

    private void decode() {
      CharsetDecoder decoder =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT);
      CoderResult result = decoder.decode(in, out, true);
      while (result.isError()) {
        if (bad < COMPLAINTS) {
          badPlaces[bad] = out.position();
          badBytes[bad] = in.get(in.position());
        }
        bad++;
        in.position(in.position() + result.length());
        out.put(REPLACEMENT);
        result = decoder.decode(in, out, true);
      }
    }

    private String withoutForbidden(SourceText source) {
      String text = source.text();
      StringBuilder harmless = null;
      int next;
      for (int i = firstDoubtful(text, 0); i < text.length(); i = firstDoubtful(text, next)) {
        int c = text.codePointAt(i);
        next = i + Character.charCount(c);
        boolean lineEnd = c == '\r' && next < text.length() && text.charAt(next) == '\n';
        String fault = lineEnd ? null : faultOf(c);
        if (fault != null) {
          if (++faults <= COMPLAINTS) {
            complain(source, i, fault, "the text without it");
          }
          harmless = harmless == null ? new StringBuilder(text) : harmless;
          // The parser takes code points beyond U+FFFF as they are; the text must stay as long as
          // it was.
          if (next == i + 1) {
            harmless.setCharAt(i, REPLACEMENT);
          }
        }
      }
      return harmless == null ? text : harmless.toString();
    }

    private static int firstDoubtful(String text, int from) {
      int i = from;
      while (i < text.length() && isAlwaysAllowed(text.charAt(i))) {
        i++;
      }
      return i;
    }

    private void complain(SourceText source, int index, String what, String right) {
      complaints.add(source.position(index), what, right);
    }
  }
}
