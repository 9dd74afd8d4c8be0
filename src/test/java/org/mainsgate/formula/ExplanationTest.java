package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;

/** The grounds of an outcome. */
final class ExplanationTest {
  private static ExactInterval between(String lo, String hi) {
    return ExactInterval.of(Rational.of(lo), Rational.of(hi));
  }

  @Test
  void aComparisonShowsBothSidesAndTheirAddends() {
    TruthFormula rule =
        Shop.open().truth("(earth_resistance) <= base + (share\n * copper - 0 Ω) + copper");
    World world =
        World.nothing()
            .number("earth_resistance", "0.0974", "0.1626")
            .number("core_area", "0.000001")
            .number("lead_length", "3");
    Ground.Comparison comparison = (Ground.Comparison) rule.explain(world).get(0);
    assertEquals("earth_resistance", comparison.leftText());
    assertEquals(between("0.0974", "0.1626"), comparison.left());
    assertEquals("≤", comparison.operator());
    assertEquals("base + (share * copper - 0 Ω) + copper", comparison.rightText());
    assertEquals(between("0.217", "0.217"), comparison.right());
    assertEquals(Truth.MET, comparison.truth());
    assertEquals("Ω", comparison.unit().symbol());
    assertEquals(
        List.of("base", "share * copper", "0 Ω", "copper of the lead"),
        comparison.rightTerms().stream().map(Ground.Term::label).toList());
    assertEquals(
        List.of(
            between("0.1", "0.1"),
            between("0.0585", "0.0585"),
            between("0", "0"),
            between("0.0585", "0.0585")),
        comparison.rightTerms().stream().map(Ground.Term::value).toList());
  }

  @Test
  void whatIsSubtractedHasItsSign() {
    World world = World.nothing().number("a", "1").number("b", "2").number("c", "3");
    Ground.Comparison comparison =
        (Ground.Comparison) Shop.open().truth("a - (b - c) < 0").explain(world).get(0);
    assertEquals(
        List.of(between("1", "1"), between("-2", "-2"), between("3", "3")),
        comparison.leftTerms().stream().map(Ground.Term::value).toList());
  }

  /** 298.15 K are 25 °C, but a difference of 5 K is not one of -268.15 °C. */
  @Test
  void aDifferenceOfTemperaturesIsInKelvin() {
    World world = World.nothing().number("ambient", "298.15");
    assertEquals("°C", comparison("ambient <= hot", world).unit().symbol());
    assertEquals("°C", comparison("max(ambient, hot) <= hot", world).unit().symbol());
    Ground.Comparison difference = comparison("hot - ambient >= rise", world);
    assertEquals("K", difference.unit().symbol());
    assertEquals(
        List.of("°C", "K"),
        difference.leftTerms().stream().map(term -> term.unit().symbol()).toList());
    assertEquals("K", comparison("hot - ambient <= hot", world).unit().symbol());
  }

  private static Ground.Comparison comparison(String formula, World world) {
    return (Ground.Comparison) Shop.open().truth(formula).explain(world).get(0);
  }

  @Test
  void everyGroundIsNamedAlsoWhereOthersSettleIt() {
    World world = World.nothing().number("a", "1").choice("k", "red", "blue");
    List<Ground> grounds =
        Shop.open().truth("a > 2 and (k in (green, red) or not warm) and k is n").explain(world);
    assertEquals(
        List.of(Truth.NOT_MET, Truth.UNDECIDED, Truth.MET, Truth.UNDECIDED),
        grounds.stream().map(Ground::truth).toList());
    assertEquals(
        new Ground.Choice(
            Map.of(), "k", List.of("red", "blue"), false, List.of("green", "red"), Truth.UNDECIDED),
        grounds.get(1));
    assertEquals(
        new Ground.Choice(
            Map.of(),
            "k is n",
            List.of("red", "blue"),
            false,
            List.of("red", "green", "blue"),
            Truth.UNDECIDED),
        grounds.get(3));
  }

  @Test
  void anItemAndAnOpenListAreNamed() {
    World world =
        World.nothing().number("p1.m", "1").number("p2.m", "2").list("part", false, "p1", "p2");
    List<Ground> grounds = Shop.open().truth("all p in part: p.m > 0").explain(world);
    assertEquals(
        List.of(Map.of("p", "p1"), Map.of("p", "p2"), Map.of()),
        grounds.stream().map(Ground::items).toList());
    assertEquals(new Ground.OpenList(Map.of(), "part"), grounds.get(2));
    List<Ground> sum = Shop.open().truth("(sum p in part: p.m) < 9").explain(world);
    assertEquals(new Ground.OpenList(Map.of(), "part"), sum.get(1));
    assertEquals(2, sum.size());
  }
}
