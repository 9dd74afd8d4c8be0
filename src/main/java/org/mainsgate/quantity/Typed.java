package org.mainsgate.quantity;

import java.util.Optional;

/**
 * A quantity as a person typed it, understood but not yet judged: without the error of any meter.
 *
 * @param form the way it was typed
 * @param bounds the values that the text allows, in SI units; nothing is known where the meter was
 *     over its range
 * @param nominal the one number that stands in the text, in SI units; empty for {@code BETWEEN} and
 *     {@code OVER_RANGE}
 * @param unit the unit it was typed in, mm² for a wire gauge; empty for {@code OVER_RANGE} alone
 * @param text as typed
 */
public record Typed(
    Form form, ExactInterval bounds, Optional<Rational> nominal, Optional<Unit> unit, String text)
    implements Parsed {

  /**
   * Checks that the parts fit the form.
   *
   * @throws IllegalArgumentException if a nominal or a unit is missing or too many, or the nominal
   *     is outside the bounds
   */
  public Typed {
    boolean single = form != Form.BETWEEN && form != Form.OVER_RANGE;
    if (single != nominal.isPresent()
        || (form == Form.OVER_RANGE) == unit.isPresent()
        || !nominal.map(bounds::contains).orElse(true)) {
      throw new IllegalArgumentException("not " + form + ": " + text);
    }
  }

  /**
   * Reads a quantity of at most 64 characters.
   *
   * <pre>
   * quantity = "OL" | gauge "AWG" | (">" | "<") number unit
   *          | number unit [ "±" number (unit | "%") | "+" number "/-" number "%" ]
   *          | number "±" number unit | number "to" number unit
   * number   = ["-"] digits ["." digits]
   * </pre>
   *
   * {@code +-} and {@code +/-} stand for {@code ±}, U+2212 for the minus. A gauge is a whole number
   * from 0 to 40.
   */
  public static Parsed parse(String text) {
    try {
      return new TypedParser(text).parse();
    } catch (Cursor.Refused refused) {
      return refused.refusal();
    }
  }
}
