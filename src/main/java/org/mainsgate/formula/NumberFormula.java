package org.mainsgate.formula;

import java.util.Collection;
import java.util.Set;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;
import org.mainsgate.quantity.Unit;

/** A checked formula for a number: all its names are known and its units fit. */
public final class NumberFormula {
  private final String text;
  private final NumberNode node;
  private final Survey survey;

  NumberFormula(String text, NumberNode node, Survey survey) {
    this.text = text;
    this.node = node;
    this.survey = survey;
  }

  /** The value in SI units and doubles, rounded outward; encloses {@link #exact}. */
  public Interval evaluate(Facts facts) {
    return node.fast(facts);
  }

  /** The value in SI units and rationals; √, ln, 2ˣ and π widen it by last digits of a double. */
  public ExactInterval exact(Facts facts) {
    return node.exact(facts);
  }

  /** The dimension of the value. */
  public Dimension dimension() {
    return node.dimension();
  }

  /** The unit to print it in: that of one of its names, else the SI unit. */
  public Unit unit() {
    return node.unit().orElseGet(() -> PrintUnit.of(node.dimension()));
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
    return TruthFormula.rows(node, facts);
  }

  /** What raising a limit does to the value; see {@link TruthFormula#sign}. */
  public Sign sign(String limit) {
    return node.sign(limit);
  }

  NumberNode node() {
    return node;
  }

  Survey survey() {
    return survey;
  }
}
