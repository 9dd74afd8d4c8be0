package org.mainsgate.verdict;

/** What a check says of one thing. */
public enum Outcome {
  /** The requirement is met, on evidence that is all there and in force. */
  PASS("pass"),
  /** Something has to be settled first. */
  HOLD("hold"),
  /** No value that the evidence allows meets the requirement. */
  FAIL("fail"),
  /** An observation says that the check is not about this thing. */
  NOT_APPLICABLE("not-applicable");

  private final String word;

  Outcome(String word) {
    this.word = word;
  }

  /** The outcome as files and screens write it. */
  public String word() {
    return word;
  }
}
