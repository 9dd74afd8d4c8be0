package org.mainsgate.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;

/** A formula as it was written: a tree that knows its place in the text and nothing of meaning. */
sealed interface Syntax {
  /** Where it stands in the text. */
  Span span();

  /**
   * The characters {@code from} to before {@code to}; {@code at} is the one that a complaint is put
   * under.
   */
  record Span(int from, int at, int to) {}

  /** A number as typed; its unit, where there is one, is only ever that of a zero. */
  record Literal(Span span, Rational value, @Nullable Unit unit) implements Syntax {}

  record Pi(Span span) implements Syntax {}

  record Path(Span span, List<String> parts) implements Syntax {
    String text() {
      return String.join(".", parts);
    }
  }

  /** An operation with two or more numbers. */
  record Operation(Span span, Arithmetic operator, Syntax left, Syntax right) implements Syntax {}

  /** A function of one number, the minus sign among them. */
  record Single(Span span, Function function, Syntax argument) implements Syntax {}

  /** {@code highest(x)} and its like. */
  record Extreme(Span span, End end, Syntax argument) implements Syntax {}

  record Lookup(Span span, String table, Syntax key, Word column) implements Syntax {}

  record Order(Span span, Relation relation, Syntax left, Syntax right) implements Syntax {}

  /** {@code subject is value}, {@code subject is not value}, {@code subject in (value, value)}. */
  record Naming(Span span, Path subject, boolean negated, boolean listed, List<Word> values)
      implements Syntax {}

  record Junction(Span span, Connective connective, Syntax left, Syntax right) implements Syntax {}

  record Not(Span span, Syntax argument) implements Syntax {}

  record Each(Span span, Quantifier quantifier, Word variable, Word kind, Syntax body)
      implements Syntax {}

  /** What stands where the text could not be read; a parsed formula has none. */
  record Wrong(Span span) implements Syntax {}

  /** A word with its place. */
  record Word(String text, int at) {}

  /** Which value of something that varies. */
  enum End {
    HIGHEST,
    LOWEST,
    NOMINAL
  }

  enum Quantifier {
    ALL,
    ANY,
    SUM
  }
}
