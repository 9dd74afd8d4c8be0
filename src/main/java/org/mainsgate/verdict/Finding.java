package org.mainsgate.verdict;

import java.util.List;
import java.util.Optional;
import org.mainsgate.formula.Ground;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Citation;
import org.mainsgate.ruleset.Property;

/**
 * What one check says of one thing, with everything that it rests on.
 *
 * @param check the check
 * @param thing the thing's id; for the list itself the kind's name
 * @param thingTitle the thing's title
 * @param outcome what it says
 * @param holds why it is a hold, in order; empty otherwise
 * @param because for a check that does not apply, which observation says so; else empty
 * @param arithmetic every comparison, with both sides
 * @param inputs every reading and observation that the check names
 * @param limits every limit and table row that it used
 * @param notes remarks
 * @param settles what would settle a hold, best first
 * @param remedy what to do where the requirement is not met, empty otherwise
 * @param judged the decision that released it, if one did
 */
public record Finding(
    Check check,
    String thing,
    String thingTitle,
    Outcome outcome,
    List<Hold> holds,
    String because,
    List<Ground> arithmetic,
    List<Input> inputs,
    List<Used> limits,
    List<Remark> notes,
    List<String> settles,
    String remedy,
    Optional<Judged> judged) {

  /** Keeps the lists as they are, and lets no hold be without a reason. */
  public Finding {
    holds = List.copyOf(holds);
    arithmetic = List.copyOf(arithmetic);
    inputs = List.copyOf(inputs);
    limits = List.copyOf(limits);
    notes = List.copyOf(notes);
    settles = List.copyOf(settles);
    if ((outcome == Outcome.HOLD) == holds.isEmpty()) {
      throw new IllegalArgumentException("a hold names its reasons, and nothing else has any");
    }
  }

  /**
   * A reason to hold.
   *
   * @param reason which one
   * @param text what it is here, for the person at the bench
   */
  public record Hold(Reason reason, String text) {}

  /**
   * A reading or observation that was looked at.
   *
   * @param name its path in formulas
   * @param title what it is
   * @param thing whose it is, in words
   * @param owners the ids of the things whose it can be, sorted
   * @param property what is said of it in the vocabulary
   * @param fact what is in force
   * @param lost what was recorded and does not count any more, in words; empty if nothing
   */
  public record Input(
      String name,
      String title,
      String thing,
      List<String> owners,
      Property property,
      Fact fact,
      String lost) {

    /** Keeps the owners as they are. */
    public Input {
      owners = List.copyOf(owners);
    }
  }

  /**
   * A limit or a row of a table that was used.
   *
   * @param name the limit's name, or {@code table[row]}
   * @param title what it is
   * @param text the value as written
   * @param citation where it comes from
   */
  public record Used(String name, String title, String text, Citation citation) {}

  /**
   * A remark.
   *
   * @param says the remark
   * @param shows a value to print with it, if there is one
   * @param unit the unit to print it in
   */
  public record Remark(String says, Optional<ExactInterval> shows, Optional<Unit> unit) {}

  /**
   * The first numeric comparison that is not met for every value, else the first; the deciding one.
   */
  public Optional<Ground.Comparison> deciding() {
    Optional<Ground.Comparison> first = Optional.empty();
    for (Ground step : arithmetic) {
      if (step instanceof Ground.Comparison comparison) {
        if (comparison.truth() != Truth.MET) {
          return Optional.of(comparison);
        }
        if (first.isEmpty()) {
          first = Optional.of(comparison);
        }
      }
    }
    return first;
  }
}
