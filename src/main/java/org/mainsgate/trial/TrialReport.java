package org.mainsgate.trial;

import java.util.List;

/**
 * How a ruleset's tests went.
 *
 * @param ran how many were run, once for each profile
 * @param failures those that did not find what they expect
 * @param covered outcomes of checks that some test has seen, {@code check: outcome}
 * @param uncovered possible outcomes that none has seen
 * @param moved how many values were moved by a tenth, each way
 * @param unnoticed values that can be moved without any test failing
 */
public record TrialReport(
    int ran,
    List<Failure> failures,
    List<String> covered,
    List<String> uncovered,
    int moved,
    List<String> unnoticed) {

  /** Keeps the lists as they are. */
  public TrialReport {
    failures = List.copyOf(failures);
    covered = List.copyOf(covered);
    uncovered = List.copyOf(uncovered);
    unnoticed = List.copyOf(unnoticed);
  }

  /**
   * A test that did not find what it expects.
   *
   * @param test its name
   * @param profile the profile
   * @param at where it stands
   * @param expected what it expects
   * @param found what the rules say
   */
  public record Failure(String test, String profile, String at, String expected, String found) {}

  /** Whether everything is as it should be. */
  public boolean isGood() {
    return ran > 0 && failures.isEmpty() && uncovered.isEmpty() && unnoticed.isEmpty();
  }
}
