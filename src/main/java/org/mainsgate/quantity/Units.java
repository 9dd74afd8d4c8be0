package org.mainsgate.quantity;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The closed table of units that records and rules may use, with exact sizes.
 *
 * <p>Sizes: SI prefixes and units (BIPM, SI Brochure, 9th edition, 2019); inch, foot and pound by
 * the international agreement of 1959; pound-force with the standard gravity of 9.80665 m/s².
 */
public final class Units {

  private static final Map<String, Unit> TABLE = new LinkedHashMap<>();

  /** Spellings that no rule of {@link #canonical} covers. */
  private static final Map<String, String> ALSO = Map.of("Nm", "N m", "degC", "°C", "A² s", "A²s");

  private static final Map<String, String> PREFIXES =
      Map.of(
          "p",
          "0.000000000001",
          "n",
          "0.000000001",
          "µ",
          "0.000001",
          "m",
          "0.001",
          "",
          "1",
          "k",
          "1000",
          "M",
          "1000000",
          "G",
          "1000000000");

  static {
    prefixed("Ω", Dimension.RESISTANCE, "", "µ", "m", "k", "M", "G");
    prefixed("V", Dimension.VOLTAGE, "", "m", "µ", "k");
    prefixed("A", Dimension.CURRENT, "", "m", "µ", "n");
    prefixed("m", Dimension.LENGTH, "", "m", "k");
    add("cm", Dimension.LENGTH, "0.01");
    add("ft", Dimension.LENGTH, "0.3048");
    add("in", Dimension.LENGTH, "0.0254");
    add("mm²", Dimension.AREA, "0.000001");
    add("cm²", Dimension.AREA, "0.0001");
    add("m²", Dimension.AREA, "1");
    prefixed("Hz", Dimension.FREQUENCY, "", "k", "M");
    prefixed("F", Dimension.CAPACITANCE, "", "m", "µ", "n", "p");
    prefixed("W", Dimension.POWER, "", "m", "k");
    prefixed("VA", Dimension.POWER, "", "k", "m");
    add("N", Dimension.FORCE, "1");
    add("lbf", Dimension.FORCE, "4.4482216152605");
    add("N m", Dimension.ENERGY, "1");
    prefixed("J", Dimension.ENERGY, "", "m", "k");
    add("kg", Dimension.MASS, "1");
    add("g", Dimension.MASS, "0.001");
    add("lb", Dimension.MASS, "0.45359237");
    prefixed("s", Dimension.TIME, "", "m");
    add("min", Dimension.TIME, "60");
    add("h", Dimension.TIME, "3600");
    add("d", Dimension.TIME, "86400");
    add("K", Dimension.TEMPERATURE, "1");
    add("°C", Dimension.TEMPERATURE, Rational.ONE, Rational.of("273.15"));
    add("1/K", Dimension.PER_TEMPERATURE, "1");
    prefixed("C", Dimension.CHARGE, "", "m", "µ");
    prefixed("H", Dimension.INDUCTANCE, "", "m", "µ");
    add("%", Dimension.NONE, "0.01");
    add("S", Dimension.CONDUCTANCE, "1");
    add("MS/m", Dimension.CONDUCTIVITY, "1000000");
    add("Ω/km", Dimension.RESISTANCE_PER_LENGTH, "0.001");
    add("Ω/m", Dimension.RESISTANCE_PER_LENGTH, "1");
    add("mΩ/m", Dimension.RESISTANCE_PER_LENGTH, "0.001");
    add(
        "Ω/kft",
        Dimension.RESISTANCE_PER_LENGTH,
        Rational.of(10).dividedBy(Rational.of(3048)),
        Rational.ZERO);
    add("Ω mm²/m", Dimension.RESISTIVITY, "0.000001");
    add("mA/µF", Dimension.CURRENT_PER_CAPACITANCE, "1000");
    add("A²s", Dimension.CURRENT_SQUARED_TIME, "1");
  }

  private Units() {}

  /**
   * The unit that a text names; empty if none.
   *
   * <p>Upper and lower case differ. Taken besides the printed symbols: both ohm signs and {@code
   * ohm}, both micro signs and a leading {@code u}, {@code 2} for {@code ²}, {@code ·} for the
   * space in a product, {@code Nm}, {@code degC}.
   */
  public static Optional<Unit> find(String text) {
    String symbol = canonical(text);
    Unit unit = TABLE.get(ALSO.getOrDefault(symbol, symbol));
    if (unit == null && symbol.startsWith("u")) {
      unit = TABLE.get("µ" + symbol.substring(1));
    }
    return Optional.ofNullable(unit);
  }

  /** All printed symbols. */
  public static List<String> symbols() {
    return List.copyOf(TABLE.keySet());
  }

  private static String canonical(String text) {
    return text.replace('\u2126', 'Ω')
        .replace("ohm", "Ω")
        .replace('\u03bc', 'µ')
        .replace('2', '²')
        .replace('·', ' ')
        .replace('\u00a0', ' ')
        .strip();
  }

  private static void prefixed(String symbol, Dimension dimension, String... prefixes) {
    for (String prefix : prefixes) {
      add(prefix + symbol, dimension, PREFIXES.getOrDefault(prefix, prefix));
    }
  }

  private static void add(String symbol, Dimension dimension, String factor) {
    add(symbol, dimension, Rational.of(factor), Rational.ZERO);
  }

  private static void add(String symbol, Dimension dimension, Rational factor, Rational offset) {
    TABLE.put(symbol, new Unit(symbol, dimension, factor, offset));
  }
}
