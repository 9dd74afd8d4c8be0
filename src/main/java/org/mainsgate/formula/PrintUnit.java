package org.mainsgate.formula;

import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;

/**
 * The unit to print a number in.
 *
 * <p>A unit with an offset, °C, is for a temperature that is itself named. A sum or difference is
 * in K: 5 K between two rooms are not 5 °C.
 */
final class PrintUnit {
  private PrintUnit() {}

  /** The SI unit of a dimension, else its base units; {@code 1} for a plain number. */
  static Unit of(Dimension dimension) {
    String symbol = dimension.equals(Dimension.NONE) ? "1" : dimension.describe();
    return Units.symbols().stream()
        .flatMap(known -> Units.find(known).stream())
        .filter(unit -> unit.dimension().equals(dimension))
        .filter(unit -> unit.factor().equals(Rational.ONE) && hasNoOffset(unit))
        .findFirst()
        .orElseGet(() -> new Unit(symbol, dimension, Rational.ONE, Rational.ZERO));
  }

  /** The unit of both sides of a comparison. */
  static Unit ofBoth(NumberNode left, NumberNode right) {
    boolean both = left.unit().isPresent() && right.unit().isPresent();
    return left.unit()
        .or(right::unit)
        .filter(unit -> both || hasNoOffset(unit))
        .orElseGet(() -> of(left.dimension()));
  }

  static boolean hasNoOffset(Unit unit) {
    return unit.offset().signum() == 0;
  }
}
