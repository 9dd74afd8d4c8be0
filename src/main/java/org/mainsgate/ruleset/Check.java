package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mainsgate.formula.NumberFormula;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.source.Position;

/**
 * One rule of the trade: what must hold of a thing, when it applies, and what follows if it does
 * not.
 *
 * @param id its name
 * @param title its name in trade terms
 * @param protects what it protects from, completing "protects ..."
 * @param stages the stages it belongs to, by id
 * @param over the kind of thing it is judged on, one by one; empty for the instrument itself
 * @param needsOne whether a list on which a person has counted none is a hold, not a check that
 *     does not apply
 * @param requires checks that must have passed before this one can
 * @param applies when it is judged at all; empty for always
 * @param requirement what must hold
 * @param consequence what follows where the requirement is not met
 * @param judgeable whether a person may release a hold of consequence
 * @param provided what must be so of the evidence before it can pass; never makes a fail
 * @param plausible what no true reading can contradict
 * @param notes remarks that change no outcome
 * @param remedies what to do where it is not met; the first that fits
 * @param caution what can hurt while measuring or mending, empty if nothing
 * @param citation where the rule comes from
 * @param at where it stands
 */
public record Check(
    String id,
    String title,
    String protects,
    List<String> stages,
    Optional<String> over,
    boolean needsOne,
    List<String> requires,
    Optional<TruthFormula> applies,
    TruthFormula requirement,
    Consequence consequence,
    boolean judgeable,
    List<Condition> provided,
    List<Condition> plausible,
    List<Note> notes,
    List<Remedy> remedies,
    String caution,
    Citation citation,
    Position at) {

  /** Keeps the lists as they are. */
  public Check {
    stages = List.copyOf(stages);
    requires = List.copyOf(requires);
    provided = List.copyOf(provided);
    plausible = List.copyOf(plausible);
    notes = List.copyOf(notes);
    remedies = List.copyOf(remedies);
  }

  /** Every statement of it: when it applies, what must hold, and all that speaks beside it. */
  public List<TruthFormula> statements() {
    List<TruthFormula> all = new ArrayList<>();
    applies.ifPresent(all::add);
    all.add(requirement);
    provided.forEach(condition -> all.add(condition.that()));
    plausible.forEach(condition -> all.add(condition.that()));
    notes.forEach(note -> all.add(note.when()));
    remedies.forEach(remedy -> remedy.when().ifPresent(all::add));
    return all;
  }

  /** What follows where a requirement is not met. */
  public enum Consequence {
    /** The instrument fails. */
    FAIL,
    /** Something has to be settled or judged first. */
    HOLD
  }

  /**
   * A demand on the evidence.
   *
   * @param that what must be so
   * @param otherwise what to say where it is not
   */
  public record Condition(TruthFormula that, String otherwise) {}

  /**
   * A remark.
   *
   * @param when when it is made: met, for every value
   * @param says the remark
   * @param shows a value to print with it
   */
  public record Note(TruthFormula when, String says, Optional<NumberFormula> shows) {}

  /**
   * What to do.
   *
   * @param when when it fits: met, for every value; empty for otherwise
   * @param says what to do
   */
  public record Remedy(Optional<TruthFormula> when, String says) {}
}
