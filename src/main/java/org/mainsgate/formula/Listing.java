package org.mainsgate.formula;

import java.util.List;

/**
 * The things of one kind that are listed on an instrument.
 *
 * @param items their ids, none twice, in the order of every answer
 * @param closed whether a person has said that these are all
 */
public record Listing(List<String> items, boolean closed) {
  /** The listing of a kind that nobody has looked for. */
  public static final Listing UNKNOWN = new Listing(List.of(), false);

  /** A listing that keeps its own copy. */
  public Listing {
    items = List.copyOf(items);
  }
}
