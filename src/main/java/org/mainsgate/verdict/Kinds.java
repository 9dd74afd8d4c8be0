package org.mainsgate.verdict;

/** The names of things that every instrument has once. */
final class Kinds {
  /** The instrument itself. */
  static final String INSTRUMENT = "instrument";

  private Kinds() {}
}
