package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;

class FormulaInWordsTest {
  private static final Rules RULES =
      new Shelf().open(Shelf.Choice.named("gb"), new Complaints()).orElseThrow();

  @Test
  void anObservationIsReadWithTheTitlesOfItsValues() {
    assertEquals("cores is “three, one of them earth”", words("cores is three"));
    assertEquals("cores is not “two”", words("cores is not two"));
    assertEquals("protection class is one of “class I”, “class II”", words("class in (I, II)"));
    assertEquals("protection class is “class I”", words("class in (I)"));
    assertEquals(
        "plug on the lead is the same as plug pattern of the bench", words("plug is plug_pattern"));
  }

  @Test
  void aPathIsReadFromItsEnd() {
    assertEquals(
        "length of the lead, of the lead it was measured through, of the earth path ≤ ‘longest"
            + " lead that counts as short’",
        words("item.earth_resistance.through.lead_length <= short_lead"));
  }

  @Test
  void aCellOfATableNamesItsColumnOnlyWhereThereAreSeveral() {
    assertEquals(
        "‘largest plug fuse by cross-section’ for (cross-section of one core)",
        words("largest_fuse(core_area).fuse"));
    assertEquals(
        "‘current that a lead may carry, long’ for (cross-section of one core)",
        words("lead_rating(core_area).long"));
  }

  @Test
  void aQuantifierNamesTheKind() {
    assertEquals(
        "for every mains lead: cores is “two” or sheath and insulation is “sound”",
        words("all l in lead: l.cores is two or l.sheath is sound"));
    assertEquals(
        "(the sum, over all mains leads, of: length of the lead) < ‘longest lead that counts as"
            + " short’",
        words("(sum l in lead: l.lead_length) < short_lead"));
  }

  @Test
  void signsAndNumbersStayWithTheirUnits() {
    assertEquals(
        "2 × length of the lead ≥ 0 m and not (cores is “two”)",
        words("2 * lead_length >= 0 m and not (cores is two)"));
    assertEquals("the highest of (supply voltage) ÷ 2", words("highest(supply_voltage) / 2"));
  }

  @Test
  void noFormulaOfAnyCheckLosesANameOnTheWay() {
    CheckCards cards = new CheckCards(Map.of("gb", RULES), List.of());
    for (String id : cards.ids()) {
      CheckCard card = cards.of(id);
      assertFalse(
          card.requirement().words().matches(".*[a-z]_[a-z].*"), card.requirement().words());
      assertTrue(
          card.steps().stream().noneMatch(s -> s.is().words().matches(".*[a-z]_[a-z].*")), id);
    }
  }

  private static String words(String formula) {
    return new FormulaInWords(RULES, Map.of()).of(formula);
  }
}
