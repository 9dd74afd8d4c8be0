package org.mainsgate.formula;

/** A word, number or sign of a formula, with the characters {@code from} to before {@code to}. */
record Token(Kind kind, String text, int from, int to) {
  enum Kind {
    NUMBER,
    WORD,
    SIGN,
    END
  }

  boolean is(String wanted) {
    return (kind == Kind.WORD || kind == Kind.SIGN) && text.equals(wanted);
  }

  boolean touches(Token next) {
    return to == next.from;
  }

  /** The token as a complaint shows it. */
  String quoted() {
    return "`" + text + "`";
  }
}
