package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.Text;

/** The reader of what stands behind a property's name. */
final class Values {
  static final String UNKNOWN = "unknown";

  private final Map<String, String> kindOf;
  private final Complaints complaints;

  /**
   * A reader of values.
   *
   * @param kindOf the kind of each thing that a value can point to, by id
   */
  Values(Map<String, String> kindOf, Complaints complaints) {
    this.kindOf = kindOf;
    this.complaints = complaints;
  }

  /** Reads a value, or complains. */
  Optional<Value> read(Property property, Node node) {
    if (property instanceof Property.Observation observation && node instanceof Items items) {
      return candidates(observation, items);
    }
    Optional<Text> text = Words.text(node, property.name(), complaints);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (property instanceof Property.Quantity quantity) {
      return Numbers.read(text.get(), quantity, complaints).map(Value.Amount::new);
    }
    return property instanceof Property.Observation observation
        ? candidates(observation, text.get())
        : pointer((Property.Pointer) property, text.get());
  }

  private Optional<Value> candidates(Property.Observation observation, Text text) {
    List<String> valid = observation.values().values();
    if (text.value().equals(UNKNOWN) && !valid.contains(UNKNOWN)) {
      return Optional.of(new Value.Names(new LinkedHashSet<>(valid), UNKNOWN));
    }
    return candidates(observation, List.of(text));
  }

  private Optional<Value> candidates(Property.Observation observation, Items items) {
    List<Text> texts = new ArrayList<>();
    for (Node item : items.items()) {
      Words.text(item, observation.name(), complaints).ifPresent(texts::add);
    }
    if (items.items().isEmpty()) {
      complaints.add(items, "an empty list", "one or more values, or " + Words.quoted(UNKNOWN));
    }
    return texts.isEmpty() || texts.size() < items.items().size()
        ? Optional.empty()
        : candidates(observation, texts);
  }

  private Optional<Value> candidates(Property.Observation observation, List<Text> texts) {
    List<String> valid = observation.values().values();
    List<String> offered = new ArrayList<>(valid);
    offered.add(UNKNOWN);
    boolean known = true;
    for (Text text : texts) {
      if (!valid.contains(text.value())) {
        complaints.addUnknown(text.at(), "value", text.value(), offered);
        known = false;
      }
    }
    return known ? Optional.of(named(observation, texts)) : Optional.empty();
  }

  private static Value named(Property.Observation observation, List<Text> texts) {
    Set<String> written = texts.stream().map(Text::value).collect(Collectors.toSet());
    Set<String> inOrder =
        observation.values().values().stream()
            .filter(written::contains)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    String titles = inOrder.stream().map(observation::title).collect(Collectors.joining(" or "));
    return new Value.Names(inOrder, titles);
  }

  private Optional<Value> pointer(Property.Pointer pointer, Text text) {
    List<String> valid =
        kindOf.entrySet().stream()
            .filter(thing -> thing.getValue().equals(pointer.to()))
            .map(Map.Entry::getKey)
            .sorted()
            .toList();
    return Words.known(text, pointer.to(), valid, complaints)
        ? Optional.of(new Value.Thing(text.value()))
        : Optional.empty();
  }
}
