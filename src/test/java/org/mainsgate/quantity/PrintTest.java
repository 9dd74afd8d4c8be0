package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.RoundingMode;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PrintTest {

  private static final Unit OHM = Units.find("Ω").orElseThrow();

  @ParameterizedTest
  @CsvSource({
    "0.0974, Ω, 3, HALF_EVEN, 0.0974",
    "0.0974, Ω, 2, FLOOR, 0.097",
    "0.0974, Ω, 2, CEILING, 0.098",
    "-0.0974, Ω, 2, FLOOR, -0.098",
    "2200000, MΩ, 3, HALF_EVEN, 2.2",
    "2200000, Ω, 1, HALF_EVEN, 2000000",
    "0.000001, Ω, 3, HALF_EVEN, 0.000001",
    "0, Ω, 3, HALF_EVEN, 0",
    "100, Ω, 3, HALF_EVEN, 100",
    "299.15, °C, 3, HALF_EVEN, 26",
    "0.13, mΩ, 3, HALF_EVEN, 130"
  })
  void numbersAreRoundedAsAskedAndNeverHaveAnExponent(
      String si, String unit, int significant, RoundingMode rounding, String printed) {
    assertEquals(
        printed,
        Print.value(Rational.of(si), Units.find(unit).orElseThrow(), significant, rounding));
  }

  @ParameterizedTest
  @CsvSource({
    "0.0585, 0.0585",
    "216.2, 216.2",
    "123456, 123456",
    "1234567, 1234570",
    "0.1234567, 0.123457",
    "0, 0"
  })
  void upToSixDigitsArePrintedInFull(String si, String printed) {
    assertEquals(printed, Print.value(Rational.of(si), OHM));
  }

  @ParameterizedTest
  @CsvSource({
    "0.0974, 0.1626, 0.097 to 0.163",
    "0.0402, 0.0402, 0.0402",
    "2.9, 3.1, 2.9 to 3.1",
    "2.95, 3.1, 2.95 to 3.1",
    "225.6, 254.4, 225 to 255",
    "-0.0402, 0.0202, -0.0402 to 0.0202",
    "-0.01234, 3.1, -0.0124 to 3.1",
    "0.0512, 200.1, 0.0512 to 201",
    "0, 0.3333, 0 to 0.334",
    "-0.3333, 0, -0.334 to 0",
    "99.99, 100.01, 99 to 101",
    "1234567, 2345678, 1230000 to 2350000"
  })
  void twoEndsAreRoundedOutwardToACommonPlaceUnlessOneWouldBeLost(
      String lo, String hi, String printed) {
    ExactInterval interval = ExactInterval.of(Rational.of(lo), Rational.of(hi));
    assertEquals(printed, Print.interval(interval, OHM));
    assertEquals(printed + " Ω", Print.quantity(interval, OHM));
  }

  @Test
  void aMissingEndIsSaidInWords() {
    ExactInterval atLeast = ExactInterval.atLeast(Rational.of("0.1978"));
    ExactInterval atMost = ExactInterval.atMost(Rational.of("0.3001"));
    assertEquals("at least 0.197", Print.interval(atLeast, OHM));
    assertEquals("at least 0.197 Ω", Print.quantity(atLeast, OHM));
    assertEquals("at most 0.301", Print.interval(atMost, OHM));
    assertEquals("at most 0.301 Ω", Print.quantity(atMost, OHM));
    assertEquals("unknown", Print.interval(ExactInterval.UNBOUNDED, OHM));
    assertEquals("unknown", Print.quantity(ExactInterval.UNBOUNDED, OHM));
  }

  @Test
  void aFractionWithoutEndIsRoundedToSixDigits() {
    assertEquals("0.333333", Print.interval(ExactInterval.point(Rational.of(1, 3)), OHM));
  }

  @Test
  void numbersAreTheSameInEveryCountry() {
    Locale before = Locale.getDefault();
    try {
      for (String tag : new String[] {"de-DE", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva", "tr-TR"}) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertEquals(
            "0.097 to 0.163 Ω",
            Print.quantity(ExactInterval.of(Rational.of("0.0974"), Rational.of("0.1626")), OHM));
        assertEquals("0.13", Rational.of("0.13").toString());
        assertEquals(
            new Refusal(
                0,
                "`INF`",
                "a finite number; where the meter shows over-range, `OL` or `> 200 MΩ`"),
            Typed.parse("INF"));
      }
    } finally {
      Locale.setDefault(before);
    }
  }
}
