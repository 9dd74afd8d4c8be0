package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/** The signs that a value may have: a set of minus, zero and plus, never empty. */
record Signs(boolean mayBeNegative, boolean mayBeZero, boolean mayBePositive) {
  static final Signs ANY = new Signs(true, true, true);
  static final Signs POSITIVE = new Signs(false, false, true);
  private static final Signs NOTHING = new Signs(false, false, false);

  static Signs of(ExactInterval values) {
    Rational lo = values.lo();
    Rational hi = values.hi();
    return new Signs(
        lo == null || lo.signum() < 0,
        values.contains(Rational.ZERO),
        hi == null || hi.signum() > 0);
  }

  boolean isMixed() {
    return mayBeNegative && mayBePositive;
  }

  Signs negate() {
    return new Signs(
        /* mayBeNegative= */ mayBePositive, mayBeZero, /* mayBePositive= */ mayBeNegative);
  }

  Signs or(Signs other) {
    return new Signs(
        mayBeNegative || other.mayBeNegative,
        mayBeZero || other.mayBeZero,
        mayBePositive || other.mayBePositive);
  }

  Signs plus(Signs other) {
    return pairwise(other, (a, b) -> a == 0 || a == b ? of(b) : b == 0 ? of(a) : ANY);
  }

  Signs times(Signs other) {
    return pairwise(other, (a, b) -> of(a * b));
  }

  Signs min(Signs other) {
    return pairwise(other, (a, b) -> of(Math.min(a, b)));
  }

  private Signs pairwise(Signs other, Pair operation) {
    Signs all = NOTHING;
    for (int a = -1; a <= 1; a++) {
      for (int b = -1; b <= 1; b++) {
        all = has(a) && other.has(b) ? all.or(operation.of(a, b)) : all;
      }
    }
    return all;
  }

  private boolean has(int sign) {
    return sign < 0 ? mayBeNegative : sign > 0 ? mayBePositive : mayBeZero;
  }

  private static Signs of(int sign) {
    return new Signs(sign < 0, sign == 0, sign > 0);
  }

  private interface Pair {
    Signs of(int a, int b);
  }
}
