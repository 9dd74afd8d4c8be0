package org.mainsgate.quantity;

/** The American wire gauge: {@code d = 0.127 mm × 92^((36 − n)/39)} (ASTM B258). */
final class WireGauge {

  private static final Rational SMALLEST_DIAMETER = Rational.of("0.000127");
  private static final int STEPS = 39;

  private WireGauge() {}

  /** The area {@code π d²/4} of a solid wire in m², enclosed to some 15 digits. */
  static ExactInterval area(int gauge) {
    ExactInterval diameter = ratio(36 - gauge).times(ExactInterval.point(SMALLEST_DIAMETER));
    return ExactInterval.PI
        .times(diameter)
        .times(diameter)
        .dividedBy(ExactInterval.point(Rational.of(4)));
  }

  /**
   * {@code 92^(steps/39)}: a good guess, moved outward until its 39th power is proven to enclose.
   */
  private static ExactInterval ratio(int steps) {
    Rational target = Rational.of(92).power(steps);
    double lo = StrictMath.pow(92, (double) steps / STEPS);
    double hi = lo;
    while (Rational.of(lo).power(STEPS).compareTo(target) > 0) {
      lo = Math.nextDown(lo);
    }
    while (Rational.of(hi).power(STEPS).compareTo(target) < 0) {
      hi = Math.nextUp(hi);
    }
    return ExactInterval.of(Rational.of(lo), Rational.of(hi));
  }
}
