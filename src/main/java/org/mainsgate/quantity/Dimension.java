package org.mainsgate.quantity;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.stream.IntStream;

/**
 * The kind of a quantity as exponents of five SI base units: {@code m^length · kg^mass · s^time ·
 * A^current · K^temperature}.
 *
 * <p>Torque and energy have one dimension; which units a quantity takes is a finer question than
 * this.
 */
public record Dimension(int length, int mass, int time, int current, int temperature) {

  public static final Dimension NONE = new Dimension(0, 0, 0, 0, 0);
  public static final Dimension LENGTH = new Dimension(1, 0, 0, 0, 0);
  public static final Dimension MASS = new Dimension(0, 1, 0, 0, 0);
  public static final Dimension TIME = new Dimension(0, 0, 1, 0, 0);
  public static final Dimension CURRENT = new Dimension(0, 0, 0, 1, 0);
  public static final Dimension TEMPERATURE = new Dimension(0, 0, 0, 0, 1);
  public static final Dimension AREA = LENGTH.times(LENGTH);
  public static final Dimension FREQUENCY = NONE.per(TIME);
  public static final Dimension FORCE = MASS.times(LENGTH).per(TIME).per(TIME);
  public static final Dimension ENERGY = FORCE.times(LENGTH);
  public static final Dimension POWER = ENERGY.per(TIME);
  public static final Dimension CHARGE = CURRENT.times(TIME);
  public static final Dimension VOLTAGE = POWER.per(CURRENT);
  public static final Dimension RESISTANCE = VOLTAGE.per(CURRENT);
  public static final Dimension CONDUCTANCE = NONE.per(RESISTANCE);
  public static final Dimension CAPACITANCE = CHARGE.per(VOLTAGE);
  public static final Dimension INDUCTANCE = RESISTANCE.times(TIME);
  public static final Dimension RESISTANCE_PER_LENGTH = RESISTANCE.per(LENGTH);
  public static final Dimension RESISTIVITY = RESISTANCE.times(LENGTH);
  public static final Dimension CONDUCTIVITY = CONDUCTANCE.per(LENGTH);
  public static final Dimension PER_TEMPERATURE = NONE.per(TEMPERATURE);
  public static final Dimension CURRENT_PER_CAPACITANCE = CURRENT.per(CAPACITANCE);
  public static final Dimension CURRENT_SQUARED_TIME = CURRENT.times(CHARGE);

  private static final List<String> BASE_UNITS = List.of("m", "kg", "s", "A", "K");

  private static final Map<Dimension, String> NAMES =
      Map.ofEntries(
          Map.entry(NONE, "plain number"),
          Map.entry(LENGTH, "length"),
          Map.entry(MASS, "mass"),
          Map.entry(TIME, "time"),
          Map.entry(CURRENT, "current"),
          Map.entry(TEMPERATURE, "temperature"),
          Map.entry(AREA, "area"),
          Map.entry(FREQUENCY, "frequency"),
          Map.entry(FORCE, "force"),
          Map.entry(ENERGY, "energy or torque"),
          Map.entry(POWER, "power"),
          Map.entry(CHARGE, "charge"),
          Map.entry(VOLTAGE, "voltage"),
          Map.entry(RESISTANCE, "resistance"),
          Map.entry(CONDUCTANCE, "conductance"),
          Map.entry(CAPACITANCE, "capacitance"),
          Map.entry(INDUCTANCE, "inductance"),
          Map.entry(RESISTANCE_PER_LENGTH, "resistance per length"),
          Map.entry(RESISTIVITY, "resistivity"),
          Map.entry(CONDUCTIVITY, "conductivity"),
          Map.entry(PER_TEMPERATURE, "change per kelvin"),
          Map.entry(CURRENT_PER_CAPACITANCE, "current per capacitance"),
          Map.entry(CURRENT_SQUARED_TIME, "current squared times time"));

  public Dimension times(Dimension other) {
    return new Dimension(
        length + other.length,
        mass + other.mass,
        time + other.time,
        current + other.current,
        temperature + other.temperature);
  }

  public Dimension per(Dimension other) {
    return new Dimension(
        length - other.length,
        mass - other.mass,
        time - other.time,
        current - other.current,
        temperature - other.temperature);
  }

  /** The dimension whose square this is; empty if an exponent is odd. */
  public Optional<Dimension> root() {
    boolean square = exponents().allMatch(exponent -> exponent % 2 == 0);
    return square
        ? Optional.of(new Dimension(length / 2, mass / 2, time / 2, current / 2, temperature / 2))
        : Optional.empty();
  }

  /** A name such as {@code resistance per length}, else base units such as {@code m^2·s^-1}. */
  public String describe() {
    return NAMES.getOrDefault(this, inBaseUnits());
  }

  private String inBaseUnits() {
    StringJoiner product = new StringJoiner("·");
    int[] powers = exponents().toArray();
    for (int i = 0; i < powers.length; i++) {
      if (powers[i] != 0) {
        product.add(powers[i] == 1 ? BASE_UNITS.get(i) : BASE_UNITS.get(i) + "^" + powers[i]);
      }
    }
    return product.toString();
  }

  private IntStream exponents() {
    return IntStream.of(length, mass, time, current, temperature);
  }
}
