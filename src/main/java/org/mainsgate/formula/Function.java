package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;

/** A function of one number, in doubles rounded outward, in exact rationals and on signs. */
enum Function {
  MINUS,
  SQRT,
  LN,
  EXP2;

  Interval fast(Interval argument) {
    return switch (this) {
      case MINUS -> argument.negate();
      case SQRT -> argument.sqrt();
      case LN -> argument.ln();
      case EXP2 -> argument.exp2();
    };
  }

  /**
   * Exact for the minus sign; the others enclose the true value by a few last digits of a double.
   */
  ExactInterval exact(ExactInterval argument) {
    return switch (this) {
      case MINUS -> argument.negate();
      case SQRT -> argument.sqrt();
      case LN -> argument.ln();
      case EXP2 -> argument.exp2();
    };
  }

  Signs signs(Signs argument) {
    return switch (this) {
      case MINUS -> argument.negate();
      case SQRT -> argument.mayBeNegative() ? Signs.ANY : argument;
      case LN -> Signs.ANY;
      case EXP2 -> Signs.POSITIVE.or(Signs.ZERO);
    };
  }

  /** How the result moves with a limit; unclear where the argument might leave the domain. */
  Sign slope(Sign argument, Signs signs) {
    return switch (this) {
      case MINUS -> argument.flip();
      case SQRT -> signs.mayBeNegative() ? argument.unclear() : argument;
      case LN -> signs.mayBeNegative() || signs.mayBeZero() ? argument.unclear() : argument;
      case EXP2 -> argument;
    };
  }
}
