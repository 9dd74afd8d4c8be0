package org.mainsgate.laws;

import java.math.BigDecimal;
import java.math.BigInteger;
import org.mainsgate.quantity.Rational;

/** A fraction of the second opinion's own, so that it shares no arithmetic with the engine. */
record Fraction(BigInteger num, BigInteger den) implements Comparable<Fraction> {
  static final Fraction ZERO = of(BigDecimal.ZERO);

  /** Checks the divisor, and cancels nothing: equal fractions are found by comparing. */
  Fraction {
    if (den.signum() <= 0) {
      throw new IllegalArgumentException("no fraction: " + num + "/" + den);
    }
  }

  static Fraction of(BigDecimal decimal) {
    return decimal.scale() > 0
        ? new Fraction(decimal.unscaledValue(), BigInteger.TEN.pow(decimal.scale()))
        : new Fraction(decimal.toBigIntegerExact(), BigInteger.ONE);
  }

  /** The same number, by way of its text. */
  static Fraction of(Rational number) {
    String[] parts = number.toString().split("/", 2);
    Fraction whole = of(new BigDecimal(parts[0]));
    return parts.length == 1 ? whole : whole.over(of(new BigDecimal(parts[1])));
  }

  Fraction plus(Fraction other) {
    return lowest(num.multiply(other.den).add(other.num.multiply(den)), den.multiply(other.den));
  }

  Fraction minus(Fraction other) {
    return plus(new Fraction(other.num.negate(), other.den));
  }

  Fraction times(Fraction other) {
    return lowest(num.multiply(other.num), den.multiply(other.den));
  }

  Fraction over(Fraction other) {
    BigInteger sign = BigInteger.valueOf(other.num.signum());
    return lowest(num.multiply(other.den).multiply(sign), den.multiply(other.num.abs()));
  }

  private static Fraction lowest(BigInteger num, BigInteger den) {
    BigInteger common = num.gcd(den);
    return new Fraction(num.divide(common), den.divide(common));
  }

  Fraction smaller(Fraction other) {
    return compareTo(other) <= 0 ? this : other;
  }

  Fraction greater(Fraction other) {
    return compareTo(other) >= 0 ? this : other;
  }

  Fraction size() {
    return new Fraction(num.abs(), den);
  }

  int sign() {
    return num.signum();
  }

  /** To so many significant digits. */
  BigDecimal decimal(java.math.MathContext digits) {
    return new BigDecimal(num).divide(new BigDecimal(den), digits);
  }

  @Override
  public int compareTo(Fraction other) {
    return num.multiply(other.den).compareTo(other.num.multiply(den));
  }
}
