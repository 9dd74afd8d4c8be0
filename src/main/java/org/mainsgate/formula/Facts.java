package org.mainsgate.formula;

import java.util.Set;

/**
 * What is known, asked one reference at a time.
 *
 * <p>Never a refusal: of what is not recorded the answer is everything that it can be. Numbers lie
 * within the {@code possible} of their {@link Meaning.Quantity}. The same question always gets the
 * same answer.
 */
public interface Facts {
  /** The values that a measured or marked number can have. */
  Range number(Reference reference);

  /** The values that something which varies takes. */
  Varying varying(Reference reference);

  /** The named values that are still possible: never empty, all from the value list. */
  Set<String> named(Reference reference);

  /** The things of a kind. */
  Listing items(String kind);

  /** The same facts, where a variable stands for an item. */
  Facts with(String variable, String item);
}
