package org.mainsgate.verdict;

import java.util.Collection;

/** What a stage says of an instrument. The order is from best to worst. */
public enum Verdict {
  /** Nothing recorded stands in the way, and something was judged. */
  PASS("pass"),
  /** Something is not settled, or nothing passed. */
  HOLD("hold"),
  /** A check failed. */
  FAIL("fail");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** The verdict as files and screens write it. */
  public String word() {
    return word;
  }

  /** The worse of two. */
  public Verdict worse(Verdict other) {
    return compareTo(other) >= 0 ? this : other;
  }

  /**
   * The verdict of a stage: fail if any fails, else hold if any holds or nothing passed, else pass.
   */
  public static Verdict of(Collection<Outcome> outcomes) {
    if (outcomes.contains(Outcome.FAIL)) {
      return FAIL;
    }
    boolean passes = outcomes.contains(Outcome.PASS) && !outcomes.contains(Outcome.HOLD);
    return passes ? PASS : HOLD;
  }
}
