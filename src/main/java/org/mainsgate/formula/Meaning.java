package org.mainsgate.formula;

import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Unit;

/** What a dotted name in a formula means. */
public sealed interface Meaning {
  /**
   * A number that a person measures or reads off.
   *
   * @param possible every value that it can have at all, in SI units; lets the effect of a limit be
   *     shown through a product (a length is never negative)
   * @param unit the unit it is printed in
   */
  record Quantity(
      Reference reference, Dimension dimension, Nature nature, ExactInterval possible, Unit unit)
      implements Meaning {}

  /** An observation with named values. */
  record Observation(Reference reference, ValueList values) implements Meaning {}

  /** A limit of a profile or ruleset; its value in SI units, its unit for print. */
  record Limit(String name, ExactInterval value, Unit unit) implements Meaning {}

  /** A named intermediate number; the title is in trade terms. */
  record Step(String name, String title, NumberFormula value) implements Meaning {}

  /** A named intermediate statement. */
  record TruthStep(String name, String title, TruthFormula value) implements Meaning {}
}
