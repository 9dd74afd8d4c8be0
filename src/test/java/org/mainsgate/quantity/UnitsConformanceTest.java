package org.mainsgate.quantity;

import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tech.units.indriya.unit.Units.AMPERE;
import static tech.units.indriya.unit.Units.CELSIUS;
import static tech.units.indriya.unit.Units.COULOMB;
import static tech.units.indriya.unit.Units.DAY;
import static tech.units.indriya.unit.Units.FARAD;
import static tech.units.indriya.unit.Units.GRAM;
import static tech.units.indriya.unit.Units.HENRY;
import static tech.units.indriya.unit.Units.HERTZ;
import static tech.units.indriya.unit.Units.HOUR;
import static tech.units.indriya.unit.Units.JOULE;
import static tech.units.indriya.unit.Units.KELVIN;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.MINUTE;
import static tech.units.indriya.unit.Units.NEWTON;
import static tech.units.indriya.unit.Units.OHM;
import static tech.units.indriya.unit.Units.PERCENT;
import static tech.units.indriya.unit.Units.SECOND;
import static tech.units.indriya.unit.Units.SIEMENS;
import static tech.units.indriya.unit.Units.SQUARE_METRE;
import static tech.units.indriya.unit.Units.VOLT;
import static tech.units.indriya.unit.Units.WATT;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import javax.measure.IncommensurableException;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import org.junit.jupiter.api.Test;
import systems.uom.ucum.format.UCUMFormat;
import tech.units.indriya.function.RationalNumber;

/**
 * Our table of units against two independent ones: the reference implementation of JSR 385
 * (Indriya) and the Unified Code for Units of Measure, for every pair that each has.
 */
class UnitsConformanceTest {

  private static final Map<String, Unit<?>> INDRIYA =
      Map.ofEntries(
          entry("Ω", OHM),
          entry("µΩ", OHM.prefix(MetricPrefix.MICRO)),
          entry("mΩ", OHM.prefix(MetricPrefix.MILLI)),
          entry("kΩ", OHM.prefix(MetricPrefix.KILO)),
          entry("MΩ", OHM.prefix(MetricPrefix.MEGA)),
          entry("GΩ", OHM.prefix(MetricPrefix.GIGA)),
          entry("V", VOLT),
          entry("mV", VOLT.prefix(MetricPrefix.MILLI)),
          entry("µV", VOLT.prefix(MetricPrefix.MICRO)),
          entry("kV", VOLT.prefix(MetricPrefix.KILO)),
          entry("A", AMPERE),
          entry("mA", AMPERE.prefix(MetricPrefix.MILLI)),
          entry("µA", AMPERE.prefix(MetricPrefix.MICRO)),
          entry("nA", AMPERE.prefix(MetricPrefix.NANO)),
          entry("m", METRE),
          entry("mm", METRE.prefix(MetricPrefix.MILLI)),
          entry("cm", METRE.prefix(MetricPrefix.CENTI)),
          entry("km", METRE.prefix(MetricPrefix.KILO)),
          entry("m²", SQUARE_METRE),
          entry("mm²", METRE.prefix(MetricPrefix.MILLI).pow(2)),
          entry("cm²", METRE.prefix(MetricPrefix.CENTI).pow(2)),
          entry("Hz", HERTZ),
          entry("kHz", HERTZ.prefix(MetricPrefix.KILO)),
          entry("MHz", HERTZ.prefix(MetricPrefix.MEGA)),
          entry("F", FARAD),
          entry("mF", FARAD.prefix(MetricPrefix.MILLI)),
          entry("µF", FARAD.prefix(MetricPrefix.MICRO)),
          entry("nF", FARAD.prefix(MetricPrefix.NANO)),
          entry("pF", FARAD.prefix(MetricPrefix.PICO)),
          entry("W", WATT),
          entry("mW", WATT.prefix(MetricPrefix.MILLI)),
          entry("kW", WATT.prefix(MetricPrefix.KILO)),
          entry("VA", VOLT.multiply(AMPERE)),
          entry("kVA", VOLT.prefix(MetricPrefix.KILO).multiply(AMPERE)),
          entry("mVA", VOLT.prefix(MetricPrefix.MILLI).multiply(AMPERE)),
          entry("N", NEWTON),
          entry("N m", NEWTON.multiply(METRE)),
          entry("J", JOULE),
          entry("mJ", JOULE.prefix(MetricPrefix.MILLI)),
          entry("kJ", JOULE.prefix(MetricPrefix.KILO)),
          entry("kg", KILOGRAM),
          entry("g", GRAM),
          entry("s", SECOND),
          entry("ms", SECOND.prefix(MetricPrefix.MILLI)),
          entry("min", MINUTE),
          entry("h", HOUR),
          entry("d", DAY),
          entry("K", KELVIN),
          entry("°C", CELSIUS),
          entry("1/K", KELVIN.inverse()),
          entry("C", COULOMB),
          entry("mC", COULOMB.prefix(MetricPrefix.MILLI)),
          entry("µC", COULOMB.prefix(MetricPrefix.MICRO)),
          entry("H", HENRY),
          entry("mH", HENRY.prefix(MetricPrefix.MILLI)),
          entry("µH", HENRY.prefix(MetricPrefix.MICRO)),
          entry("%", PERCENT),
          entry("S", SIEMENS),
          entry("MS/m", SIEMENS.prefix(MetricPrefix.MEGA).divide(METRE)),
          entry("Ω/m", OHM.divide(METRE)),
          entry("mΩ/m", OHM.prefix(MetricPrefix.MILLI).divide(METRE)),
          entry("Ω/km", OHM.divide(METRE.prefix(MetricPrefix.KILO))),
          entry("Ω mm²/m", OHM.multiply(METRE.prefix(MetricPrefix.MILLI).pow(2)).divide(METRE)),
          entry(
              "mA/µF", AMPERE.prefix(MetricPrefix.MILLI).divide(FARAD.prefix(MetricPrefix.MICRO))),
          entry("A²s", AMPERE.pow(2).multiply(SECOND)));

  private static final Map<String, String> UCUM_CODES =
      Map.ofEntries(
          entry("Ω", "Ohm"),
          entry("µΩ", "uOhm"),
          entry("mΩ", "mOhm"),
          entry("kΩ", "kOhm"),
          entry("MΩ", "MOhm"),
          entry("GΩ", "GOhm"),
          entry("V", "V"),
          entry("mV", "mV"),
          entry("µV", "uV"),
          entry("kV", "kV"),
          entry("A", "A"),
          entry("mA", "mA"),
          entry("µA", "uA"),
          entry("nA", "nA"),
          entry("m", "m"),
          entry("mm", "mm"),
          entry("cm", "cm"),
          entry("km", "km"),
          entry("ft", "[ft_i]"),
          entry("in", "[in_i]"),
          entry("m²", "m2"),
          entry("mm²", "mm2"),
          entry("cm²", "cm2"),
          entry("Hz", "Hz"),
          entry("kHz", "kHz"),
          entry("MHz", "MHz"),
          entry("F", "F"),
          entry("mF", "mF"),
          entry("µF", "uF"),
          entry("nF", "nF"),
          entry("pF", "pF"),
          entry("W", "W"),
          entry("mW", "mW"),
          entry("kW", "kW"),
          entry("VA", "V.A"),
          entry("kVA", "kV.A"),
          entry("mVA", "mV.A"),
          entry("N", "N"),
          entry("lbf", "[lbf_av]"),
          entry("N m", "N.m"),
          entry("J", "J"),
          entry("mJ", "mJ"),
          entry("kJ", "kJ"),
          entry("kg", "kg"),
          entry("g", "g"),
          entry("lb", "[lb_av]"),
          entry("s", "s"),
          entry("ms", "ms"),
          entry("min", "min"),
          entry("h", "h"),
          entry("d", "d"),
          entry("mA/µF", "mA/uF"),
          entry("K", "K"),
          entry("°C", "Cel"),
          entry("1/K", "K-1"),
          entry("C", "C"),
          entry("mC", "mC"),
          entry("µC", "uC"),
          entry("H", "H"),
          entry("mH", "mH"),
          entry("µH", "uH"),
          entry("%", "%"),
          entry("S", "S"),
          entry("MS/m", "MS/m"),
          entry("Ω/m", "Ohm/m"),
          entry("mΩ/m", "mOhm/m"),
          entry("Ω/km", "Ohm/km"),
          entry("Ω/kft", "Ohm/(1000.[ft_i])"),
          entry("Ω mm²/m", "Ohm.mm2/m"),
          entry("A²s", "A2.s"));

  @Test
  void everyPairAgreesWithTheReferenceImplementationOfJsr385() throws IncommensurableException {
    Set<String> missing = new HashSet<>(Units.symbols());
    missing.removeAll(INDRIYA.keySet());
    assertEquals(
        Set.of("ft", "in", "lb", "lbf", "Ω/kft"), missing, "units of SI that were left out");
    assertPairsAgree(INDRIYA);
  }

  @Test
  void everyPairAgreesWithUcum() throws IncommensurableException {
    assertEquals(Set.copyOf(Units.symbols()), UCUM_CODES.keySet());
    UCUMFormat format = UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE);
    Map<String, Unit<?>> parsed = new HashMap<>();
    UCUM_CODES.forEach((symbol, code) -> parsed.put(symbol, format.parse(code)));
    assertPairsAgree(parsed);
  }

  private static void assertPairsAgree(Map<String, Unit<?>> judge) throws IncommensurableException {
    for (Map.Entry<String, Unit<?>> from : judge.entrySet()) {
      for (Map.Entry<String, Unit<?>> to : judge.entrySet()) {
        assertPairAgrees(from.getKey(), from.getValue(), to.getKey(), to.getValue());
      }
    }
  }

  private static void assertPairAgrees(String from, Unit<?> theirFrom, String to, Unit<?> theirTo)
      throws IncommensurableException {
    org.mainsgate.quantity.Unit ourFrom = Units.find(from).orElseThrow();
    org.mainsgate.quantity.Unit ourTo = Units.find(to).orElseThrow();
    String pair = from + " in " + to;
    assertEquals(
        theirFrom.isCompatible(theirTo), ourFrom.dimension().equals(ourTo.dimension()), pair);
    if (theirFrom.isCompatible(theirTo)) {
      Rational ours = ourTo.fromSi(ourFrom.toSi(Rational.of("12.5")));
      Rational theirs =
          exact(theirFrom.getConverterToAny(theirTo).convert((Number) new BigDecimal("12.5")));
      Rational error = ours.minus(theirs).abs().dividedBy(ours.abs());
      // Their repeating decimals end at 34 digits.
      assertTrue(
          error.compareTo(Rational.of(10).power(-30)) <= 0,
          () -> pair + ": " + ours + ", not " + theirs);
    }
  }

  private static Rational exact(Number number) {
    if (number instanceof RationalNumber fraction) {
      return whole(fraction.getDividend()).dividedBy(whole(fraction.getDivisor()));
    }
    return Rational.of(new BigDecimal(number.toString()));
  }

  private static Rational whole(BigInteger number) {
    return Rational.of(new BigDecimal(number));
  }
}
