package org.mainsgate.formula;

import java.util.List;

/** A closed list of named values, such as the classes of protection. */
public record ValueList(String name, List<String> values) {
  /** A list of at least one value and none twice; its order is the order of every answer. */
  public ValueList {
    values = List.copyOf(values);
    if (values.isEmpty() || values.stream().distinct().count() != values.size()) {
      throw new IllegalArgumentException("values of " + name + " are none or doubled");
    }
  }
}
