package org.mainsgate.formula;

import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** The words of the language and the bounds of a formula. */
final class Language {
  static final int MAX_CHARACTERS = 4000;
  static final int MAX_DEPTH = 64;
  static final int MAX_NODES = 500;
  static final int MAX_NUMBER_CHARACTERS = 40;

  /** What nothing may be called that a formula names. */
  static final Set<String> RESERVED =
      Set.of(
          "and", "or", "not", "implies", "is", "in", "all", "any", "sum", "min", "max", "sqrt",
          "ln", "exp2", "pi", "highest", "lowest", "nominal");

  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9_]*");
  private static final Pattern VALUE = Pattern.compile("[A-Za-z0-9_]+");

  static final Map<String, Function> FUNCTIONS =
      Map.of("sqrt", Function.SQRT, "ln", Function.LN, "exp2", Function.EXP2);
  static final Map<String, Syntax.End> ENDS =
      Map.of(
          "highest",
          Syntax.End.HIGHEST,
          "lowest",
          Syntax.End.LOWEST,
          "nominal",
          Syntax.End.NOMINAL);
  static final Map<String, Relation> RELATIONS =
      Map.of(
          "<=",
          Relation.AT_MOST,
          "<",
          Relation.LESS_THAN,
          ">=",
          Relation.AT_LEAST,
          ">",
          Relation.MORE_THAN);

  private Language() {}

  static boolean isName(String word) {
    return NAME.matcher(word).matches();
  }

  static boolean isValue(String word) {
    return VALUE.matcher(word).matches();
  }
}
