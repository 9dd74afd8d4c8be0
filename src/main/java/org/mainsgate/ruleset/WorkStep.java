package org.mainsgate.ruleset;

import java.util.List;
import java.util.Optional;

/**
 * A step of the work at an instrument: what is found out together, before the next step begins.
 *
 * @param id its name in files
 * @param title its name for people
 * @param says what to do, in words; empty if that needs none
 * @param asks the properties that are found out in it, in this order
 * @param closes the kinds of thing whose lists are closed in it
 * @param caution what can hurt in it, empty if nothing
 * @param eachVisit whether it is done again at the start of every sitting in which anything is done
 * @param after earlier steps, by id, that are done again in every sitting in which anything is done
 *     in this one
 * @param stop what has to be settled before the next step, if anything
 */
public record WorkStep(
    String id,
    String title,
    String says,
    List<String> asks,
    List<String> closes,
    String caution,
    boolean eachVisit,
    List<String> after,
    Optional<Stop> stop) {

  /** Keeps the lists as they are. */
  public WorkStep {
    asks = List.copyOf(asks);
    closes = List.copyOf(closes);
    after = List.copyOf(after);
  }

  /**
   * A point that nobody passes before some checks have passed, or do not apply.
   *
   * @param title its name for people
   * @param until the checks, by id; at least one
   * @param says what it forbids until then
   */
  public record Stop(String title, List<String> until, String says) {

    /** Keeps the checks as they are, of which there is at least one. */
    public Stop {
      until = List.copyOf(until);
      if (until.isEmpty()) {
        throw new IllegalArgumentException("a stop that nothing opens");
      }
    }
  }
}
