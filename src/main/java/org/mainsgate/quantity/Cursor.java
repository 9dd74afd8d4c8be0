package org.mainsgate.quantity;

import java.util.Locale;
import java.util.Optional;

/** A place in a typed text that moves on over what is understood and stops at the first fault. */
final class Cursor {

  static final String NUMBER_WITH_UNIT = "a number with its unit, such as `0.13 Ω`";

  private static final int LONGEST_TEXT = 64;
  private static final int LONGEST_NUMBER = 40;

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
    while (at < text.length() && Character.isSpaceChar(text.charAt(at))) {
      at++;
    }
    return at;
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
    String word = rest().toLowerCase(Locale.ROOT);
    if (word.startsWith("nan") || word.startsWith("inf") || word.startsWith("∞")) {
      throw unreadable("a finite number; where the meter shows over-range, `OL` or `> 200 MΩ`");
    }
    if (word.startsWith(".")) {
      throw refused("no digit before the point", "a digit there, as in `0.5`");
    }
    digits(NUMBER_WITH_UNIT);
    if (rest().startsWith(".")) {
      at++;
      digits("a digit after the point");
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
    Optional<Unit> unit = Units.find(word);
    if (unit.isEmpty()) {
      throw new Refused(
          new Refusal(at, "unknown unit `" + word + "`", expectedFor(word), Optional.of(word)));
    }
    at += word.length();
    return unit.get();
  }

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
    return new Refused(new Refusal(at, what, expected));
  }

  private static String expectedFor(String word) {
    if (word.endsWith("AWG")) {
      return "a gauge alone, such as `18 AWG`, or an area in `mm²`";
    }
    return word.contains(" to ")
        ? "the unit once, at the end, as in `2.9 to 3.1 m`"
        : "a unit such as `Ω`, `V` or `mm²`";
  }

  private String rest() {
    return text.substring(at);
  }

  private void digits(String expected) throws Refused {
    int start = at;
    while (digitAt(at)) {
      at++;
    }
    if (at == start) {
      throw unreadable(expected);
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
    String before = text.substring(start, at);
    String after = text.substring(at + 1, end);
    String typed = text.substring(start, end);
    boolean comma = text.charAt(at) == ',' && !before.contains(".");
    if (comma && (after.length() != 3 || (before.endsWith("0") && before.length() <= 2))) {
      throw refused(
          "a decimal comma", "write a point: `" + typed + "` as `" + before + "." + after + "`");
    }
    throw refused(
        "a separator inside a number",
        "write the digits together, with a point for decimals: not `"
            + typed
            + "` but `"
            + before.replace(".", "")
            + after
            + "`");
  }

  private void refuseExponent() throws Refused {
    if ((rest().startsWith("e") || rest().startsWith("E"))
        && rest().length() > 1
        && "+-\u22120123456789".indexOf(rest().charAt(1)) >= 0) {
      throw refused("an exponent", "write it out or use a prefix, such as `2.2 MΩ`");
    }
  }
}
