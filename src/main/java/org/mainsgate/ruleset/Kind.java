package org.mainsgate.ruleset;

/**
 * A kind of thing.
 *
 * @param name its name in files
 * @param title its name for people, in the singular
 * @param plural its name for people, in the plural
 * @param once where there is exactly one, of the kind's own name; otherwise things are listed
 * @param designated whether each thing of it carries the designator of the diagram, such as C12
 * @param seconds how long it takes to look for all of them and to close their list
 */
public record Kind(
    String name, String title, String plural, Once once, boolean designated, int seconds) {

  /** Where there is exactly one thing of a kind. */
  public enum Once {
    /** Things of this kind are listed in the instrument's file. */
    LISTED,
    /** One for each instrument. */
    INSTRUMENT,
    /** One for the bench. */
    BENCH
  }

  /** Whether things of this kind are listed, so that the list has to be closed. */
  public boolean isListed() {
    return once == Once.LISTED;
  }
}
