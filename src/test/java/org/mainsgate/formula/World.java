package org.mainsgate.formula;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/**
 * Facts by name: {@code a}, {@code v.highest}, and {@code p1.m} for a name of an item. What is
 * absent is unknown; an absent observation is the full set of its list.
 */
public record World(
    Map<String, ExactInterval> numbers,
    Map<String, Set<String>> choices,
    Map<String, Listing> lists,
    Map<String, String> bound)
    implements Facts {

  public static World nothing() {
    return new World(Map.of(), Map.of(), Map.of(), Map.of());
  }

  World number(String name, ExactInterval value) {
    Map<String, ExactInterval> more = new LinkedHashMap<>(numbers);
    more.put(name, value);
    return new World(more, choices, lists, bound);
  }

  World number(String name, String lo, String hi) {
    return number(name, ExactInterval.of(Rational.of(lo), Rational.of(hi)));
  }

  World number(String name, String value) {
    return number(name, value, value);
  }

  World choice(String name, String... values) {
    Map<String, Set<String>> more = new LinkedHashMap<>(choices);
    more.put(name, Set.of(values));
    return new World(numbers, more, lists, bound);
  }

  World list(String kind, boolean closed, String... items) {
    Map<String, Listing> more = new LinkedHashMap<>(lists);
    more.put(kind, new Listing(List.of(items), closed));
    return new World(numbers, choices, more, bound);
  }

  /** The name under which a reference is kept here. */
  String key(Reference reference) {
    String path = String.join(".", reference.path());
    String variable = reference.variable();
    return variable == null ? path : bound.get(variable) + "." + path;
  }

  ExactInterval value(String key) {
    return numbers.getOrDefault(key, ExactInterval.UNBOUNDED);
  }

  @Override
  public Range number(Reference reference) {
    return Range.of(value(key(reference)));
  }

  @Override
  public Varying varying(Reference reference) {
    String key = key(reference);
    return new Varying(value(key + ".lowest"), value(key + ".nominal"), value(key + ".highest"));
  }

  @Override
  public Set<String> named(Reference reference) {
    Set<String> all = Shop.valuesOf(reference).stream().collect(Collectors.toUnmodifiableSet());
    return choices.getOrDefault(key(reference), all);
  }

  @Override
  public Listing items(String kind) {
    return lists.getOrDefault(kind, Listing.UNKNOWN);
  }

  @Override
  public World with(String variable, String item) {
    Map<String, String> more = new HashMap<>(bound);
    more.put(variable, item);
    return new World(numbers, choices, lists, more);
  }
}
