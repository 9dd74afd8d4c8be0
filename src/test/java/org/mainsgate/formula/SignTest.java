package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What raising the limit `low`, a number above zero, does; e and f are never negative, a is
 * anything.
 */
final class SignTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a <= low | RAISES",
        "a < low | RAISES",
        "a >= low | LOWERS",
        "low >= a | RAISES",
        "not (a <= low) | LOWERS",
        "a <= low implies b < c | LOWERS",
        "b < c implies a <= low | RAISES",
        "a <= low or a >= high | RAISES",
        "a <= low and b >= low | MIXED",
        "a <= high | ABSENT",
        "k is red | ABSENT",
        "all p in part: p.m <= low | RAISES",
        "a <= (sum p in part: p.m * low) | MIXED",
        "a <= (sum p in part: e * low) | RAISES",
        "a <= b - low | LOWERS",
        "a <= -low | LOWERS",
        "a <= e * low | RAISES",
        "a <= e * -low | LOWERS",
        "a <= debt * low | LOWERS",
        "a <= b * low | MIXED",
        "a <= e / low | LOWERS",
        "a <= low / e | RAISES",
        "a <= b / low | MIXED",
        "a <= 1 / (low - high) | MIXED",
        "a <= min(low, b) | RAISES",
        "a <= max(b, -low) | LOWERS",
        "a <= sqrt(low) | RAISES",
        "a <= sqrt(low - e) | MIXED",
        "a <= ln(low) | RAISES",
        "a <= exp2(-low) | LOWERS",
        "a <= steps(low).value | MIXED",
        "a <= steps(b).value * low | RAISES",
        "a <= colours(k).value * -low | LOWERS",
        "a <= highest(v) + low | RAISES",
        "a <= min(steps(b).value, 3) * low | MIXED",
        "warm | LOWERS",
        // At zero a quotient is unknown, and zero times the unknown is zero.
        "a <= 1 / max(0, low - high) | MIXED",
        "a <= steps(b).value * max(0, low - high) | MIXED",
        "a <= e * max(0, low - high) | RAISES",
      })
  void theEffectOfALimitIsShownOrItIsMixed(String formula, Sign sign) {
    assertEquals(sign, Shop.open().truth(formula).sign("low"));
  }

  /**
   * The rule of earth continuity with a share of the copper: both limits have a tight direction.
   */
  @Test
  void theEarthRuleHasATightDirectionForBothItsLimits() {
    TruthFormula rule = Shop.open().truth("earth_resistance <= base + share * copper");
    assertEquals(Sign.RAISES, rule.sign("base"));
    assertEquals(Sign.RAISES, rule.sign("share"));
  }
}
