package org.mainsgate.quantity;

import java.util.Optional;
import java.util.StringJoiner;
import org.mainsgate.quantity.Cursor.Refused;

/**
 * The limits of error that a meter's maker states for one range: a part of the reading, digits of
 * the last place, and a fixed part.
 *
 * @param percent of the reading, not negative
 * @param digits of the last place of the range, not negative
 * @param absolute fixed, in SI units, not negative
 * @param absoluteUnit the unit in which the fixed part was typed; empty if there is none
 */
public record Accuracy(
    Rational percent, Rational digits, Rational absolute, Optional<Unit> absoluteUnit)
    implements ParsedAccuracy {

  private static final String FORM = "an accuracy such as `2 % + 3 digits`";

  /**
   * Checks the signs.
   *
   * @throws IllegalArgumentException if a part is negative, or a fixed part has no unit
   */
  public Accuracy {
    if (percent.signum() < 0
        || digits.signum() < 0
        || absolute.signum() < 0
        || (absolute.signum() > 0 && absoluteUnit.isEmpty())) {
      throw new IllegalArgumentException(
          "no accuracy: " + percent + " %, " + digits + " digits, " + absolute);
    }
  }

  public static Accuracy of(Rational percent, Rational digits) {
    return new Accuracy(percent, digits, Rational.ZERO, Optional.empty());
  }

  /**
   * Reads one to three parts, each of its own kind, joined by {@code +}: {@code 2 % + 3 digits +
   * 0.1 Ω}. Not all may be 0.
   */
  public static ParsedAccuracy parse(String text) {
    try {
      return new Parts(new Cursor(text)).parse();
    } catch (Refused refused) {
      return refused.refusal();
    }
  }

  /**
   * Half the width of the interval in which the true value lies: {@code percent/100 × |reading| +
   * digits × digit + absolute}.
   *
   * @param reading in SI units, counted from the zero of the display
   * @param digit the value of one step of the last place, in SI units
   */
  public Rational halfWidth(Rational reading, Rational digit) {
    return percent
        .dividedBy(Rational.of(100))
        .times(reading.abs())
        .plus(digits.times(digit))
        .plus(absolute);
  }

  /** As typed by convention: {@code 2 % + 3 digits}. */
  public String describe() {
    StringJoiner parts = new StringJoiner(" + ");
    parts.setEmptyValue("0 %");
    if (percent.signum() > 0) {
      parts.add(percent + " %");
    }
    if (digits.signum() > 0) {
      parts.add(digits + (digits.equals(Rational.ONE) ? " digit" : " digits"));
    }
    absoluteUnit.ifPresent(
        unit -> parts.add(absolute.dividedBy(unit.factor()) + " " + unit.symbol()));
    return parts.toString();
  }

  private static final class Parts {
    private final Cursor cursor;
    private Optional<Rational> percent = Optional.empty();
    private Optional<Rational> digits = Optional.empty();
    private Optional<Rational> absolute = Optional.empty();
    private Optional<Unit> unit = Optional.empty();

    Parts(Cursor cursor) {
      this.cursor = cursor;
    }

    Accuracy parse() throws Refused {
      if (cursor.atEnd()) {
        throw cursor.unreadable(FORM);
      }
      Rational sum = part();
      while (cursor.accept("+")) {
        sum = sum.plus(part());
      }
      cursor.end();
      if (sum.signum() == 0) {
        throw cursor.refused("an accuracy of zero", "one above zero, such as `2 % + 3 digits`");
      }
      return new Accuracy(
          percent.orElse(Rational.ZERO),
          digits.orElse(Rational.ZERO),
          absolute.orElse(Rational.ZERO),
          unit);
    }

    private Rational part() throws Refused {
      int place = cursor.next();
      Rational number = cursor.number();
      if (number.signum() < 0) {
        throw cursor.refused(place, "a part below zero", FORM);
      }
      if (cursor.accept("%")) {
        percent = once(percent, number, place);
      } else if (cursor.accept("digits", "digit")) {
        digits = once(digits, number, place);
      } else if (cursor.unitWord().isEmpty()) {
        throw cursor.refused("a bare number", "`%`, `digits` or a unit");
      } else {
        Unit fixed = cursor.unit();
        unit = Optional.of(fixed);
        absolute = once(absolute, number.times(fixed.factor()), place);
      }
      return number;
    }

    private Optional<Rational> once(Optional<Rational> before, Rational number, int place)
        throws Refused {
      if (before.isPresent()) {
        throw cursor.refused(place, "a second part of one kind", FORM);
      }
      return Optional.of(number);
    }
  }
}
