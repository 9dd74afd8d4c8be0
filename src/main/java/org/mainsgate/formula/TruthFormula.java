package org.mainsgate.formula;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mainsgate.quantity.Truth;

/**
 * A checked formula for a statement: all its names are known and its units fit.
 *
 * <p><b>How it is decided.</b> Every comparison is first made on doubles rounded outward. Where
 * that leaves it undecided it is made again in exact rationals, always and over the same tree; the
 * row of a table is chosen in rationals from the start. This is
 *
 * <ul>
 *   <li><i>sound</i>: the doubles enclose the rationals, so they can fail to decide but never
 *       decide otherwise;
 *   <li><i>monotone</i>: the answer is the one that the rationals alone would give, and narrower
 *       facts give narrower rationals;
 *   <li><i>better than a threshold</i> on the width ("again only if nearly a point"): the values of
 *       the trade are nominal and sit on their limits, also where the other side is a wide interval
 *       that ends there; and a threshold would make the answer depend on a width, so that narrowing
 *       a fact could change what is decided.
 * </ul>
 */
public final class TruthFormula {
  private final String text;
  private final TruthNode node;
  private final Survey survey;

  TruthFormula(String text, TruthNode node, Survey survey) {
    this.text = text;
    this.node = node;
    this.survey = survey;
  }

  /**
   * Met if every value that the facts allow satisfies the statement, not met if none does, else
   * undecided. A name that stands in it several times counts as several: {@code x - x} is not zero.
   */
  public Truth evaluate(Facts facts) {
    return node.truth(facts);
  }

  /**
   * Every comparison, choice and open list in the order of the text, also where others settle it.
   */
  public List<Ground> explain(Facts facts) {
    return TruthNode.grounds(node, facts);
  }

  /** The formula as it was written, on one line. */
  public String text() {
    return text;
  }

  /** The evidence that it asks for, the steps it uses included. */
  public Set<Input> inputs() {
    return survey.inputs();
  }

  /** The names of its limits. */
  public Set<String> limits() {
    return survey.limits();
  }

  /** The names of its tables. */
  public Set<String> tables() {
    return survey.tables();
  }

  /** The kinds of thing whose lists it runs over. */
  public Set<String> lists() {
    return survey.lists();
  }

  /** The named steps and statements that it uses; each before those that it uses itself. */
  public Collection<Meaning> steps() {
    return survey.steps().values();
  }

  /** The rows of tables that the facts lead to. */
  public Set<RowUse> rowsTouched(Facts facts) {
    return rows(node, facts);
  }

  /**
   * Whether a raised limit lets the statement be met more easily or less, under any facts.
   *
   * <p>Holds while every limit keeps its sign (above zero, zero, below zero) and numbers lie within
   * their {@code possible}. {@link Sign#MIXED} where that can't be shown: behind a factor whose
   * sign is not known, in the key of a table, under a root that might be of a negative number.
   */
  public Sign sign(String limit) {
    return node.sign(limit);
  }

  /** Both statements at once; written in the same scope. */
  public TruthFormula and(TruthFormula other) {
    TruthNode both = new TruthNode.Joined(Connective.AND, node, other.node);
    Map<String, String> free = new LinkedHashMap<>(survey.free());
    free.putAll(other.survey.free());
    return new TruthFormula("(" + text + ") and (" + other.text + ")", both, Survey.of(both, free));
  }

  static Set<RowUse> rows(Node node, Facts facts) {
    Set<RowUse> rows = new LinkedHashSet<>();
    node.rows(facts, rows::add);
    return Collections.unmodifiableSet(rows);
  }

  TruthNode node() {
    return node;
  }

  Survey survey() {
    return survey;
  }
}
