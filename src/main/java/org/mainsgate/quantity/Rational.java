package org.mainsgate.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * An exact fraction of two whole numbers of any size, in lowest terms, with a positive denominator.
 *
 * <p>Every decimal that a person types and every finite {@code double} is one without loss.
 */
public final class Rational implements Comparable<Rational> {

  public static final Rational ZERO = of(0);
  public static final Rational ONE = of(1);

  /** Whole numbers of so many bits are doubles without loss. */
  private static final int EXACT_BITS = 53;

  private static final int LONGEST = 40;
  private static final Pattern DECIMAL = Pattern.compile("[-\u2212]?[0-9]+(\\.[0-9]+)?");

  private final BigInteger num;
  private final BigInteger den;

  // INVARIANT: in lowest terms, the denominator positive.
  private Rational(BigInteger num, BigInteger den) {
    this.num = num;
    this.den = den;
  }

  private static Rational reduced(BigInteger num, BigInteger den) {
    if (den.signum() == 0) {
      throw new ArithmeticException("division by zero");
    }
    if (den.equals(BigInteger.ONE)) {
      return new Rational(num, den);
    }
    BigInteger common = gcd(num, den);
    BigInteger divisor = den.signum() < 0 ? common.negate() : common;
    return divisor.equals(BigInteger.ONE)
        ? new Rational(num, den)
        : new Rational(num.divide(divisor), den.divide(divisor));
  }

  /** The values of the trade are short: most fit into a long, whose remainders are quicker. */
  private static BigInteger gcd(BigInteger a, BigInteger b) {
    if (a.bitLength() >= Long.SIZE - 1 || b.bitLength() >= Long.SIZE - 1) {
      return a.gcd(b);
    }
    long one = Math.abs(a.longValue());
    long other = Math.abs(b.longValue());
    while (other != 0) {
      long rest = one % other;
      one = other;
      other = rest;
    }
    return BigInteger.valueOf(one);
  }

  public static Rational of(long whole) {
    return of(whole, 1);
  }

  /**
   * The fraction {@code num/den}.
   *
   * @throws ArithmeticException if {@code den} is zero
   */
  public static Rational of(long num, long den) {
    return reduced(BigInteger.valueOf(num), BigInteger.valueOf(den));
  }

  public static Rational of(BigDecimal decimal) {
    return decimal.scale() > 0
        ? reduced(decimal.unscaledValue(), BigInteger.TEN.pow(decimal.scale()))
        : reduced(decimal.toBigIntegerExact(), BigInteger.ONE);
  }

  /**
   * The exact value of a finite double.
   *
   * @throws IllegalArgumentException if the double is infinite or not a number
   */
  public static Rational of(double finite) {
    if (!Double.isFinite(finite)) {
      throw new IllegalArgumentException("not a finite number: " + finite);
    }
    return of(new BigDecimal(finite));
  }

  /**
   * A decimal constant written in code, such as {@code "0.3048"}.
   *
   * @throws IllegalArgumentException if it is not what {@link #parse} takes
   */
  public static Rational of(String decimal) {
    return parse(decimal)
        .orElseThrow(() -> new IllegalArgumentException("not a plain decimal: " + decimal));
  }

  /**
   * A plain decimal such as {@code 0.13} or {@code -0.01}; empty for anything else.
   *
   * <p>At most 40 characters. The minus may be {@code -} or U+2212. No exponent, no plus sign, no
   * separators, no bare point.
   */
  public static Optional<Rational> parse(String decimal) {
    return decimal.length() <= LONGEST && DECIMAL.matcher(decimal).matches()
        ? Optional.of(of(new BigDecimal(decimal.replace('\u2212', '-'))))
        : Optional.empty();
  }

  public Rational plus(Rational other) {
    return reduced(num.multiply(other.den).add(other.num.multiply(den)), den.multiply(other.den));
  }

  public Rational minus(Rational other) {
    return plus(other.negate());
  }

  public Rational times(Rational other) {
    return reduced(num.multiply(other.num), den.multiply(other.den));
  }

  /**
   * The quotient.
   *
   * @throws ArithmeticException if {@code other} is zero
   */
  public Rational dividedBy(Rational other) {
    return reduced(num.multiply(other.den), den.multiply(other.num));
  }

  public Rational negate() {
    return new Rational(num.negate(), den);
  }

  public Rational abs() {
    return signum() < 0 ? negate() : this;
  }

  /** -1, 0 or 1. */
  public int signum() {
    return num.signum();
  }

  public Rational min(Rational other) {
    return compareTo(other) <= 0 ? this : other;
  }

  public Rational max(Rational other) {
    return compareTo(other) >= 0 ? this : other;
  }

  /**
   * This number multiplied by itself {@code exponent} times; the reciprocal for a negative
   * exponent.
   */
  Rational power(int exponent) {
    Rational magnitude = reduced(num.pow(Math.abs(exponent)), den.pow(Math.abs(exponent)));
    return exponent < 0 ? ONE.dividedBy(magnitude) : magnitude;
  }

  /**
   * Whether this is a whole number of steps.
   *
   * @throws ArithmeticException if {@code step} is zero
   */
  public boolean isMultipleOf(Rational step) {
    return dividedBy(step).den.equals(BigInteger.ONE);
  }

  /** The largest double that is not above this; negative infinity below the least finite double. */
  public double down() {
    if (num.bitLength() <= EXACT_BITS && den.bitLength() <= EXACT_BITS) {
      return quotientDown(num.doubleValue(), den.doubleValue());
    }
    // Both roundings keep the order and leave a double as it is: the result is a neighbour of this.
    double near = rounded(MathContext.DECIMAL128).doubleValue();
    if (near == Double.POSITIVE_INFINITY) {
      return Double.MAX_VALUE;
    }
    boolean below = near == Double.NEGATIVE_INFINITY || of(near).compareTo(this) <= 0;
    return below ? near : Math.nextDown(near);
  }

  /** Two whole numbers that are doubles: the residue of their quotient says where it errs. */
  private static double quotientDown(double whole, double by) {
    double near = whole / by;
    return Math.fma(near, by, -whole) > 0 ? Math.nextDown(near) : near;
  }

  /** The smallest double that is not below this; infinity above the greatest finite double. */
  public double up() {
    return 0.0 - negate().down();
  }

  /** This number in decimal, rounded once. */
  BigDecimal rounded(MathContext precision) {
    return new BigDecimal(num).divide(new BigDecimal(den), precision);
  }

  /** All digits of this number in plain decimal; empty if they never end. */
  Optional<BigDecimal> decimal() {
    BigInteger rest = den;
    int places = 0;
    for (; !rest.equals(BigInteger.ONE); places++) {
      BigInteger smaller = rest.divide(rest.gcd(BigInteger.TEN));
      if (smaller.equals(rest)) {
        return Optional.empty();
      }
      rest = smaller;
    }
    return Optional.of(new BigDecimal(num).divide(new BigDecimal(den)).setScale(places));
  }

  @Override
  public int compareTo(Rational other) {
    return num.multiply(other.den).compareTo(other.num.multiply(den));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Rational that && num.equals(that.num) && den.equals(that.den);
  }

  @Override
  public int hashCode() {
    return 31 * num.hashCode() + den.hashCode();
  }

  /** All digits where the decimal ends ({@code 0.13}), else the fraction ({@code 1/3}). */
  @Override
  public String toString() {
    return decimal().map(BigDecimal::toPlainString).orElse(num + "/" + den);
  }
}
