package org.mainsgate.store;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/**
 * {@code bench.yaml} without the people and meters that a record does not name, for a record that
 * leaves the bench.
 *
 * <p>Whole lines are left out; every line that stays is as it was. A file that is not laid out in
 * lines is left whole.
 */
final class Extract {
  private static final List<String> BY_NAME = List.of("people", "meters");

  /** Line ends that the YAML reader knows beside the usual two. */
  private static final Pattern ODD_LINE_END = Pattern.compile("\r(?!\n)|[\u0085\u2028\u2029]");

  private static final Pattern BLANK_OR_COMMENT = Pattern.compile("\\s*(#.*)?\\s*");

  private final String text;
  private final List<String> lines;
  private final Set<Integer> dropped = new HashSet<>();

  private Extract(String text) {
    this.text = text;
    this.lines = List.of(text.split("(?<=\n)", -1));
  }

  /**
   * The part of a bench's file that a record needs.
   *
   * @param bench the file's bytes, which can be read
   * @param record the fields of the files of the record
   */
  static byte[] of(byte[] bench, List<Fields> record) {
    String text = new String(bench, StandardCharsets.UTF_8);
    Optional<Fields> fields = fields(bench);
    if (fields.isEmpty() || ODD_LINE_END.matcher(text).find()) {
      return bench;
    }
    Set<String> named = new HashSet<>();
    record.forEach(file -> collect(file, named));
    for (Fields.Field field : fields.get().fields()) {
      if (!field.key().value().equals("people")) {
        inside(field).forEach(node -> collect(node, named));
      }
    }
    byte[] shorter = new Extract(text).without(fields.get(), named);
    return fields(shorter).isPresent() ? shorter : bench;
  }

  /** What is said inside a field: of meters, not their own names. */
  private static List<Node> inside(Fields.Field field) {
    return field.key().value().equals("meters") && field.value() instanceof Fields meters
        ? meters.fields().stream().map(Fields.Field::value).toList()
        : List.of(field.value());
  }

  private static Optional<Fields> fields(byte[] bench) {
    Complaints complaints = new Complaints();
    return StrictYaml.readFields("", bench, complaints).filter(found -> complaints.isEmpty());
  }

  private static void collect(Node node, Set<String> words) {
    if (node instanceof Text text) {
      words.add(text.value());
    } else if (node instanceof Items items) {
      items.items().forEach(item -> collect(item, words));
    } else if (node instanceof Fields fields) {
      for (Fields.Field field : fields.fields()) {
        words.add(field.key().value());
        collect(field.value(), words);
      }
    }
  }

  private byte[] without(Fields bench, Set<String> named) {
    List<Integer> starts = new ArrayList<>();
    bench.fields().forEach(field -> starts.add(line(field)));
    starts.add(lines.size());
    for (int i = 0; i < bench.fields().size(); i++) {
      Fields.Field field = bench.fields().get(i);
      if (BY_NAME.contains(field.key().value()) && field.value() instanceof Fields entries) {
        drop(entries.fields(), starts.get(i + 1), named);
      }
    }
    StringBuilder kept = new StringBuilder(text.length());
    for (int i = 0; i < lines.size(); i++) {
      kept.append(dropped.contains(i) ? "" : lines.get(i));
    }
    return kept.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Marks the lines of entries that nothing names; at least one entry stays. */
  private void drop(List<Fields.Field> entries, int end, Set<String> named) {
    if (entries.stream().noneMatch(entry -> named.contains(entry.key().value()))) {
      return;
    }
    for (int i = 0; i < entries.size(); i++) {
      int from = line(entries.get(i));
      int to = i + 1 < entries.size() ? line(entries.get(i + 1)) : end;
      if (!named.contains(entries.get(i).key().value()) && startsAt(entries.get(i)) && from < to) {
        dropLines(from, to);
      }
    }
  }

  /** Blank lines and comments at the end stay: they may speak of what follows. */
  private void dropLines(int from, int to) {
    int last = to;
    while (last > from + 1 && BLANK_OR_COMMENT.matcher(lines.get(last - 1)).matches()) {
      last--;
    }
    for (int i = from; i < last; i++) {
      dropped.add(i);
    }
  }

  private boolean startsAt(Fields.Field entry) {
    int column = entry.key().at().column();
    return lines.get(line(entry)).substring(0, column - 1).isBlank();
  }

  private static int line(Fields.Field field) {
    return field.key().at().line() - 1;
  }
}
