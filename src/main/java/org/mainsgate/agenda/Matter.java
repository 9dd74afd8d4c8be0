package org.mainsgate.agenda;

import java.util.List;
import org.mainsgate.verdict.Finding;

/**
 * Something that no entry settles.
 *
 * @param kind what it takes
 * @param finding the finding that stands open
 * @param says what to do, in words
 */
public record Matter(Kind kind, Finding finding, List<String> says) {

  /** What it takes. */
  public enum Kind {
    /** The requirement is not met. */
    PUT_RIGHT("put right"),
    /** A competent person may judge it. */
    JUDGE("to be judged"),
    /** A value from memory has to be read in its source. */
    CONFIRM("to be confirmed"),
    /** Anything else that holds. */
    LOOK("to be looked into");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** The kind for people. */
    public String words() {
      return words;
    }
  }

  /** Keeps the words as they are. */
  public Matter {
    says = List.copyOf(says);
  }
}
