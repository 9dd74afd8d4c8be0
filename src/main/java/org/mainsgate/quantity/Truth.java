package org.mainsgate.quantity;

/**
 * What can be said of a statement on intervals, in the strong logic of Kleene.
 *
 * <p>The order of the constants is the order of truth: {@code NOT_MET < UNDECIDED < MET}.
 */
public enum Truth {
  /** No value that is possible satisfies the statement. */
  NOT_MET,
  /** Some possible values may satisfy it, others may not. */
  UNDECIDED,
  /** Every possible value satisfies it. */
  MET;

  /** {@code MET} for true, {@code NOT_MET} for false. */
  public static Truth of(boolean holds) {
    return holds ? MET : NOT_MET;
  }

  /** The lesser of the two. */
  public Truth and(Truth other) {
    return compareTo(other) <= 0 ? this : other;
  }

  /** The greater of the two. */
  public Truth or(Truth other) {
    return compareTo(other) >= 0 ? this : other;
  }

  /** {@code MET} and {@code NOT_MET} exchanged. */
  public Truth not() {
    return switch (this) {
      case NOT_MET -> MET;
      case UNDECIDED -> UNDECIDED;
      case MET -> NOT_MET;
    };
  }

  /** {@code not this or other}. */
  public Truth implies(Truth other) {
    return not().or(other);
  }
}
