package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;

/**
 * All that is known of a number, exactly and in doubles.
 *
 * @param exact the values it can have, in SI units
 * @param outward the same, rounded outward; computed once so that evaluation need not
 */
public record Range(ExactInterval exact, Interval outward) {
  /** What is known of a number that nobody has looked at: nothing. */
  public static final Range UNKNOWN = of(ExactInterval.UNBOUNDED);

  /** The range of exact values. */
  public static Range of(ExactInterval exact) {
    return new Range(exact, exact.outward());
  }
}
