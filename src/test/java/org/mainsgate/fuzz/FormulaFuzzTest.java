package org.mainsgate.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.DictionaryEntries;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.MethodSource;
import org.mainsgate.formula.Formula;
import org.mainsgate.formula.NumberFormula;
import org.mainsgate.formula.Shop;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.formula.World;
import org.mainsgate.source.Complaint;
import org.mainsgate.source.Complaints;

/**
 * Any text, read as a formula, checked as a statement and as a number, and asked where nothing is
 * known: a formula or a complaint inside the text, never an exception.
 */
class FormulaFuzzTest {

  @MethodSource("seeds")
  @DictionaryEntries({
    " and ",
    " or ",
    "not ",
    " implies ",
    " is ",
    " is not ",
    " in (",
    "all p in part: ",
    "any p in part: ",
    "sum q in part: ",
    "min(",
    "max(",
    "sqrt(",
    "ln(",
    "exp2(",
    "pi",
    "highest(v)",
    "lowest(supply)",
    "nominal(v)",
    "steps(",
    ").value",
    "colours(k).value",
    "flex(core_area).plain",
    "p.m",
    "p.m_colour",
    "earth_resistance",
    "voltage",
    "ambient",
    "0 \\xCE\\xA9",
    "0 V",
    "0 \\xC2\\xB0C",
    " <= ",
    " < ",
    " \\xE2\\x89\\xA5 ",
    " \\xC3\\x97 ",
    " \\xC3\\xB7 ",
    "\\xE2\\x88\\x92",
    "red",
    "k",
    "warm",
    "twice",
    "copper"
  })
  @FuzzTest(maxDuration = "8m")
  void anyTextIsAFormulaOrComplainedOf(byte[] bytes) {
    String text = new String(bytes, UTF_8);
    Complaints complaints = new Complaints();
    Optional<Formula> formula = Formula.parse(Shop.text(text), complaints);
    assertEquals(formula.isEmpty(), !complaints.isEmpty());
    inside(complaints, text);
    if (formula.isPresent()) {
      asTruth(formula.get(), text);
      asNumber(formula.get(), text);
    }
  }

  private static void asTruth(Formula formula, String text) {
    Complaints complaints = new Complaints();
    Optional<TruthFormula> truth = formula.asTruth(Shop.open(), complaints);
    assertEquals(truth.isEmpty(), !complaints.isEmpty());
    inside(complaints, text);
    if (truth.isPresent()) {
      truth.get().evaluate(World.nothing());
      truth.get().explain(World.nothing());
      truth.get().rowsTouched(World.nothing());
      truth.get().limits().forEach(truth.get()::sign);
    }
  }

  private static void asNumber(Formula formula, String text) {
    Complaints complaints = new Complaints();
    Optional<NumberFormula> number = formula.asNumber(Shop.open(), null, complaints);
    assertEquals(number.isEmpty(), !complaints.isEmpty());
    inside(complaints, text);
    number.ifPresent(found -> found.evaluate(World.nothing()));
  }

  private static void inside(Complaints complaints, String text) {
    for (Complaint complaint : complaints.sorted()) {
      assertTrue(complaint.at().line() <= text.lines().count() + 1, complaint::toString);
    }
    assertEquals(complaints.isEmpty(), complaints.renderAll().isEmpty());
  }

  static List<byte[]> seeds() {
    return Stream.of(
            "a <= b and not k is red",
            "(sum q in part: q.m * a) / 2 >= highest(v) - 0.5",
            "all p in part: p.m_colour in (red, blue) or p.m < steps(e).value",
            "sqrt(earth_resistance * base) > 0 Ω implies warm",
            "max(ambient + rise, hot) ≥ hot",
            "flex(core_area).plain * lead_length <= copper",
            "ln(f) + exp2(b) * pi < -3",
            "earth_resistance.test_current * earth_resistance <= nominal(supply)")
        .map(formula -> formula.getBytes(UTF_8))
        .toList();
  }
}
