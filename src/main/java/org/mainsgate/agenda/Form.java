package org.mainsgate.agenda;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Equipment;
import org.mainsgate.ruleset.Property;

/**
 * What a person writes for a task, as a line of a visit with its values left to choose: {@code
 * sheath: sound | hardened | damaged | no_sheath}.
 */
public final class Form {
  private static final String OR = " | ";
  private static final String BLANK = "...";

  private Form() {}

  /** The line of an entry, below its thing. */
  public static String of(Task.Entry entry) {
    List<String> more = new ArrayList<>();
    entry.with().forEach(property -> more.add(property.name() + ": " + value(property)));
    entry.equipment().ifPresent(equipment -> more.addAll(choice(equipment)));
    String main = value(entry.property());
    if (more.isEmpty()) {
      return entry.property().name() + ": " + main;
    }
    String key = entry.property() instanceof Property.Quantity ? "value" : "is";
    more.add(0, key + ": " + main);
    return entry.property().name() + ": {" + String.join(", ", more) + "}";
  }

  /** The line that closes a list, below {@code looked}. */
  public static String of(Task.Closing closing) {
    return closing.kind().name()
        + ": "
        + (closing.listed().isEmpty()
            ? "[...]" + OR + "none"
            : "[" + String.join(", ", closing.listed()) + "]");
  }

  /** What a value can be: the named values, or the unit of a number. */
  public static String value(Property property) {
    if (property instanceof Property.Observation observation) {
      return String.join(OR, observation.values().values());
    }
    return property instanceof Property.Quantity quantity
        ? BLANK + " " + quantity.unit().symbol()
        : BLANK;
  }

  /** The method or the meter, where the reading has to name one. */
  private static List<String> choice(Equipment equipment) {
    if (equipment.methods().size() > 1) {
      return List.of("method: " + String.join(OR, equipment.methods()));
    }
    boolean named = equipment.methods().size() == 1 && equipment.meters().size() == 1;
    if (named || equipment.meters().isEmpty()) {
      return List.of();
    }
    return List.of(
        "meter: "
            + equipment.meters().stream().map(Bench.Meter::name).collect(Collectors.joining(OR)));
  }
}
