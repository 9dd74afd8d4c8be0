package org.mainsgate.quantity;

/** The way in which a quantity was typed. */
public enum Form {
  /** One number: {@code 0.13 Ω}. */
  STATED,
  /** A number with limits around it: {@code 230 V ±10 %}, {@code 0.13 ± 0.02 Ω}. */
  TOLERANCE,
  /** Two ends: {@code 2.9 to 3.1 m}; also a wire gauge, whose area is irrational. */
  BETWEEN,
  /** A lower end: {@code > 200 MΩ}. */
  ABOVE,
  /** An upper end: {@code < 0.01 Ω}. */
  BELOW,
  /** The meter showed that its range was exceeded: {@code OL}. */
  OVER_RANGE
}
