package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/**
 * The cutting of a formula's text into tokens; every character that fits nowhere is complained of.
 */
final class Scanner {
  /** Signs with two spellings, and the spelling that the parser knows. */
  private static final Map<String, String> SPELLINGS =
      Map.of("×", "*", "÷", "/", "−", "-", "≤", "<=", "≥", ">=");

  private static final String SINGLE_SIGNS = "+-*/()<>,:.";
  private static final String FOREIGN_SIGNS = "=!&|^~";

  /**
   * Characters of unit symbols that are not letters. They make one word with the letters around.
   */
  private static final String UNIT_CHARACTERS = "_°%²·";

  private final Text source;
  private final String text;
  private final Complaints complaints;
  private final List<Token> tokens = new ArrayList<>();
  private boolean wrong;

  Scanner(Text source, Complaints complaints) {
    this.source = source;
    this.text = source.value();
    this.complaints = complaints;
  }

  /** The tokens, the last of kind END; an empty list after a complaint. */
  List<Token> scan() {
    int at = 0;
    while (at < text.length()) {
      at = isBlank(text.charAt(at)) ? at + 1 : next(at);
    }
    int end = text.stripTrailing().length();
    tokens.add(new Token(Token.Kind.END, "", end, end));
    return wrong ? List.of() : tokens;
  }

  private int next(int from) {
    char c = text.charAt(from);
    if (isDigit(c)) {
      return number(from);
    }
    if (isWordCharacter(text.codePointAt(from))) {
      return word(from);
    }
    String two = text.substring(from, Math.min(from + 2, text.length()));
    if (two.equals("<=") || two.equals(">=")) {
      return add(Token.Kind.SIGN, two, from, from + 2);
    }
    if (FOREIGN_SIGNS.indexOf(c) >= 0) {
      return foreign(from);
    }
    String one = text.substring(from, from + Character.charCount(text.codePointAt(from)));
    String sign = SPELLINGS.getOrDefault(one, one);
    if (SPELLINGS.containsKey(one) || SINGLE_SIGNS.contains(one)) {
      return add(Token.Kind.SIGN, sign, from, from + one.length());
    }
    complain(from, "a formula has no `" + one + "`", "");
    return from + one.length();
  }

  private int number(int from) {
    int to = digits(from);
    if (to + 1 < text.length() && text.charAt(to) == '.' && isDigit(text.charAt(to + 1))) {
      to = digits(to + 1);
    }
    return add(Token.Kind.NUMBER, text.substring(from, to), from, to);
  }

  private int digits(int from) {
    int to = from;
    while (to < text.length() && isDigit(text.charAt(to))) {
      to++;
    }
    return to;
  }

  private int word(int from) {
    int to = from;
    while (to < text.length() && isWordCharacter(text.codePointAt(to))) {
      to += Character.charCount(text.codePointAt(to));
    }
    return add(Token.Kind.WORD, text.substring(from, to), from, to);
  }

  private int foreign(int from) {
    int to = from;
    while (to < text.length() && FOREIGN_SIGNS.indexOf(text.charAt(to)) >= 0) {
      to++;
    }
    String run = text.substring(from, to);
    String right =
        switch (run.charAt(run.length() - 1)) {
          case '=' -> "`<=` or `>=` between numbers, `is` or `is not` for a named value";
          case '&' -> "`and`";
          case '|' -> "`or`";
          case '!', '~' -> "`not`";
          default -> "`x * x`, `sqrt(x)` or `exp2(x)`";
        };
    complain(from, "a formula has no `" + run + "`", right);
    return to;
  }

  private int add(Token.Kind kind, String word, int from, int to) {
    tokens.add(new Token(kind, word, from, to));
    return to;
  }

  private void complain(int at, String what, String right) {
    wrong = true;
    complaints.add(source.at(at), what, right, "");
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isWordCharacter(int c) {
    return Character.isLetter(c) || (c >= '0' && c <= '9') || UNIT_CHARACTERS.indexOf(c) >= 0;
  }
}
