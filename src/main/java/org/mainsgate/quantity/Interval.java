package org.mainsgate.quantity;

import java.util.function.DoubleBinaryOperator;

/**
 * A closed interval of real numbers between two doubles, rounded outward: the true result of an
 * operation is always inside.
 *
 * <p>An infinite end means that there is no bound on that side; infinity itself is no value, so
 * {@code 0 × ∞} is 0. Sums, differences, products, quotients and square roots have the tightest
 * enclosing doubles: the residue of the rounded result (TwoSum, or a fused multiply-add) says
 * whether it is exact and on which side it errs, and only an inexact end moves by one. Every
 * operation is inclusion-monotone: narrower operands never give a wider result. (Ogita, Rump,
 * Oishi, "Accurate sum and dot product", 2005; IEEE 1788-2015.)
 *
 * @param lo the lower end, negative infinity for none
 * @param hi the upper end, infinity for none
 */
public record Interval(double lo, double hi) {

  public static final Interval UNBOUNDED =
      new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** The circle's π: the double nearest to it, 3.14159265358979311…, lies below. */
  public static final Interval PI = new Interval(Math.PI, Math.nextUp(Math.PI));

  /** Below this a residue may have bits under the smallest double. */
  private static final double TINY = 0x1p-960;

  /** Above this the steps of TwoSum may overflow. */
  private static final double HUGE = 0x1p1022;

  /**
   * Checks the ends; a negative zero becomes zero.
   *
   * @throws IllegalArgumentException if an end is not a number, the ends are exchanged, or no real
   *     number lies between
   */
  public Interval {
    if (!(lo <= hi) || lo == Double.POSITIVE_INFINITY || hi == Double.NEGATIVE_INFINITY) {
      throw new IllegalArgumentException("no interval: " + lo + " to " + hi);
    }
    lo += 0.0;
    hi += 0.0;
  }

  public static Interval point(double value) {
    return new Interval(value, value);
  }

  public Interval plus(Interval other) {
    return new Interval(sumDown(lo, other.lo), -sumDown(-hi, -other.hi));
  }

  public Interval minus(Interval other) {
    return plus(other.negate());
  }

  public Interval times(Interval other) {
    if (lo >= 0 && other.lo >= 0) {
      return new Interval(productDown(lo, other.lo), -productDown(-hi, other.hi));
    }
    return overEnds(other, Interval::productDown);
  }

  /** The quotient; {@link #UNBOUNDED} if the divisor may be 0. */
  public Interval dividedBy(Interval other) {
    if (lo >= 0 && other.lo > 0) {
      return new Interval(quotientDown(lo, other.hi), -quotientDown(-hi, other.lo));
    }
    return other.contains(0) ? UNBOUNDED : overEnds(other, Interval::quotientDown);
  }

  public Interval negate() {
    return new Interval(-hi, -lo);
  }

  /** The square root; {@link #UNBOUNDED} if a value below 0 is possible. */
  public Interval sqrt() {
    return lo < 0 ? UNBOUNDED : new Interval(rootDown(lo), rootUp(hi));
  }

  /**
   * The natural logarithm; {@link #UNBOUNDED} if 0 or a value below is possible.
   *
   * <p>{@link StrictMath#log} is specified to be within 1 ulp and semi-monotonic, and the same on
   * every machine. Two steps outward cover an error of 1 ulp even where the size of a step changes.
   */
  public Interval ln() {
    return lo <= 0
        ? UNBOUNDED
        : new Interval(twoDown(StrictMath.log(lo)), twoUp(StrictMath.log(hi)));
  }

  /**
   * Two to the power of this.
   *
   * <p>{@link StrictMath#pow} is specified like {@link StrictMath#log} (see {@link #ln}). The whole
   * powers on either side bound the result too, which makes whole exponents exact and the widening
   * monotone.
   */
  public Interval exp2() {
    return new Interval(powerDown(lo), powerUp(hi));
  }

  public Interval min(Interval other) {
    return new Interval(Math.min(lo, other.lo), Math.min(hi, other.hi));
  }

  public Interval max(Interval other) {
    return new Interval(Math.max(lo, other.lo), Math.max(hi, other.hi));
  }

  /** The smallest interval that holds both. */
  public Interval hull(Interval other) {
    return new Interval(Math.min(lo, other.lo), Math.max(hi, other.hi));
  }

  /** Whether the two have a value in common. */
  public boolean intersects(Interval other) {
    return lo <= other.hi && other.lo <= hi;
  }

  public boolean contains(double value) {
    return lo <= value && value <= hi;
  }

  public boolean isPoint() {
    return lo == hi;
  }

  /** Whether both ends are finite. */
  public boolean isBounded() {
    return Double.isFinite(lo) && Double.isFinite(hi);
  }

  /** Whether every value here is less than or equal to every value there. */
  public Truth atMost(Interval other) {
    // MET        [this]          NOT_MET           [this]     UNDECIDED   [this]
    //                 [other]            [other]                             [other]
    if (hi <= other.lo) {
      return Truth.MET;
    }
    return lo > other.hi ? Truth.NOT_MET : Truth.UNDECIDED;
  }

  /** Whether every value here is less than every value there. */
  public Truth lessThan(Interval other) {
    return other.atMost(this).not();
  }

  /** Whether every value here is greater than or equal to every value there. */
  public Truth atLeast(Interval other) {
    return other.atMost(this);
  }

  /** Whether every value here is greater than every value there. */
  public Truth moreThan(Interval other) {
    return atMost(other).not();
  }

  /**
   * The extremes of an operation that is monotone in each operand, taken over the four pairs of
   * ends; odd in the first operand, so rounding up is rounding down mirrored.
   */
  private Interval overEnds(Interval other, DoubleBinaryOperator down) {
    return new Interval(
        Math.min(
            Math.min(down.applyAsDouble(lo, other.lo), down.applyAsDouble(lo, other.hi)),
            Math.min(down.applyAsDouble(hi, other.lo), down.applyAsDouble(hi, other.hi))),
        -Math.min(
            Math.min(down.applyAsDouble(-lo, other.lo), down.applyAsDouble(-lo, other.hi)),
            Math.min(down.applyAsDouble(-hi, other.lo), down.applyAsDouble(-hi, other.hi))));
  }

  // INVARIANT: neither a nor b is positive infinity.
  private static double sumDown(double a, double b) {
    double sum = a + b;
    if (Double.isInfinite(sum)) {
      return Math.min(sum, Double.MAX_VALUE);
    }
    if (Math.abs(a) > HUGE || Math.abs(b) > HUGE) {
      return Rational.of(a).plus(Rational.of(b)).down();
    }
    double partOfB = sum - a;
    double residue = (a - (sum - partOfB)) + (b - partOfB);
    return residue < 0 ? Math.nextDown(sum) : sum;
  }

  private static double productDown(double a, double b) {
    if (a == 0 || b == 0) {
      return 0;
    }
    double product = a * b;
    if (Double.isInfinite(a) || Double.isInfinite(b)) {
      return product;
    }
    if (Double.isInfinite(product)) {
      return Math.min(product, Double.MAX_VALUE);
    }
    if (Math.abs(product) < TINY) {
      return Rational.of(a).times(Rational.of(b)).down();
    }
    return Math.fma(a, b, -product) < 0 ? Math.nextDown(product) : product;
  }

  private static double quotientDown(double a, double b) {
    // ∞/∞ is 0 too: the pair (finite end, ∞) has that limit, and the pair (∞, finite end) the
    // other.
    if (a == 0 || Double.isInfinite(b)) {
      return 0;
    }
    double quotient = a / b;
    if (Double.isInfinite(a)) {
      return quotient;
    }
    if (Double.isInfinite(quotient)) {
      return Math.min(quotient, Double.MAX_VALUE);
    }
    if (Math.abs(a) < TINY || Math.abs(quotient) < TINY) {
      return Rational.of(a).dividedBy(Rational.of(b)).down();
    }
    double residue = Math.fma(-quotient, b, a);
    return residue != 0 && (residue < 0) == (b > 0) ? Math.nextDown(quotient) : quotient;
  }

  private static double rootDown(double square) {
    if (square < TINY) {
      return square == 0 ? 0 : rootDown(square * 0x1p200) * 0x1p-100;
    }
    double root = Math.sqrt(square);
    return Math.fma(-root, root, square) < 0 ? Math.nextDown(root) : root;
  }

  private static double rootUp(double square) {
    double down = rootDown(square);
    if (down == 0 || Double.isInfinite(down)) {
      return down;
    }
    double scaled = square < TINY ? square * 0x1p200 : square;
    double root = square < TINY ? down * 0x1p100 : down;
    return Math.fma(-root, root, scaled) > 0 ? Math.nextUp(down) : down;
  }

  private static double powerDown(double exponent) {
    double whole = Math.scalb(1.0, (int) Math.floor(exponent));
    return Math.min(Double.MAX_VALUE, Math.max(whole, twoDown(StrictMath.pow(2, exponent))));
  }

  private static double powerUp(double exponent) {
    double whole = Math.max(Double.MIN_VALUE, Math.scalb(1.0, (int) Math.ceil(exponent)));
    return Math.min(whole, twoUp(StrictMath.pow(2, exponent)));
  }

  private static double twoDown(double value) {
    return Math.nextDown(Math.nextDown(value));
  }

  private static double twoUp(double value) {
    return Math.nextUp(Math.nextUp(value));
  }
}
