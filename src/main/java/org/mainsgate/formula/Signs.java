package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/**
 * The signs that a value may have, never none.
 *
 * @param mayBeUnknown whether instead nothing may be known of it at all, as outside a table; then
 *     it is unbounded on both sides, whatever its signs are else
 */
record Signs(
    boolean mayBeNegative, boolean mayBeZero, boolean mayBePositive, boolean mayBeUnknown) {
  static final Signs ANY = new Signs(true, true, true, true);
  private static final Signs EITHER = new Signs(true, true, true, false);
  static final Signs NEGATIVE = new Signs(true, false, false, false);
  static final Signs ZERO = new Signs(false, true, false, false);
  static final Signs POSITIVE = new Signs(false, false, true, false);

  static Signs of(ExactInterval values) {
    Rational lo = values.lo();
    Rational hi = values.hi();
    return new Signs(
        lo == null || lo.signum() < 0,
        values.contains(Rational.ZERO),
        hi == null || hi.signum() > 0,
        values.isUnbounded());
  }

  boolean isMixed() {
    return mayBeNegative && mayBePositive;
  }

  Signs orUnknown() {
    return new Signs(mayBeNegative, mayBeZero, mayBePositive, true);
  }

  Signs or(Signs other) {
    return new Signs(
        mayBeNegative || other.mayBeNegative,
        mayBeZero || other.mayBeZero,
        mayBePositive || other.mayBePositive,
        mayBeUnknown || other.mayBeUnknown);
  }

  Signs negate() {
    return pairwise(ZERO, (a, b) -> of(-a));
  }

  Signs plus(Signs other) {
    return pairwise(other, (a, b) -> a == 0 || a == b ? of(b) : b == 0 ? of(a) : EITHER);
  }

  Signs times(Signs other) {
    return pairwise(other, (a, b) -> of(a * b));
  }

  /** The smaller of something unknown and a number is bounded on one side, so of any sign. */
  Signs min(Signs other) {
    boolean unknown = mayBeUnknown || other.mayBeUnknown;
    return unknown ? ANY : pairwise(other, (a, b) -> of(Math.min(a, b)));
  }

  private Signs pairwise(Signs other, Pair operation) {
    boolean unknown = mayBeUnknown || other.mayBeUnknown;
    Signs all = new Signs(false, false, false, unknown);
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
    return sign < 0 ? NEGATIVE : sign > 0 ? POSITIVE : ZERO;
  }

  private interface Pair {
    Signs of(int a, int b);
  }
}
