package org.mainsgate.seal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/** The findings that are attached for programs, read back; JSON is YAML. */
final class FindingsFile {
  private FindingsFile() {}

  /** What each finding rests on, with its numbers; what a later release adds is passed over. */
  private static final List<String> NUMBERS = List.of("inputs", "comparisons", "choices");

  /** Outcome and numbers of each check on each thing; empty if it can't be read. */
  static Map<String, String> outcomes(byte[] json) {
    Map<String, String> outcomes = new TreeMap<>();
    Complaints complaints = new Complaints();
    Optional<Fields> fields = StrictYaml.readFields(SealedRecord.FINDINGS, json, complaints);
    if (complaints.isEmpty()) {
      fields.ifPresent(
          top ->
              items(top, "instruments")
                  .forEach(
                      instrument ->
                          items(instrument, "findings")
                              .forEach(
                                  finding ->
                                      outcomes.put(
                                          text(finding, "check") + " " + text(finding, "item"),
                                          text(finding, "outcome") + numbers(finding)))));
    }
    return outcomes;
  }

  private static String numbers(Fields finding) {
    StringBuilder all = new StringBuilder();
    NUMBERS.forEach(name -> finding.get(name).ifPresent(node -> collect(node, all)));
    return all.toString();
  }

  private static void collect(Node node, StringBuilder all) {
    if (node instanceof Text text) {
      all.append(' ').append(text.value());
    } else if (node instanceof Items items) {
      items.items().forEach(item -> collect(item, all));
    } else if (node instanceof Fields fields) {
      fields.fields().forEach(field -> collect(field.value(), all));
    }
  }

  private static List<Fields> items(Fields fields, String name) {
    Optional<Node> node = fields.get(name);
    return node.isPresent() && node.get() instanceof Items items
        ? items.items().stream().filter(Fields.class::isInstance).map(Fields.class::cast).toList()
        : List.of();
  }

  private static String text(Fields fields, String name) {
    return fields
        .get(name)
        .filter(Text.class::isInstance)
        .map(node -> ((Text) node).value())
        .orElse("");
  }
}
