package org.mainsgate.report;

import java.util.List;

/**
 * Tags to print and tie on, each for one sealed record.
 *
 * @param form how they are laid out
 * @param tags the tags
 */
public record TagSheet(Form form, List<Tag> tags) {

  /** Keeps the list as it is. */
  public TagSheet {
    tags = List.copyOf(tags);
  }

  /** How tags are laid out. */
  public enum Form {
    /** Eight to an A4 sheet, to be cut out. */
    SHEET,
    /** A label of 62 by 40 mm each. */
    SMALL;

    /** The name of the style. */
    public String word() {
      return this == SHEET ? "sheet" : "small";
    }
  }

  /**
   * A tag.
   *
   * @param tag the instrument's tag
   * @param what what it is, and its serial number
   * @param headline the words that are read from a step away
   * @param connects whether they say that a stage passes
   * @param stage verdict, stage, day and profile
   * @param next by when it is looked at again; empty if nobody says so
   * @param number which record it is of
   * @param fingerprint of the key that signed it, as people compare it
   * @param digest the start of SHA-256 over the file, in groups
   * @param caution what can hurt
   * @param code what the square says
   */
  public record Tag(
      String tag,
      String what,
      String headline,
      boolean connects,
      String stage,
      String next,
      String number,
      String fingerprint,
      String digest,
      String caution,
      String code) {}
}
