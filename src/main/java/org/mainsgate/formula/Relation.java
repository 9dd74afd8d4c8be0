package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;
import org.mainsgate.quantity.Truth;

/** A comparison of two numbers; there is none for equality, which a measurement can't show. */
enum Relation {
  AT_MOST("≤"),
  LESS_THAN("<"),
  AT_LEAST("≥"),
  MORE_THAN(">");

  private final String symbol;

  Relation(String symbol) {
    this.symbol = symbol;
  }

  String symbol() {
    return symbol;
  }

  Truth fast(Interval left, Interval right) {
    return switch (this) {
      case AT_MOST -> left.atMost(right);
      case LESS_THAN -> left.lessThan(right);
      case AT_LEAST -> left.atLeast(right);
      case MORE_THAN -> left.moreThan(right);
    };
  }

  Truth exact(ExactInterval left, ExactInterval right) {
    return switch (this) {
      case AT_MOST -> left.atMost(right);
      case LESS_THAN -> left.lessThan(right);
      case AT_LEAST -> left.atLeast(right);
      case MORE_THAN -> left.moreThan(right);
    };
  }
}
