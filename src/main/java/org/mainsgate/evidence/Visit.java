package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.source.Position;

/**
 * One sitting at an instrument: what was found, what work was done, how it was left.
 *
 * @param id {@code DATE-INITIALS-RANDOM4}
 * @param date the calendar date at the bench
 * @param by who wrote it, by initials
 * @param found what was found
 * @param foundLists lists that the person closed before the work
 * @param work what was done
 * @param left how it was left
 * @param leftLists lists that the person closed after the work
 * @param judged decisions
 * @param withdrawn entries taken back
 * @param note anything else
 * @param closing how it was closed; empty while it is a draft
 * @param at where it stands
 */
public record Visit(
    String id,
    LocalDate date,
    String by,
    List<Entry> found,
    List<Looked> foundLists,
    List<Work> work,
    List<Entry> left,
    List<Looked> leftLists,
    List<Judgement> judged,
    List<Withdrawal> withdrawn,
    String note,
    Optional<Closing> closing,
    Position at) {

  /** Keeps the lists as they are. */
  public Visit {
    found = List.copyOf(found);
    foundLists = List.copyOf(foundLists);
    work = List.copyOf(work);
    left = List.copyOf(left);
    leftLists = List.copyOf(leftLists);
    judged = List.copyOf(judged);
    withdrawn = List.copyOf(withdrawn);
  }

  /** The same visit, not closed. */
  public Visit opened() {
    return new Visit(
        id,
        date,
        by,
        found,
        foundLists,
        work,
        left,
        leftLists,
        judged,
        withdrawn,
        note,
        Optional.empty(),
        at);
  }

  /**
   * A person's word that a list is complete.
   *
   * @param id the entry's id
   * @param kind the kind of thing
   * @param count how many the person counted
   * @param things which ones, where they are named
   * @param at where it stands
   */
  public record Looked(
      String id, String kind, int count, Optional<Set<String>> things, Position at) {}

  /**
   * Something that was done.
   *
   * @param act what, one of the vocabulary's acts
   * @param on the thing, by id
   * @param note in words
   * @param at where it stands
   */
  public record Work(String act, String on, String note, Position at) {}

  /**
   * A decision to release a hold.
   *
   * @param id the entry's id
   * @param check the check
   * @param thing the thing
   * @param by who decided, by initials
   * @param because the reason
   * @param restriction what it is limited to, empty if nothing
   * @param at where it stands
   */
  public record Judgement(
      String id,
      String check,
      String thing,
      String by,
      String because,
      String restriction,
      Position at) {}

  /**
   * An entry taken back.
   *
   * @param visit the visit that the entry stands in
   * @param entry the entry's id
   * @param reason one of the vocabulary's reasons
   * @param note in words
   * @param at where it stands
   */
  public record Withdrawal(String visit, String entry, String reason, String note, Position at) {}

  /**
   * How a visit was closed.
   *
   * @param on the date
   * @param after the hashes of the visits that it knew to be the latest
   * @param hash SHA-256 of the file's bytes, in lower-case hex
   */
  public record Closing(LocalDate on, List<String> after, String hash) {

    /** Keeps the hashes as they are. */
    public Closing {
      after = List.copyOf(after);
    }
  }
}
