package org.mainsgate.verdict;

/** Why a finding is a hold. A hold names at least one. */
public enum Reason {
  /** A reading or observation that the check names is not there, or says "unknown". */
  NOT_RECORDED("not recorded"),
  /** The person has not said that the list is complete. */
  LIST_OPEN("list not closed"),
  /** Some values that the evidence allows meet the requirement, and some do not. */
  TOO_NEAR("too near the limit"),
  /** The reading cannot be true. */
  IMPLAUSIBLE("implausible"),
  /** Two records of one thing contradict each other. */
  DISAGREE("readings disagree"),
  /** The evidence was not taken as the check asks. */
  NOT_AS_ASKED("not taken as asked"),
  /** A check that comes first has not passed. */
  PREREQUISITE_OPEN("prerequisite open"),
  /** It is not known whether the check applies. */
  APPLICABILITY_UNKNOWN("applicability unknown"),
  /** It rests on a value from memory, or on none. */
  LIMIT_UNCONFIRMED("limit unconfirmed"),
  /** The requirement is not met; a person may judge it. */
  PERSON_MUST_JUDGE("a person must judge"),
  /** The requirement is not met; nothing may proceed until that has changed. */
  NOT_MET("to be put right first");

  private final String words;

  Reason(String words) {
    this.words = words;
  }

  /** The reason as files and screens write it. */
  public String words() {
    return words;
  }
}
