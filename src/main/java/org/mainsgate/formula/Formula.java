package org.mainsgate.formula;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/**
 * A formula that has been read but not checked: its names may mean nothing and its units may not
 * fit.
 *
 * <pre>
 * implication = or [ "implies" implication ]
 * or          = and { "or" and }
 * and         = not { "and" not }
 * not         = "not" not | statement
 * statement   = sum [ ( "<=" | "<" | ">=" | ">" ) sum ]
 *             | path "is" [ "not" ] ( value | path )
 *             | path "in" "(" value { "," value } ")"
 * sum         = product { ( "+" | "-" ) product }
 * product     = signed { ( "*" | "/" ) signed }
 * signed      = "-" signed | primary
 * primary     = number | zero unit | "pi" | path | "(" implication ")"
 *             | ( "min" | "max" ) "(" sum "," sum { "," sum } ")"
 *             | ( "sqrt" | "ln" | "exp2" ) "(" sum ")"
 *             | ( "highest" | "lowest" | "nominal" ) "(" path ")"
 *             | table "(" ( sum | path ) ")" "." column
 *             | ( "all" | "any" ) variable "in" kind ":" implication
 *             | "sum" variable "in" kind ":" sum
 * path        = name { "." name }
 * </pre>
 *
 * <p>{@code × ÷ − ≤ ≥} may stand for {@code * / - <= >=}. A name is of small letters, digits and
 * {@code _} and starts with a letter; a value may start with a digit or have capitals. What follows
 * the colon reaches as far right as it can; parentheses stop it. The value of a list is meant where
 * a word after {@code is} could also be another observation; that is refused, and {@code in
 * (value)} says it plainly.
 *
 * <p>At most 4000 characters, 64 levels and 500 parts; with the steps it uses 10,000 parts and
 * three quantifiers inside each other.
 */
public final class Formula {
  private final Text source;
  private final Syntax syntax;

  private Formula(Text source, Syntax syntax) {
    this.source = source;
    this.syntax = syntax;
  }

  /** Reads a formula; empty after a complaint. */
  public static Optional<Formula> parse(Text source, Complaints complaints) {
    return Parser.parse(source, complaints).map(syntax -> new Formula(source, syntax));
  }

  /** Whether a name is a word of the language, so that nothing may be called by it. */
  public static boolean isReserved(String name) {
    return Language.RESERVED.contains(name);
  }

  /** Checks the formula as a statement; empty after a complaint. */
  public Optional<TruthFormula> asTruth(Scope scope, Complaints complaints) {
    return new Checker(source, scope, complaints).truthFormula(syntax);
  }

  /**
   * Checks the formula as a number; empty after a complaint.
   *
   * @param expected the dimension that it must have, null for any
   */
  public Optional<NumberFormula> asNumber(
      Scope scope, @Nullable Dimension expected, Complaints complaints) {
    return new Checker(source, scope, complaints).numberFormula(syntax, expected);
  }

  Syntax syntax() {
    return syntax;
  }
}
