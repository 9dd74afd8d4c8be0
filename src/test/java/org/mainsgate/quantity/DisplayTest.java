package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DisplayTest {

  private static final MeterRange OHMS = range("20", "0.01", "2 % + 3 digits", "Ω");
  private static final MeterRange MEGOHMS = range("200000000", "100000", "5 % + 3 digits", "MΩ");
  private static final Nulling SHORT = Nulling.shortReads(Rational.of("0.28"));

  @Test
  void theExampleOfThePackageHolds() {
    ExactInterval trueValue = new Display(OHMS, Nulling.YES).read(typed("0.13 Ω"));
    assertEquals(ExactInterval.of(Rational.of("0.0974"), Rational.of("0.1626")), trueValue);
    assertEquals(Truth.UNDECIDED, trueValue.atMost(ExactInterval.point(Rational.of("0.1585"))));
    assertEquals("0.097 to 0.163 Ω", Print.quantity(trueValue, OHMS.unit()));
  }

  /**
   * 100.0 V ±(1 % + 2 digits of 0.1 V) is 98.8 V to 101.2 V: a meter maker's own example of reading
   * an accuracy (from memory).
   */
  @Test
  void aVoltmeterReadsAsItsMakerSays() {
    MeterRange volts = range("600", "0.1", "1 % + 2 digits", "V");
    assertEquals(
        "[98.8, 101.2]", new Display(volts, Nulling.YES).read(typed("100.0 V")).toString());
  }

  @ParameterizedTest
  @CsvSource({
    // h(0.50) = 0.04, h(0.28) = 0.0356, h(0.40) = 0.038, h(0.60) = 0.042, h(20) = 0.43
    "0.50 Ω,         '[0.46, 0.54]',   '[…, 0.54]',   '[0.1444, 0.2956]'",
    "0.5 ± 0.1 Ω,    '[0.4, 0.6]',     '[…, 0.6]',    '[0.0844, 0.3556]'",
    "0.40 to 0.60 Ω, '[0.362, 0.642]', '[…, 0.642]',  '[0.0464, 0.3976]'",
    "> 0.50 Ω,       '[0.46, …]',      '[…, …]',      '[0.1444, …]'",
    "< 0.50 Ω,       '[…, 0.54]',      '[…, 0.54]',   '[…, 0.2956]'",
    "OL,             '[19.57, …]',     '[…, …]',      '[19.2544, …]'"
  })
  void everyFormIsWidenedAndFreedOfTheLeads(
      String text, String nulled, String notNulled, String shortReads) {
    Typed typed = typed(text);
    assertEquals(nulled, new Display(OHMS, Nulling.YES).read(typed).toString());
    assertEquals(notNulled, new Display(OHMS, Nulling.NO).read(typed).toString());
    assertEquals(shortReads, new Display(OHMS, SHORT).read(typed).toString());
  }

  @Test
  void overRangeOfAnInsulationTesterStartsBelowItsLastDisplay() {
    ExactInterval expected = ExactInterval.atLeast(Rational.of("189700000"));
    assertEquals(expected, new Display(MEGOHMS, Nulling.YES).read(typed("> 200 MΩ")));
    assertEquals(expected, new Display(MEGOHMS, Nulling.YES).read(typed("OL")));
  }

  @Test
  void aSmallNegativeReadingOfANulledMeterMayBeAPositiveValue() {
    assertEquals(
        "[-0.0402, 0.0202]", new Display(OHMS, Nulling.YES).read(typed("-0.01 Ω")).toString());
  }

  @Test
  void aDisplayTriedOutIsReadLikeOneThatWasTyped() {
    for (Nulling nulling : List.of(Nulling.YES, Nulling.NO, SHORT)) {
      Display display = new Display(OHMS, nulling);
      assertEquals(display.read(typed("0.12 Ω")), display.at(Rational.of("0.12")));
      assertEquals(Rational.of("0.01"), display.step());
    }
  }

  @Test
  void aThermometerErrsFromItsOwnZero() {
    MeterRange celsius = range("373.15", "0.1", "1 % + 2 digits", "°C");
    assertTrue(celsius.canShow(Rational.of("299.15")));
    assertFalse(celsius.canShow(Rational.of("299.18")));
    assertEquals(Rational.of("0.46"), celsius.halfWidth(Rational.of("299.15")));
  }

  @Test
  void aRangeShowsWholeStepsUpToItsEndOnBothSidesOfZero() {
    assertTrue(OHMS.canShow(Rational.of("20")));
    assertTrue(OHMS.canShow(Rational.of("-20")));
    assertTrue(OHMS.canShow(Rational.ZERO));
    assertFalse(OHMS.canShow(Rational.of("20.01")));
    assertFalse(OHMS.canShow(Rational.of("-20.01")));
    assertFalse(OHMS.canShow(Rational.of("0.135")));
  }

  @Test
  void theCoarsestRangeThatCanShowANumberIsChosen() {
    MeterRange fine = range("2", "0.001", "1 %", "Ω");
    MeterRange coarse = range("200", "0.1", "1 %", "Ω");
    List<MeterRange> ranges = List.of(OHMS, coarse, fine);
    assertEquals(Optional.of(coarse), MeterRange.choose(ranges, Rational.of("0.1")));
    assertEquals(Optional.of(OHMS), MeterRange.choose(ranges, Rational.of("0.13")));
    assertEquals(Optional.of(fine), MeterRange.choose(ranges, Rational.of("0.135")));
    assertEquals(Optional.of(coarse), MeterRange.choose(ranges, Rational.of("150")));
    assertEquals(Optional.empty(), MeterRange.choose(ranges, Rational.of("0.1355")));
    assertEquals(Optional.empty(), MeterRange.choose(ranges, Rational.of("201")));
    assertEquals(Optional.empty(), MeterRange.choose(List.of(), Rational.ONE));
  }

  @Test
  void aRangeHasAStepAnEndAndOneDimension() {
    assertThrows(IllegalArgumentException.class, () -> range("20", "0", "1 %", "Ω"));
    assertThrows(IllegalArgumentException.class, () -> range("0", "0.1", "1 %", "Ω"));
    assertThrows(IllegalArgumentException.class, () -> range("20", "0.1", "1 % + 0.3 V", "Ω"));
    assertEquals(
        Rational.of("0.5"), range("20", "0.1", "1 % + 300 mΩ", "Ω").halfWidth(Rational.of(20)));
  }

  private static MeterRange range(String to, String digit, String accuracy, String unit) {
    Accuracy read = assertInstanceOf(Accuracy.class, Accuracy.parse(accuracy));
    return new MeterRange(
        Rational.of(to), Rational.of(digit), read, Units.find(unit).orElseThrow());
  }

  private static Typed typed(String text) {
    return assertInstanceOf(Typed.class, Typed.parse(text), text);
  }
}
