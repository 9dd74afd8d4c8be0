package org.mainsgate.quantity;

import java.util.Optional;

/**
 * The reason why a typed text can't be understood, and what would be.
 *
 * @param offset where in the text, in chars from 0; at most its length
 * @param what what stands there, the person's words in backticks
 * @param expected what would be understood there
 * @param unknownUnit the word that names no unit, where that is the reason; a caller may add the
 *     nearest
 */
public record Refusal(int offset, String what, String expected, Optional<String> unknownUnit)
    implements Parsed, ParsedAccuracy {

  Refusal(int offset, String what, String expected) {
    this(offset, what, expected, Optional.empty());
  }
}
