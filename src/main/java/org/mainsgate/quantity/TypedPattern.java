package org.mainsgate.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Regular expressions for typed quantities, for editors that help while typing.
 *
 * <p>They are permissive: each matches every text that is understood, and some that are not. They
 * mean the same in ECMA 262, with and without its flag {@code u}, and in Java.
 */
public final class TypedPattern {
  private static final String SPACE = "[\\s\\u00a0\\u1680\\u2000-\\u202f\\u205f\\u3000]*";
  private static final String UNSIGNED = "[0-9]+(?:\\.[0-9]+)?";
  private static final String NUMBER = "[-\\u2212]?" + UNSIGNED;
  private static final String PLUS_MINUS = "(?:±|\\+-|\\+/-|\\+\\u2212)";
  private static final String PERCENTS =
      "\\+"
          + SPACE
          + UNSIGNED
          + SPACE
          + "/"
          + SPACE
          + "[-\\u2212]"
          + SPACE
          + UNSIGNED
          + SPACE
          + "%";

  private TypedPattern() {}

  /**
   * Of every form of a quantity in the units of a dimension.
   *
   * @param measured whether it may also be what only a display says: {@code >}, {@code <} and
   *     {@code OL}
   */
  public static String of(Dimension dimension, boolean measured) {
    String unit = units(found -> found.dimension().equals(dimension));
    String spread = join(PLUS_MINUS, UNSIGNED, "(?:" + unit + "|%)") + "|" + PERCENTS;
    List<String> forms = new ArrayList<>();
    forms.add(join(NUMBER, unit, "(?:" + spread + ")?"));
    forms.add(join(NUMBER, PLUS_MINUS, UNSIGNED, unit));
    forms.add(join(NUMBER, "to", NUMBER, unit));
    if (dimension.equals(Dimension.AREA)) {
      forms.add(join("[0-9]{1,2}", "AWG"));
    }
    if (measured) {
      forms.add(join("[<>]", NUMBER, unit));
      forms.add("OL");
    }
    return whole(String.join("|", forms));
  }

  /** Of one number with a unit of a dimension. */
  public static String stated(Dimension dimension) {
    return whole(join(NUMBER, units(found -> found.dimension().equals(dimension))));
  }

  /** Of one number, with any unit or none. */
  public static String stated() {
    return whole(join(NUMBER, units(found -> true) + "?"));
  }

  /** Of the accuracy of a meter whose readings are of a dimension. */
  public static String accuracy(Dimension dimension) {
    String unit = units(found -> found.dimension().equals(dimension));
    return sum("(?:%|digits?|" + unit + ")");
  }

  /** Of the accuracy of any meter. */
  public static String accuracy() {
    return sum("(?:%|digits?|" + units(found -> true) + ")");
  }

  private static String sum(String what) {
    String part = join(UNSIGNED, what);
    return whole(part + "(?:" + join("", "\\+", part) + "){0,2}");
  }

  private static String whole(String pattern) {
    return "^" + SPACE + "(?:" + pattern + ")" + SPACE + "$";
  }

  private static String join(String... parts) {
    return String.join(SPACE, parts);
  }

  /** Every spelling of these units that {@link Units#find} takes, and some more. */
  private static String units(Predicate<Unit> wanted) {
    return Units.symbols().stream()
        .filter(symbol -> Units.find(symbol).filter(wanted).isPresent())
        .map(TypedPattern::spellings)
        .collect(Collectors.joining("|", "(?:", ")"));
  }

  private static String spellings(String symbol) {
    String named =
        switch (symbol) {
          case "°C" -> "°C|degC";
          case "N m" -> "N m|Nm";
          case "A²s" -> "A²s|A² s";
          default -> symbol;
        };
    return named
        .replaceAll("^µ", "[µ\\\\u03bcu]")
        .replaceAll("(?<!\\[)µ", "[µ\\\\u03bc]")
        .replace("Ω", "(?:[Ω\\u2126]|ohm)")
        .replace("²", "[²2]")
        .replace(" ", "[ ·\\u00a0]");
  }
}
