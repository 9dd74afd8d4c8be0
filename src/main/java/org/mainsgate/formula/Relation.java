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

  /** Whether a greater left side makes the comparison easier to meet. */
  boolean favoursLeft() {
    return this == AT_LEAST || this == MORE_THAN;
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
