package org.mainsgate.quantity;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** A place in a typed text that moves on over what is understood and stops at the first fault. */
final class Cursor {

  static final String NUMBER_WITH_UNIT = "a number with its unit, such as `0.13 Ω`";

  private static final int LONGEST_TEXT = 64;
  private static final int LONGEST_NUMBER = 40;
  private static final Set<String> ZERO = Set.of("0", "-0", "\u22120");

  /** The end of reading at a fault; never leaves this package. */
  static final class Refused extends Exception {
    private static final long serialVersionUID = 1;
    private final transient Refusal refusal;

    Refused(Refusal refusal) {
      super(refusal.what(), null, false, false);
      this.refusal = refusal;
    }

    Refusal refusal() {
      return refusal;
    }
  }

  private final String text;
  private int at;

  Cursor(String text) throws Refused {
    this.text = text;
    if (text.length() > LONGEST_TEXT) {
      at = LONGEST_TEXT;
      throw refused("more than 64 characters", "a shorter text");
    }
  }

  /** Moves to the next visible character and says where that is. */
  int next() {
    while (at < text.length() && isSpace(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private static boolean isSpace(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }

  /** Moves over one of the words, if one stands next. */
  boolean accept(String... words) {
    next();
    for (String word : words) {
      if (text.startsWith(word, at)) {
        at += word.length();
        return true;
      }
    }
    return false;
  }

  void expect(String what, String... words) throws Refused {
    if (!accept(words)) {
      throw unreadable(what);
    }
  }

  boolean atEnd() {
    return next() == text.length();
  }

  void end() throws Refused {
    if (!atEnd()) {
      throw unreadable("nothing more");
    }
  }

  /** A plain decimal, the reason for a refusal being as near as possible to the habit behind it. */
  Rational number() throws Refused {
    int start = next();
    accept("-", "\u2212");
    refuseUnlessDigit();
    skipDigits();
    if (rest().startsWith(".")) {
      at++;
      if (!digitAt(at)) {
        throw refused("no digit after the point", "a digit there, as in `5.0`");
      }
      skipDigits();
    }
    refuseSeparators(start);
    refuseExponent();
    return Rational.parse(text.substring(start, at))
        .orElseThrow(
            () ->
                refused("a number of more than " + LONGEST_NUMBER + " characters", "fewer digits"));
  }

  /** What stands before the next {@code ±} or {@code +}, as a unit. */
  Unit unit() throws Refused {
    String word = unitWord();
    if (word.isEmpty()) {
      throw refused("a bare number", NUMBER_WITH_UNIT);
    }
    if (word.endsWith("AWG")) {
      throw unreadable("a gauge alone, such as `18 AWG`, or an area in `mm²`");
    }
    if (word.contains(" to ")) {
      throw unreadable("the unit once, at the end, as in `2.9 to 3.1 m`");
    }
    Unit unit = Units.find(word).orElseThrow(() -> unknown(word));
    at += word.length();
    return unit;
  }

  private Refused unknown(String word) {
    String expected = "a unit such as `Ω`, `V` or `mm²`";
    return new Refused(new Refusal(at, "unknown unit `" + word + "`", expected, Optional.of(word)));
  }

  /** The words up to the next {@code ±} or {@code +}; empty if none. */
  String unitWord() {
    String rest = text.substring(next());
    int end = 0;
    while (end < rest.length() && rest.charAt(end) != '±' && rest.charAt(end) != '+') {
      end++;
    }
    return rest.substring(0, end).strip();
  }

  Refused unreadable(String expected) {
    return refused(atEnd() ? "the end of the text" : "`" + rest() + "`", expected);
  }

  Refused refused(String what, String expected) {
    return refused(at, what, expected);
  }

  Refused refused(int place, String what, String expected) {
    return new Refused(new Refusal(place, what, expected));
  }

  private String rest() {
    return text.substring(at);
  }

  private void refuseUnlessDigit() throws Refused {
    String word = rest().toLowerCase(Locale.ROOT);
    if (word.startsWith("nan") || word.startsWith("inf") || word.startsWith("∞")) {
      throw unreadable("a finite number; where the meter shows over-range, `OL` or `> 200 MΩ`");
    }
    if (word.startsWith(".")) {
      throw refused("no digit before the point", "a digit there, as in `0.5`");
    }
    if (!digitAt(at)) {
      throw unreadable(NUMBER_WITH_UNIT);
    }
  }

  private void skipDigits() {
    while (digitAt(at)) {
      at++;
    }
  }

  private boolean digitAt(int place) {
    return place < text.length() && text.charAt(place) >= '0' && text.charAt(place) <= '9';
  }

  private void refuseSeparators(int start) throws Refused {
    if (!digitAt(at + 1) || !" \u00a0\u2009\u202f',.’_".contains(text.substring(at, at + 1))) {
      return;
    }
    int end = at + 1;
    while (digitAt(end)) {
      end++;
    }
    if (text.startsWith("/", end)) {
      return; // the unit 1/K
    }
    String before = text.substring(start, at);
    String after = text.substring(at + 1, end);
    boolean more = text.startsWith(",", end) || text.startsWith(".", end);
    if (text.charAt(at) != ',' || before.contains(".") || more) {
      throw refused(
          "a separator inside a number", "the digits together, with a point for decimals");
    }
    boolean thousands = after.length() == 3 && !ZERO.contains(before);
    String comma = before + "," + after;
    String point = before + "." + after;
    throw refused(
        "a comma inside a number",
        "a point: `"
            + comma
            + "` as `"
            + point
            + (thousands ? "`, or `" + before + after : "")
            + "`");
  }

  private void refuseExponent() throws Refused {
    if ((rest().startsWith("e") || rest().startsWith("E"))
        && rest().length() > 1
        && "+-\u22120123456789".indexOf(rest().charAt(1)) >= 0) {
      throw refused("an exponent", "all its digits, or a prefix as in `2.2 MΩ`");
    }
  }
}
