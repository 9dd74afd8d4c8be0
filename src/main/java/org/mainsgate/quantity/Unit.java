package org.mainsgate.quantity;

/**
 * A unit that a quantity may be written in: {@code SI value = value × factor + offset}.
 *
 * @param symbol as printed
 * @param dimension what it measures
 * @param factor the size in SI units, above 0
 * @param offset the SI value of the unit's zero; not 0 for degrees Celsius alone
 */
public record Unit(String symbol, Dimension dimension, Rational factor, Rational offset) {

  /**
   * Checks the size.
   *
   * @throws IllegalArgumentException if the factor is not above 0 or the symbol is blank
   */
  public Unit {
    if (factor.signum() <= 0 || symbol.isBlank()) {
      throw new IllegalArgumentException("no unit: `" + symbol + "` of size " + factor);
    }
  }

  /** The SI value of a number in this unit. */
  public Rational toSi(Rational value) {
    return value.times(factor).plus(offset);
  }

  /** The number in this unit of an SI value. */
  public Rational fromSi(Rational si) {
    return si.minus(offset).dividedBy(factor);
  }
}
