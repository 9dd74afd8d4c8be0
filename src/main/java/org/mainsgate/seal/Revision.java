package org.mainsgate.seal;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.mainsgate.seal.PdfValue.Chars;
import org.mainsgate.seal.PdfValue.Dictionary;
import org.mainsgate.seal.PdfValue.Reference;

/**
 * What one signature adds to a file, to the byte: the signature, its field, for the certification
 * the catalog too, a cross-reference stream and the end (ISO 32000-1 7.5.6, 12.8).
 *
 * <p>There is one way to write it. So whoever judges a file writes each revision again from what it
 * says and compares: nothing else can have been added, and no rule about what may be added has a
 * gap.
 *
 * @param index which signature it is: 0 certifies, 1 to 5 accept
 * @param name who signs
 * @param claimed when, by the signer's own clock, to the second
 * @param room how many bytes are kept for the signature
 * @param cms the signature in DER, in hex, at most that long
 */
record Revision(int index, String name, Instant claimed, int room, String cms) {

  /** For a signature without a time-stamp, and for one with long certificates or a time-stamp. */
  static final int[] ROOMS = {4096, 16384};

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMddHHmmss", Locale.ROOT);
  private static final HexFormat HEX = HexFormat.of().withUpperCase();
  private static final String CERTIFIES =
      "/Reference [<< /Type /SigRef /TransformMethod /DocMDP /TransformParams"
          + " << /Type /TransformParams /P 2 /V /1.2 >> >>] ";
  private static final String HEAD =
      "<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached ";
  private static final Pattern SIGNATURE =
      Pattern.compile(
          "[0-9]{1,9} 0 obj\n"
              + Pattern.quote(HEAD)
              + "/Name <((?:[0-9A-F]{2}){2,1026})> /M \\(D:([0-9]{14})\\+00'00'\\) "
              + "(?:"
              + Pattern.quote(CERTIFIES)
              + ")?/Contents <([0-9A-F]*)>");

  private static final Pattern RANGE =
      Pattern.compile(" /ByteRange \\[0 ([0-9]{1,9}) ([0-9]{1,9}) ([0-9]{1,9})\\] >>");

  /** How a signature of ours starts, to find the end of the unsigned revision. */
  static final byte[] START = HEAD.getBytes(StandardCharsets.US_ASCII);

  /** A file with one more revision. */
  static final class Written {
    private final byte[] bytes;
    private final int gap;
    private final int gapEnd;
    private final int startOfTable;

    /**
     * The bytes are owned by the new object.
     *
     * @param gap where the signature stands, brackets included
     * @param gapEnd where it ends
     * @param startOfTable where the new cross-reference stream starts
     */
    Written(byte[] bytes, int gap, int gapEnd, int startOfTable) {
      this.bytes = bytes;
      this.gap = gap;
      this.gapEnd = gapEnd;
      this.startOfTable = startOfTable;
    }

    /** The whole file; not to be changed. */
    byte[] bytes() {
      return bytes;
    }

    int startOfTable() {
      return startOfTable;
    }

    /** What the signature is over: everything but itself. */
    byte[] signed() {
      byte[] signed = Arrays.copyOf(bytes, gap + bytes.length - gapEnd);
      System.arraycopy(bytes, gapEnd, signed, gap, bytes.length - gapEnd);
      return signed;
    }
  }

  /**
   * Writes it after the file so far.
   *
   * @param layout of the unsigned revision
   * @param before the file so far
   * @param previousTable where its last cross-reference stream starts
   */
  Written after(Layout layout, byte[] before, int previousTable) {
    String field = Layout.FIELDS.get(index);
    // Each signature before this one took a number for itself and one for its table.
    int own = layout.size() + 2 * index;
    StringBuilder text = new StringBuilder();
    int signatureAt = before.length;
    text.append(own).append(" 0 obj\n").append(HEAD);
    text.append("/Name ").append(Chars.of(name).written());
    text.append(" /M (D:").append(TIME.format(LocalDateTime.ofInstant(claimed, ZoneOffset.UTC)));
    text.append("+00'00') ").append(index == 0 ? CERTIFIES : "").append("/Contents ");
    int gap = before.length + text.length();
    text.append('<').append(cms + "0".repeat(2 * room - cms.length())).append('>');
    int gapEnd = before.length + text.length();
    StringBuilder rest = new StringBuilder();
    Dictionary filled =
        Objects.requireNonNull(layout.fieldsThemselves().get(field)).with("V", new Reference(own));
    int fieldNumber = Objects.requireNonNull(layout.fields().get(field));
    return withRange(
        range -> {
          rest.setLength(0);
          rest.append(" /ByteRange [0 ").append(gap).append(' ').append(gapEnd).append(' ');
          rest.append(range).append("] >>\nendobj\n");
          int fieldAt = gapEnd + rest.length();
          rest.append(object(fieldNumber, filled));
          int catalogAt = gapEnd + rest.length();
          if (index == 0) {
            rest.append(object(layout.catalogNumber(), certified(layout, own)));
          }
          int tableAt = gapEnd + rest.length();
          Rows rows = new Rows(own);
          rows.add(fieldNumber, fieldAt);
          if (index == 0) {
            rows.add(layout.catalogNumber(), catalogAt);
          }
          rows.own(signatureAt, tableAt);
          byte[] table = table(layout, own + 1, previousTable, tableAt, rows);
          return written(before, text, rest, table, gap, gapEnd, tableAt);
        });
  }

  private interface WithRange {
    Written write(int lengthOfRest);
  }

  /** The length of the rest stands in the rest: its digits are taken until they fit. */
  private static Written withRange(WithRange write) {
    int length = 1;
    Written written = write.write(length);
    while (written.bytes.length - written.gapEnd != length) {
      length = written.bytes.length - written.gapEnd;
      written = write.write(length);
    }
    return written;
  }

  private static Written written(
      byte[] before,
      StringBuilder text,
      StringBuilder rest,
      byte[] table,
      int gap,
      int gapEnd,
      int tableAt) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(before.length + 32_768);
    out.writeBytes(before);
    out.writeBytes(text.toString().getBytes(StandardCharsets.ISO_8859_1));
    out.writeBytes(rest.toString().getBytes(StandardCharsets.ISO_8859_1));
    out.writeBytes(table);
    return new Written(out.toByteArray(), gap, gapEnd, tableAt);
  }

  private static String object(int number, PdfValue value) {
    return number + " 0 obj\n" + value.written() + "\nendobj\n";
  }

  private static Dictionary certified(Layout layout, int signature) {
    Dictionary perms = new Dictionary(Map.of("DocMDP", new Reference(signature)));
    return layout.catalog().with("Perms", perms);
  }

  /** The rows of the cross-reference stream, in the order of their numbers. */
  private static final class Rows {
    private final TreeMap<Integer, Integer> changed = new TreeMap<>();
    private final int own;

    Rows(int own) {
      this.own = own;
    }

    void add(int number, int at) {
      changed.put(number, at);
    }

    void own(int signatureAt, int tableAt) {
      changed.put(own, signatureAt);
      changed.put(own + 1, tableAt);
    }

    String index() {
      StringBuilder index = new StringBuilder();
      changed.keySet().forEach(number -> index.append(number).append(" 1 "));
      return index.toString().strip();
    }

    byte[] bytes() {
      ByteBuffer rows = ByteBuffer.allocate(changed.size() * 7);
      changed.values().forEach(at -> rows.put((byte) 1).putInt(at).putShort((short) 0));
      return rows.array();
    }
  }

  private static byte[] table(
      Layout layout, int number, int previousTable, int tableAt, Rows rows) {
    StringBuilder head = new StringBuilder();
    head.append(number).append(" 0 obj\n<< /Type /XRef /Size ").append(number + 1);
    head.append(" /W [1 4 2] /Index [").append(rows.index()).append("] /Prev ");
    head.append(previousTable).append(" /Length ").append(rows.bytes().length);
    layout
        .trailer()
        .entries()
        .forEach(
            (name, value) -> head.append(" /").append(name).append(' ').append(value.written()));
    head.append(" >>\nstream\n");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(head.toString().getBytes(StandardCharsets.ISO_8859_1));
    out.writeBytes(rows.bytes());
    String end = "\nendstream\nendobj\nstartxref\n" + tableAt + "\n%%EOF\n";
    out.writeBytes(end.getBytes(StandardCharsets.ISO_8859_1));
    return out.toByteArray();
  }

  /**
   * The bytes that a revision which starts there says it is over, by its own byte range; empty if
   * that range is none that we write. It is looked at before anything else of a stranger's file.
   */
  static Optional<byte[]> claimed(byte[] file, int start) {
    int length = Math.min(file.length - start, 8192 + 2 * ROOMS[ROOMS.length - 1]);
    String text = new String(file, start, Math.max(0, length), StandardCharsets.ISO_8859_1);
    Matcher matcher = SIGNATURE.matcher(text);
    if (!matcher.lookingAt()) {
      return Optional.empty();
    }
    Matcher range = RANGE.matcher(text).region(matcher.end(), text.length());
    if (!range.lookingAt()) {
      return Optional.empty();
    }
    long gap = Long.parseLong(range.group(1));
    long gapEnd = Long.parseLong(range.group(2));
    long rest = Long.parseLong(range.group(3));
    boolean fits =
        gap == start + matcher.start(3) - 1L
            && gapEnd == start + matcher.end()
            && gapEnd + rest <= file.length;
    return fits
        ? Optional.of(
            new Written(Arrays.copyOf(file, (int) (gapEnd + rest)), (int) gap, (int) gapEnd, 0)
                .signed())
        : Optional.empty();
  }

  /** What a revision that starts there says of itself; empty if it is none of ours. */
  static Optional<Revision> at(byte[] file, int start, int index) {
    int length = Math.min(file.length - start, 8192 + 2 * ROOMS[ROOMS.length - 1]);
    String text = new String(file, start, Math.max(0, length), StandardCharsets.ISO_8859_1);
    Matcher matcher = SIGNATURE.matcher(text);
    if (!matcher.lookingAt() || matcher.group(3).length() % 2 != 0) {
      return Optional.empty();
    }
    byte[] contents = HEX.parseHex(matcher.group(3));
    boolean ours = Arrays.stream(ROOMS).anyMatch(room -> room == contents.length);
    Optional<Instant> claimed = time(matcher.group(2));
    byte[] name = HEX.parseHex(matcher.group(1));
    String decoded = new Chars(new String(name, StandardCharsets.ISO_8859_1)).decoded();
    int end = lengthOf(contents);
    boolean padded = end > 0 && allZero(contents, end);
    return ours && padded
        ? claimed.map(
            when ->
                new Revision(
                    index, decoded, when, contents.length, matcher.group(3).substring(0, 2 * end)))
        : Optional.empty();
  }

  private static Optional<Instant> time(String text) {
    try {
      return Optional.of(LocalDateTime.parse(text, TIME).toInstant(ZoneOffset.UTC));
    } catch (DateTimeParseException noTime) {
      return Optional.empty();
    }
  }

  /**
   * The length of a DER sequence with its head (X.690 8.1.3, shortest form); 0 for anything else.
   */
  private static int lengthOf(byte[] der) {
    if (der.length < 4 || der[0] != 0x30 || (der[1] & 0xFF) != 0x82) {
      return 0;
    }
    int length = 4 + ((der[2] & 0xFF) << 8 | (der[3] & 0xFF));
    return length <= der.length ? length : 0;
  }

  private static boolean allZero(byte[] bytes, int from) {
    for (int i = from; i < bytes.length; i++) {
      if (bytes[i] != 0) {
        return false;
      }
    }
    return true;
  }

  @Override
  public String toString() {
    return Layout.FIELDS.get(index) + " by " + name + " at " + claimed;
  }
}
