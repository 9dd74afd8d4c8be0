package org.mainsgate.quantity;

import java.util.Optional;
import org.mainsgate.quantity.Cursor.Refused;

/** One reading of a typed quantity, see {@link Typed#parse}. */
final class TypedParser {

  private static final String[] PLUS_MINUS = {"±", "+-", "+/-", "+\u2212"};
  private static final Rational HUNDRED = Rational.of(100);

  private final String text;
  private final Cursor cursor;

  TypedParser(String text) throws Refused {
    this.text = text;
    this.cursor = new Cursor(text);
  }

  Typed parse() throws Refused {
    if (text.strip().equals("OL")) {
      return new Typed(
          Form.OVER_RANGE, ExactInterval.UNBOUNDED, Optional.empty(), Optional.empty(), text);
    }
    if (cursor.accept(">")) {
      return oneEnd(Form.ABOVE);
    }
    if (cursor.accept("<")) {
      return oneEnd(Form.BELOW);
    }
    int start = cursor.next();
    Rational number = cursor.number();
    if (cursor.unitWord().equals("AWG")) {
      return gauge(start);
    }
    if (cursor.accept(PLUS_MINUS)) {
      return limits(number);
    }
    return cursor.accept("to ") ? between(number) : withUnit(number);
  }

  private Typed oneEnd(Form form) throws Refused {
    Rational number = cursor.number();
    Unit unit = cursor.unit();
    cursor.end();
    Rational end = unit.toSi(number);
    return typed(
        form,
        form == Form.ABOVE ? ExactInterval.atLeast(end) : ExactInterval.atMost(end),
        end,
        unit);
  }

  private Typed between(Rational first) throws Refused {
    int start = cursor.next();
    Rational second = cursor.number();
    Unit unit = cursor.unit();
    cursor.end();
    if (first.compareTo(second) > 0) {
      throw cursor.refused(start, "the smaller number second", "the smaller number first");
    }
    ExactInterval bounds = ExactInterval.of(unit.toSi(first), unit.toSi(second));
    return new Typed(Form.BETWEEN, bounds, Optional.empty(), Optional.of(unit), text);
  }

  private Typed gauge(int start) throws Refused {
    String number = text.substring(start, cursor.next()).strip();
    if (!number.matches("[0-9]|[123][0-9]|40")) {
      throw cursor.refused(
          start,
          "a gauge of `" + number + "`",
          "a whole gauge from `0 AWG` to `40 AWG`, or an area in `mm²`");
    }
    cursor.accept("AWG");
    cursor.end();
    return new Typed(
        Form.BETWEEN,
        WireGauge.area(Integer.parseInt(number)),
        Optional.empty(),
        Units.find("mm²"),
        text);
  }

  /** {@code 0.13 ± 0.02 Ω}. */
  private Typed limits(Rational number) throws Refused {
    Rational spread = unsigned();
    Unit unit = cursor.unit();
    cursor.end();
    Rational half = spread.times(unit.factor());
    return around(unit.toSi(number), half, half, unit);
  }

  private Typed withUnit(Rational number) throws Refused {
    Unit unit = cursor.unit();
    Rational nominal = unit.toSi(number);
    if (cursor.atEnd()) {
      return typed(Form.STATED, ExactInterval.point(nominal), nominal, unit);
    }
    if (cursor.accept(PLUS_MINUS)) {
      Rational half = spread(nominal, unit);
      cursor.end();
      return around(nominal, half, half, unit);
    }
    cursor.expect("`±`, or a spread such as `+10/-6 %`", "+");
    Rational above = unsigned();
    cursor.expect("`/-` and the lower spread, as in `+10/-6 %`", "/");
    cursor.expect("`-` and the lower spread, as in `+10/-6 %`", "-", "\u2212");
    Rational below = unsigned();
    int place = cursor.next();
    cursor.expect("`%`", "%");
    cursor.end();
    refusePercentOf(unit, place);
    return around(nominal, percentOf(nominal, above), percentOf(nominal, below), unit);
  }

  private Rational spread(Rational nominal, Unit unit) throws Refused {
    Rational number = unsigned();
    int place = cursor.next();
    Unit spreadUnit = cursor.unit();
    if (spreadUnit.symbol().equals("%")) {
      refusePercentOf(unit, place);
      return percentOf(nominal, number);
    }
    if (!spreadUnit.dimension().equals(unit.dimension())) {
      throw cursor.refused(
          place, "a spread in `" + spreadUnit.symbol() + "`", "`" + unit.symbol() + "` or `%`");
    }
    return number.times(spreadUnit.factor());
  }

  /** Ten percent of 50 % may be 5 % or 10 %; ten percent of 20 °C depends on where zero is. */
  private void refusePercentOf(Unit unit, int place) throws Refused {
    if (unit.symbol().equals("%") || unit.offset().signum() != 0) {
      throw cursor.refused(
          place,
          "a percentage of a number in `" + unit.symbol() + "`",
          "the two ends, as in `40 to 60 " + unit.symbol() + "`");
    }
  }

  private Rational unsigned() throws Refused {
    int place = cursor.next();
    Rational number = cursor.number();
    if (number.signum() < 0 || text.startsWith("-", place) || text.startsWith("\u2212", place)) {
      throw cursor.refused(place, "a spread below zero", "a spread without a sign");
    }
    return number;
  }

  private static Rational percentOf(Rational nominal, Rational percent) {
    return nominal.abs().times(percent).dividedBy(HUNDRED);
  }

  private Typed around(Rational nominal, Rational above, Rational below, Unit unit) throws Refused {
    if (above.plus(below).signum() == 0) {
      throw cursor.refused("a spread of zero", "a spread above zero");
    }
    ExactInterval bounds = ExactInterval.of(nominal.minus(below), nominal.plus(above));
    return typed(Form.TOLERANCE, bounds, nominal, unit);
  }

  private Typed typed(Form form, ExactInterval bounds, Rational nominal, Unit unit) {
    return new Typed(form, bounds, Optional.of(nominal), Optional.of(unit), text);
  }
}
