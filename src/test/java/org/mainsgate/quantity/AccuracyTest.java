package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AccuracyTest {

  @ParameterizedTest
  @CsvSource({
    "2 % + 3 digits, 2, 3, 0, 2 % + 3 digits",
    "2%+3digits, 2, 3, 0, 2 % + 3 digits",
    "3 digits + 2 %, 2, 3, 0, 2 % + 3 digits",
    "2.5 %, 2.5, 0, 0, 2.5 %",
    "5 digits, 0, 5, 0, 5 digits",
    "1 digit, 0, 1, 0, 1 digit",
    "1 % + 300 mΩ, 1, 0, 0.3, 1 % + 300 mΩ",
    "0.5 °C, 0, 0, 0.5, 0.5 °C",
    "1 % + 3 digits + 0.3 Ω, 1, 3, 0.3, 1 % + 3 digits + 0.3 Ω"
  })
  void partsAreReadInAnyOrderAndDescribedInOne(
      String text, String percent, String digits, String absolute, String described) {
    Accuracy accuracy = accuracy(text);
    assertEquals(Rational.of(percent), accuracy.percent());
    assertEquals(Rational.of(digits), accuracy.digits());
    assertEquals(Rational.of(absolute), accuracy.absolute());
    assertEquals(described, accuracy.describe());
    assertEquals(accuracy, accuracy(accuracy.describe()));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        """
        1 % + 3
               ^ a bare number
        expected `%`, `digits` or a unit""",
        """
        2 % + 2 %
              ^ a second part of one kind
        expected an accuracy such as `2 % + 3 digits`""",
        """
        2 digits + 2 digits
                   ^ a second part of one kind
        expected an accuracy such as `2 % + 3 digits`""",
        """
        1 Ω + 1 V
              ^ a second part of one kind
        expected an accuracy such as `2 % + 3 digits`""",
        """
        0 %
           ^ an accuracy of zero
        expected one above zero, such as `2 % + 3 digits`""",
        """
        -2 %
        ^ a part below zero
        expected an accuracy such as `2 % + 3 digits`""",
        """
        2 % of reading
            ^ `of reading`
        expected nothing more""",
        """
        2 furlongs
          ^ unknown unit `furlongs`
        expected a unit such as `Ω`, `V` or `mm²`"""
      })
  void whatCannotBeUnderstoodIsRefusedAtItsPlace(String picture) {
    String text = picture.lines().findFirst().orElseThrow();
    Refusal refusal = assertInstanceOf(Refusal.class, Accuracy.parse(text));
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

  @Test
  void anEmptyTextIsRefused() {
    assertEquals(
        new Refusal(0, "the end of the text", "an accuracy such as `2 % + 3 digits`"),
        Accuracy.parse(""));
  }

  /**
   * A university laboratory page: 32.00 V on a range with steps of 0.01 V, ±(2.5 % + 3 digits): 0.8
   * V + 0.03 V.
   */
  @Test
  void percentAndDigitsAddUp() {
    assertEquals(
        Rational.of("0.83"),
        accuracy("2.5 % + 3 digits").halfWidth(Rational.of("32.00"), Rational.of("0.01")));
  }

  @Test
  void aNegativeReadingIsAsUncertainAsAPositiveOne() {
    Accuracy accuracy = accuracy("10 % + 1 digit + 0.3 Ω");
    assertEquals(Rational.of("1.31"), accuracy.halfWidth(Rational.of(10), Rational.of("0.01")));
    assertEquals(Rational.of("1.31"), accuracy.halfWidth(Rational.of(-10), Rational.of("0.01")));
  }

  @Test
  void noPartIsNegativeAndAFixedPartHasAUnit() {
    Rational minus = Rational.of(-1);
    Rational zero = Rational.ZERO;
    assertThrows(IllegalArgumentException.class, () -> Accuracy.of(minus, zero));
    assertThrows(IllegalArgumentException.class, () -> Accuracy.of(zero, minus));
    assertThrows(
        IllegalArgumentException.class, () -> new Accuracy(zero, zero, minus, Units.find("Ω")));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Accuracy(zero, zero, Rational.ONE, Optional.empty()));
    assertEquals("0 %", Accuracy.of(zero, zero).describe());
  }

  private static Accuracy accuracy(String text) {
    return assertInstanceOf(Accuracy.class, Accuracy.parse(text), text);
  }
}
