package org.mainsgate.ruleset;

import java.util.Optional;

/** How well a value is known: what was seen of its source. */
public enum Standing {
  /** The text itself was seen, or two independent accounts of it. */
  PUBLISHED("published"),
  /** One account only. */
  REPORTED("reported"),
  /** Nothing seen states it; it can neither fail nor pass until a person confirms it. */
  FROM_MEMORY("from memory"),
  /** Custom of the trade, without a source. */
  COMMON_PRACTICE("common practice"),
  /** Follows from the values that it names. */
  COMPUTED("computed");

  private final String words;

  Standing(String words) {
    this.words = words;
  }

  /** The standing as a ruleset writes it and a report prints it. */
  public String words() {
    return words;
  }

  /** The standing that is written so, if there is one. */
  public static Optional<Standing> of(String words) {
    for (Standing standing : values()) {
      if (standing.words.equals(words)) {
        return Optional.of(standing);
      }
    }
    return Optional.empty();
  }
}
