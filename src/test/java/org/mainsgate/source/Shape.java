package org.mainsgate.source;

import java.util.stream.Collectors;

/** A tree of nodes written as one line, for comparing. */
final class Shape {

  private Shape() {}

  static String of(Node node) {
    if (node instanceof Items items) {
      return items.items().stream().map(Shape::of).collect(Collectors.joining(", ", "[", "]"));
    }
    if (node instanceof Fields fields) {
      return fields.fields().stream()
          .map(field -> field.key() + "=" + of(field.value()))
          .collect(Collectors.joining(", ", "{", "}"));
    }
    return ((Text) node).value();
  }
}
