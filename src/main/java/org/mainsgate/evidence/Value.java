package org.mainsgate.evidence;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;
import org.mainsgate.quantity.Typed;

/** What a person wrote of a property. */
public sealed interface Value {

  /**
   * A number with its unit.
   *
   * @param typed as typed
   */
  record Amount(Typed typed) implements Value {}

  /**
   * Named values, any of which it can be. "Unknown" is all of them.
   *
   * @param candidates the names, in the vocabulary's order; never empty
   * @param text as a person reads it
   */
  record Names(Set<String> candidates, String text) implements Value {

    /** Keeps the candidates as they are. */
    public Names {
      candidates = Collections.unmodifiableSet(new LinkedHashSet<>(candidates));
      if (candidates.isEmpty()) {
        throw new IllegalArgumentException("no candidate");
      }
    }
  }

  /**
   * A thing.
   *
   * @param thing its id
   */
  record Thing(String thing) implements Value {}
}
