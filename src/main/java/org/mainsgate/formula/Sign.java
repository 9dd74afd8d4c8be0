package org.mainsgate.formula;

/**
 * What raising a limit does to a formula: to the value of a number, or to how easily a statement is
 * met. {@code MIXED} also stands for "can't be shown".
 */
public enum Sign {
  /** A raised limit raises the number, or lets the statement be met more easily. */
  RAISES,
  /** A raised limit lowers the number, or lets the statement be met less easily. */
  LOWERS,
  /** Both happen, or neither can be shown. */
  MIXED,
  /** The limit does not occur. */
  ABSENT;

  /** The effect through two places of one formula together. */
  public Sign join(Sign other) {
    if (this == other || other == ABSENT) {
      return this;
    }
    return this == ABSENT ? other : MIXED;
  }

  Sign flip() {
    return switch (this) {
      case RAISES -> LOWERS;
      case LOWERS -> RAISES;
      case MIXED, ABSENT -> this;
    };
  }

  Sign unclear() {
    return this == ABSENT ? ABSENT : MIXED;
  }

  /** The effect after multiplication with a factor of the given signs. */
  Sign scaled(Signs factor) {
    if (factor.isMixed()) {
      return unclear();
    }
    return factor.mayBeNegative() ? flip() : this;
  }
}
