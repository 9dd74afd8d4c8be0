package org.mainsgate.formula;

import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;

/** The unit to print a number in when none of its names suggests one. */
final class PrintUnit {
  private PrintUnit() {}

  /** The SI unit of a dimension, else its base units; {@code 1} for a plain number. */
  static Unit of(Dimension dimension) {
    String symbol = dimension.equals(Dimension.NONE) ? "1" : dimension.describe();
    return Units.symbols().stream()
        .flatMap(known -> Units.find(known).stream())
        .filter(unit -> unit.dimension().equals(dimension))
        .filter(unit -> unit.factor().equals(Rational.ONE) && unit.offset().signum() == 0)
        .findFirst()
        .orElseGet(() -> new Unit(symbol, dimension, Rational.ONE, Rational.ZERO));
  }
}
