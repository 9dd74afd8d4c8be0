package org.mainsgate.source;

import java.util.Arrays;
import java.util.Optional;

/**
 * The reader of our strict subset of YAML 1.2: text in, located nodes or complaints out.
 *
 * <p>A file is one document of at most 1 MiB in strict UTF-8, nested at most 32 deep and with at
 * most 100000 nodes, without tags, anchors, aliases, merge keys, duplicate or complex keys,
 * directives and hidden characters. Every scalar is text. A value that was left out is a text
 * without characters; see {@link Text#isBlank()}.
 *
 * <p>No text makes it throw: whatever is wrong becomes a complaint.
 */
public final class StrictYaml {

  /** The greatest length of a file in bytes, 1 MiB. */
  public static final int MOST_BYTES = 1 << 20;

  /** How deep lists and fields may stand in each other. */
  public static final int MOST_LEVELS = 32;

  /**
   * How many lists, fields, names and values a file may hold together; no file of ours comes near.
   */
  public static final int MOST_NODES = 100_000;

  private StrictYaml() {}

  /**
   * Reads a file.
   *
   * <p>A tree may come back along with complaints, so that further ones about the same file can be
   * found. It must not be used for anything else: the caller asks {@link Complaints#isEmpty()}
   * before it relies on what was read.
   *
   * @param fileName the name to be printed in complaints
   * @return empty if the file can't be followed to its end
   */
  public static Optional<Node> read(String fileName, byte[] bytes, Complaints complaints) {
    if (bytes.length > MOST_BYTES) {
      Position start = new Position(fileName, 1, 1);
      complaints.add(
          start, "the file has " + bytes.length + " bytes", "at most " + MOST_BYTES + " bytes");
      return Optional.empty();
    }
    PlainText text = PlainText.read(fileName, withoutByteOrderMark(bytes), complaints);
    if (text.faults() > PlainText.COMPLAINTS) {
      return Optional.empty();
    }
    Optional<Node> tree = new Tree(text.source(), text.harmless(), complaints).grow();
    return text.faults() == 0 ? tree : Optional.empty();
  }

  /**
   * Reads a file that must hold fields at its top, as all of ours do; anything else there is a
   * complaint.
   */
  public static Optional<Fields> readFields(String fileName, byte[] bytes, Complaints complaints) {
    Optional<Node> tree = read(fileName, bytes, complaints);
    if (tree.isPresent() && !(tree.get() instanceof Fields)) {
      complaints.add(
          tree.get().at(), "the file does not start with a field", "fields such as `format: 1`");
    }
    return tree.filter(Fields.class::isInstance).map(Fields.class::cast);
  }

  private static byte[] withoutByteOrderMark(byte[] bytes) {
    boolean marked =
        bytes.length >= 3
            && bytes[0] == (byte) 0xEF
            && bytes[1] == (byte) 0xBB
            && bytes[2] == (byte) 0xBF;
    return marked ? Arrays.copyOfRange(bytes, 3, bytes.length) : bytes;
  }
}
