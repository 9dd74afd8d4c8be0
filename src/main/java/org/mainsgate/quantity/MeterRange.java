package org.mainsgate.quantity;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One range of a meter: how far it goes, how fine it shows and how well it measures.
 *
 * @param to the greatest display, in SI units
 * @param digit one step of the last place, in SI units, above 0
 * @param accuracy as its maker states it
 * @param unit the unit of the display
 */
public record MeterRange(Rational to, Rational digit, Accuracy accuracy, Unit unit) {

  /**
   * Checks the sizes.
   *
   * @throws IllegalArgumentException if the step is not above 0, the range does not end above its
   *     zero, or the fixed part of the accuracy is of another dimension
   */
  public MeterRange {
    boolean oneDimension =
        accuracy
            .absoluteUnit()
            .map(fixed -> fixed.dimension().equals(unit.dimension()))
            .orElse(true);
    if (digit.signum() <= 0 || to.compareTo(unit.offset()) <= 0 || !oneDimension) {
      throw new IllegalArgumentException("no range to " + to + " in steps of " + digit);
    }
  }

  /** Whether the display can show this SI value: within the range and a whole number of steps. */
  public boolean canShow(Rational value) {
    return fromZero(value).abs().compareTo(fromZero(to)) <= 0
        && fromZero(value).isMultipleOf(digit);
  }

  /** The limits of error at a displayed SI value. */
  public Rational halfWidth(Rational value) {
    return accuracy.halfWidth(fromZero(value), digit);
  }

  /**
   * The range with the coarsest step that can show this SI value, the first of equals; empty if
   * none can.
   */
  public static Optional<MeterRange> choose(List<MeterRange> ranges, Rational value) {
    return ranges.stream()
        .filter(range -> range.canShow(value))
        .sorted(Comparator.comparing(MeterRange::digit).reversed())
        .findFirst();
  }

  /** A thermometer counts from 0 °C, not from 0 K. */
  private Rational fromZero(Rational si) {
    return si.minus(unit.offset());
  }
}
