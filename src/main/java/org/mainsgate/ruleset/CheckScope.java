package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Meaning;
import org.mainsgate.formula.Reference;
import org.mainsgate.formula.Scope;
import org.mainsgate.formula.Table;
import org.mainsgate.quantity.ExactInterval;

/**
 * What the names in a check's formulas mean.
 *
 * <p>A name alone is a limit, a step, a property of the thing that the check runs over, or one of a
 * thing that exists once. A dotted path goes on with what was recorded with that entry, and through
 * a pointer to the properties of the thing it points to.
 */
public final class CheckScope implements Scope {

  /** The variable that stands for the thing a check runs over. */
  public static final String ITEM = "item";

  private final Vocabulary vocabulary;
  private final Map<String, Limit> limits;
  private final Map<String, Table> tables;
  private final Map<String, Meaning> steps = new LinkedHashMap<>();
  private final @Nullable String over;

  CheckScope(
      Vocabulary vocabulary,
      Map<String, Limit> limits,
      Map<String, Table> tables,
      Map<String, Meaning> steps,
      Optional<String> over) {
    this.vocabulary = vocabulary;
    this.limits = limits;
    this.tables = tables;
    this.steps.putAll(steps);
    this.over = over.orElse(null);
  }

  /** Makes one more named intermediate value known. */
  void add(Meaning.Step step) {
    steps.put(step.name(), step);
  }

  boolean knows(String name) {
    return steps.containsKey(name)
        || limits.containsKey(name)
        || tables.containsKey(name)
        || vocabulary.property(name).isPresent()
        || vocabulary.kind(name).isPresent();
  }

  @Override
  public Map<String, String> variables() {
    return over == null ? Map.of() : Map.of(ITEM, over);
  }

  @Override
  public Optional<Meaning> meaning(List<String> path, Map<String, String> variables) {
    String first = path.get(0);
    if (variables.containsKey(first)) {
      return path.size() == 1
          ? Optional.empty()
          : property(first, variables.get(first), path.subList(1, path.size()));
    }
    if (path.size() == 1 && steps.containsKey(first)) {
      return Optional.of(steps.get(first));
    }
    if (path.size() == 1 && limits.containsKey(first)) {
      Limit limit = limits.get(first);
      return Optional.of(new Meaning.Limit(first, limit.value(), limit.unit()));
    }
    return owner(first, variables).flatMap(owner -> property(owner.variable(), owner.kind(), path));
  }

  private record Owner(@Nullable String variable, String kind) {}

  /** Whose property a bare name is: the item's, or that of a thing that exists once. */
  private Optional<Owner> owner(String name, Map<String, String> variables) {
    Optional<Property> property = vocabulary.property(name);
    if (property.isEmpty()) {
      return Optional.empty();
    }
    String item = variables.get(ITEM);
    if (item != null && property.get().isOf(item)) {
      return Optional.of(new Owner(ITEM, item));
    }
    return property.get().heading().of().stream()
        .filter(kind -> vocabulary.kind(kind).map(found -> !found.isListed()).orElse(false))
        .findFirst()
        .map(kind -> new Owner(null, kind));
  }

  /** Follows a path from a kind of thing to a property that has a value. */
  private Optional<Meaning> property(
      @Nullable String variable, @Nullable String kind, List<String> path) {
    Optional<Property> last = Optional.empty();
    String owner = kind;
    for (String name : path) {
      last = step(owner, last, name);
      if (last.isEmpty()) {
        return Optional.empty();
      }
      owner = last.get() instanceof Property.Pointer pointer ? pointer.to() : null;
    }
    return last.flatMap(property -> valued(new Reference(variable, path), property));
  }

  /** The property of a kind of thing, or what stands with the property before. */
  private Optional<Property> step(@Nullable String kind, Optional<Property> before, String name) {
    if (kind != null) {
      return vocabulary.property(name).filter(property -> property.isOf(kind));
    }
    return before.flatMap(property -> vocabulary.with(property.name(), name));
  }

  private static Optional<Meaning> valued(Reference reference, Property property) {
    if (property instanceof Property.Quantity quantity) {
      ExactInterval possible =
          quantity.least().map(ExactInterval::atLeast).orElse(ExactInterval.UNBOUNDED);
      return Optional.of(
          new Meaning.Quantity(
              reference,
              quantity.unit().dimension(),
              quantity.nature(),
              possible,
              quantity.unit()));
    }
    if (property instanceof Property.Observation observation) {
      return Optional.of(new Meaning.Observation(reference, observation.values()));
    }
    return Optional.empty();
  }

  @Override
  public Optional<Table> table(String name) {
    return Optional.ofNullable(tables.get(name));
  }

  @Override
  public boolean isKind(String name) {
    return vocabulary.kind(name).map(Kind::isListed).orElse(false);
  }

  @Override
  public Collection<String> names() {
    Set<String> names = new LinkedHashSet<>(steps.keySet());
    names.addAll(limits.keySet());
    names.addAll(tables.keySet());
    for (Property property : vocabulary.properties().values()) {
      for (String owner : property.heading().of()) {
        boolean attribute = vocabulary.property(owner).isPresent();
        names.add(attribute ? owner + "." + property.name() : property.name());
      }
    }
    names.addAll(new ArrayList<>(vocabulary.kinds().keySet()));
    return names;
  }
}
