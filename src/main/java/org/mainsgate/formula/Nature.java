package org.mainsgate.formula;

/** How a quantity comes to have its values. */
public enum Nature {
  /** One true value, which a better meter would settle. */
  MEASURED,
  /** One true value, which stands on a plate, a part or a lead. */
  MARKED,
  /** All values of a range happen; a formula names the one it means, as in {@code highest(x)}. */
  VARIES
}
