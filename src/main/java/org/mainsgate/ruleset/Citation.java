package org.mainsgate.ruleset;

import java.util.Optional;

/**
 * Where a value or a rule comes from, and how well that is known.
 *
 * @param source the source's short name in the ruleset
 * @param title the source's title
 * @param edition its edition, as far as known
 * @param clause the clause or table, empty if none is known
 * @param standing how well the value is known
 * @param note what else should be read with it, empty if nothing
 * @param confirmed who has read it in the standard itself, if anybody has
 */
public record Citation(
    String source,
    String title,
    String edition,
    String clause,
    Standing standing,
    String note,
    Optional<Confirmation> confirmed) {

  /**
   * A person's word that the value stands so in the edition at hand.
   *
   * @param by who read it
   * @param on the date, as written
   * @param edition the edition read
   */
  public record Confirmation(String by, String on, String edition) {}

  /** The same, read in the standard itself by somebody. */
  Citation confirmedBy(Confirmation word) {
    return new Citation(source, title, edition, clause, standing, note, Optional.of(word));
  }

  /** Whether nothing may pass or fail on it yet. */
  public boolean isUnconfirmed() {
    return standing == Standing.FROM_MEMORY && confirmed.isEmpty();
  }
}
