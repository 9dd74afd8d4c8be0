package org.mainsgate.seal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.mainsgate.seal.PdfValue.Array;
import org.mainsgate.seal.PdfValue.Chars;
import org.mainsgate.seal.PdfValue.Dictionary;
import org.mainsgate.seal.PdfValue.Stream;
import org.mainsgate.signature.Judged;
import org.mainsgate.signature.SignatureJudge;

/**
 * A file taken apart: the unsigned revision, what each signature added, and the attached files of
 * the unsigned revision.
 *
 * <p>Only files that are to the byte as this program writes them come through. Everything is taken
 * from the bytes that the first signature covers; nothing that came later can stand in for it.
 */
public final class SealedFile {
  /** The greatest file that is looked at, 32 MiB. */
  public static final int MOST_BYTES = 32 << 20;

  private static final int MOST_RECORD = 16 << 20;
  private static final byte[] END = {'%', '%', 'E', 'O', 'F', '\n'};

  private final byte[] bytes;
  private final byte[] unsigned;
  private final Layout layout;
  private final List<Signed> signatures;
  private final int lastTable;
  private final Map<String, byte[]> files;

  private SealedFile(
      byte[] bytes,
      byte[] unsigned,
      Layout layout,
      List<Signed> signatures,
      int lastTable,
      Map<String, byte[]> files) {
    this.bytes = bytes;
    this.unsigned = unsigned;
    this.layout = layout;
    this.signatures = List.copyOf(signatures);
    this.lastTable = lastTable;
    this.files = Collections.unmodifiableMap(files);
  }

  /**
   * A signature of the file.
   *
   * @param revision what it says of itself
   * @param judged what is to be said of it
   */
  record Signed(Revision revision, Judged judged) {}

  /**
   * Takes a file apart.
   *
   * @param bytes any bytes
   * @param broken where what is wrong is told; nothing else is to be believed of a file that is
   *     broken
   * @return empty if it is no sealed record at all
   */
  public static Optional<SealedFile> read(byte[] bytes, List<Broken> broken) {
    if (bytes.length > MOST_BYTES) {
      broken.add(
          new Broken(
              "bytes",
              "the file is larger than any sealed record: " + MOST_BYTES + " bytes at most"));
      return Optional.empty();
    }
    int end = endOfUnsigned(bytes);
    if (end < 0) {
      broken.add(
          new Broken(
              "signature",
              "no signature of this program's making is in the file: it was never sealed, the seal was taken off, or not all of it has arrived"));
      return Optional.empty();
    }
    if (!holds(bytes, end, broken)) {
      return Optional.empty();
    }
    byte[] unsigned = Arrays.copyOf(bytes, end);
    Optional<PdfObjects> objects = PdfObjects.read(unsigned);
    Optional<Layout> layout = objects.flatMap(found -> Layout.of(unsigned, found));
    if (layout.isEmpty()) {
      broken.add(
          new Broken(
              "bytes",
              "what was signed is not laid out as a sealed record is; another program made or changed it"));
      return Optional.empty();
    }
    Map<String, byte[]> files = new TreeMap<>();
    if (!attached(objects.get(), layout.get(), files)) {
      broken.add(new Broken("record", "the attached record can't be taken out of the file"));
      return Optional.empty();
    }
    return Optional.of(signed(bytes, unsigned, layout.get(), files, broken));
  }

  /** Where the first signature starts: after an end, as an object. */
  private static int endOfUnsigned(byte[] bytes) {
    for (int at = find(bytes, Revision.START, 0);
        at >= 0;
        at = find(bytes, Revision.START, at + 1)) {
      int start = at - " 0 obj\n".length();
      while (start > 0 && bytes[start - 1] >= '0' && bytes[start - 1] <= '9') {
        start--;
      }
      boolean after =
          start >= END.length
              && Arrays.equals(bytes, start - END.length, start, END, 0, END.length);
      if (after && Revision.at(bytes, start, 0).isPresent()) {
        return start;
      }
    }
    return -1;
  }

  /**
   * Whether the first signature holds over the bytes that it claims; nothing is read before that.
   */
  private static boolean holds(byte[] bytes, int start, List<Broken> broken) {
    Optional<byte[]> claimed = Revision.claimed(bytes, start);
    Optional<Revision> revision = Revision.at(bytes, start, 0);
    if (claimed.isEmpty() || revision.isEmpty()) {
      broken.add(
          new Broken("bytes", "the first signature does not say what it is over as ours do"));
      return false;
    }
    byte[] cms = HexFormat.of().parseHex(revision.get().cms());
    List<String> faults = SignatureJudge.judge(cms, claimed.get()).faults();
    faults.forEach(
        fault ->
            broken.add(new Broken("signature", "signature `" + Layout.CERTIFY + "`: " + fault)));
    return faults.isEmpty();
  }

  private static int find(byte[] bytes, byte[] what, int from) {
    for (int at = from; at <= bytes.length - what.length; at++) {
      if (bytes[at] == what[0]
          && Arrays.equals(bytes, at, at + what.length, what, 0, what.length)) {
        return at;
      }
    }
    return -1;
  }

  private static SealedFile signed(
      byte[] bytes,
      byte[] unsigned,
      Layout layout,
      Map<String, byte[]> files,
      List<Broken> broken) {
    List<Signed> signatures = new ArrayList<>();
    int end = unsigned.length;
    int table = layout.startOfTable();
    while (end < bytes.length && signatures.size() < Layout.FIELDS.size()) {
      Optional<Revision> revision = Revision.at(bytes, end, signatures.size());
      if (revision.isEmpty()) {
        break;
      }
      Revision.Written written = revision.get().after(layout, Arrays.copyOf(bytes, end), table);
      byte[] again = written.bytes();
      boolean same =
          again.length <= bytes.length
              && Arrays.equals(again, 0, again.length, bytes, 0, again.length);
      if (!same) {
        broken.add(
            new Broken(
                "later",
                "the part that the signature `"
                    + Layout.FIELDS.get(signatures.size())
                    + "` added is not what a signature adds: something else was put in with it"));
        break;
      }
      signatures.add(signed(revision.get(), written, broken));
      end = again.length;
      table = written.startOfTable();
    }
    if (end < bytes.length && broken.isEmpty()) {
      broken.add(
          new Broken(
              "later",
              (bytes.length - end)
                  + " bytes follow after the last signature, and no signature covers them: something was added"));
    }
    if (signatures.isEmpty() && broken.isEmpty()) {
      broken.add(new Broken("signature", "there is no signature that counts"));
    }
    return new SealedFile(bytes, unsigned, layout, signatures, table, files);
  }

  private static Signed signed(Revision revision, Revision.Written written, List<Broken> broken) {
    byte[] cms = HexFormat.of().parseHex(revision.cms());
    Judged judged = SignatureJudge.judge(cms, written.signed());
    String field = Layout.FIELDS.get(revision.index());
    judged
        .faults()
        .forEach(
            fault -> broken.add(new Broken("signature", "signature `" + field + "`: " + fault)));
    judged
        .signer()
        .filter(signer -> !signer.name().equals(revision.name()))
        .ifPresent(
            signer ->
                broken.add(
                    new Broken(
                        "signature",
                        "signature `"
                            + field
                            + "` gives a name that is not that of its certificate")));
    return new Signed(revision, judged);
  }

  /** Takes the attached files out; false if anything about them is not as we attach them. */
  private static boolean attached(PdfObjects objects, Layout layout, Map<String, byte[]> files) {
    Optional<PdfValue> names =
        objects
            .dictionary(layout.catalog(), "Names", "EmbeddedFiles")
            .flatMap(tree -> tree.get("Names"))
            .flatMap(objects::resolved);
    if (names.isEmpty() || !(names.get() instanceof Array array)) {
      return false;
    }
    int left = MOST_RECORD;
    for (int i = 0; i + 1 < array.items().size(); i += 2) {
      Optional<byte[]> content = content(objects, array.items().get(i + 1), left);
      boolean named = array.items().get(i) instanceof Chars;
      if (content.isEmpty() || !named) {
        return false;
      }
      String path = ((Chars) array.items().get(i)).decoded();
      left -= content.get().length;
      if (!isPath(path) || files.put(path, content.get()) != null) {
        return false;
      }
    }
    return array.items().size() % 2 == 0;
  }

  private static Optional<byte[]> content(PdfObjects objects, PdfValue value, int most) {
    return objects
        .resolved(value)
        .filter(Dictionary.class::isInstance)
        .flatMap(found -> objects.dictionary((Dictionary) found, "EF"))
        .flatMap(embedded -> embedded.get("F"))
        .flatMap(objects::resolved)
        .filter(Stream.class::isInstance)
        .flatMap(stream -> objects.content((Stream) stream, most));
  }

  /** A path that stays inside whatever folder it is written to. */
  private static boolean isPath(String path) {
    return path.length() <= 240
        && path.codePoints().noneMatch(c -> Character.isISOControl(c) || c == '\\' || c == ':')
        && Arrays.stream(path.split("/", -1))
            .noneMatch(part -> part.isBlank() || part.equals(".") || part.equals(".."));
  }

  /** The whole file. */
  byte[] bytes() {
    return bytes;
  }

  /** The revision before any signature. */
  byte[] unsigned() {
    return unsigned;
  }

  Layout layout() {
    return layout;
  }

  int lastTable() {
    return lastTable;
  }

  List<Signed> signatures() {
    return signatures;
  }

  /** The attached files by path. */
  public Map<String, byte[]> files() {
    return files;
  }
}
