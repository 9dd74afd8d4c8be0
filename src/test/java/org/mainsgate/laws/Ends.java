package org.mainsgate.laws;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.function.BinaryOperator;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.ExactInterval;

/**
 * The ends of what a number can be; null is endless.
 *
 * <p>Every operation tries all pairs of ends. For an endless end it tries a number that is far away
 * and one that is far beyond it, and looks where that leads.
 */
record Ends(@Nullable Fraction lo, @Nullable Fraction hi) {
  static final Ends UNKNOWN = new Ends(null, null);

  /** To its twentieth place (any table of constants). */
  static final Ends PI =
      new Ends(
          Fraction.of(new BigDecimal("3.14159265358979323846")),
          Fraction.of(new BigDecimal("3.14159265358979323847")));

  private static final Fraction FAR = Fraction.of(BigDecimal.TEN.pow(70));
  private static final Fraction FARTHER = Fraction.of(BigDecimal.TEN.pow(140));
  private static final MathContext DIGITS = new MathContext(50);

  static Ends of(Fraction point) {
    return new Ends(point, point);
  }

  static Ends of(ExactInterval range) {
    return new Ends(
        range.lo() == null ? null : Fraction.of(range.lo()),
        range.hi() == null ? null : Fraction.of(range.hi()));
  }

  Ends hull(Ends other) {
    return new Ends(
        lo == null || other.lo == null ? null : lo.smaller(other.lo),
        hi == null || other.hi == null ? null : hi.greater(other.hi));
  }

  boolean isPoint() {
    return lo != null && hi != null && lo.compareTo(hi) == 0;
  }

  boolean mayBe(Fraction point) {
    return (lo == null || lo.compareTo(point) <= 0) && (hi == null || point.compareTo(hi) <= 0);
  }

  /** The same from a number up to another, with a far one for none. */
  private List<Fraction> corners(Fraction far) {
    return List.of(lo == null ? Fraction.ZERO.minus(far) : lo, hi == null ? far : hi);
  }

  /** The extremes of an operation over all pairs of ends. */
  Ends with(Ends other, BinaryOperator<Fraction> operation) {
    Fraction[] near = extremes(other, operation, FAR);
    Fraction[] beyond = extremes(other, operation, FARTHER);
    return new Ends(limit(near[0], beyond[0]), limit(near[1], beyond[1]));
  }

  private Fraction[] extremes(Ends other, BinaryOperator<Fraction> operation, Fraction far) {
    List<Fraction> all =
        corners(far).stream()
            .flatMap(x -> other.corners(far).stream().map(y -> operation.apply(x, y)))
            .toList();
    return new Fraction[] {
      all.stream().reduce(Fraction::smaller).orElseThrow(),
      all.stream().reduce(Fraction::greater).orElseThrow()
    };
  }

  /** Where it leads: to the same number, away without end, or towards zero. */
  private static @Nullable Fraction limit(Fraction near, Fraction beyond) {
    if (near.compareTo(beyond) == 0) {
      return near;
    }
    return beyond.size().compareTo(near.size()) > 0 ? null : Fraction.ZERO;
  }

  Ends over(Ends divisor) {
    return divisor.mayBe(Fraction.ZERO) ? UNKNOWN : with(divisor, Fraction::over);
  }

  /** The square root, between two numbers of fifty digits. */
  Ends root() {
    if (lo == null || lo.sign() < 0) {
      return UNKNOWN;
    }
    Ends least = root(lo);
    return hi == null ? new Ends(least.lo, null) : least.hull(root(hi));
  }

  private static Ends root(Fraction square) {
    BigDecimal root = square.decimal(DIGITS).sqrt(DIGITS);
    BigDecimal step = root.ulp().multiply(BigDecimal.TEN);
    boolean exact = Fraction.of(root).times(Fraction.of(root)).compareTo(square) == 0;
    return exact
        ? of(Fraction.of(root))
        : new Ends(Fraction.of(root.subtract(step)), Fraction.of(root.add(step)));
  }

  Ends ln() {
    if (lo == null || lo.sign() <= 0) {
      return UNKNOWN;
    }
    Ends least = around(StrictMath.log(lo.decimal(DIGITS).doubleValue()));
    return hi == null
        ? new Ends(least.lo, null)
        : least.hull(around(StrictMath.log(hi.decimal(DIGITS).doubleValue())));
  }

  /** Two to its power; of a great number without end. */
  Ends exp2() {
    Ends least = lo == null ? of(Fraction.ZERO) : power(lo);
    return hi == null ? new Ends(least.lo, null) : least.hull(power(hi));
  }

  private static Ends power(Fraction exponent) {
    double power = StrictMath.pow(2, exponent.decimal(DIGITS).doubleValue());
    return Double.isInfinite(power) ? new Ends(FAR, null) : around(power);
  }

  /** A number that a double gives, with four of its last digits on either side. */
  private static Ends around(double near) {
    BigDecimal step = new BigDecimal(Math.ulp(near)).multiply(BigDecimal.valueOf(4));
    BigDecimal value = new BigDecimal(near);
    return new Ends(Fraction.of(value.subtract(step)), Fraction.of(value.add(step)));
  }

  /** Whether it must be below the other, or might be. */
  boolean isBelow(Ends great, boolean must, boolean strict) {
    Fraction worst = must ? hi : lo;
    Fraction best = must ? great.lo : great.hi;
    if (worst == null || best == null) {
      return !must;
    }
    return strict ? worst.compareTo(best) < 0 : worst.compareTo(best) <= 0;
  }
}
