package org.mainsgate.agenda;

/**
 * Why something is asked for.
 *
 * @param cause the cause
 * @param text more about it, in words; empty if the cause says all
 */
public record Why(Cause cause, String text) {

  /** The causes; where there are several, the first of this order is told first. */
  public enum Cause {
    /** What was recorded cannot be true. */
    IMPLAUSIBLE("implausible"),
    /** Two entries contradict each other. */
    DISAGREE("entries disagree"),
    /** It was not taken as the rules ask, or is too old. */
    NOT_AS_ASKED("not as asked"),
    /** The values that it leaves open meet the requirement in part only. */
    TOO_NEAR("too near the limit"),
    /** It was recorded, and does not count any more. */
    VOID("does not count any more"),
    /** It was recorded, and leaves several possibilities. */
    UNCERTAIN("not certain"),
    /** Something that belongs to it was not recorded. */
    INCOMPLETE("recorded without"),
    /** A list that is not closed, or not as counted. */
    LIST_OPEN("list not closed"),
    /** Nobody has recorded it. */
    NEVER("not recorded"),
    /** It is true for one sitting only, and something is measured in this one. */
    EACH_SITTING("asked in every sitting");

    private final String words;

    Cause(String words) {
      this.words = words;
    }

    /** The cause for people. */
    public String words() {
      return words;
    }
  }

  /** In words. */
  public String words() {
    return text.isEmpty() ? cause.words() : cause.words() + ": " + text;
  }
}
