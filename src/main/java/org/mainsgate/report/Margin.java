package org.mainsgate.report;

import java.math.RoundingMode;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Ground;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Print;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;

/**
 * What lies between a reading and its limit, seen from the ends that face each other.
 *
 * <pre>
 * met        [left]··+··[right]      to spare, 0 or above
 * not met    [right]··−··[left]      short of it, 0 or below
 * </pre>
 *
 * @param value in SI units
 * @param unit the unit to print it in
 */
record Margin(Rational value, Unit unit) {

  private static final int DIGITS = 2;

  /** The margin of a comparison; empty where it is undecided or an end is open. */
  static Optional<Margin> of(Ground.Comparison comparison) {
    boolean upwards = comparison.operator().equals("≥") || comparison.operator().equals(">");
    ExactInterval low = upwards ? comparison.right() : comparison.left();
    ExactInterval high = upwards ? comparison.left() : comparison.right();
    return switch (comparison.truth()) {
      case MET -> between(low.hi(), high.lo(), comparison.unit());
      case NOT_MET -> between(low.lo(), high.hi(), comparison.unit());
      case UNDECIDED -> Optional.empty();
    };
  }

  private static Optional<Margin> between(
      @Nullable Rational from, @Nullable Rational to, Unit unit) {
    return from == null || to == null
        ? Optional.empty()
        : Optional.of(new Margin(to.minus(from), difference(unit)));
  }

  /** A difference has no zero point of its own: 5 °C above 20 °C is 5 K. */
  private static Unit difference(Unit unit) {
    return unit.offset().signum() == 0
        ? unit
        : new Unit("K", unit.dimension(), unit.factor(), Rational.ZERO);
  }

  /** The number in its unit, rounded towards the worse. */
  String number(int digits) {
    return Print.value(value, unit, digits, RoundingMode.FLOOR);
  }

  /** For people: {@code 0.02 Ω to spare}, or {@code off by 0.3 Ω}. */
  String words(Truth truth) {
    String size =
        truth == Truth.MET
            ? Print.value(value, unit, DIGITS, RoundingMode.FLOOR)
            : Print.value(value.negate(), unit, DIGITS, RoundingMode.CEILING);
    String symbol = unit.symbol().equals("1") ? "" : " " + unit.symbol();
    if (value.signum() == 0) {
      return "exactly at the limit";
    }
    return truth == Truth.MET ? size + symbol + " to spare" : "off by " + size + symbol;
  }
}
