package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedTest {

  @ParameterizedTest
  @CsvSource({
    "0.08 Ω, STATED, '[0.08, 0.08]', 0.08, Ω",
    "80mΩ, STATED, '[0.08, 0.08]', 0.08, mΩ",
    "'  0.08   ohm  ', STATED, '[0.08, 0.08]', 0.08, Ω",
    "0.08\tΩ, STATED, '[0.08, 0.08]', 0.08, Ω",
    "0.08\u00a0Ω, STATED, '[0.08, 0.08]', 0.08, Ω",
    "2.2 MΩ, STATED, '[2200000, 2200000]', 2200000, MΩ",
    "1 uF, STATED, '[0.000001, 0.000001]', 0.000001, µF",
    "0.75 mm2, STATED, '[0.00000075, 0.00000075]', 0.00000075, mm²",
    "-0.01 Ω, STATED, '[-0.01, -0.01]', -0.01, Ω",
    "\u22120.01 Ω, STATED, '[-0.01, -0.01]', -0.01, Ω",
    "26 °C, STATED, '[299.15, 299.15]', 299.15, °C",
    "0.5 N m, STATED, '[0.5, 0.5]', 0.5, N m",
    "0.00393 1/K, STATED, '[0.00393, 0.00393]', 0.00393, 1/K",
    "40 %, STATED, '[0.4, 0.4]', 0.4, %",
    "0.13 ± 0.02 Ω, TOLERANCE, '[0.11, 0.15]', 0.13, Ω",
    "0.13 Ω ± 0.02 Ω, TOLERANCE, '[0.11, 0.15]', 0.13, Ω",
    "130 mΩ ± 0.02 Ω, TOLERANCE, '[0.11, 0.15]', 0.13, mΩ",
    "130±20 mΩ, TOLERANCE, '[0.11, 0.15]', 0.13, mΩ",
    "0.13 +- 0.02 Ω, TOLERANCE, '[0.11, 0.15]', 0.13, Ω",
    "0.13 Ω +/- 0.02 Ω, TOLERANCE, '[0.11, 0.15]', 0.13, Ω",
    "26 ± 2 °C, TOLERANCE, '[297.15, 301.15]', 299.15, °C",
    "26 °C ± 2 K, TOLERANCE, '[297.15, 301.15]', 299.15, °C",
    "-10 V ±10 %, TOLERANCE, '[-11, -9]', -10, V",
    "230 V +10/-0 %, TOLERANCE, '[230, 253]', 230, V",
    "> 200 MΩ, ABOVE, '[200000000, …]', 200000000, MΩ",
    ">200MΩ, ABOVE, '[200000000, …]', 200000000, MΩ",
    "< 0.01 Ω, BELOW, '[…, 0.01]', 0.01, Ω",
    "2.9 to 3.1 m, BETWEEN, '[2.9, 3.1]', , m",
    "-5 to 40 °C, BETWEEN, '[268.15, 313.15]', , °C",
    "3 to 3 m, BETWEEN, '[3, 3]', , m"
  })
  void everyFormIsUnderstoodExactly(
      String text, Form form, String bounds, String nominal, String unit) {
    Typed typed = typed(text);
    assertEquals(form, typed.form());
    assertEquals(bounds, typed.bounds().toString());
    assertEquals(Optional.ofNullable(nominal), typed.nominal().map(Rational::toString));
    assertEquals(Optional.of(unit), typed.unit().map(Unit::symbol));
    assertEquals(text, typed.text());
  }

  /**
   * 240 V ±6 % was the British supply until 1994, 230 V +10/-6 % is the statutory range since 1995;
   * 230 V ±10 % is EN 50160's (from memory).
   */
  @ParameterizedTest
  @CsvSource({
    "240 V ±6 %, '[225.6, 254.4]'",
    "230 V +10/-6 %, '[216.2, 253]'",
    "230 V + 10 / \u2212 6 %, '[216.2, 253]'",
    "230 V ±10 %, '[207, 253]'"
  })
  void supplyRangesAreThePublishedOnes(String text, String bounds) {
    assertEquals(Form.TOLERANCE, typed(text).form());
    assertEquals(bounds, typed(text).bounds().toString());
  }

  @Test
  void overRangeIsNoNumberAndHasNoUnit() {
    Typed typed = typed("OL");
    assertEquals(Form.OVER_RANGE, typed.form());
    assertEquals(ExactInterval.UNBOUNDED, typed.bounds());
    assertEquals(Optional.empty(), typed.nominal());
    assertEquals(Optional.empty(), typed.unit());
  }

  @Test
  void aGaugeIsAnAreaBetweenTwoNeighbours() {
    Typed typed = typed("18 AWG");
    assertEquals(Form.BETWEEN, typed.form());
    assertEquals(WireGauge.area(18), typed.bounds());
    assertEquals(Optional.of("mm²"), typed.unit().map(Unit::symbol));
    assertEquals(WireGauge.area(0), typed("0 AWG").bounds());
    assertEquals(WireGauge.area(40), typed(" 40AWG ").bounds());
  }

  /** The caret (^) stands under the first character that can't be understood. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        """
        0.13
            ^ a bare number
        expected a number with its unit, such as `0.13 Ω`""",
        """
        0,13 Ω
         ^ a comma inside a number
        expected a point: `0,13` as `0.13`""",
        """
        0,130 Ω
         ^ a comma inside a number
        expected a point: `0,130` as `0.130`""",
        """
        1,000 Ω
         ^ a comma inside a number
        expected a point: `1,000` as `1.000`, or `1000`""",
        """
        1,000,000 Ω
         ^ a separator inside a number
        expected the digits together, with a point for decimals""",
        """
        1.000.000 Ω
             ^ a separator inside a number
        expected the digits together, with a point for decimals""",
        """
        1,000.5 Ω
         ^ a separator inside a number
        expected the digits together, with a point for decimals""",
        """
        1 000 Ω
         ^ a separator inside a number
        expected the digits together, with a point for decimals""",
        """
        1'000 Ω
         ^ a separator inside a number
        expected the digits together, with a point for decimals""",
        """
        1e3 Ω
         ^ an exponent
        expected all its digits, or a prefix as in `2.2 MΩ`""",
        """
        1E-3 Ω
         ^ an exponent
        expected all its digits, or a prefix as in `2.2 MΩ`""",
        """
        NaN Ω
        ^ `NaN Ω`
        expected a finite number; where the meter shows over-range, `OL` or `> 200 MΩ`""",
        """
        -inf Ω
         ^ `inf Ω`
        expected a finite number; where the meter shows over-range, `OL` or `> 200 MΩ`""",
        """
        > ∞
          ^ `∞`
        expected a finite number; where the meter shows over-range, `OL` or `> 200 MΩ`""",
        """
        .5 Ω
        ^ no digit before the point
        expected a digit there, as in `0.5`""",
        """
        5. Ω
          ^ no digit after the point
        expected a digit there, as in `5.0`""",
        """
        +5 V
        ^ `+5 V`
        expected a number with its unit, such as `0.13 Ω`""",
        """
        about 3 Ω
        ^ `about 3 Ω`
        expected a number with its unit, such as `0.13 Ω`""",
        """
        >= 3 Ω
         ^ `= 3 Ω`
        expected a number with its unit, such as `0.13 Ω`""",
        """
        ٣ Ω
        ^ `٣ Ω`
        expected a number with its unit, such as `0.13 Ω`""",
        """
        5 ohmz
          ^ unknown unit `ohmz`
        expected a unit such as `Ω`, `V` or `mm²`""",
        """
        0.13 Ω Ω
             ^ unknown unit `Ω Ω`
        expected a unit such as `Ω`, `V` or `mm²`""",
        """
        2.9 m to 3.1 m
            ^ `m to 3.1 m`
        expected the unit once, at the end, as in `2.9 to 3.1 m`""",
        """
        3 to 2 m
             ^ the smaller number second
        expected the smaller number first""",
        """
        41 AWG
        ^ a gauge of `41`
        expected a whole gauge from `0 AWG` to `40 AWG`, or an area in `mm²`""",
        """
        00 AWG
        ^ a gauge of `00`
        expected a whole gauge from `0 AWG` to `40 AWG`, or an area in `mm²`""",
        """
        > 18 AWG
             ^ `AWG`
        expected a gauge alone, such as `18 AWG`, or an area in `mm²`""",
        """
        16 to 18 AWG
                 ^ `AWG`
        expected a gauge alone, such as `18 AWG`, or an area in `mm²`""",
        """
        18 AWG ± 1 %
               ^ `± 1 %`
        expected nothing more""",
        """
        26 °C ±10 %
                  ^ a percentage of a number in `°C`
        expected the two ends, as in `40 to 60 °C`""",
        """
        26 °C +10/-6 %
                     ^ a percentage of a number in `°C`
        expected the two ends, as in `40 to 60 °C`""",
        """
        50 % ± 10 %
                  ^ a percentage of a number in `%`
        expected the two ends, as in `40 to 60 %`""",
        """
        0.13 Ω ± 0.02
                     ^ a bare number
        expected a number with its unit, such as `0.13 Ω`""",
        """
        0.13 Ω ± 0.02 V
                      ^ a spread in `V`
        expected `Ω` or `%`""",
        """
        0.13 ± -0.02 Ω
               ^ a spread below zero
        expected a spread without a sign""",
        """
        0.13 ± 0 Ω
                  ^ a spread of zero
        expected a spread above zero""",
        """
        230 V ±0 %
                  ^ a spread of zero
        expected a spread above zero""",
        """
        1e+3 Ω
         ^ an exponent
        expected all its digits, or a prefix as in `2.2 MΩ`""",
        """
        1e
         ^ unknown unit `e`
        expected a unit such as `Ω`, `V` or `mm²`""",
        """
        2.9 to 3.1 m ± 1 %
                     ^ `± 1 %`
        expected nothing more""",
        """
        0.13 ± 0.02 Ω ± 1 %
                      ^ `± 1 %`
        expected nothing more""",
        """
        230 V +10/-6 % or so
                       ^ `or so`
        expected nothing more""",
        """
        230 V +10 %
                  ^ `%`
        expected `/-` and the lower spread, as in `+10/-6 %`""",
        """
        230 V +10/6 %
                  ^ `6 %`
        expected `-` and the lower spread, as in `+10/-6 %`""",
        """
        230 V +10/-6 V
                     ^ `V`
        expected `%`""",
        """
        > 200 MΩ ± 5 %
                 ^ `± 5 %`
        expected nothing more""",
        """
        0.13 Ω ± 0.02 Ω ± 0.01 Ω
                        ^ `± 0.01 Ω`
        expected nothing more""",
        """
        0000000000000000000000000000000000000.001 Ω
                                                 ^ a number of more than 40 characters
        expected fewer digits"""
      })
  void whatCannotBeUnderstoodIsRefusedAtItsPlace(String picture) {
    String text = picture.lines().findFirst().orElseThrow();
    Refusal refusal = assertInstanceOf(Refusal.class, Typed.parse(text));
    String seen =
        text
            + "\n"
            + " ".repeat(refusal.offset())
            + "^ "
            + refusal.what()
            + "\nexpected "
            + refusal.expected();
    assertEquals(picture, seen);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "   "})
  void anEmptyTextIsRefusedAtItsEnd(String text) {
    assertEquals(
        new Refusal(
            text.length(), "the end of the text", "a number with its unit, such as `0.13 Ω`"),
        Typed.parse(text));
  }

  @Test
  void sixtyFourCharactersAreEnough() {
    assertInstanceOf(Typed.class, Typed.parse("5 Ω" + " ".repeat(61)));
    assertEquals(
        new Refusal(64, "more than 64 characters", "a shorter text"),
        Typed.parse("5 Ω" + " ".repeat(62)));
  }

  @Test
  void anUnknownUnitIsHandedOnForTheNearestName() {
    assertEquals(
        Optional.of("ohmz"), assertInstanceOf(Refusal.class, Typed.parse("5 ohmz")).unknownUnit());
    assertEquals(Optional.empty(), assertInstanceOf(Refusal.class, Typed.parse("5")).unknownUnit());
  }

  @Test
  void thePartsFitTheForm() {
    ExactInterval point = ExactInterval.point(Rational.ONE);
    Optional<Rational> one = Optional.of(Rational.ONE);
    Optional<Unit> volt = Units.find("V");
    assertThrows(
        IllegalArgumentException.class,
        () -> new Typed(Form.STATED, point, Optional.empty(), volt, "1 V"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Typed(Form.STATED, point, one, Optional.empty(), "1 V"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Typed(Form.STATED, point, Optional.of(Rational.ZERO), volt, "1 V"));
    assertThrows(
        IllegalArgumentException.class, () -> new Typed(Form.BETWEEN, point, one, volt, "1 V"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Typed(Form.OVER_RANGE, point, Optional.empty(), volt, "1 V"));
  }

  private static Typed typed(String text) {
    return assertInstanceOf(Typed.class, Typed.parse(text), text);
  }
}
