package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;

/** What to expect on a display, in words and together. */
class ExpectedTest {
  private static final Unit OHM = Units.find("Ω").orElseThrow();

  @Test
  void itSaysWhichDisplaysPass() {
    assertEquals("0.16 Ω or less", most("0.16").words());
    assertEquals("1.5 Ω or more", least("1.5").words());
    assertEquals("9 to 180 Ω", between("9", "180").words());
  }

  @Test
  void ofTwoTheNarrowerCounts() {
    assertEquals("0.1 Ω or less", most("0.16").and(most("0.1")).orElseThrow().words());
    assertEquals("2 Ω or more", least("2").and(least("1")).orElseThrow().words());
    assertEquals("1 to 3 Ω", least("1").and(most("3")).orElseThrow().words());
  }

  @Test
  void twoThatExcludeEachOtherLeaveNothing() {
    assertEquals(Optional.empty(), least("3").and(most("1")));
    assertEquals("1 to 1 Ω", least("1").and(most("1")).orElseThrow().words());
  }

  @Test
  void withoutAnyEndNothingIsExpected() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Expected(Optional.empty(), Optional.empty(), OHM));
  }

  private static Expected most(String value) {
    return new Expected(Optional.empty(), Optional.of(Rational.of(value)), OHM);
  }

  private static Expected least(String value) {
    return new Expected(Optional.of(Rational.of(value)), Optional.empty(), OHM);
  }

  private static Expected between(String least, String most) {
    return new Expected(Optional.of(Rational.of(least)), Optional.of(Rational.of(most)), OHM);
  }
}
