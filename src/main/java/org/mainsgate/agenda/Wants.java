package org.mainsgate.agenda;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mainsgate.ruleset.Property;

/** What is wanted, each once, with all reasons. It is filled while the findings are read. */
final class Wants {
  private final Situation situation;
  private final Map<Key, Set<Why>> entries = new LinkedHashMap<>();
  private final Map<String, Set<Why>> lists = new LinkedHashMap<>();

  Wants(Situation situation) {
    this.situation = situation;
  }

  /** A property of a thing. */
  record Key(String thing, String property) {}

  /** Wants an entry, unless nothing of the kind can be written down, or it is never asked for. */
  void entry(String thing, Property property, Why why) {
    if (property.heading().tier() != Property.Tier.NOTE && situation.has(thing, property)) {
      entries
          .computeIfAbsent(new Key(thing, property.name()), key -> new LinkedHashSet<>())
          .add(why);
    }
  }

  void list(String kind, Why why) {
    lists.computeIfAbsent(kind, key -> new LinkedHashSet<>()).add(why);
  }

  boolean has(String thing, String property) {
    return entries.containsKey(new Key(thing, property));
  }

  /** The entries wanted so far. */
  List<Key> entries() {
    return List.copyOf(entries.keySet());
  }

  Collection<String> lists() {
    return List.copyOf(lists.keySet());
  }

  List<Why> why(Key key) {
    return sorted(entries.getOrDefault(key, Set.of()));
  }

  List<Why> why(String kind) {
    return sorted(lists.getOrDefault(kind, Set.of()));
  }

  private static List<Why> sorted(Set<Why> whys) {
    return whys.stream().sorted((a, b) -> a.cause().compareTo(b.cause())).toList();
  }
}
