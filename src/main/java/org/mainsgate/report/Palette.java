package org.mainsgate.report;

import org.mainsgate.verdict.Outcome;

/** Whether a screen may be told to set words off; what they say never rests on it. */
public enum Palette {
  /** Plain text. */
  NONE,
  /** The escape sequences of ECMA-48: the darker, the worse. */
  ANSI;

  private static final String ESCAPE = "\u001b[";

  String paint(Outcome outcome, String text) {
    return switch (this) {
      case NONE -> text;
      case ANSI -> ESCAPE + weight(outcome) + "m" + text + ESCAPE + "0m";
    };
  }

  /** Bold, underlined, reversed: they are told apart without seeing colours. */
  private static String weight(Outcome outcome) {
    return switch (outcome) {
      case PASS -> "1";
      case HOLD -> "1;4";
      case FAIL -> "1;7";
      case NOT_APPLICABLE -> "2";
    };
  }
}
