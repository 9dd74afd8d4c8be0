package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RationalTest {

  @Test
  void aTenthAndTwoTenthsAreThreeTenths() {
    assertEquals(Rational.of("0.3"), Rational.of("0.1").plus(Rational.of("0.2")));
    assertNotEquals(
        Rational.of(0.3), Rational.of(0.1).plus(Rational.of(0.2)), "the doubles are other numbers");
  }

  @Test
  void lowestTermsHaveAPositiveDenominator() {
    assertEquals("-2/3", Rational.of(4, -6).toString());
    assertEquals(Rational.of(-2, 3).hashCode(), Rational.of(4, -6).hashCode());
    assertEquals(Rational.ZERO, Rational.of(0, -5));
    assertNotEquals(Rational.of(1, 2).hashCode(), Rational.of(1, 3).hashCode());
  }

  @Test
  void arithmeticIsThatOfFractions() {
    Rational half = Rational.of(1, 2);
    Rational third = Rational.of(1, 3);
    assertEquals(Rational.of(5, 6), half.plus(third));
    assertEquals(Rational.of(1, 6), half.minus(third));
    assertEquals(Rational.of(1, 6), half.times(third));
    assertEquals(Rational.of(3, 2), half.dividedBy(third));
    assertEquals(Rational.of(-1, 2), half.negate());
    assertEquals(half, half.negate().abs());
    assertEquals(half, half.abs());
    assertEquals(third, half.min(third));
    assertEquals(third, third.min(half));
    assertEquals(half, half.max(third));
    assertEquals(half, third.max(half));
    assertEquals(-1, half.negate().signum());
    assertEquals(Rational.of(4, 9), Rational.of(2, 3).power(2));
    assertEquals(Rational.of(9, 4), Rational.of(2, 3).power(-2));
    assertEquals(Rational.ONE, third.power(0));
  }

  @Test
  void divisionByZeroIsAnError() {
    assertThrows(ArithmeticException.class, () -> Rational.ONE.dividedBy(Rational.ZERO));
    assertThrows(ArithmeticException.class, () -> Rational.of(1, 0));
    assertThrows(ArithmeticException.class, () -> Rational.ONE.isMultipleOf(Rational.ZERO));
  }

  @Test
  void plainDecimalsAreRead() {
    assertEquals(Optional.of(Rational.of(13, 100)), Rational.parse("0.13"));
    assertEquals(Optional.of(Rational.of(-1, 100)), Rational.parse("-0.01"));
    assertEquals(Optional.of(Rational.of(-1, 100)), Rational.parse("\u22120.01"));
    assertEquals(Optional.of(Rational.of(39, 2)), Rational.parse("19.5"));
    assertEquals(Optional.of(Rational.of(10)), Rational.parse("010"));
    assertEquals(Optional.of(Rational.ONE), Rational.parse("0".repeat(39) + "1"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        ".5",
        "5.",
        "+5",
        "1e3",
        "0,5",
        " 5",
        "5 ",
        "--5",
        "1_000",
        "NaN",
        "0x10",
        "٣",
        "5\n",
        "00000000000000000000000000000000000000001"
      })
  void anythingElseIsNoDecimal(String text) {
    assertEquals(Optional.empty(), Rational.parse(text));
    assertThrows(IllegalArgumentException.class, () -> Rational.of(text));
  }

  @Test
  void decimalsOfAnyScaleAreExact() {
    assertEquals(Rational.of(1200), Rational.of(new BigDecimal("1.2E+3")));
    assertEquals(Rational.of(3, 2000), Rational.of(new BigDecimal("1.5E-3")));
  }

  @Test
  void aDoubleIsTheFractionThatItIs() {
    assertEquals(Rational.of(3602879701896397L, 36028797018963968L), Rational.of(0.1));
    assertThrows(IllegalArgumentException.class, () -> Rational.of(Double.POSITIVE_INFINITY));
    assertThrows(IllegalArgumentException.class, () -> Rational.of(Double.NaN));
  }

  @Test
  void endingDecimalsPrintAllDigitsAndOthersAreFractions() {
    assertEquals("0.13", Rational.of(13, 100).toString());
    assertEquals("-0.0625", Rational.of(-1, 16).toString());
    assertEquals("1200", Rational.of(1200).toString());
    assertEquals("1/3", Rational.of(1, 3).toString());
    assertEquals("7/30", Rational.of(7, 30).toString());
  }

  @Test
  void stepsAreCountedExactly() {
    assertTrue(Rational.of("0.13").isMultipleOf(Rational.of("0.01")));
    assertTrue(Rational.of("-0.01").isMultipleOf(Rational.of("0.01")));
    assertTrue(Rational.ZERO.isMultipleOf(Rational.of("0.01")));
    assertFalse(Rational.of("0.135").isMultipleOf(Rational.of("0.01")));
  }

  @Test
  void theOrderIsThatOfTheNumbers() {
    assertTrue(Rational.of(1, 3).compareTo(Rational.of("0.333")) > 0);
    assertTrue(Rational.of(-1, 3).compareTo(Rational.of("-0.333")) < 0);
    assertEquals(0, Rational.of(2, 4).compareTo(Rational.of(1, 2)));
    assertNotEquals(Rational.of(1, 2), Rational.of(1, 3));
    assertNotEquals(Rational.of(1, 2), Rational.of(3, 2));
  }

  @Test
  void doublesBeyondTheGreatestAreInfiniteOnlyOutward() {
    Rational tooMuch = Rational.of(Double.MAX_VALUE).plus(Rational.ONE);
    assertEquals(Double.MAX_VALUE, tooMuch.down());
    assertEquals(Double.POSITIVE_INFINITY, tooMuch.up());
    assertEquals(Double.NEGATIVE_INFINITY, tooMuch.negate().down());
    assertEquals(-Double.MAX_VALUE, tooMuch.negate().up());
    Rational farTooMuch = Rational.of(10).power(400);
    assertEquals(Double.MAX_VALUE, farTooMuch.down());
    assertEquals(Double.NEGATIVE_INFINITY, farTooMuch.negate().down());
  }

  @Test
  void numbersBelowTheSmallestDoubleDoNotVanish() {
    Rational tiny = Rational.of(10).power(-400);
    assertEquals(0.0, tiny.down());
    assertEquals(Double.MIN_VALUE, tiny.up());
    assertEquals(-Double.MIN_VALUE, tiny.negate().down());
    assertEquals(0.0, tiny.negate().up());
  }
}
