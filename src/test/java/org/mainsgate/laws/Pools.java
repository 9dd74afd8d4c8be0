package org.mainsgate.laws;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Property;

/**
 * Values to try, by property: the one of a sound instrument, and others around the rows and limits
 * of the rules. A property without values of its own gets some of each.
 */
final class Pools {
  private static final Map<String, String> SOUND =
      Map.ofEntries(
          Map.entry("class", "I"),
          Map.entry("shown_by", "mark"),
          Map.entry("supply_arrangement", "two_winding_transformer"),
          Map.entry("basis", "traced"),
          Map.entry("chassis_tie", "none"),
          Map.entry("earth_fixing", "own_locked"),
          Map.entry("nothing_connected", "yes"),
          Map.entry("unplugged", "yes"),
          Map.entry("attachment", "fixed"),
          Map.entry("cores", "three"),
          Map.entry("sheath", "sound"),
          Map.entry("plug", "type_g"),
          Map.entry("plug_pattern", "type_g"),
          Map.entry("plug_state", "sound"),
          Map.entry("connector", "c13"),
          Map.entry("strands", "all_held"),
          Map.entry("when_moved", "steady"),
          Map.entry("part_path", "bonded"),
          Map.entry("measured_from", "plug_pin"),
          Map.entry("core_area", "1.0"),
          Map.entry("lead_length", "3"),
          Map.entry("rated_voltage", "240"),
          Map.entry("rated_power", "48"),
          Map.entry("plug_fuse", "3"),
          Map.entry("test_current", "0.2"),
          Map.entry("earth_resistance", "0.08"),
          Map.entry("lead_earth_resistance", "0.08"));

  /** Numbers that lie in every table, in the property's first unit. */
  private static final Map<String, List<String>> NUMBERS =
      Map.of(
          "earth_resistance",
              List.of("0", "0.05", "0.08", "0.12", "0.13", "0.1585", "0.2", "0.3", "0.55"),
          "lead_earth_resistance", List.of("0", "0.05", "0.1", "0.1585", "0.3", "0.31", "1"),
          "core_area", List.of("0.5", "0.75", "1.0", "1.25", "1.5", "2.5"),
          "lead_length", List.of("0.5", "2", "2.1", "3", "5", "6", "12.5", "20"),
          "rated_voltage", List.of("110", "220", "230", "240"),
          "rated_power", List.of("20", "48", "720", "1440", "2400", "3000"),
          "plug_fuse", List.of("1", "2", "3", "5", "6", "10", "13"),
          "test_current", List.of("0.001", "0.019", "0.02", "0.1", "0.2", "10", "25"));

  /** Numbers that nobody should meet, and that must not be judged wrongly either. */
  private static final Map<String, List<String>> ODD =
      Map.of(
          "core_area", List.of("0", "0.3", "4"),
          "lead_length", List.of("0", "1100"),
          "rated_voltage", List.of("0"));

  private static final List<String> ANY = List.of("1", "50", "230");

  private Pools() {}

  static String soundName(Property.Observation property) {
    return SOUND.getOrDefault(property.name(), property.values().values().get(0));
  }

  static String soundNumber(Property.Quantity property) {
    return SOUND.getOrDefault(property.name(), "50");
  }

  static String number(Property.Quantity property, Random random) {
    return of(NUMBERS.getOrDefault(property.name(), ANY), random);
  }

  static String oddNumber(Property.Quantity property, Random random) {
    return of(ODD.getOrDefault(property.name(), ANY), random);
  }

  /** A named value that has its row in every table. */
  static String name(Property.Observation property, Random random) {
    List<String> values =
        property.values().values().stream().filter(value -> !value.equals("other")).toList();
    return of(values, random);
  }

  static Rational si(Property.Quantity property, String number) {
    return property.unit().toSi(Rational.of(number));
  }

  static <T> T of(List<T> values, Random random) {
    return values.get(random.nextInt(values.size()));
  }
}
