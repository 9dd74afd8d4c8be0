package org.mainsgate.laws;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.mainsgate.formula.Ground;
import org.mainsgate.formula.Table;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Limit;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Finding;

/**
 * Numbers worth trying for a quantity: each limit, table key, table cell and side of a comparison
 * of its dimension in the checks at hand, a step below it and a step above. In SI units.
 */
final class Pools {
  private static final Rational BELOW = Rational.of(9, 10);
  private static final Rational ABOVE = Rational.of(11, 10);
  private static final Map<String, List<Rational>> LIMITS = new HashMap<>();
  private static final Map<String, List<Rational>> NUMBERS = new HashMap<>();

  private Pools() {}

  private static String key(Slice slice, Property property) {
    return slice.rules().identity() + slice.focus().id() + " " + property.name();
  }

  /** A number at a limit of the check that a slice is about, or a step beside one. */
  static Rational number(Slice slice, Property.Quantity property, Random random) {
    List<Rational> all =
        NUMBERS.computeIfAbsent(key(slice, property), key -> numbers(slice, property));
    return of(all, random);
  }

  /** A number that nobody should meet, and that must not be judged wrongly either. */
  static Rational oddNumber(Slice slice, Property.Quantity property, Random random) {
    Rational number = number(slice, property, random);
    return of(
        List.of(
            Rational.ZERO, number.times(Rational.of(1000)), number.dividedBy(Rational.of(1000))),
        random);
  }

  private static List<Rational> numbers(Slice slice, Property.Quantity property) {
    TreeSet<Rational> all = new TreeSet<>(limits(slice, property));
    Sound sound = Sound.of(slice);
    all.add(sound.number(property));
    all.addAll(sides(slice, sound, property.unit().dimension()));
    List<Rational> around = new ArrayList<>();
    for (Rational number : all) {
      around.addAll(List.of(number.times(BELOW), number, number, number.times(ABOVE)));
    }
    around.removeIf(number -> isImpossible(number, property));
    return around.isEmpty() ? List.of(si(property, "50")) : List.copyOf(around);
  }

  private static boolean isImpossible(Rational number, Property.Quantity property) {
    return number.signum() <= 0
        || property.least().filter(least -> number.compareTo(least) < 0).isPresent();
  }

  /** What the check compares where an instrument is sound. */
  private static List<Rational> sides(Slice slice, Sound sound, Dimension dimension) {
    List<Rational> sides = new ArrayList<>();
    Slice alone = Slice.of(slice.rules(), slice.focus().id());
    for (Finding finding :
        Judge.ENGINE.judge(alone.rules(), RandomEvidence.sound(alone, sound)).findings()) {
      for (Ground ground : finding.arithmetic()) {
        if (ground instanceof Ground.Comparison comparison
            && comparison.unit().dimension().equals(dimension)) {
          addPoint(comparison.left(), sides);
          addPoint(comparison.right(), sides);
        }
      }
    }
    return sides;
  }

  private static void addPoint(ExactInterval side, List<Rational> sides) {
    Rational lo = side.lo();
    if (side.isPoint() && lo != null) {
      sides.add(lo);
    }
  }

  /** The limits, keys and cells of the check at hand that have the dimension of a quantity. */
  static List<Rational> limits(Slice slice, Property.Quantity property) {
    return LIMITS.computeIfAbsent(
        key(slice, property),
        key -> limits(slice.rules(), slice.focus(), property.unit().dimension()));
  }

  private static List<Rational> limits(Rules rules, Check check, Dimension dimension) {
    TreeSet<Rational> all = new TreeSet<>();
    for (TruthFormula formula : Slice.formulas(check)) {
      for (String name : formula.limits()) {
        Limit limit = rules.limits().get(name);
        Rational value = limit == null ? null : limit.value().lo();
        if (limit != null && value != null && limit.unit().dimension().equals(dimension)) {
          all.add(value);
        }
      }
      for (String name : formula.tables()) {
        Rules.CitedTable table = rules.tables().get(name);
        if (table != null) {
          add(table.table(), dimension, all);
        }
      }
    }
    return List.copyOf(all);
  }

  private static void add(Table table, Dimension dimension, Set<Rational> all) {
    boolean keyed = table.key() instanceof Table.NumberKey key && key.dimension().equals(dimension);
    for (Table.Row row : table.rows()) {
      Rational number = row.number();
      if (keyed && number != null) {
        all.add(number);
      }
      for (Table.Column column : table.columns()) {
        ExactInterval cell = row.cells().get(column.name());
        Rational value = cell == null ? null : cell.lo();
        if (value != null && column.dimension().equals(dimension)) {
          all.add(value);
        }
      }
    }
  }

  static String name(Property.Observation property, Random random) {
    return of(property.values().values(), random);
  }

  static Rational si(Property.Quantity property, String number) {
    return property.unit().toSi(Rational.of(number));
  }

  static <T> T of(List<T> values, Random random) {
    return values.get(random.nextInt(values.size()));
  }
}
