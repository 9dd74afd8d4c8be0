package org.mainsgate.ruleset;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.ValueList;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;

/** Something that can be said of a thing, or of a reading. */
public sealed interface Property {

  /** What every property has. */
  Heading heading();

  /** Its name in files and formulas. */
  default String name() {
    return heading().name();
  }

  /** Its name for people. */
  default String title() {
    return heading().title();
  }

  /** Whether it can be said of this kind of thing, or with this property. */
  default boolean isOf(String owner) {
    return heading().of().contains(owner);
  }

  /** Whether it is true for an hour only, and so speaks of its own visit alone. */
  default boolean isMomentary() {
    return heading().momentary();
  }

  /**
   * What every property has.
   *
   * @param name its name in files and formulas
   * @param title its name for people
   * @param of the kinds of thing that it is said of, or the properties that it is said with
   * @param home the file that it is written in
   * @param tier how hard it is asked for
   * @param momentary whether it never outlives its visit
   * @param method how to find out, empty if that needs no words
   * @param caution what can hurt while finding out, empty if nothing
   * @param seconds how long it takes to do once
   */
  record Heading(
      String name,
      String title,
      List<String> of,
      Home home,
      Tier tier,
      boolean momentary,
      String method,
      String caution,
      int seconds) {

    /** Keeps the owners as they are. */
    public Heading {
      of = List.copyOf(of);
    }
  }

  /** The file that a property is written in. */
  enum Home {
    /** The bench file, under {@code site}. */
    BENCH,
    /** The instrument's file, under {@code plate}. */
    INSTRUMENT,
    /** A visit. */
    VISIT
  }

  /** How hard a property is asked for. */
  enum Tier {
    /** Needed to pass. */
    GATE,
    /** Needed only when a construction calls for it. */
    IF_PRESENT,
    /** Never asked for. */
    NOTE
  }

  /**
   * A number with a unit.
   *
   * @param heading what every property has
   * @param nature whether it is measured, marked, or varies
   * @param units the units it takes, the first for printing
   * @param function the meter's function that measures it; empty where nothing is measured
   * @param least what it can't be below, in SI units, if there is such a bound
   * @param worst which end is the worse one, where one reading may speak for several things
   * @param leads the most that test leads add where nobody has nulled them, in SI units; empty
   *     where that may matter, so that nothing is assumed
   * @param derived whether nobody records it: it is computed from the entry that it stands with
   */
  record Quantity(
      Heading heading,
      Nature nature,
      List<Unit> units,
      Optional<String> function,
      Optional<Rational> least,
      Optional<Worst> worst,
      Optional<Rational> leads,
      boolean derived)
      implements Property {

    /** Keeps the units as they are, of which there is at least one. */
    public Quantity {
      units = List.copyOf(units);
      if (units.isEmpty()) {
        throw new IllegalArgumentException("a quantity without a unit");
      }
    }

    /** The unit to print it in. */
    public Unit unit() {
      return units.get(0);
    }
  }

  /** Which end of a reading is the worse one. */
  enum Worst {
    /** The highest: a resistance that has to be low. */
    HIGHEST,
    /** The lowest: an insulation that has to be high. */
    LOWEST
  }

  /**
   * One of a closed list of named values.
   *
   * @param heading what every property has
   * @param values the list
   * @param titles each value's name for people
   */
  record Observation(Heading heading, ValueList values, Map<String, String> titles)
      implements Property {

    /** Keeps the titles as they are. */
    public Observation {
      titles = Map.copyOf(titles);
    }

    /** A value's name for people. */
    public String title(String value) {
      return titles.getOrDefault(value, value);
    }
  }

  /**
   * A thing that an entry points to.
   *
   * @param heading what every property has
   * @param to the kind of thing
   */
  record Pointer(Heading heading, String to) implements Property {}
}
