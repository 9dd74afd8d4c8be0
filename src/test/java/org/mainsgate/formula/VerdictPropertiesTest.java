package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;

/** The invariants of the engine, on random formulas and random facts. */
final class VerdictPropertiesTest {
  private static final Shop SHOP = Shop.open();

  @Provide
  Arbitrary<String> statements() {
    return RandomFormulas.statements();
  }

  @Provide
  Arbitrary<String> statementsWithEachNameOnce() {
    return RandomFormulas.statementsWithEachNameOnce();
  }

  @Provide
  Arbitrary<World> worlds() {
    return RandomFormulas.worlds(false, true);
  }

  @Provide
  Arbitrary<World> boundedWorlds() {
    return RandomFormulas.worlds(false, false);
  }

  @Provide
  Arbitrary<World> points() {
    return RandomFormulas.worlds(true, false);
  }

  /** Design: a pass is what must hold, a fail what can't; a third is neither. */
  @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
  void theEngineSaysWhatTheNaiveEvaluatorsSay(
      @ForAll("statements") String formula, @ForAll("worlds") World world) {
    Truth truth = SHOP.truth(formula).evaluate(world);
    Syntax syntax = Shop.parsed(formula).syntax();
    Oracle oracle = new Oracle(world);
    assertEquals(expected(oracle.must(syntax), oracle.might(syntax)), truth);
    Statistics.collect(truth);
    Statistics.coverage(
        coverage -> {
          for (Truth each : Truth.values()) {
            coverage.check(each).percentage(p -> p > 5);
          }
        });
  }

  private static Truth expected(boolean must, boolean might) {
    assertTrue(might || !must, "the naive evaluators contradict each other");
    return must ? Truth.MET : might ? Truth.UNDECIDED : Truth.NOT_MET;
  }

  @Property(tries = 2000, edgeCases = EdgeCasesMode.NONE)
  void noPointInsideContradictsWhatWasDecided(
      @ForAll("statements") String formula, @ForAll("worlds") World world, @ForAll Random random) {
    Truth truth = SHOP.truth(formula).evaluate(world);
    Assume.that(truth != Truth.UNDECIDED);
    Syntax syntax = Shop.parsed(formula).syntax();
    for (int i = 0; i < 10; i++) {
      Oracle point = new Oracle(new Narrowing(random, true).of(world));
      boolean agrees = truth == Truth.MET ? point.might(syntax) : !point.must(syntax);
      assertTrue(agrees, () -> "at " + point.world());
    }
  }

  @Property(tries = 2000, edgeCases = EdgeCasesMode.NONE)
  void betterKnowledgeNeverChangesWhatWasDecided(
      @ForAll("statements") String formula, @ForAll("worlds") World world, @ForAll Random random) {
    TruthFormula checked = SHOP.truth(formula);
    Truth truth = checked.evaluate(world);
    Assume.that(truth != Truth.UNDECIDED);
    World better = new Narrowing(random, false).of(world);
    assertEquals(truth, checked.evaluate(better), () -> "with " + better);
  }

  /** What stays open on points is only division by zero and a key outside its table. */
  @Property(tries = 2000, edgeCases = EdgeCasesMode.NONE)
  void onPointsEverythingIsDecided(
      @ForAll("statements") String formula, @ForAll("points") World world) {
    Assume.that(!formula.contains("/") && !formula.contains("(k)"));
    Assume.that(
        !formula.contains("stairs") && !formula.contains("steps") && !formula.contains("marks"));
    assertNotEquals(Truth.UNDECIDED, SHOP.truth(formula).evaluate(world));
  }

  @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
  void undecidedHasTwoWitnessesWhereEachNameStandsOnce(
      @ForAll("statementsWithEachNameOnce") String formula, @ForAll("boundedWorlds") World world) {
    TruthFormula checked = SHOP.truth(formula);
    Assume.that(checked.evaluate(world) == Truth.UNDECIDED);
    EnumSet<Truth> seen = EnumSet.noneOf(Truth.class);
    corners(world).forEach(corner -> seen.add(checked.evaluate(corner)));
    assertEquals(EnumSet.of(Truth.MET, Truth.NOT_MET), seen);
  }

  private static List<World> corners(World world) {
    List<World> corners = new ArrayList<>(List.of(world));
    for (String name : List.of("a", "b", "c", "d", "e", "f")) {
      ExactInterval value = world.value(name);
      List<World> more = new ArrayList<>();
      for (World corner : corners) {
        more.add(corner.number(name, ExactInterval.point(end(value.lo()))));
        more.add(corner.number(name, ExactInterval.point(end(value.hi()))));
      }
      corners = more;
    }
    List<World> all = new ArrayList<>();
    for (World corner : corners) {
      world.choices().getOrDefault("k", Set.of()).forEach(v -> all.add(corner.choice("k", v)));
    }
    return all;
  }

  private static Rational end(@Nullable Rational end) {
    return Objects.requireNonNull(end);
  }

  /** The rationals alone would give the same answer: the doubles are a filter and nothing else. */
  @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
  void theDoublesNeverDecideOtherwise(
      @ForAll("statements") String formula, @ForAll("worlds") World world) {
    for (Ground ground : SHOP.truth(formula).explain(world)) {
      if (ground instanceof Ground.Comparison comparison) {
        Relation relation = relation(comparison.operator());
        assertEquals(
            relation.exact(comparison.left(), comparison.right()), comparison.truth(), formula);
      }
    }
  }

  private static Relation relation(String symbol) {
    for (Relation relation : Relation.values()) {
      if (relation.symbol().equals(symbol)) {
        return relation;
      }
    }
    throw new AssertionError(symbol);
  }

  @Provide
  Arbitrary<Map<String, Rational>> limits() {
    Arbitrary<Rational> positive = Arbitraries.integers().between(1, 9).map(n -> Rational.of(n, 3));
    return positive
        .list()
        .ofSize(3)
        .map(
            values -> {
              Map<String, Rational> limits = new LinkedHashMap<>();
              limits.put("low", values.get(0));
              limits.put("high", values.get(1));
              limits.put("debt", values.get(2).negate());
              return limits;
            });
  }

  /** A limit moved against its effect never makes a statement met that was not. */
  @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
  void aLimitMovedInItsTightDirectionNeverRaisesTheOutcome(
      @ForAll("limitStatements") String formula,
      @ForAll("worlds") World world,
      @ForAll("limits") Map<String, Rational> before,
      @ForAll("limits") Map<String, Rational> after) {
    TruthFormula loose = shop(before).truth(formula);
    Map<String, Rational> moved = new LinkedHashMap<>(before);
    for (String limit : before.keySet()) {
      Sign sign = loose.sign(limit);
      Statistics.label("sign").collect(sign);
      Rational x = before.getOrDefault(limit, Rational.ZERO);
      Rational y = after.getOrDefault(limit, Rational.ZERO);
      if (sign == Sign.RAISES) {
        moved.put(limit, x.min(y));
      } else if (sign == Sign.LOWERS) {
        moved.put(limit, x.max(y));
      }
    }
    Truth tight = shop(moved).truth(formula).evaluate(world);
    assertTrue(tight.compareTo(loose.evaluate(world)) <= 0, () -> before + " to " + moved);
    Statistics.label("sign")
        .coverage(
            coverage -> {
              coverage.check(Sign.RAISES).percentage(p -> p > 5);
              coverage.check(Sign.LOWERS).percentage(p -> p > 5);
              coverage.check(Sign.MIXED).percentage(p -> p > 5);
            });
  }

  @Provide
  Arbitrary<String> limitStatements() {
    Arbitrary<String> name =
        Arbitraries.of(
            "low",
            "low",
            "high",
            "debt",
            "a",
            "e",
            "f",
            "1",
            "steps(e).value",
            "(sum q in part: q.m)");
    Arbitrary<String> small = grown(name, name);
    Arbitrary<String> number = grown(small, name);
    Arbitrary<String> comparison =
        Combinators.combine(number, Arbitraries.of("<=", "<", ">=", ">"), number)
            .as((l, sign, r) -> l + " " + sign + " " + r);
    return Arbitraries.oneOf(
        comparison,
        comparison.map("not (%s)"::formatted),
        comparison.map("k is red implies %s"::formatted));
  }

  private static Arbitrary<String> grown(Arbitrary<String> left, Arbitrary<String> right) {
    Arbitrary<String> signed =
        Combinators.combine(left, Arbitraries.of("+", "-", "*", "*", "/"), right)
            .as((l, sign, r) -> "(" + l + " " + sign + " " + r + ")");
    Arbitrary<String> called =
        Combinators.combine(Arbitraries.of("min", "max"), left, right)
            .as((f, l, r) -> f + "(" + l + ", " + r + ")");
    Arbitrary<String> single =
        Combinators.combine(Arbitraries.of("sqrt", "ln", "exp2", "-"), left)
            .as((f, l) -> f + "(" + l + ")");
    return Arbitraries.oneOf(left, signed, signed, called, single);
  }

  private static Shop shop(Map<String, Rational> limits) {
    Shop shop = Shop.open();
    limits.forEach((name, value) -> shop.limit(name, value));
    return shop;
  }
}
