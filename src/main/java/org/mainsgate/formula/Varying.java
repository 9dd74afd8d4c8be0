package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;

/**
 * What is known of something that varies; each of the three is itself only known to an interval.
 *
 * @param lowest the lowest value that happens, in SI units
 * @param nominal the stated value
 * @param highest the highest value that happens
 */
public record Varying(ExactInterval lowest, ExactInterval nominal, ExactInterval highest) {
  /** Nothing known. */
  public static final Varying UNKNOWN =
      new Varying(ExactInterval.UNBOUNDED, ExactInterval.UNBOUNDED, ExactInterval.UNBOUNDED);
}
