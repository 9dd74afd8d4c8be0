package org.mainsgate.ruleset;

import java.util.List;

/**
 * Local rules as they were laid over a profile.
 *
 * @param name its name
 * @param title its title
 * @param edition its edition
 * @param relaxations where it is less strict than what it was laid over
 * @param confirmations the values from memory that somebody has read in the standard itself
 */
public record Overlay(
    String name,
    String title,
    String edition,
    List<Relaxation> relaxations,
    List<Confirmation> confirmations) {

  /** Keeps the lists as they are. */
  public Overlay {
    relaxations = List.copyOf(relaxations);
    confirmations = List.copyOf(confirmations);
  }

  /**
   * A value from memory that decides from now on.
   *
   * @param what the limit, the table or its row, in words, with its value
   * @param word whose word it is, and what was read
   */
  public record Confirmation(String what, Citation.Confirmation word) {}

  /**
   * Something that is less strict than the rules, or cannot be shown to be as strict.
   *
   * @param what the limit and both its values, or the check
   * @param because why, in the person's own words
   * @param by who answers for it
   */
  public record Relaxation(String what, String because, String by) {}
}
