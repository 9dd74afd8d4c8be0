package org.mainsgate.report;

import java.util.List;

/**
 * The first page of a sealed record: whose it is, what for, and what goes with it.
 *
 * @param headline a few large words
 * @param connects whether the headline says that it may be connected next; the page looks otherwise
 *     where not
 * @param reason the first sentence
 * @param lines who, when, and what goes with it
 * @param parts what is said at greater length
 * @param changes what is another than when it went out; empty unless it came back
 */
public record HandoverPage(
    String headline,
    boolean connects,
    String reason,
    List<Sheet.Line> lines,
    List<Part> parts,
    List<Change> changes) {

  /** Keeps the lists as they are. */
  public HandoverPage {
    lines = List.copyOf(lines);
    parts = List.copyOf(parts);
    changes = List.copyOf(changes);
  }

  /**
   * Something with a head.
   *
   * @param title the head
   * @param lines what is said, a sentence or two each
   */
  public record Part(String title, List<String> lines) {
    /** Keeps the list as it is. */
    public Part {
      lines = List.copyOf(lines);
    }
  }

  /**
   * Something that is another than it was.
   *
   * @param what the check, or the entry
   * @param then what was said when it went out
   * @param now what is said now
   */
  public record Change(String what, String then, String now) {}
}
