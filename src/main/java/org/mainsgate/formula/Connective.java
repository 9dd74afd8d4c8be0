package org.mainsgate.formula;

import org.mainsgate.quantity.Truth;

/** A word that joins two statements. */
enum Connective {
  AND("and"),
  OR("or"),
  IMPLIES("implies");

  private final String word;

  Connective(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }

  /** Whether the left side alone settles the whole, so that the right need not be asked. */
  boolean settledBy(Truth left) {
    return left == (this == OR ? Truth.MET : Truth.NOT_MET);
  }

  Truth of(Truth left, Truth right) {
    return switch (this) {
      case AND -> left.and(right);
      case OR -> left.or(right);
      case IMPLIES -> left.implies(right);
    };
  }
}
