package org.mainsgate.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers for people: plain decimals without exponents, the same in every country. */
public final class Print {

  /** A number that needs no more digits is printed in full. */
  private static final MathContext FULL = new MathContext(6, RoundingMode.HALF_EVEN);

  private static final int ENDS = 3;

  /**
   * An end that a common last place would leave with fewer steps than this gets digits of its own.
   */
  private static final BigDecimal FEWEST_STEPS = BigDecimal.TEN;

  private Print() {}

  /** The number in a unit, rounded to significant digits, without trailing zeros or symbol. */
  public static String value(Rational si, Unit unit, int significant, RoundingMode rounding) {
    return plain(unit.fromSi(si).rounded(new MathContext(significant, rounding)));
  }

  /** The number in a unit with all its digits if six suffice, else rounded to six. */
  public static String value(Rational si, Unit unit) {
    return plain(unit.fromSi(si).rounded(FULL));
  }

  /**
   * The ends in a unit, without symbol: {@code 0.097 to 0.163}, {@code at least 0.19}, {@code at
   * most 0.3} or {@code unknown}; three digits, rounded outward, or a point in full.
   */
  public static String interval(ExactInterval si, Unit unit) {
    Rational lo = si.lo();
    Rational hi = si.hi();
    if (lo == null) {
      return hi == null ? "unknown" : "at most " + value(hi, unit, ENDS, RoundingMode.CEILING);
    }
    if (hi == null) {
      return "at least " + value(lo, unit, ENDS, RoundingMode.FLOOR);
    }
    return si.isPoint() ? value(lo, unit) : ends(unit.fromSi(lo), unit.fromSi(hi));
  }

  /** {@link #interval} with the symbol, where there is a number. */
  public static String quantity(ExactInterval si, Unit unit) {
    String number = interval(si, unit);
    return si.isUnbounded() || unit.symbol().equals("1") ? number : number + " " + unit.symbol();
  }

  private static String ends(Rational lo, Rational hi) {
    BigDecimal larger = lo.abs().max(hi.abs()).rounded(new MathContext(ENDS, RoundingMode.UP));
    int places = larger.scale() + ENDS - larger.precision();
    return end(lo, places, RoundingMode.FLOOR) + " to " + end(hi, places, RoundingMode.CEILING);
  }

  private static String end(Rational number, int places, RoundingMode rounding) {
    BigDecimal own = number.rounded(new MathContext(ENDS, rounding));
    boolean lost = own.abs().movePointRight(places).compareTo(FEWEST_STEPS) < 0;
    return plain(lost ? own : own.setScale(Math.min(places, own.scale()), rounding));
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}
