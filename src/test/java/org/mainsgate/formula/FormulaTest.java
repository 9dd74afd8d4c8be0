package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.source.Complaint;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/** The language: what binds how, what is refused, and the shape of the answers. */
final class FormulaTest {
  private static final World POINTS =
      World.nothing()
          .number("a", "1")
          .number("b", "2")
          .number("c", "3")
          .number("v.highest", "7")
          .number("v.nominal", "6")
          .number("v.lowest", "5")
          .choice("k", "red")
          .choice("n", "blue")
          .choice("class", "0I")
          .list("part", true, "p1", "p2")
          .number("p1.m", "10")
          .number("p2.m", "20");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a + b * c | 7",
        "(a + b) * c | 9",
        "a - b - c | -4",
        "c / b / a | 1.5",
        "c ÷ b × a − a | 0.5",
        "-a * b | -2",
        "- - a | 1",
        "a - -b | 3",
        "min(c, b, a) | 1",
        "max(a, c, b) | 3",
        "exp2(c) | 8",
        "sqrt(b + b) | 2",
        "highest(v) - lowest(v) * nominal(v) | -23",
        "sum p in part: p.m + a | 32",
        "(sum p in part: p.m) + a | 31",
        "sum p in part: p.m * p.m | 500",
        "twice | 2",
        "steps(a + a).value | 40",
        "0.5 | 0.5",
      })
  void numbersBindAsInArithmetic(String formula, String value) {
    ExactInterval exact = Shop.open().number(formula).exact(POINTS);
    assertTrue(exact.contains(Rational.of(value)), formula + " = " + exact);
    Rational width = Rational.of("0.00000001");
    assertEquals(
        Truth.MET,
        exact.minus(ExactInterval.point(Rational.of(value))).atMost(ExactInterval.point(width)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a < b and b < c or c < a | MET",
        "c < a and (b < c or a < b) | NOT_MET",
        "a < b or b < c and c < a | MET",
        "not c < a and a < b | MET",
        "not (a < b and c < a) | MET",
        "not not a < b | MET",
        // implies binds least and to the right: t implies (t implies f), f implies (f implies f)
        "a < b implies b < c implies c < a | NOT_MET",
        "c < a implies c < a implies c < a | MET",
        "(c < a implies c < a) implies c < a | NOT_MET",
        "a < b or b < c implies c < a | NOT_MET",
        "c < a implies a < b and c < a | MET",
        "all p in part: p.m > 1 and c < a | NOT_MET",
        "(any p in part: p.m > 15) and a < b | MET",
        "all p in part: any q in part: q.m >= p.m | MET",
        "any p in part: all q in part: q.m < p.m | NOT_MET",
        "a ≤ a | MET",
        "a >= a and a ≥ a | MET",
        "a > a | NOT_MET",
        "k is red | MET",
        "k is not red | NOT_MET",
        "k is n | NOT_MET",
        "k is not n | MET",
        "k in (red) and n in (green, blue) | MET",
        "class is 0I | MET",
        "class in (0, I, II) | NOT_MET",
        "warm | MET",
        "not warm | NOT_MET",
      })
  void statementsBindAsTheGrammarSays(String formula, Truth truth) {
    assertEquals(truth, Shop.decide(formula, POINTS));
  }

  @Test
  void aFormulaMayStandOnSeveralLines() {
    TruthFormula formula = Shop.open().truth("a <\n    b\n  and b < c\n");
    assertEquals("a < b and b < c", formula.text());
    assertEquals(Truth.MET, formula.evaluate(POINTS));
  }

  @Test
  void dimensionsFollowTheArithmetic() {
    Shop shop = Shop.open();
    assertEquals(Dimension.RESISTANCE, shop.number("copper").dimension());
    assertEquals(Dimension.CURRENT, shop.number("voltage / earth_resistance").dimension());
    assertEquals(Dimension.VOLTAGE, shop.number("sqrt(voltage * voltage)").dimension());
    assertEquals(Dimension.NONE, shop.number("ln(voltage / highest(supply))").dimension());
    assertEquals("A", shop.number("voltage / earth_resistance").unit().symbol());
    assertEquals("mm²", shop.number("core_area + core_area").unit().symbol());
  }

  @Test
  void aNumberOfAnotherDimensionThanExpectedIsRefused() {
    Complaints complaints = new Complaints();
    Optional<NumberFormula> number =
        Shop.parsed("voltage").asNumber(Shop.open(), Dimension.CURRENT, complaints);
    assertTrue(number.isEmpty());
    assertEquals("a formula for a voltage", only(complaints).what());
    assertEquals("one for a current", only(complaints).right());
  }

  @Test
  void twoHundredLevelsAreAComplaintWithItsPlace() {
    for (String open : List.of("(", "- ", "not ", "sqrt(", "a < b implies ")) {
      String deep = open.repeat(200) + "a";
      Complaint complaint = only(refused(deep));
      assertEquals("a formula that is nested too deep", complaint.what());
      assertEquals(64 * open.length() + 1, complaint.at().column(), open);
    }
  }

  @Test
  void sixtyFourLevelsAreRead() {
    String nested = "(".repeat(63) + "a < b" + ")".repeat(63);
    assertEquals(Truth.MET, Shop.decide(nested, POINTS));
    assertEquals("a formula that is nested too deep", only(refused("(" + nested + ")")).what());
  }

  @Test
  void fiveHundredPartsAreReadAndNoMore() {
    String most = "a" + " + a".repeat(249);
    assertEquals(ExactInterval.point(Rational.of(250)), Shop.open().number(most).exact(POINTS));
    Complaint complaint = only(refused(most + " + a"));
    assertEquals("a formula with too many parts", complaint.what());
    assertEquals(most.length() + 2, complaint.at().column());
  }

  @Test
  void fourThousandCharactersAreReadAndNoMore() {
    String most = "a < b" + " ".repeat(3995);
    assertEquals(Truth.MET, Shop.decide(most, POINTS));
    Complaint complaint = only(refused(most + " "));
    assertEquals("a formula that is too long", complaint.what());
    assertEquals(4001, complaint.at().column());
  }

  /** Thirty doublings would be a thousand million parts to evaluate. */
  @Test
  void stepsThatDoubleEachOtherAreRefusedBeforeTheyCost() {
    Shop shop = Shop.open().step("s0", "zero", "a + a");
    List<String> refusals = new ArrayList<>();
    for (int i = 1; i < 30 && refusals.isEmpty(); i++) {
      String formula = "s%d + s%d".formatted(i - 1, i - 1);
      Complaints complaints = new Complaints();
      if (Shop.parsed(formula).asNumber(shop, null, complaints).isPresent()) {
        shop.step("s" + i, "step", formula);
      } else {
        refusals.add(only(complaints).what());
      }
    }
    assertEquals(List.of("a formula that is too large with the steps it uses"), refusals);
  }

  @Test
  void fourListsInsideEachOtherAreRefused() {
    String three = "all p in part: any q in part: (sum r in part: r.m + q.m) > p.m";
    assertEquals(Truth.MET, Shop.decide(three, POINTS));
    Complaints complaints = new Complaints();
    String four = "any s in lead: " + three;
    assertTrue(Shop.parsed(four).asTruth(Shop.open(), complaints).isEmpty());
    assertEquals("too many lists inside each other", only(complaints).what());
    Shop shop = Shop.open().step("total", "total", "sum s in part: s.m");
    String through = "all p in part: any q in part: all r in part: total > 0";
    assertTrue(Shop.parsed(through).asTruth(shop, new Complaints()).isEmpty());
  }

  @Test
  void wordsOfTheLanguageAreNoNames() {
    assertTrue(Formula.isReserved("sum"));
    assertFalse(Formula.isReserved("earth_resistance"));
    // After a point there is nothing to confuse them with.
    assertTrue(Formula.parse(Shop.text("steps(a).any < all.sum"), new Complaints()).isEmpty());
    assertTrue(Formula.parse(Shop.text("steps(a).any < b.sum"), new Complaints()).isPresent());
  }

  @Test
  void aFormulaInABlockOfYamlPointsAtItsOwnCharacter() {
    String yaml = "requirement: |\n  a < b\n  and voltagee > 0 V\n";
    Complaints complaints = new Complaints();
    Fields fields =
        (Fields)
            StrictYaml.read("rules.yaml", yaml.getBytes(StandardCharsets.UTF_8), complaints)
                .orElseThrow();
    Text text = (Text) fields.get("requirement").orElseThrow();
    Formula formula = Formula.parse(text, complaints).orElseThrow();
    assertTrue(formula.asTruth(Shop.open(), complaints).isEmpty());
    assertEquals(3, only(complaints).at().line());
    assertEquals(7, only(complaints).at().column());
    assertEquals("voltage", only(complaints).nearest());
  }

  @Test
  void theSurveyNamesAllThatIsAskedForThroughSteps() {
    TruthFormula formula =
        Shop.open()
            .truth(
                "all p in part: (p.m <= low and any q in lead: q.m + twice > p.m)"
                    + " and earth_resistance <= base + copper and n is k");
    Input.Binding p = new Input.Binding("p", "part");
    Input.Binding q = new Input.Binding("q", "lead");
    Reference pm = new Reference("p", List.of("m"));
    assertEquals(
        List.of(
            new Input(pm, List.of(p)),
            new Input(new Reference("q", List.of("m")), List.of(p, q)),
            new Input(Reference.of("a"), List.of(p, q)),
            new Input(pm, List.of(p, q)),
            new Input(Reference.of("earth_resistance"), List.of(p)),
            new Input(Reference.of("core_area"), List.of(p)),
            new Input(Reference.of("lead_length"), List.of(p)),
            new Input(Reference.of("n"), List.of(p)),
            new Input(Reference.of("k"), List.of(p))),
        List.copyOf(formula.inputs()));
    assertEquals(List.of("low", "base"), List.copyOf(formula.limits()));
    assertEquals(Set.of("flex"), formula.tables());
    assertEquals(List.of("part", "lead"), List.copyOf(formula.lists()));
  }

  @Test
  void aStepOfOneItemIsUsedOnlyWhereThatItemIsBound() {
    Shop outer = Shop.over("p", "part").step("margin", "margin of the part", "p.m - low");
    assertEquals(Map.of("p", "part"), outer.number("margin + 1").survey().free());
    World world = POINTS.with("p", "p1");
    assertEquals(Truth.MET, outer.truth("margin >= 9").evaluate(world));
    Complaints complaints = new Complaints();
    Meaning margin = outer.meaning(List.of("margin"), Map.of()).orElseThrow();
    Shop inner = Shop.open().with("margin", margin);
    assertEquals(Truth.MET, inner.truth("all p in part: margin >= 9").evaluate(POINTS));
    assertEquals(Truth.NOT_MET, inner.truth("all p in part: margin >= 10").evaluate(POINTS));
    assertEquals(Map.of(), inner.truth("all p in part: margin >= 9").survey().free());
    for (String wrong : List.of("margin >= 9", "all p in lead: margin >= 9")) {
      assertTrue(Shop.parsed(wrong).asTruth(inner, complaints).isEmpty());
    }
    assertEquals(2, complaints.count());
    assertEquals("`margin` speaks of one `p`", complaints.sorted().get(0).what());
  }

  @Test
  void factsThatAreNotFromTheListAreADefect() {
    TruthFormula formula = Shop.open().truth("k is red");
    World none = World.nothing().choice("k");
    World foreign = World.nothing().choice("k", "red", "octarine");
    assertThrows(IllegalStateException.class, () -> formula.evaluate(none));
    assertThrows(IllegalStateException.class, () -> formula.evaluate(foreign));
  }

  private static Complaints refused(String formula) {
    Complaints complaints = new Complaints();
    assertTrue(Formula.parse(Shop.text(formula), complaints).isEmpty());
    return complaints;
  }

  private static Complaint only(Complaints complaints) {
    assertEquals(1, complaints.count(), complaints::renderAll);
    return complaints.sorted().get(0);
  }
}
