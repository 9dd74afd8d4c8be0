package org.mainsgate.quantity;

import java.math.MathContext;
import java.math.RoundingMode;

/** The American wire gauge: {@code d = 0.127 mm × 92^((36 − n)/39)} (ASTM B258). */
final class WireGauge {

  private static final Interval SMALLEST_DIAMETER =
      ExactInterval.point(Rational.of("0.000127")).outward();
  private static final int STEPS = 39;
  private static final MathContext DOWN = new MathContext(15, RoundingMode.FLOOR);
  private static final MathContext UP = new MathContext(15, RoundingMode.CEILING);

  private WireGauge() {}

  /** The area {@code π d²/4} of a solid wire in m², enclosed to 15 digits. */
  static ExactInterval area(int gauge) {
    Interval diameter = ratio(36 - gauge).times(SMALLEST_DIAMETER);
    Interval area = Interval.PI.times(diameter).times(diameter).dividedBy(Interval.point(4));
    return ExactInterval.of(
        Rational.of(Rational.of(area.lo()).rounded(DOWN)),
        Rational.of(Rational.of(area.hi()).rounded(UP)));
  }

  /**
   * {@code 92^(steps/39)}: a good guess, moved outward until its 39th power is proven to enclose.
   */
  private static Interval ratio(int steps) {
    Rational target = Rational.of(92).power(steps);
    double lo = StrictMath.pow(92, (double) steps / STEPS);
    double hi = lo;
    while (Rational.of(lo).power(STEPS).compareTo(target) > 0) {
      lo = Math.nextDown(lo);
    }
    while (Rational.of(hi).power(STEPS).compareTo(target) < 0) {
      hi = Math.nextUp(hi);
    }
    return new Interval(lo, hi);
  }
}
