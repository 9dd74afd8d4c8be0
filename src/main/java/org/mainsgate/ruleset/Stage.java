package org.mainsgate.ruleset;

import java.util.List;

/**
 * A step on the way to the mains, judged as a whole.
 *
 * @param id its name in commands
 * @param title what it judges, in words
 * @param clears what a pass opens: {@code nothing}, or the name of the next step
 * @param says what a reader must know about its reach
 * @param pass what a pass means, in one sentence
 * @param hold what a hold means
 * @param fail what a fail means
 * @param cautions what stands on every page of it
 * @param uses whether a pass speaks of use, not of a first connection alone: only then is it lent
 * @param never the checks of which a fail is not mended at a bench
 * @param goesWith the properties that whoever gets the instrument has to know
 */
public record Stage(
    String id,
    String title,
    String clears,
    String says,
    String pass,
    String hold,
    String fail,
    List<String> cautions,
    boolean uses,
    List<String> never,
    List<String> goesWith) {

  /** Keeps the lists as they are. */
  public Stage {
    cautions = List.copyOf(cautions);
    never = List.copyOf(never);
    goesWith = List.copyOf(goesWith);
  }
}
