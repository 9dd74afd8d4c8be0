package org.mainsgate.ruleset;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The closed list of words that a record is written in: kinds of thing, what can be said of them,
 * acts, and reasons to withdraw an entry.
 */
public final class Vocabulary {
  /** The one quantity that nobody records: days from an entry to the day that is asked about. */
  public static final String AGE = "age";

  private final Map<String, Kind> kinds;
  private final Map<String, Property> properties;
  private final Map<String, Act> acts;
  private final Map<String, String> withdrawalReasons;

  /** A vocabulary of these words, in this order. */
  public Vocabulary(
      Map<String, Kind> kinds,
      Map<String, Property> properties,
      Map<String, Act> acts,
      Map<String, String> withdrawalReasons) {
    this.kinds = ordered(kinds);
    this.properties = ordered(properties);
    this.acts = ordered(acts);
    this.withdrawalReasons = ordered(withdrawalReasons);
  }

  /**
   * What a person does to a thing.
   *
   * @param name its name in files
   * @param title its name for people
   * @param ends whether the thing is gone afterwards
   */
  public record Act(String name, String title, boolean ends) {}

  private static <T> Map<String, T> ordered(Map<String, T> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  /** The kinds of thing, by name. */
  public Map<String, Kind> kinds() {
    return kinds;
  }

  /** The kind of this name. */
  public Optional<Kind> kind(String name) {
    return Optional.ofNullable(kinds.get(name));
  }

  /** The properties, by name. */
  public Map<String, Property> properties() {
    return properties;
  }

  /** The property of this name. */
  public Optional<Property> property(String name) {
    return Optional.ofNullable(properties.get(name));
  }

  /** What can be said of a kind of thing, or with a property, in the order of the vocabulary. */
  public List<Property> of(String owner) {
    return properties.values().stream().filter(property -> property.isOf(owner)).toList();
  }

  /** The names of what can be said of a kind of thing, or with a property. */
  public List<String> namesOf(String owner) {
    return of(owner).stream().map(Property::name).toList();
  }

  /**
   * What stands with an entry of this property: what is said of the reading itself, and the
   * momentary observations of its visit.
   */
  public Optional<Property> with(String property, String name) {
    return property(name)
        .filter(found -> found.isOf(property) || found.isMomentary())
        .filter(found -> !name.equals(property));
  }

  /** Whether something is said of a thing, and not only with something else that is said of it. */
  public boolean isSaidOfThings(Property property) {
    return property.heading().of().stream().anyMatch(kinds::containsKey);
  }

  /** Whether a person is asked for it in a visit, if it is needed. */
  public boolean isAskedAtTheInstrument(Property property) {
    return property.heading().home() == Property.Home.VISIT
        && property.heading().tier() != Property.Tier.NOTE
        && !(property instanceof Property.Pointer)
        && isSaidOfThings(property);
  }

  /** The acts, by name. */
  public Map<String, Act> acts() {
    return acts;
  }

  /** Whether a thing is gone after this act. */
  public boolean ends(String act) {
    Act found = acts.get(act);
    return found != null && found.ends();
  }

  /** The reasons to withdraw an entry, each with its words. */
  public Map<String, String> withdrawalReasons() {
    return withdrawalReasons;
  }

  /** The kinds that are listed. */
  public Collection<Kind> listedKinds() {
    return kinds.values().stream().filter(Kind::isListed).toList();
  }
}
