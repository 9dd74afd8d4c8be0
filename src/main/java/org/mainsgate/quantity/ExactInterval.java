package org.mainsgate.quantity;

import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A closed interval of real numbers between two exact fractions: what is known of a quantity, in SI
 * units.
 *
 * <p>The basic operations are exact, so a value that sits on its limit is found to sit there. Like
 * {@link Interval}, all are inclusion-monotone.
 *
 * @param lo the lower end, null for none
 * @param hi the upper end, null for none
 */
public record ExactInterval(@Nullable Rational lo, @Nullable Rational hi) {

  public static final ExactInterval UNBOUNDED = new ExactInterval(null, null);

  /** The circle's π, between two neighbouring doubles. */
  public static final ExactInterval PI = of(Interval.PI);

  /**
   * Checks the order of the ends.
   *
   * @throws IllegalArgumentException if the lower end is above the upper
   */
  public ExactInterval {
    if (lo != null && hi != null && lo.compareTo(hi) > 0) {
      throw new IllegalArgumentException("no interval: " + lo + " to " + hi);
    }
  }

  public static ExactInterval point(Rational value) {
    return new ExactInterval(value, value);
  }

  public static ExactInterval of(Rational lo, Rational hi) {
    return new ExactInterval(lo, hi);
  }

  /** Everything from {@code lo} upwards. */
  public static ExactInterval atLeast(Rational lo) {
    return new ExactInterval(lo, null);
  }

  /** Everything up to {@code hi}. */
  public static ExactInterval atMost(Rational hi) {
    return new ExactInterval(null, hi);
  }

  /** The same interval with exact ends. */
  public static ExactInterval of(Interval doubles) {
    return new ExactInterval(
        doubles.lo() == Double.NEGATIVE_INFINITY ? null : Rational.of(doubles.lo()),
        doubles.hi() == Double.POSITIVE_INFINITY ? null : Rational.of(doubles.hi()));
  }

  /** The tightest interval of doubles around this. */
  public Interval outward() {
    return new Interval(
        lo == null ? Double.NEGATIVE_INFINITY : lo.down(),
        hi == null ? Double.POSITIVE_INFINITY : hi.up());
  }

  public ExactInterval plus(ExactInterval other) {
    return new ExactInterval(
        ifBoth(lo, other.lo, Rational::plus), ifBoth(hi, other.hi, Rational::plus));
  }

  public ExactInterval minus(ExactInterval other) {
    return plus(other.negate());
  }

  public ExactInterval times(ExactInterval other) {
    End a = low();
    End b = high();
    End c = other.low();
    End d = other.high();
    End ac = a.times(c);
    End ad = a.times(d);
    End bc = b.times(c);
    End bd = b.times(d);
    End least = ac.min(ad).min(bc).min(bd);
    End greatest = ac.max(ad).max(bc).max(bd);
    return new ExactInterval(least.value, greatest.value);
  }

  /** The quotient; {@link #UNBOUNDED} if the divisor may be 0. */
  public ExactInterval dividedBy(ExactInterval other) {
    return other.contains(Rational.ZERO) ? UNBOUNDED : times(other.reciprocal());
  }

  public ExactInterval negate() {
    return new ExactInterval(hi == null ? null : hi.negate(), lo == null ? null : lo.negate());
  }

  public ExactInterval min(ExactInterval other) {
    return new ExactInterval(
        ifBoth(lo, other.lo, Rational::min), ifAny(hi, other.hi, Rational::min));
  }

  public ExactInterval max(ExactInterval other) {
    return new ExactInterval(
        ifAny(lo, other.lo, Rational::max), ifBoth(hi, other.hi, Rational::max));
  }

  /**
   * The square root, to the last digit of a double; {@link #UNBOUNDED} if a value below 0 is
   * possible.
   */
  public ExactInterval sqrt() {
    return throughDoubles(Interval::sqrt);
  }

  /**
   * The natural logarithm, to the last digits of a double; {@link #UNBOUNDED} if 0 or less is
   * possible.
   */
  public ExactInterval ln() {
    return throughDoubles(Interval::ln);
  }

  /** Two to the power of this, to the last digits of a double. */
  public ExactInterval exp2() {
    return throughDoubles(Interval::exp2);
  }

  /** The smallest interval that holds both. */
  public ExactInterval hull(ExactInterval other) {
    return new ExactInterval(
        ifBoth(lo, other.lo, Rational::min), ifBoth(hi, other.hi, Rational::max));
  }

  /** What the two have in common; empty if nothing. */
  public Optional<ExactInterval> intersect(ExactInterval other) {
    return overlaps(other)
        ? Optional.of(
            new ExactInterval(
                ifAny(lo, other.lo, Rational::max), ifAny(hi, other.hi, Rational::min)))
        : Optional.empty();
  }

  /** Whether the two have a value in common. */
  public boolean overlaps(ExactInterval other) {
    return moreThan(other) != Truth.MET && lessThan(other) != Truth.MET;
  }

  public boolean contains(Rational value) {
    return (lo == null || lo.compareTo(value) <= 0) && (hi == null || value.compareTo(hi) <= 0);
  }

  public boolean contains(ExactInterval other) {
    return hull(other).equals(this);
  }

  public boolean isPoint() {
    return lo != null && lo.equals(hi);
  }

  /** Whether there is a bound on both sides. */
  public boolean isBounded() {
    return lo != null && hi != null;
  }

  /** Whether there is no bound on either side: nothing is known. */
  public boolean isUnbounded() {
    return lo == null && hi == null;
  }

  /** Whether every value here is less than or equal to every value there. */
  public Truth atMost(ExactInterval other) {
    // MET        [this]          NOT_MET           [this]     UNDECIDED   [this]
    //                 [other]            [other]                             [other]
    if (hi != null && other.lo != null && hi.compareTo(other.lo) <= 0) {
      return Truth.MET;
    }
    return lo != null && other.hi != null && lo.compareTo(other.hi) > 0
        ? Truth.NOT_MET
        : Truth.UNDECIDED;
  }

  /** Whether every value here is less than every value there. */
  public Truth lessThan(ExactInterval other) {
    return other.atMost(this).not();
  }

  /** Whether every value here is greater than or equal to every value there. */
  public Truth atLeast(ExactInterval other) {
    return other.atMost(this);
  }

  /** Whether every value here is greater than every value there. */
  public Truth moreThan(ExactInterval other) {
    return atMost(other).not();
  }

  /** The ends in brackets, such as {@code [0.0974, 0.1626]} or {@code [200, …]}. */
  @Override
  public String toString() {
    return "[" + (lo == null ? "…" : lo) + ", " + (hi == null ? "…" : hi) + "]";
  }

  // INVARIANT: 0 is not inside, so both ends have one sign and a missing end has the reciprocal 0.
  private ExactInterval reciprocal() {
    return new ExactInterval(
        hi == null ? Rational.ZERO : Rational.ONE.dividedBy(hi),
        lo == null ? Rational.ZERO : Rational.ONE.dividedBy(lo));
  }

  private ExactInterval throughDoubles(UnaryOperator<Interval> operation) {
    return of(operation.apply(outward()));
  }

  private End low() {
    return new End(lo, -1);
  }

  private End high() {
    return new End(hi, 1);
  }

  private static @Nullable Rational ifBoth(
      @Nullable Rational a, @Nullable Rational b, BinaryOperator<Rational> operation) {
    return a == null || b == null ? null : operation.apply(a, b);
  }

  private static @Nullable Rational ifAny(
      @Nullable Rational a, @Nullable Rational b, BinaryOperator<Rational> operation) {
    if (a == null) {
      return b;
    }
    return b == null ? a : operation.apply(a, b);
  }

  /** A number, or infinity with the sign of {@code side} where the value is null. */
  private record End(@Nullable Rational value, int side) {

    int sign() {
      return value == null ? side : value.signum();
    }

    End times(End other) {
      if (sign() * other.sign() == 0) {
        return new End(Rational.ZERO, 0);
      }
      return new End(ifBoth(value, other.value, Rational::times), sign() * other.sign());
    }

    End min(End other) {
      return compareTo(other) <= 0 ? this : other;
    }

    End max(End other) {
      return compareTo(other) >= 0 ? this : other;
    }

    private int compareTo(End other) {
      if (value == null) {
        return other.value == null ? Integer.compare(side, other.side) : side;
      }
      return other.value == null ? -other.side : value.compareTo(other.value);
    }
  }
}
