package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Position;

/**
 * One thing that a person wrote down.
 *
 * @param id its id inside its file: as given, or {@code found.case.earth_resistance}
 * @param thing the thing it is said of
 * @param property the property's name
 * @param value what was written
 * @param with what was recorded with it, by property; the method's word where the entry says
 *     nothing
 * @param meter the meter, by name
 * @param range the meter's range as typed: its upper end
 * @param nulled how the test lead was dealt with
 * @param by who wrote it, by initials, where that is not the visit's person
 * @param on the date, where that is not the visit's
 * @param worstOf the other things among which this reading was the worst
 * @param bound on a thing for which such a reading speaks: which of its ends is a bound
 * @param note anything else
 * @param at where it stands
 */
public record Entry(
    String id,
    String thing,
    String property,
    Value value,
    Map<String, Value> with,
    Optional<String> meter,
    Optional<String> range,
    Optional<String> nulled,
    Optional<String> by,
    Optional<LocalDate> on,
    Set<String> worstOf,
    Optional<Property.Worst> bound,
    String note,
    Position at) {

  /** Keeps what was recorded with it as it is. */
  public Entry {
    with = Collections.unmodifiableMap(new TreeMap<>(with));
    worstOf = Collections.unmodifiableSet(new TreeSet<>(worstOf));
  }

  /** An entry that speaks for its own thing alone. */
  public Entry(
      String id,
      String thing,
      String property,
      Value value,
      Map<String, Value> with,
      Optional<String> meter,
      Optional<String> range,
      Optional<String> nulled,
      Optional<String> by,
      Optional<LocalDate> on,
      String note,
      Position at) {
    this(
        id,
        thing,
        property,
        value,
        with,
        meter,
        range,
        nulled,
        by,
        on,
        Set.of(),
        Optional.empty(),
        note,
        at);
  }

  /** The same reading as it speaks for another thing, of which this one was the worse. */
  Entry boundOn(String other, Property.Worst worst) {
    return new Entry(
        id,
        other,
        property,
        value,
        with,
        meter,
        range,
        nulled,
        by,
        on,
        worstOf,
        Optional.of(worst),
        note,
        at);
  }
}
