package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.formula.Facts;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.Range;
import org.mainsgate.formula.Reference;
import org.mainsgate.formula.Varying;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;

/**
 * What evidence says to a formula that asks: of everything that is not recorded, all that it can
 * be.
 *
 * <p>A path is followed from a thing to its property, on to what was recorded with that entry, and
 * through a pointer to the properties of the things it may point to. A pointer that nobody wrote
 * down means the things of its kind; where the list is closed and has one, that settles it.
 *
 * <p>It remembers its answers, and so is for one thread.
 */
final class Known implements Facts {
  private final Vocabulary vocabulary;
  private final Evidence evidence;
  private final Map<String, String> items;

  /** What was asked before: many checks ask the same. */
  private final Map<Reference, Fact> facts = new HashMap<>();

  /** The same of what nobody wrote down, about any item. */
  private final Map<Property, Fact> unwritten;

  Known(Vocabulary vocabulary, Evidence evidence) {
    this(vocabulary, evidence, Map.of(), new HashMap<>());
  }

  private Known(
      Vocabulary vocabulary,
      Evidence evidence,
      Map<String, String> items,
      Map<Property, Fact> unwritten) {
    this.vocabulary = vocabulary;
    this.evidence = evidence;
    this.items = items;
    this.unwritten = unwritten;
  }

  @Override
  public Range number(Reference reference) {
    return fact(reference) instanceof Fact.Amount number ? number.range() : Range.UNKNOWN;
  }

  @Override
  public Varying varying(Reference reference) {
    return fact(reference) instanceof Fact.Varying varying ? varying.range() : Varying.UNKNOWN;
  }

  @Override
  public Set<String> named(Reference reference) {
    if (fact(reference) instanceof Fact.Named named) {
      return named.candidates();
    }
    throw new IllegalStateException("no named value: " + reference.text());
  }

  @Override
  public Listing items(String kind) {
    return evidence.list(kind).listing();
  }

  @Override
  public Known with(String variable, String item) {
    Map<String, String> more = new HashMap<>(items);
    more.put(variable, item);
    return new Known(vocabulary, evidence, more, unwritten);
  }

  /** The thing that a variable stands for. */
  Optional<String> item(String variable) {
    return Optional.ofNullable(items.get(variable));
  }

  /** What is in force about a reference. */
  Fact fact(Reference reference) {
    Fact before = facts.get(reference);
    if (before != null) {
      return before;
    }
    Fact found = look(reference);
    facts.put(reference, found);
    return found;
  }

  private Fact look(Reference reference) {
    List<String> path = reference.path();
    Property property = property(path.get(0));
    Fact fact = of(owner(reference, property), property);
    for (String name : path.subList(1, path.size())) {
      property = property(name);
      fact =
          fact instanceof Fact.Pointer pointer
              ? behind(pointer, property)
              : fact.with().getOrDefault(name, nothing(property));
    }
    return fact;
  }

  /** The things whose property a reference ends with: where it points to, else where it starts. */
  Set<String> owners(Reference reference) {
    List<String> path = reference.path();
    for (int end = path.size() - 1; end > 0; end--) {
      Reference before = new Reference(reference.variable(), path.subList(0, end));
      if (fact(before) instanceof Fact.Pointer pointer && !pointer.things().isEmpty()) {
        return pointer.things();
      }
    }
    return Set.of(owner(reference, property(path.get(0))));
  }

  /** What was recorded of a reference and does not count any more, in words. */
  String lost(Reference reference) {
    String name = property(reference).name();
    return String.join(
        "; ",
        owners(reference).stream()
            .map(thing -> evidence.lost(thing, name))
            .filter(text -> !text.isEmpty())
            .sorted()
            .toList());
  }

  /** The last property of a reference: the one with the value. */
  Property property(Reference reference) {
    return property(reference.path().get(reference.path().size() - 1));
  }

  /**
   * An observation and its values as people read them.
   *
   * @param text as the formula writes it: its path, and for two that shall agree the other's after
   *     it
   */
  String titles(String text, List<String> values) {
    String path = text.split(" ", 2)[0];
    Property property = property(path.substring(path.lastIndexOf('.') + 1));
    if (property instanceof Property.Observation observation) {
      return property.title()
          + ": "
          + String.join(" or ", values.stream().map(observation::title).toList());
    }
    return property.title();
  }

  private String owner(Reference reference, Property property) {
    String variable = reference.variable();
    if (variable != null) {
      return item(variable).orElseThrow(() -> new IllegalStateException("unbound " + variable));
    }
    return property.heading().of().stream()
        .filter(kind -> !vocabulary.kind(kind).map(Kind::isListed).orElse(true))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("nobody's " + property.name()));
  }

  private Property property(String name) {
    return vocabulary
        .property(name)
        .orElseThrow(() -> new IllegalStateException("unknown property " + name));
  }

  private Fact of(String thing, Property property) {
    return evidence.fact(thing, property.name()).orElseGet(() -> nothing(property));
  }

  /**
   * What is in force about a property of something that may be several things: the worst of all.
   */
  private Fact behind(Fact.Pointer pointer, Property property) {
    if (!pointer.complete() || pointer.things().isEmpty()) {
      return nothing(property);
    }
    List<Fact> facts = new ArrayList<>();
    pointer.things().stream().sorted().forEach(thing -> facts.add(of(thing, property)));
    Fact hull = facts.stream().reduce(Hull::of).orElseThrow();
    return pointer.recorded() ? hull : Hull.unrecorded(hull);
  }

  /** What is in force where nobody has written anything. */
  private Fact nothing(Property property) {
    Fact before = unwritten.get(property);
    if (before != null) {
      return before;
    }
    Fact found = everything(property);
    unwritten.put(property, found);
    return found;
  }

  /** All that it can be. */
  private Fact everything(Property property) {
    if (property instanceof Property.Observation observation) {
      Set<String> all = new LinkedHashSet<>(observation.values().values());
      return new Fact.Named(all, false, false, List.of(), Map.of());
    }
    if (property instanceof Property.Pointer pointer) {
      Listing listing = items(pointer.to());
      boolean settled = listing.closed() && listing.items().size() == 1;
      return new Fact.Pointer(
          Set.copyOf(listing.items()), listing.closed(), settled, false, List.of(), Map.of());
    }
    Property.Quantity quantity = (Property.Quantity) property;
    if (quantity.nature() == Nature.VARIES) {
      return new Fact.Varying(Varying.UNKNOWN, false, false, List.of(), Map.of());
    }
    ExactInterval possible =
        quantity.least().map(ExactInterval::atLeast).orElse(ExactInterval.UNBOUNDED);
    return new Fact.Amount(Range.of(possible), false, false, false, List.of(), Map.of());
  }
}
