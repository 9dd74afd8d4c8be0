package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;

/** Outcomes on chosen facts: ties, tables, lists and sets. */
final class EvaluationTest {
  /** In doubles 0.1 + 0.2 is above 0.3, and 0.3 - 0.1 is below 0.2. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a + b <= 0.3 | MET",
        "a + b < 0.3 | NOT_MET",
        "a + b >= 0.3 | MET",
        "a + b > 0.3 | NOT_MET",
        "0.3 - a <= b | MET",
        "a * 3 / 3 <= 0.1 and a / 3 * 3 >= 0.1 | MET",
        "a * a * a <= 0.001 | MET",
      })
  void decimalsMeanWhatWasTyped(String formula, Truth truth) {
    World world = World.nothing().number("a", "0.1").number("b", "0.2");
    assertEquals(truth, Shop.decide(formula, world));
  }

  @Test
  void aWideSideThatEndsOnTheLimitIsDecidedToo() {
    World world = World.nothing().number("a", "0.1", "0.1").number("b", "-5", "0.2");
    assertEquals(Truth.MET, Shop.decide("a + b <= 0.3", world));
    assertEquals(Truth.UNDECIDED, Shop.decide("a + b < 0.3", world));
  }

  @Test
  void theExampleOfThePackageIsTrue() {
    String formula = "earth_resistance <= base + 0 Ω";
    Shop shop = Shop.open().limit("base", "0.15", "Ω");
    World near = World.nothing().number("earth_resistance", "0.0974", "0.1626");
    World tie = World.nothing().number("earth_resistance", "0.0974", "0.15");
    assertEquals(Truth.UNDECIDED, shop.truth(formula).evaluate(near));
    assertEquals(Truth.MET, shop.truth(formula).evaluate(tie));
  }

  /** 19.5 Ω/km at 1.0 mm²: IEC 60228 class 5, as in the project's table; 3 m of it are 0.0585 Ω. */
  @Test
  void nominalAreaFindsItsOwnRow() {
    World world = World.nothing().number("core_area", "0.000001").number("lead_length", "3");
    assertEquals(
        ExactInterval.point(Rational.of("0.0585")), Shop.open().number("copper").exact(world));
    World hair = world.number("core_area", "0.000001", "0.00000100000000000001");
    assertTrue(Shop.open().number("copper").exact(hair).isUnbounded());
    TruthFormula rule = Shop.open().truth("earth_resistance <= base + share * copper");
    assertEquals(Truth.MET, rule.evaluate(world.number("earth_resistance", "0", "0.1585")));
    assertEquals(
        Truth.UNDECIDED, rule.evaluate(world.number("earth_resistance", "0", "0.15850001")));
  }

  /** Rows 0, 1 and 2 with cells 0, 10 and 40. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "steps | 1 | 1 | 10 | 10 | r1",
        "steps | 0.5 | 1 | 10 | 10 | r1",
        "steps | 1 | 1.01 | 10 | 40 | r1 r2",
        "steps | -9 | 0 | 0 | 0 | r0",
        "steps | 0 | 2 | 0 | 40 | r0 r1 r2",
        "steps | 1.5 | 2.01 | | | r2",
        "steps | 3 | 4 | | | ''",
        "stairs | 1 | 1 | 10 | 10 | r1",
        "stairs | 1 | 1.99 | 10 | 10 | r1",
        "stairs | 1 | 2 | 10 | 40 | r1 r2",
        "stairs | 2 | 9 | 40 | 40 | r2",
        "stairs | -0.01 | 0 | | | r0",
        "marks | 1 | 1 | 10 | 10 | r1",
        "marks | 1 | 2 | | | r1 r2",
        "marks | 1.5 | 1.5 | | | ''",
      })
  void aKeyTakesTheHullOfTheRowsItTouches(
      String table, String lo, String hi, String least, String most, String rows) {
    World world = World.nothing().number("a", lo, hi);
    NumberFormula formula = Shop.open().number(table + "(a).value");
    ExactInterval expected =
        least == null
            ? ExactInterval.UNBOUNDED
            : ExactInterval.of(Rational.of(least), Rational.of(most));
    assertEquals(expected, formula.exact(world));
    assertEquals(expected.outward(), formula.evaluate(world));
    List<RowUse> uses =
        rows.isEmpty()
            ? List.of()
            : List.of(rows.split(" ")).stream().map(row -> new RowUse(table, row)).toList();
    assertEquals(uses, List.copyOf(formula.rowsTouched(world)));
  }

  @Test
  void anUnknownKeyIsOutsideTheTable() {
    for (String table : List.of("steps", "stairs", "marks")) {
      assertTrue(Shop.open().number(table + "(a).value").exact(World.nothing()).isUnbounded());
    }
  }

  @Test
  void aNamedKeyTakesTheHullOverItsCandidates() {
    NumberFormula formula = Shop.open().number("colours(k).value");
    World one = World.nothing().choice("k", "green");
    World two = World.nothing().choice("k", "green", "red");
    World withoutRow = World.nothing().choice("k", "blue", "red");
    assertEquals(ExactInterval.point(Rational.of(3)), formula.exact(one));
    assertEquals(ExactInterval.of(Rational.ONE, Rational.of(3)), formula.exact(two));
    assertTrue(formula.exact(withoutRow).isUnbounded());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // Listed items m = 1 and m = 2; first closed, then open.
        "all p in part: p.m > 0 | MET | UNDECIDED",
        "all p in part: p.m > 1 | NOT_MET | NOT_MET",
        "any p in part: p.m > 1 | MET | MET",
        "any p in part: p.m > 2 | NOT_MET | UNDECIDED",
        "(sum p in part: p.m) <= 3 | MET | UNDECIDED",
        "(sum p in part: p.m) > 3 | NOT_MET | UNDECIDED",
      })
  void anOpenListMayHaveAnotherThing(String formula, Truth closed, Truth open) {
    World items = World.nothing().number("p1.m", "1").number("p2.m", "2");
    assertEquals(closed, Shop.decide(formula, items.list("part", true, "p1", "p2")));
    assertEquals(open, Shop.decide(formula, items.list("part", false, "p1", "p2")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "all p in part: p.m > 0 | MET",
        "any p in part: p.m > 0 | NOT_MET",
        "(sum p in part: p.m) <= 0 | MET",
      })
  void ofNothingEverythingHoldsAndNothingExists(String formula, Truth truth) {
    assertEquals(truth, Shop.decide(formula, World.nothing().list("part", true)));
    assertEquals(Truth.UNDECIDED, Shop.decide(formula, World.nothing()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "k is red | MET | UNDECIDED | NOT_MET",
        "k is not red | NOT_MET | UNDECIDED | MET",
        "k in (red, green) | MET | MET | UNDECIDED",
        "k in (red, green, blue) | MET | MET | MET",
        "k is n | UNDECIDED | UNDECIDED | UNDECIDED",
      })
  void aChoiceIsMadeOnEveryCandidate(String formula, Truth red, Truth redOrGreen, Truth others) {
    assertEquals(red, Shop.decide(formula, World.nothing().choice("k", "red")));
    assertEquals(redOrGreen, Shop.decide(formula, World.nothing().choice("k", "red", "green")));
    assertEquals(others, Shop.decide(formula, World.nothing().choice("k", "blue", "green")));
  }

  @Test
  void twoObservationsAgreeOnlyWhereBothAreKnown() {
    World one = World.nothing().choice("k", "red").choice("n", "red");
    assertEquals(Truth.MET, Shop.decide("k is n", one));
    World two = World.nothing().choice("k", "red", "blue").choice("n", "red", "blue");
    assertEquals(Truth.UNDECIDED, Shop.decide("k is n", two));
    assertEquals(Truth.UNDECIDED, Shop.decide("k is not n", two));
    World apart = World.nothing().choice("k", "red", "blue").choice("n", "green");
    assertEquals(Truth.NOT_MET, Shop.decide("k is n", apart));
  }

  @Test
  void nothingKnownDecidesNothing() {
    for (String formula : List.of("a < b", "a * 0.5 >= a", "k is red", "all p in part: p.m < 1")) {
      assertEquals(Truth.UNDECIDED, Shop.decide(formula, World.nothing()), formula);
    }
  }

  /** A name that stands twice counts as two: wider than the truth, never narrower. */
  @Test
  void aNameThatStandsTwiceMayHold() {
    World world = World.nothing().number("a", "1", "2");
    assertEquals(Truth.UNDECIDED, Shop.decide("a - a <= 0", world));
  }

  /** π from any table of constants; the enclosure is a last digit wide. */
  @Test
  void rootsLogarithmsAndPiAreEnclosed() {
    World world = World.nothing().number("a", "2");
    String formula =
        "pi > 3.141592653589793 and pi < 3.141592653589794"
            + " and sqrt(a) > 1.414213562373094 and sqrt(a) < 1.414213562373096"
            + " and ln(a) > 0.693147180559944 and ln(a) < 0.693147180559946"
            + " and exp2(a) > 3.999999999999998 and exp2(a) < 4.000000000000002";
    assertEquals(Truth.MET, Shop.decide(formula, world));
    assertEquals(Truth.UNDECIDED, Shop.decide("sqrt(-a) > 0 or ln(a - 2) < 9", world));
    assertEquals(Truth.UNDECIDED, Shop.decide("1 / (a - 2) > 0", world));
  }
}
