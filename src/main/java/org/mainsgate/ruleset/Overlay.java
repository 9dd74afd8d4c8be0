package org.mainsgate.ruleset;

import java.util.List;

/**
 * Local rules as they were laid over a profile.
 *
 * @param name its name
 * @param title its title
 * @param edition its edition
 * @param relaxations where it is less strict than what it was laid over
 */
public record Overlay(String name, String title, String edition, List<Relaxation> relaxations) {

  /** Keeps the list as it is. */
  public Overlay {
    relaxations = List.copyOf(relaxations);
  }

  /**
   * Something that is less strict than the rules, or cannot be shown to be as strict.
   *
   * @param what the limit and both its values, or the check
   * @param because why, in the person's own words
   * @param by who answers for it
   */
  public record Relaxation(String what, String because, String by) {}
}
