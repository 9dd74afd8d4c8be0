package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.RandomGenerator;
import net.jqwik.api.Reporter;
import org.mainsgate.quantity.Truth;

/**
 * Our formulas on points, against an evaluator of another language by other people: dev.cel, which
 * calculates in doubles. What rounding may decide is left out, and counted; see {@link CelText}.
 *
 * <p>300 formulas, or 10,000 with {@code -Deverything}; each in several worlds.
 */
final class FormulaAgainstCelConformanceTest {
  private static final Shop SHOP = Shop.open();
  private static final int WORLDS = 2;

  @Example
  void plainNumbersNamesListsAndTables(Reporter reporter) {
    compare(RandomFormulas.statements(), RandomFormulas.worlds(true, false), reporter);
  }

  @Example
  void unitsRootsLogarithmsAndPowers(Reporter reporter) {
    compare(RandomFormulas.statementsWithUnits(), RandomFormulas.shopPoints(), reporter);
  }

  private static void compare(
      Arbitrary<String> statements, Arbitrary<World> worlds, Reporter reporter) {
    RandomGenerator<String> formulas = statements.generator(1000);
    RandomGenerator<World> points = worlds.generator(1000);
    Random random = new Random(1958);
    Tally tally = new Tally(CelJudge.of(points.next(random).value()));
    int count = System.getProperty("everything") == null ? 150 : 5000;
    for (int i = 0; i < count; i++) {
      String formula = formulas.next(random).value();
      for (int j = 0; j < WORLDS; j++) {
        tally.compare(formula, points.next(random).value());
      }
    }
    reporter.publishValue("compared", tally.toString());
    tally.assertThatItWasWorthIt();
  }

  /** What came out, counted. */
  private static final class Tally {
    private final Map<Truth, Integer> said = new EnumMap<>(Truth.class);
    private int skipped;
    private int halfKnown;
    private final CelJudge judge;

    Tally(CelJudge judge) {
      this.judge = judge;
    }

    void compare(String formula, World world) {
      CelText text = CelText.of(formula, SHOP, world);
      if (judge.says(text.doubt(), world) == Truth.MET) {
        skipped++;
        return;
      }
      Truth ours = SHOP.truth(formula).evaluate(world);
      Truth theirs = judge.says(text.truth(), world);
      if (theirs == Truth.UNDECIDED && ours != Truth.UNDECIDED && text.picks()) {
        halfKnown++;
        return;
      }
      assertEquals(theirs, ours, () -> formula + "\n" + text.truth() + "\n" + world);
      said.merge(ours, 1, Integer::sum);
    }

    void assertThatItWasWorthIt() {
      int all = said.values().stream().mapToInt(Integer::intValue).sum() + skipped + halfKnown;
      assertTrue(skipped * 100 <= all * 5, this::toString);
      assertTrue(halfKnown * 100 <= all * 5, this::toString);
      for (Truth truth : Truth.values()) {
        assertTrue(said.getOrDefault(truth, 0) * 100 >= all * 5, this::toString);
      }
    }

    @Override
    public String toString() {
      return said + ", skipped " + skipped + ", half known " + halfKnown;
    }
  }

  // That it can fail.

  @Example
  void aLessThanInPlaceOfAnAtMostIsNoticedOnATie() {
    World tie = World.nothing().number("a", "1").number("b", "1");
    assertEquals(Truth.MET, said("a <= b", tie));
    assertDisagree("a <= b", "a < b", tie);
    assertDisagree("a > b", "a >= b", tie);
  }

  @Example
  void anotherConstantIsNoticed() {
    World world = World.nothing().number("a", "1").number("b", "1");
    assertDisagree("a + 0.5 <= b + 0.5", "a + 1 <= b + 0.5", world);
    assertDisagree("a <= low", "a <= low - 0.5", world);
  }

  @Example
  void aTieOfWhatIsRoundedIsSkipped() {
    World world = World.nothing().number("a", "1").number("b", "3");
    CelText text = CelText.of("a / b * b <= low", SHOP, world);
    assertEquals(Truth.MET, CelJudge.of(world).says(text.doubt(), world));
    CelText apart = CelText.of("a / b * b < high", SHOP, world);
    assertEquals(Truth.NOT_MET, CelJudge.of(world).says(apart.doubt(), world));
  }

  /** CEL is given the formula with one thing altered, as if the engine had that fault. */
  @Example
  void faultsOfTheEngineWouldBeNoticed() {
    assertNoticed("<=", "<");
    assertNoticed(">=", ">");
    assertNoticed(" and ", " or ");
    assertNoticed(" implies ", " and ");
    assertNoticed("min(", "max(");
    assertNoticed("highest(", "lowest(");
    assertNoticed("steps(", "stairs(");
    assertNoticed("low ", "high ");
    assertNoticed("0.5", "1");
    assertNoticed("red", "blue");
    assertNoticed("all ", "any ");
  }

  private static void assertNoticed(String part, String altered) {
    RandomGenerator<String> formulas = RandomFormulas.statements().generator(1000);
    RandomGenerator<World> points = RandomFormulas.worlds(true, false).generator(1000);
    Random random = new Random(1958);
    CelJudge judge = CelJudge.of(points.next(random).value());
    boolean noticed = false;
    for (int i = 0; i < 2000 && !noticed; i++) {
      String formula = formulas.next(random).value();
      String fault = formula.replace(part, altered);
      noticed =
          !fault.equals(formula) && disagree(formula, fault, points.next(random).value(), judge);
    }
    assertTrue(noticed, part + " for " + altered);
  }

  private static boolean disagree(String ours, String theirs, World world, CelJudge judge) {
    CelText text = CelText.of(theirs, SHOP, world);
    return judge.says(text.doubt(), world) != Truth.MET
        && judge.says(text.truth(), world) != SHOP.truth(ours).evaluate(world);
  }

  private static void assertDisagree(String ours, String theirs, World world) {
    assertNotEquals(SHOP.truth(ours).evaluate(world), said(theirs, world));
  }

  private static Truth said(String formula, World world) {
    return CelJudge.of(world).says(CelText.of(formula, SHOP, world).truth(), world);
  }
}
