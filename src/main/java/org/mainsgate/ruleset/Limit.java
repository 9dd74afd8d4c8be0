package org.mainsgate.ruleset;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Unit;
import org.mainsgate.source.Position;

/**
 * A named value that a rule compares with.
 *
 * @param name the name in formulas
 * @param title what it is, for people
 * @param value the value in SI units, a point
 * @param unit the unit it was written in
 * @param text the value as written
 * @param citation where it comes from
 * @param at where it stands
 */
public record Limit(
    String name,
    String title,
    ExactInterval value,
    Unit unit,
    String text,
    Citation citation,
    Position at) {

  /** The same value with another account of where it comes from. */
  Limit citedFrom(Citation other) {
    return new Limit(name, title, value, unit, text, other, at);
  }
}
