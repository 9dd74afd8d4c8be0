package org.mainsgate.seal;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.mainsgate.seal.PdfParser.Numbered;
import org.mainsgate.seal.PdfParser.Odd;
import org.mainsgate.seal.PdfValue.Array;
import org.mainsgate.seal.PdfValue.Dictionary;
import org.mainsgate.seal.PdfValue.Reference;
import org.mainsgate.seal.PdfValue.Stream;
import org.mainsgate.seal.PdfValue.Word;

/**
 * All objects of a PDF of one revision, which fills its bytes without a gap: header, objects, one
 * cross-reference stream, end. Nothing can hide between objects, and no object is there twice.
 */
final class PdfObjects {
  private static final int MOST_OBJECTS = 200_000;
  private static final int MOST_DECODED = 64 << 20;
  private static final byte[] HEADER =
      "%PDF-1.6\n%\u00F6\u00E4\u00FC\u00DF\n".getBytes(StandardCharsets.ISO_8859_1);
  private static final Pattern END = Pattern.compile("startxref\n([0-9]{1,10})\n%%EOF\n");
  private static final int LONGEST_END = 64;

  private final byte[] bytes;
  private final Map<Integer, PdfValue> objects = new TreeMap<>();
  private final Map<Integer, Integer> starts = new TreeMap<>();
  private Dictionary trailer = new Dictionary(Map.of());
  private int startOfTable;
  private int size;
  private int decoded;

  private PdfObjects(byte[] bytes) {
    this.bytes = bytes;
  }

  /** The objects of a file of one revision; empty if it is laid out in any other way. */
  static Optional<PdfObjects> read(byte[] bytes) {
    try {
      PdfObjects objects = new PdfObjects(bytes);
      objects.readAll();
      return Optional.of(objects);
    } catch (Odd other) {
      return Optional.empty();
    }
  }

  Dictionary trailer() {
    return trailer;
  }

  /** Where the cross-reference stream starts. */
  int startOfTable() {
    return startOfTable;
  }

  /** The number of the next object. */
  int size() {
    return size;
  }

  /** All objects by number. */
  Map<Integer, PdfValue> all() {
    return objects;
  }

  /** The value itself, or the object that it refers to. */
  Optional<PdfValue> resolved(PdfValue value) {
    return value instanceof Reference reference
        ? Optional.ofNullable(objects.get(reference.number()))
        : Optional.of(value);
  }

  /** The dictionary at a path of names from another one. */
  Optional<Dictionary> dictionary(Dictionary from, String... path) {
    Optional<Dictionary> found = Optional.of(from);
    for (String name : path) {
      found =
          found
              .flatMap(dictionary -> dictionary.get(name))
              .flatMap(this::resolved)
              .filter(Dictionary.class::isInstance)
              .map(Dictionary.class::cast);
    }
    return found;
  }

  /** A stream's bytes, inflated, if there are at most so many. */
  Optional<byte[]> content(Stream stream, int most) {
    try {
      return Optional.of(inflated(stream, most));
    } catch (Odd other) {
      return Optional.empty();
    }
  }

  private void readAll() throws Odd {
    new PdfParser(bytes, 0).expect(new String(HEADER, StandardCharsets.ISO_8859_1));
    startOfTable = table();
    PdfParser parser = new PdfParser(bytes, startOfTable);
    if (!(parser.object().value() instanceof Stream table)) {
      throw new Odd("no table", startOfTable);
    }
    trailer = table.dictionary();
    if (!trailer.says("Type", "XRef") || trailer.get("Prev").isPresent()) {
      throw new Odd("another table", startOfTable);
    }
    size = number(trailer, "Size");
    tile(parser.at(), places(table));
  }

  private int table() throws Odd {
    int from = Math.max(0, bytes.length - LONGEST_END);
    String end = new String(bytes, from, bytes.length - from, StandardCharsets.ISO_8859_1);
    Matcher matcher = END.matcher(end);
    int start = end.lastIndexOf("startxref\n");
    if (start < 0 || !matcher.region(start, end.length()).matches()) {
      throw new Odd("no end", bytes.length);
    }
    long at = Long.parseLong(matcher.group(1));
    if (at >= bytes.length) {
      throw new Odd("a table past the end", bytes.length);
    }
    return (int) at;
  }

  /** Where objects start, and which of them hold others. */
  private record Places(Map<Integer, Integer> starts, Map<Integer, Integer> holders) {}

  private Places places(Stream table) throws Odd {
    List<Integer> widths = numbers(trailer, "W");
    List<Integer> index = trailer.get("Index").isPresent() ? numbers(trailer, "Index") : List.of();
    if (widths.size() != 3 || widths.stream().anyMatch(w -> w > 4) || index.size() % 2 != 0) {
      throw new Odd("a table of another shape", startOfTable);
    }
    Places places = new Places(new TreeMap<>(), new TreeMap<>());
    byte[] rows = inflated(table, MOST_OBJECTS * 12);
    int at = 0;
    for (int i = 0; i < index.size(); i += 2) {
      for (int n = 0; n < index.get(i + 1); n++) {
        at = row(rows, at, widths, index.get(i) + n, places);
      }
    }
    if (at != rows.length) {
      throw new Odd("a table with more rows", startOfTable);
    }
    return places;
  }

  private int row(byte[] rows, int from, List<Integer> widths, int number, Places places)
      throws Odd {
    int at = from;
    int[] fields = new int[3];
    for (int i = 0; i < 3; i++) {
      for (int n = 0; n < widths.get(i); n++, at++) {
        if (at >= rows.length) {
          throw new Odd("a table with fewer rows", startOfTable);
        }
        fields[i] = (fields[i] << 8) | (rows[at] & 0xFF);
      }
    }
    if (fields[0] == 1 && fields[2] == 0) {
      places.starts().put(number, fields[1]);
    } else if (fields[0] == 2) {
      places.holders().put(number, fields[1]);
    } else if (fields[0] != 0 || number != 0) {
      throw new Odd("an object that is nowhere", startOfTable);
    }
    if (places.starts().size() + places.holders().size() > MOST_OBJECTS) {
      throw new Odd("too many objects", startOfTable);
    }
    return at;
  }

  /** Reads every object where it starts; the next one starts where it ends. */
  private void tile(int end, Places places) throws Odd {
    Map<Integer, Integer> byStart = new TreeMap<>();
    places.starts().forEach((number, start) -> byStart.put(start, number));
    int at = HEADER.length;
    for (Map.Entry<Integer, Integer> entry : byStart.entrySet()) {
      if (entry.getKey() != at) {
        throw new Odd("a gap", at);
      }
      PdfParser parser = new PdfParser(bytes, at);
      Numbered object = parser.object();
      if (object.number() != entry.getValue()) {
        throw new Odd("another object", at);
      }
      starts.put(object.number(), at);
      if (at != startOfTable) {
        put(object.number(), object.value(), at);
      }
      at = parser.at();
    }
    // The table's own row may be missing or there; its object is the last either way.
    int rest = at == startOfTable ? end : at;
    if (rest != end || !new PdfParser(bytes, end).looksAt("startxref\n")) {
      throw new Odd("a gap", at);
    }
    for (Integer holder : new TreeSet<>(places.holders().values())) {
      held(holder, places);
    }
    if (!objects.keySet().containsAll(places.holders().keySet())) {
      throw new Odd("an object that is nowhere", startOfTable);
    }
  }

  private void put(int number, PdfValue value, int at) throws Odd {
    if (objects.put(number, value) != null) {
      throw new Odd("an object twice", at);
    }
  }

  /** The objects that stand in another one (7.5.7). */
  private void held(int holder, Places places) throws Odd {
    if (!(objects.remove(holder) instanceof Stream stream)
        || !stream.dictionary().says("Type", "ObjStm")) {
      throw new Odd("no object stream", startOfTable);
    }
    byte[] text = inflated(stream, MOST_DECODED);
    int count = number(stream.dictionary(), "N");
    int first = number(stream.dictionary(), "First");
    PdfParser heads = new PdfParser(text, 0);
    int last = first;
    for (int i = 0; i < count; i++) {
      int number = heads.whole();
      heads.skipSpace();
      int offset = heads.whole();
      heads.skipSpace();
      PdfParser parser = new PdfParser(text, first + offset);
      if (first + offset < last || !Integer.valueOf(holder).equals(places.holders().get(number))) {
        throw new Odd("an object stream of another shape", startOfTable);
      }
      put(number, parser.value(), startOfTable);
      last = parser.at();
    }
    if (heads.at() > first) {
      throw new Odd("an object stream of another shape", startOfTable);
    }
  }

  private List<Integer> numbers(Dictionary dictionary, String name) throws Odd {
    List<Integer> numbers = new ArrayList<>();
    if (dictionary.get(name).orElse(dictionary) instanceof Array array) {
      for (PdfValue item : array.items()) {
        numbers.add(number(item));
      }
    }
    return numbers;
  }

  private int number(Dictionary dictionary, String name) throws Odd {
    return number(dictionary.get(name).orElse(dictionary));
  }

  private int number(PdfValue value) throws Odd {
    if (value instanceof Word word) {
      Optional<Long> number = word.number().filter(found -> found <= Integer.MAX_VALUE);
      if (number.isPresent()) {
        return number.get().intValue();
      }
    }
    throw new Odd("no number", startOfTable);
  }

  private byte[] inflated(Stream stream, int most) throws Odd {
    int length = stream.to() - stream.from();
    Optional<PdfValue> filter = stream.dictionary().get("Filter");
    if (stream.dictionary().get("DecodeParms").isPresent()) {
      throw new Odd("a stream coded in another way", stream.from());
    }
    if (filter.isEmpty()) {
      return Arrays.copyOfRange(bytes, stream.from(), stream.to());
    }
    if (!stream.dictionary().says("Filter", "FlateDecode")) {
      throw new Odd("a stream coded in another way", stream.from());
    }
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(bytes, stream.from(), length);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] part = new byte[8192];
      while (!inflater.finished()) {
        int read = inflater.inflate(part);
        decoded += read;
        if (read == 0 || out.size() + read > most || decoded > MOST_DECODED) {
          throw new Odd("a stream that can't be inflated, or is too large", stream.from());
        }
        out.write(part, 0, read);
      }
      return out.toByteArray();
    } catch (DataFormatException broken) {
      throw new Odd("a stream that can't be inflated", stream.from());
    } finally {
      inflater.end();
    }
  }
}
