package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitsTest {

  @ParameterizedTest
  @CsvSource({
    "ohm, Ω",
    "\u2126, Ω",
    "\u03a9, Ω",
    "kohm, kΩ",
    "Mohm, MΩ",
    "mohm, mΩ",
    "uohm, µΩ",
    "\u03bcΩ, µΩ",
    "\u00b5\u2126, µΩ",
    "uF, µF",
    "\u03bcF, µF",
    "uA, µA",
    "mm2, mm²",
    "cm2, cm²",
    "m2, m²",
    "degC, °C",
    "Nm, N m",
    "N·m, N m",
    "N m, N m",
    "A2s, A²s",
    "A² s, A²s",
    "A2·s, A²s",
    "Ω·mm²/m, Ω mm²/m",
    "ohm mm2/m, Ω mm²/m",
    "ohm/km, Ω/km",
    "mohm/m, mΩ/m",
    "' V ', V"
  })
  void everySpellingFindsTheUnit(String text, String symbol) {
    assertEquals(Optional.of(symbol), Units.find(text).map(Unit::symbol));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", "ohmz", "v", "a", "mhz", "nm", "NM", "MF", "kV A", "u", "µ", "C°", "AWG", "2", "Ω Ω",
        "ΩV"
      })
  void anyOtherTextIsNoUnit(String text) {
    assertEquals(Optional.empty(), Units.find(text));
  }

  @Test
  void everyPrintedSymbolIsReadBackAndUsesOneCodePointForOhmAndMicro() {
    List<String> symbols = Units.symbols();
    assertEquals(symbols.size(), new HashSet<>(symbols).size());
    for (String symbol : symbols) {
      assertEquals(symbol, Units.find(symbol).orElseThrow().symbol());
      assertTrue(
          symbol.chars().noneMatch(c -> c == 0x2126 || c == 0x03bc || c == '2' || c == '·'),
          symbol);
    }
  }

  @Test
  void onlyDegreesCelsiusStartElsewhereThanZero() {
    List<String> offset =
        Units.symbols().stream().filter(symbol -> unit(symbol).offset().signum() != 0).toList();
    assertEquals(List.of("°C"), offset);
    assertEquals(Rational.of("299.15"), unit("°C").toSi(Rational.of(26)));
    assertEquals(Rational.of(26), unit("°C").fromSi(Rational.of("299.15")));
  }

  @Test
  void aUnitHasASizeAndASymbol() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Unit("x", Dimension.NONE, Rational.ZERO, Rational.ZERO));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Unit(" ", Dimension.NONE, Rational.ONE, Rational.ZERO));
  }

  @Test
  void dimensionsFollowFromTheLawsOfOhmAndJoule() {
    assertEquals(Dimension.VOLTAGE, Dimension.CURRENT.times(Dimension.RESISTANCE));
    assertEquals(
        Dimension.CURRENT,
        Dimension.FREQUENCY.times(Dimension.CAPACITANCE).times(Dimension.VOLTAGE));
    assertEquals(
        Dimension.RESISTANCE, Dimension.RESISTIVITY.times(Dimension.LENGTH).per(Dimension.AREA));
    assertEquals(
        Optional.of(Dimension.VOLTAGE), Dimension.POWER.times(Dimension.RESISTANCE).root());
    assertEquals(Optional.empty(), Dimension.VOLTAGE.root());
    assertEquals(
        Optional.of(Dimension.FREQUENCY),
        Dimension.NONE.per(Dimension.INDUCTANCE.times(Dimension.CAPACITANCE)).root());
  }

  @Test
  void everyExponentIsCountedByItself() {
    Dimension some = new Dimension(2, 4, 6, 8, 10);
    Dimension other = new Dimension(10, 20, 30, 40, 50);
    assertEquals(new Dimension(12, 24, 36, 48, 60), some.times(other));
    assertEquals(new Dimension(-8, -16, -24, -32, -40), some.per(other));
    assertEquals(Optional.of(new Dimension(1, 2, 3, 4, 5)), some.root());
    assertEquals(Optional.empty(), new Dimension(2, 4, 6, 8, -1).root());
  }

  @Test
  void dimensionsAreNamedOrSpeltOut() {
    assertEquals("resistance", Dimension.RESISTANCE.describe());
    assertEquals("voltage", Dimension.VOLTAGE.describe());
    assertEquals("resistance per length", Dimension.RESISTANCE_PER_LENGTH.describe());
    assertEquals("plain number", Dimension.NONE.describe());
    assertEquals("m^3·s^-1", new Dimension(3, 0, -1, 0, 0).describe());
    assertEquals("kg·A·K", new Dimension(0, 1, 0, 1, 1).describe());
  }

  @Test
  void everyUnitMeasuresSomethingThatHasAName() {
    for (String symbol : Units.symbols()) {
      assertTrue(!unit(symbol).dimension().describe().contains("^"), symbol);
    }
  }

  private static Unit unit(String symbol) {
    return Units.find(symbol).orElseThrow();
  }
}
