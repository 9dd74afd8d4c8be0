package org.mainsgate.ruleset;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/**
 * One value of a ruleset moved, so that one can see whether the ruleset's tests notice.
 *
 * @param name the limit's name, {@code table[row].column} or {@code table[row]}
 * @param factor what the value is multiplied by
 */
public record Adjustment(String name, Rational factor) {

  /** Everything as it is written. */
  public static final Adjustment NONE = new Adjustment("", Rational.ONE);

  /** The name of a table's cell. */
  public static String cell(String table, String row, String column) {
    return table + "[" + row + "]." + column;
  }

  /** The name of a row's own number. */
  public static String key(String table, String row) {
    return table + "[" + row + "]";
  }

  /** The number, moved if it is the one that is meant. */
  Rational apply(String value, Rational number) {
    return name.equals(value) ? number.times(factor) : number;
  }

  /** The value, moved if it is the one that is meant. */
  ExactInterval apply(String value, ExactInterval si) {
    return name.equals(value) ? si.times(ExactInterval.point(factor)) : si;
  }
}
