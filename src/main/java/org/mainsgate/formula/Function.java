package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;

/** A function of one number, in doubles rounded outward and in exact rationals. */
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
}
