package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.RoundingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WireGaugeTest {

  private static final Unit MM2 = Units.find("mm²").orElseThrow();

  /**
   * Solid copper at 20 °C, NBS Handbook 100 (ASTM B258 for the diameters); resistivity 17.241 Ω
   * mm²/km of the International Annealed Copper Standard.
   */
  @ParameterizedTest
  @CsvSource({"20, 10.15", "18, 6.385", "16, 4.016", "14, 2.525", "12, 1.588"})
  void theAreaGivesThePublishedResistance(int gauge, String ohmsPerThousandFeet) {
    Rational published = Units.find("Ω/kft").orElseThrow().toSi(Rational.of(ohmsPerThousandFeet));
    ExactInterval computed =
        ExactInterval.point(Rational.of("0.000000017241")).dividedBy(WireGauge.area(gauge));
    Rational allowed = published.times(Rational.of("0.0003"));
    assertEquals(Truth.MET, computed.atLeast(ExactInterval.point(published.minus(allowed))));
    assertEquals(Truth.MET, computed.atMost(ExactInterval.point(published.plus(allowed))));
  }

  /** Gauge 36 is 0.005 in by definition (ASTM B258). */
  @Test
  void theDefiningGaugeIsFiveThousandthsOfAnInch() {
    Rational diameter = Rational.of("0.005").times(Rational.of("0.0254"));
    ExactInterval area =
        ExactInterval.PI.times(ExactInterval.point(diameter.power(2).dividedBy(Rational.of(4))));
    assertTrue(WireGauge.area(36).overlaps(area));
  }

  /** Areas computed from the formula with another program; 18 AWG is usually given as 0.823 mm². */
  @ParameterizedTest
  @CsvSource({"0, 53.475", "18, 0.823047", "40, 0.00501"})
  void theAreaIsThatOfTheFormula(int gauge, String squareMillimetres) {
    ExactInterval area = WireGauge.area(gauge);
    int digits = squareMillimetres.replaceFirst("^[0.]+", "").replace(".", "").length();
    assertEquals(
        squareMillimetres,
        Print.value(Rational.of(area.outward().lo()), MM2, digits, RoundingMode.HALF_EVEN));
  }

  @Test
  void everyGaugeIsHairWideAndThinnerThanTheOneBefore() {
    for (int gauge = 0; gauge <= 40; gauge++) {
      ExactInterval area = WireGauge.area(gauge);
      ExactInterval width = area.minus(area).dividedBy(area);
      assertEquals(
          Truth.MET,
          width.lessThan(ExactInterval.point(Rational.of(10).power(-13))),
          "gauge " + gauge);
      if (gauge > 0) {
        assertEquals(Truth.MET, area.lessThan(WireGauge.area(gauge - 1)), "gauge " + gauge);
      }
    }
  }

  /** Thirty-nine steps are a factor of 92 in diameter. */
  @Test
  void thirtyNineStepsAreTheWholeRatio() {
    ExactInterval ratio = WireGauge.area(1).dividedBy(WireGauge.area(40));
    assertTrue(ratio.contains(Rational.of(92 * 92)));
  }
}
