package org.mainsgate.ruleset;

import java.util.List;

/**
 * What stops being true when something is worked on.
 *
 * @param on the kind of thing
 * @param does the acts; empty for any
 * @param voids the properties whose entries are void, and the kinds whose lists are open again.
 *     What is said of the kind itself is void for the thing that was worked on; everything else for
 *     all things
 */
public record Dependency(String on, List<String> does, List<String> voids) {

  /** Keeps the names as they are. */
  public Dependency {
    does = List.copyOf(does);
    voids = List.copyOf(voids);
  }
}
