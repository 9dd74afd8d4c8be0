package org.mainsgate.laws;

import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.mainsgate.formula.Ground;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;

/**
 * What a sound instrument shows to one check: a value for each property, found by looking for it.
 *
 * <p>From a guess on, one value after the other is changed, and a change stays unless it makes
 * something worse.
 *
 * @param names by observation
 * @param numbers by quantity, in SI units
 * @param found whether the check passes so, or whatever else was looked for
 */
record Sound(Map<String, String> names, Map<String, Rational> numbers, boolean found) {
  private static final int CHANGES = 2000;
  private static final Map<String, Sound> FOUND = new HashMap<>();
  private static final Map<String, Sound> IMPOSSIBLE = new HashMap<>();

  /** Where to begin looking; whatever is not here begins somewhere. */
  private static final Map<String, String> GUESS =
      Map.ofEntries(
          Map.entry("class", "I"),
          Map.entry("core_area", "1.0"),
          Map.entry("lead_length", "3"),
          Map.entry("rated_voltage", "240"),
          Map.entry("rated_power", "48"),
          Map.entry("plug_fuse", "3"),
          Map.entry("supply_voltage", "230"),
          Map.entry("socket_voltage", "230"),
          Map.entry("set_voltage", "240"),
          Map.entry("test_current", "0.2"),
          Map.entry("earth_resistance", "0.08"),
          Map.entry("lead_earth_resistance", "0.08"),
          Map.entry("test_voltage", "500"),
          Map.entry("insulation_resistance", "100"));

  /** Keeps the values as they are. */
  Sound {
    names = Map.copyOf(names);
    numbers = Map.copyOf(numbers);
  }

  /** What passes the check that a slice is about, or comes close to it. */
  static Sound of(Slice slice) {
    Slice alone = Slice.of(slice.rules(), slice.focus().id());
    String key = slice.rules().identity() + slice.focus().id();
    Sound known = FOUND.get(key);
    if (known == null) {
      // A fail keeps silent about everything else that is wrong; a hold names it all. What is
      // from memory passes nothing, and is taken as confirmed meanwhile.
      Rules mild = Laws.confirmed(Laws.changed(alone.rules(), Laws::mild));
      Search search = new Search(alone, evidence -> distance(mild, alone, evidence));
      Rules first = Rulebook.every().get(0);
      boolean isFirst = first.identity().equals(slice.rules().identity());
      boolean common = first.checks().containsKey(slice.focus().id());
      known =
          isFirst || !common
              ? search.look()
              : search.from(of(Slice.of(first, slice.focus().id()))).look();
      FOUND.put(key, known);
    }
    return known;
  }

  /** What fails a check and can't be true either, if there is such a thing. */
  static Sound impossible(Slice slice) {
    Slice alone = Slice.of(slice.rules(), slice.focus().id());
    Rules bands = Laws.changed(alone.rules(), Broken::plausibleInstead);
    return IMPOSSIBLE.computeIfAbsent(
        slice.rules().identity() + slice.focus().id(),
        key ->
            new Search(
                    alone,
                    evidence ->
                        missing(alone.rules(), alone, evidence) + missing(bands, alone, evidence))
                .look());
  }

  /** Whether the check that a slice is about does not fail. */
  private static int missing(Rules rules, Slice slice, Evidence evidence) {
    boolean fails =
        Judge.ENGINE.judge(rules, evidence).findings().stream()
            .filter(finding -> finding.check().id().equals(slice.focus().id()))
            .anyMatch(finding -> finding.outcome() == Outcome.FAIL);
    return fails ? 0 : 1;
  }

  /** How far a check is from passing, and those before it. */
  private static double distance(Rules rules, Slice slice, Evidence evidence) {
    double distance = 0;
    for (Finding finding : Judge.ENGINE.judge(rules, evidence).findings()) {
      boolean focus = finding.check().id().equals(slice.focus().id());
      boolean idle = finding.outcome() == Outcome.NOT_APPLICABLE;
      distance += finding.outcome() == Outcome.PASS || (idle && !focus) ? 0 : 1;
      distance += focus && idle ? 10 : 0;
      distance += finding.holds().size();
      distance += finding.holds().isEmpty() ? 0 : apart(finding);
    }
    return distance;
  }

  /** How many times as great one side of what is not met is as the other, on a small scale. */
  private static double apart(Finding finding) {
    double apart = 0;
    for (Ground ground : finding.arithmetic()) {
      if (ground instanceof Ground.Comparison c && c.truth() == Truth.NOT_MET) {
        double left = Math.abs(c.left().outward().lo());
        double right = Math.abs(c.right().outward().lo());
        boolean finite = left > 0 && right > 0 && Double.isFinite(left) && Double.isFinite(right);
        apart += finite ? Math.min(0.5, Math.abs(Math.log(left / right)) / 100) : 0.5;
      }
    }
    return apart;
  }

  String name(Property.Observation property) {
    return names.getOrDefault(property.name(), property.values().values().get(0));
  }

  Rational number(Property.Quantity property) {
    return numbers.getOrDefault(property.name(), Pools.si(property, "50"));
  }

  /** The looking. */
  private static final class Search {
    private final Slice slice;
    private final ToDoubleFunction<Evidence> distance;
    private final Random random = new Random(7);
    private final Map<String, String> names = new HashMap<>();
    private final Map<String, Rational> numbers = new HashMap<>();
    private final List<Property> asked = new ArrayList<>();

    Search(Slice slice, ToDoubleFunction<Evidence> distance) {
      this.slice = slice;
      this.distance = distance;
      for (String name : slice.names()) {
        begin(slice.rules().vocabulary().property(name).orElseThrow());
      }
    }

    /** Where the search under another profile ended is a good place to begin. */
    Search from(Sound other) {
      other.names().forEach((name, value) -> names.computeIfPresent(name, (n, old) -> value));
      other.numbers().forEach((name, value) -> numbers.computeIfPresent(name, (n, old) -> value));
      return this;
    }

    private void begin(Property property) {
      String guess = GUESS.getOrDefault(property.name(), "");
      if (property instanceof Property.Observation observation) {
        asked.add(property);
        boolean there = observation.values().values().contains(guess);
        names.put(property.name(), there ? guess : observation.values().values().get(0));
      } else if (property instanceof Property.Quantity quantity) {
        asked.add(property);
        List<Rational> pool = Pools.limits(slice, quantity);
        Rational first = pool.isEmpty() ? Pools.si(quantity, "50") : pool.get(0);
        numbers.put(property.name(), guess.isEmpty() ? first : Pools.si(quantity, guess));
      }
    }

    Sound look() {
      double badness = badness();
      for (int i = 0; i < CHANGES && badness > 0; i++) {
        Property property = Pools.of(asked, random);
        Object before = change(property);
        double after = badness();
        if (after <= badness) {
          badness = after;
        } else {
          put(property, before);
        }
      }
      return new Sound(names, numbers, badness == 0);
    }

    private Object change(Property property) {
      if (property instanceof Property.Quantity quantity) {
        Rational before = Objects.requireNonNull(numbers.get(property.name()));
        List<Rational> pool = Pools.limits(slice, quantity);
        Rational from = pool.isEmpty() || random.nextInt(3) == 0 ? before : Pools.of(pool, random);
        Rational factor =
            Pools.of(
                List.of(
                    Rational.ONE,
                    Rational.of(9, 10),
                    Rational.of(11, 10),
                    Rational.of(1, 2),
                    Rational.of(2),
                    Rational.of(10),
                    Rational.of(1, 10)),
                random);
        numbers.put(property.name(), rounded(from.times(factor)));
        return before;
      }
      String before = Objects.requireNonNull(names.get(property.name()));
      names.put(
          property.name(), Pools.of(((Property.Observation) property).values().values(), random));
      return before;
    }

    /** To four places, so that nobody counts digits for long. */
    private static Rational rounded(Rational number) {
      return Rational.of(Fraction.of(number).decimal(new MathContext(4)));
    }

    private void put(Property property, Object value) {
      if (value instanceof Rational number) {
        numbers.put(property.name(), number);
      } else {
        names.put(property.name(), (String) value);
      }
    }

    private double badness() {
      return distance.applyAsDouble(RandomEvidence.sound(slice, new Sound(names, numbers, false)));
    }
  }
}
