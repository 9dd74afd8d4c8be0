package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class TypedPropertiesTest {

  @Property(tries = 5000)
  void noTextIsTooStrangeForAnAnswer(@ForAll("scraps") String text) {
    if (Typed.parse(text) instanceof Refusal refusal) {
      assertIsAComplaint(refusal, text);
    }
    if (Accuracy.parse(text) instanceof Refusal refusal) {
      assertIsAComplaint(refusal, text);
    }
  }

  @Property
  void everyNumberInEveryUnitIsReadExactly(
      @ForAll("decimals") BigDecimal number, @ForAll("symbols") String symbol) {
    Unit unit = Units.find(symbol).orElseThrow();
    Rational si = unit.toSi(Rational.of(number));
    Typed typed = assertInstanceOf(Typed.class, Typed.parse(number.toPlainString() + " " + symbol));
    assertEquals(Optional.of(si), typed.nominal());
    assertEquals(ExactInterval.point(si), typed.bounds());
    assertEquals(Optional.of(unit), typed.unit());
  }

  @Property
  void thePrintedNumberIsReadBackAsTheSameValue(
      @ForAll("decimals") BigDecimal number, @ForAll("symbols") String symbol) {
    Unit unit = Units.find(symbol).orElseThrow();
    ExactInterval value = ExactInterval.point(unit.toSi(Rational.of(number)));
    Typed typed = assertInstanceOf(Typed.class, Typed.parse(Print.quantity(value, unit)));
    assertEquals(value, typed.bounds());
  }

  private static void assertIsAComplaint(Refusal refusal, String text) {
    assertTrue(refusal.offset() >= 0 && refusal.offset() <= text.length());
    for (String words : List.of(refusal.what(), refusal.expected())) {
      String ours = words.replaceAll("`[^`]*`", "``");
      assertTrue(
          !ours.isBlank() && !ours.endsWith(".") && !Character.isUpperCase(ours.charAt(0)), words);
    }
  }

  @Provide
  Arbitrary<String> scraps() {
    List<String> tokens = new ArrayList<>(Units.symbols());
    tokens.addAll(
        List.of(
            "0.13", "10", "-", "\u2212", "+", "±", "+-", "+/-", "/", ">", "<", "to", "to ", " ",
            " ", "%", "digits", "digit", "OL", "AWG", "18", ".", ",", "e3", "NaN", "inf", "'",
            "\u00a0", "\t", "ohm", "000", "١"));
    return Arbitraries.of(tokens).list().ofMaxSize(9).map(list -> String.join("", list));
  }

  @Provide
  Arbitrary<BigDecimal> decimals() {
    return Arbitraries.bigDecimals()
        .between(new BigDecimal("-999"), new BigDecimal("999"))
        .ofScale(3);
  }

  @Provide
  Arbitrary<String> symbols() {
    return Arbitraries.of(Units.symbols());
  }
}
