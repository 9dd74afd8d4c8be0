package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.mainsgate.Golden;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.SourceText;
import org.mainsgate.source.Text;

/** Every complaint as a person reads it, the caret under the character that is meant. */
final class FormulaComplaintsTest {
  @Test
  void complaintsReadAsTheyWereLookedAt() {
    Map<String, String> cases = new LinkedHashMap<>();
    // What can't be read.
    cases.put("empty", " \n");
    cases.put("foreign-signs", "a == b && c != 1 or $a ^ 2 > {b}");
    cases.put("chained-comparison", "a <= b <= c");
    cases.put("missing-parenthesis", "(a + b <= c");
    cases.put("spare-parenthesis", "a <= b) and c < 1");
    cases.put("missing-operand", "a <= b + * c");
    cases.put("ends-too-early", "a <= b and");
    cases.put("two-names", "a b < c");
    cases.put("limit-in-a-formula", "earth_resistance <= 0.1 Ω");
    cases.put("limit-in-two-unit-words", "flex(core_area).plain <= 20 Ω/km");
    cases.put("zero-with-an-offset", "a <= 0 °C");
    cases.put("unknown-unit", "voltage >= 0 volts");
    cases.put("exponent", "a <= 1e3");
    cases.put("capital-name", "Voltage >= 0 V");
    cases.put("reserved-name", "all sum in part: a < b");
    cases.put("quantifier-without-colon", "all p in part p.m < 1");
    cases.put("is-without-a-name", "a + b is red");
    cases.put("is-without-a-value", "k is <= b");
    cases.put("in-without-a-list", "k in red");
    cases.put("one-argument", "min(a) < b");
    cases.put("two-arguments", "sqrt(a, b) < c");
    cases.put("table-without-column", "steps(a) < b");
    cases.put("long-number", "a < " + "1".repeat(41));
    // What means nothing.
    cases.put("unknown-name", "earth_resistanc <= base");
    cases.put("unknown-name-of-an-item", "all p in part: p.m_color is red");
    cases.put("item-itself", "all p in part: p < 1");
    cases.put("unknown-kind", "all p in parts: p.m < 1");
    cases.put("variable-taken", "all a in part: b < 1");
    cases.put("variable-twice", "all p in part: any p in lead: p.m < 1");
    cases.put("unknown-value", "k in (red, blu)");
    cases.put("unknown-value-or-name", "plug is type_h");
    cases.put("value-twice", "k in (red, blue, red)");
    cases.put("unknown-table", "flexx(core_area).plain < base");
    cases.put("unknown-column", "flex(core_area).plane < base");
    cases.put("several-at-once", "aa < b and k is blau or earth_resistance + voltage > base");
    // What doesn't fit.
    cases.put("add-mismatch", "voltage + earth_resistance <= 0 V");
    cases.put("subtract-mismatch", "voltage - core_area <= 0 V");
    cases.put("compare-mismatch", "earth_resistance <= voltage");
    cases.put("compare-with-plain-zero", "earth_resistance >= 0");
    cases.put("min-mismatch", "min(voltage, earth_resistance) >= 0 V");
    cases.put("base-units", "voltage * voltage + core_area * earth_resistance * voltage < 0 V");
    cases.put("root-of-a-voltage", "sqrt(voltage) > 0");
    cases.put("logarithm-of-a-voltage", "ln(voltage) > 0");
    cases.put("key-of-another-dimension", "flex(voltage).plain * lead_length < base");
    cases.put("key-of-another-list", "colours(plug).value < 1");
    cases.put("number-as-statement", "a + b");
    cases.put("name-of-a-number-as-statement", "a and b < c");
    cases.put("statement-as-number", "(a < b) + c > 1");
    cases.put("observation-as-statement", "k and a < b");
    cases.put("observation-as-number", "k + 1 > a");
    cases.put("number-with-is", "a is red");
    cases.put("other-list", "k is plug");
    cases.put("varies-bare", "supply <= voltage");
    cases.put("highest-of-what-is-measured", "highest(voltage) > 0 V");
    cases.put("highest-of-an-expression", "highest(supply + voltage) > 0 V");
    Map<String, String> texts = new LinkedHashMap<>();
    cases.forEach((name, formula) -> texts.put(name, complaints(Shop.open(), formula)));
    texts.put(
        "value-and-name", complaints(Shop.open().withObservation("red", Shop.COLOURS), "k is red"));
    Golden.check("formula", texts);
  }

  private static String complaints(Shop shop, String formula) {
    Complaints complaints = new Complaints();
    SourceText source = new SourceText("rules", formula);
    complaints.reading(source);
    Formula.parse(Text.whole(source), complaints)
        .ifPresent(parsed -> parsed.asTruth(shop, complaints));
    assertFalse(complaints.isEmpty(), formula);
    return complaints.renderAll();
  }
}
