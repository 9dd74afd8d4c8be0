package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** The patterns for editors against the parser: what is understood is never marked. */
class TypedPatternPropertiesTest {
  private static final List<String> PIECES =
      List.of(
          "0.13",
          "-0.01",
          "−7",
          "20",
          "18",
          "230",
          " ",
          " ",
          " ",
          "\u00a0",
          "\u2009",
          "±",
          "+-",
          "+/-",
          "+−",
          "+10/-6 %",
          "+10/−6%",
          "/",
          "%",
          "to ",
          "to",
          ">",
          "<",
          "OL",
          "AWG",
          "Ω",
          "ohm",
          "Ω",
          "MΩ",
          "mohm",
          "µF",
          "μF",
          "uF",
          "mm²",
          "mm2",
          "N m",
          "Nm",
          "N·m",
          "°C",
          "degC",
          "A²s",
          "A² s",
          "A2s",
          "Ω mm2/m",
          "V",
          "mA",
          "1/K",
          "MS/m");

  private static final AtomicInteger UNDERSTOOD = new AtomicInteger();

  @Property(tries = 20_000)
  void whatIsUnderstoodMatches(@ForAll Random random) {
    StringBuilder text = new StringBuilder();
    int pieces = 1 + random.nextInt(6);
    for (int i = 0; i < pieces; i++) {
      text.append(PIECES.get(random.nextInt(PIECES.size())));
    }
    understood(text.toString());
  }

  @Example
  void everyUnitInEveryFormMatches() {
    UNDERSTOOD.set(0);
    for (String unit : Units.symbols()) {
      for (String form :
          List.of(
              "0.13 U",
              "0.13U",
              "> 7 U",
              "<7 U",
              "1 ± 0.1 U",
              "1 U ± 0.1 U",
              "1 U ± 5 %",
              "1 U +10/-6 %",
              "1 to 2 U",
              " -1 U ")) {
        understood(form.replace("U", unit));
        understood(form.replace("U", unit.replace("Ω", "ohm").replace("²", "2").replace("µ", "u")));
      }
    }
    understood("18 AWG");
    understood("OL");
    assertTrue(UNDERSTOOD.get() > 900, () -> "only " + UNDERSTOOD + " were understood");
  }

  @Example
  void commonMistakesDoNotMatch() {
    for (String wrong :
        List.of("0.13", "0,13 Ω", "1e3 Ω", "0.13 V", "0.13 ohms", "2.9 m to 3.1 m", "", "yes")) {
      assertEquals(
          false, Pattern.matches(TypedPattern.of(Dimension.RESISTANCE, true), wrong), wrong);
    }
    assertEquals(false, Pattern.matches(TypedPattern.of(Dimension.RESISTANCE, false), "> 1 Ω"));
    assertEquals(false, Pattern.matches(TypedPattern.of(Dimension.LENGTH, true), "18 AWG"));
    assertEquals(false, Pattern.matches(TypedPattern.accuracy(), "2 % + 3"));
  }

  @Example
  void everyAccuracyThatIsUnderstoodMatches() {
    for (String text :
        List.of("30 %", "2%+3digits", "1 % + 1 digit", "2 % + 3 digits + 0.1 Ω", "0.1 ohm")) {
      assertTrue(Accuracy.parse(text) instanceof Accuracy, text);
      assertTrue(Pattern.matches(TypedPattern.accuracy(Dimension.RESISTANCE), text), text);
      assertTrue(Pattern.matches(TypedPattern.accuracy(), text), text);
    }
  }

  private static void understood(String text) {
    if (!(Typed.parse(text) instanceof Typed typed)) {
      return;
    }
    UNDERSTOOD.incrementAndGet();
    Optional<Dimension> dimension = typed.unit().map(Unit::dimension);
    String pattern = TypedPattern.of(dimension.orElse(Dimension.RESISTANCE), true);
    assertTrue(Pattern.matches(pattern, text), () -> "`" + text + "` against " + pattern);
    if (typed.form() == Form.STATED) {
      assertTrue(Pattern.matches(TypedPattern.stated(dimension.orElseThrow()), text), text);
      assertTrue(Pattern.matches(TypedPattern.stated(), text), text);
    }
  }
}
