package org.mainsgate.evidence;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collection;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.Text;

/** The small steps that all readers of the record share. */
final class Words {
  static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,31}");

  private static final Pattern INSIDE =
      Pattern.compile("(?!.*(^|/)\\.{1,2}(/|$))[^/\\\\:]+(/[^/\\\\:]+)*");

  private Words() {}

  /** The text, or an empty one where nothing is written. */
  static String orEmpty(@Nullable Text text) {
    return text == null ? "" : text.value();
  }

  static String quoted(String words) {
    return "`" + words + "`";
  }

  static String quoted(Text text) {
    return quoted(text.value());
  }

  /**
   * Complains of a name that nobody knows. One that starts with a digit is mostly what stood after
   * a decimal comma: between braces a comma ends the value.
   */
  static void unknown(Text name, String thing, Collection<String> valid, Complaints complaints) {
    if (!name.value().isEmpty() && Character.isDigit(name.value().charAt(0))) {
      complaints.add(
          name,
          "the comma before " + quoted(name) + " ends the value",
          "a decimal point, as in `0.13 Ω`");
    } else {
      complaints.addUnknown(name.at(), thing, name.value(), valid);
    }
  }

  /** Whether the text is one of the valid names; else a complaint with the nearest of them. */
  static boolean known(Text text, String thing, Collection<String> valid, Complaints complaints) {
    boolean known = valid.contains(text.value());
    if (!known) {
      complaints.addUnknown(text.at(), thing, text.value(), valid);
    }
    return known;
  }

  /**
   * Complains of a key that has not its shape.
   *
   * @param wording what is wrong and what is right, as for a constraint
   */
  static void key(Text key, Pattern shape, String wording, Complaints complaints) {
    if (!shape.matcher(key.value()).matches()) {
      int split = wording.indexOf('|');
      String what = wording.substring(0, split).replace("{typed}", quoted(key));
      complaints.add(key, what, wording.substring(split + 1));
    }
  }

  /** Whether a path stays inside the folder that it starts from: no root, no drive, no `..`. */
  static boolean isInside(String path) {
    return INSIDE.matcher(path).matches();
  }

  /** The nodes directly inside a node; none of a single value. */
  static Stream<Node> walk(Optional<Node> node) {
    if (node.isEmpty() || node.get() instanceof Text) {
      return Stream.empty();
    }
    return node.get() instanceof Items items
        ? items.items().stream()
        : ((Fields) node.get()).fields().stream().map(Fields.Field::value);
  }

  /** What stands under a key, if the node has it. */
  static Optional<Node> inner(Node node, String key) {
    return node instanceof Fields fields ? fields.get(key) : Optional.empty();
  }

  /** The calendar date that the text is, if it is one. */
  static Optional<LocalDate> date(@Nullable Text text) {
    if (text == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(text.value()));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** The node as a single value; else a complaint. */
  static Optional<Text> text(Node node, String name, Complaints complaints) {
    if (node instanceof Text text && !text.isBlank()) {
      return Optional.of(text);
    }
    String found = node instanceof Text ? " is blank" : " is not a single value";
    complaints.add(node, quoted(name) + found, "a single value");
    return Optional.empty();
  }

  /** The node as fields; else a complaint. */
  static Optional<Fields> fields(Node node, String name, Complaints complaints) {
    if (node instanceof Fields fields) {
      return Optional.of(fields);
    }
    complaints.add(node, quoted(name) + " has no fields", "fields, each `name: value`");
    return Optional.empty();
  }
}
