package org.mainsgate.formula;

import java.util.List;
import java.util.Map;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;

/** One thing on which the outcome of a formula rests: a comparison, a choice or a list. */
public sealed interface Ground {
  /** The item that each variable stands for, outermost quantifier first. */
  Map<String, String> items();

  /** How it came out by itself, before the {@code not} and {@code implies} around it. */
  Truth truth();

  /**
   * A comparison of two numbers.
   *
   * @param leftText the left side as the formula writes it
   * @param left its value in SI units
   * @param operator one of {@code ≤ < ≥ >}
   * @param unit the unit to print both sides in
   * @param leftTerms the addends of the left side, one if it is no sum
   */
  record Comparison(
      Map<String, String> items,
      String leftText,
      ExactInterval left,
      String operator,
      String rightText,
      ExactInterval right,
      Truth truth,
      Unit unit,
      List<Term> leftTerms,
      List<Term> rightTerms)
      implements Ground {}

  /**
   * One addend; what is subtracted has its sign in the value.
   *
   * @param label the name of a limit, the title of a step, else the text of the formula
   */
  record Term(String label, ExactInterval value, Unit unit) {}

  /**
   * A choice among named values.
   *
   * @param text the name as the formula writes it
   * @param candidates the values still possible, in the order of their list
   * @param negated whether the statement is that it is none of the wanted
   * @param wanted the values named; for two names that shall agree, the candidates of the second
   */
  record Choice(
      Map<String, String> items,
      String text,
      List<String> candidates,
      boolean negated,
      List<String> wanted,
      Truth truth)
      implements Ground {}

  /** A list that nobody has closed, so that nothing can be said of all its things; undecided. */
  record OpenList(Map<String, String> items, String kind) implements Ground {
    @Override
    public Truth truth() {
      return Truth.UNDECIDED;
    }
  }
}
