package org.mainsgate.formula;

import java.util.List;

/**
 * A reference that a formula asks for, with the quantifiers of the formula around it.
 *
 * @param within the quantifiers, outermost first; a variable of the reference that is not among
 *     them is bound outside the formula
 */
public record Input(Reference reference, List<Binding> within) {
  /** An input that keeps its own copy. */
  public Input {
    within = List.copyOf(within);
  }

  /** A variable and the kind of thing it runs over. */
  public record Binding(String variable, String kind) {}
}
