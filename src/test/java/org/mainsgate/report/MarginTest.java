package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.mainsgate.formula.Ground;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Units;

class MarginTest {

  @Test
  void whatIsLeftBelowALimitIsCountedFromTheWorseEnd() {
    assertEquals("0.05 Ω to spare", words(at("0.06", "0.10"), "≤", at("0.15", "0.15"), Truth.MET));
  }

  @Test
  void whatIsLeftAboveALimitIsCountedFromTheWorseEnd() {
    assertEquals("0.1 Ω to spare", words(at("0.3", "0.5"), "≥", at("0.1", "0.2"), Truth.MET));
    assertEquals("0.1 Ω to spare", words(at("0.3", "0.5"), ">", at("0.1", "0.2"), Truth.MET));
  }

  @Test
  void whatIsMissingIsTheLeastThatCanBeMissing() {
    assertEquals("off by 0.15 Ω", words(at("0.3", "0.5"), "≤", at("0.1", "0.15"), Truth.NOT_MET));
    assertEquals("off by 0.15 Ω", words(at("0.1", "0.15"), "≥", at("0.3", "0.5"), Truth.NOT_MET));
  }

  @Test
  void aMarginIsNeverPrintedLargerThanItIs() {
    assertEquals("0.04 Ω to spare", words(at("0", "0.1"), "≤", at("0.1409", "1"), Truth.MET));
    assertEquals("off by 0.041 Ω", words(at("0.1409", "1"), "≤", at("0", "0.1"), Truth.NOT_MET));
    assertEquals("0.0409", margin(at("0", "0.1"), "≤", at("0.1409", "1"), Truth.MET).number(12));
  }

  @Test
  void aValueOnItsLimitIsExactlyThere() {
    assertEquals("exactly at the limit", words(at("1", "1"), "≥", at("1", "1"), Truth.MET));
  }

  @Test
  void nothingIsLeftWhereNothingIsDecidedOrAnEndIsOpen() {
    assertEquals(
        Optional.empty(), Margin.of(comparison(at("0", "2"), "≤", at("1", "1"), Truth.UNDECIDED)));
    assertEquals(
        Optional.empty(), Margin.of(comparison(at("5", null), "≥", at(null, "1"), Truth.NOT_MET)));
    assertEquals("4 Ω to spare", words(at("5", null), "≥", at("1", "1"), Truth.MET));
  }

  private static String words(
      ExactInterval left, String operator, ExactInterval right, Truth truth) {
    return margin(left, operator, right, truth).words(truth);
  }

  private static Margin margin(
      ExactInterval left, String operator, ExactInterval right, Truth truth) {
    return Margin.of(comparison(left, operator, right, truth)).orElseThrow();
  }

  private static Ground.Comparison comparison(
      ExactInterval left, String operator, ExactInterval right, Truth truth) {
    return new Ground.Comparison(
        Map.of(),
        "left",
        left,
        operator,
        "right",
        right,
        truth,
        Units.find("Ω").orElseThrow(),
        List.of(),
        List.of());
  }

  private static ExactInterval at(@Nullable String lo, @Nullable String hi) {
    return new ExactInterval(
        lo == null ? null : Rational.of(lo), hi == null ? null : Rational.of(hi));
  }
}
