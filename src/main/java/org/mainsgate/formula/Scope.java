package org.mainsgate.formula;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The names that a formula may use, and what they mean. */
public interface Scope {
  /**
   * What a dotted path means.
   *
   * @param path its names, the variable in front included
   * @param variables each variable that is bound where the path stands, with its kind
   * @return empty if it means nothing; a reference of an answer names a bound variable or none
   */
  Optional<Meaning> meaning(List<String> path, Map<String, String> variables);

  /** The table of a name. */
  Optional<Table> table(String name);

  /** Whether a name is that of a kind of thing. */
  boolean isKind(String name);

  /** Every name and dotted path, table and kind; those of items without the variable. */
  Collection<String> names();

  /**
   * The variables that are bound around the whole formula, with their kinds: what a check runs
   * over.
   */
  default Map<String, String> variables() {
    return Map.of();
  }
}
