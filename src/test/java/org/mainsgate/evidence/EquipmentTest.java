package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mainsgate.quantity.Nulling;
import org.mainsgate.ruleset.Property;
import org.mainsgate.store.PaperBench;

/** What a bench has to measure a quantity with: its methods' meters, else all that can. */
class EquipmentTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final String EARTH = "earth_resistance";
  private static final String METHOD = "  earth: {of: earth_resistance, meter: low-ohm,";

  private static Equipment of(String bench, String quantity) {
    Property property = PaperBench.ruleset().vocabulary().property(quantity).orElseThrow();
    return Equipment.of(
        Paper.bench(bench), PaperBench.ruleset(), (Property.Quantity) property, DAY);
  }

  private static List<String> meters(Equipment equipment) {
    return equipment.meters().stream().map(Bench.Meter::name).toList();
  }

  private static String withoutMethods() {
    return PaperBench.BENCH_TEXT.substring(0, PaperBench.BENCH_TEXT.indexOf("methods:"));
  }

  @Test
  void theOneMethodSettlesMeterRangeAndLeads() {
    Equipment earth = of(PaperBench.BENCH_TEXT, EARTH);
    assertEquals(List.of("earth"), earth.methods());
    assertEquals(List.of("low-ohm"), meters(earth));
    assertEquals(1, earth.displays().size(), "its range of 1.999 Ω and not that of 19.99 Ω");
    assertEquals(Nulling.YES, earth.displays().get(0).nulling());
    assertEquals(Set.of("test_current", "measured_from"), earth.with().keySet());
  }

  @Test
  void aMethodWithoutARangeLeavesAllOfTheMetersRanges() {
    Equipment earth = of(PaperBench.BENCH_TEXT.replace(" range: 1.999 Ω,", ""), EARTH);
    assertEquals(2, earth.displays().size());
  }

  @Test
  void withoutAMethodEveryMeterOfTheFunctionIsMeantByItsKindToo() {
    Equipment earth = of(withoutMethods(), EARTH);
    assertEquals(List.of(), earth.methods());
    assertEquals(List.of("low-ohm", "pocket"), meters(earth));
    assertEquals(List.of(), earth.displays(), "it is not settled which it will be");
    assertEquals(Set.of(), earth.with().keySet());
  }

  @Test
  void aMeterWithoutTheFunctionIsNotMeant() {
    Equipment socket = of(withoutMethods(), "socket_voltage");
    assertEquals(List.of("pocket"), meters(socket));
    assertEquals(Nulling.YES, of(withoutMethods(), "socket_voltage").displays().get(0).nulling());
    assertEquals(List.of(), meters(of(withoutMethods(), "insulation_resistance")));
  }

  @Test
  void aMeterHasAFunctionThatItsOwnDataNameAndItsKindDoesNot() {
    String bench =
        withoutMethods()
            .replace(
                "          resistance:\n",
                "          insulation: [{to: 199.9 MΩ, digit: 0.1 MΩ, accuracy: 3 % + 3 digits}]\n          resistance:\n");
    assertEquals(List.of("low-ohm"), meters(of(bench, "insulation_resistance")));
  }

  @Test
  void aMethodForAnyMeterMeansAllBesideThoseOfOtherMethods() {
    String bench =
        PaperBench.BENCH_TEXT.replace(
            METHOD, "  any: {of: earth_resistance, nulled: no}\n" + METHOD);
    Equipment earth = of(bench, EARTH);
    assertEquals(List.of("any", "earth"), earth.methods());
    assertEquals(List.of("low-ohm", "pocket"), meters(earth));
    assertEquals(List.of(), earth.displays());
  }

  @Test
  void twoMethodsWithOneMeterNameItOnceAndSettleNothing() {
    String bench =
        PaperBench.BENCH_TEXT.replace(
            METHOD, "  again: {of: earth_resistance, meter: low-ohm, nulled: no}\n" + METHOD);
    Equipment earth = of(bench, EARTH);
    assertEquals(List.of("low-ohm"), meters(earth));
    assertEquals(List.of(), earth.displays());
    assertEquals(Set.of(), earth.with().keySet());
  }

  @Test
  void methodsOfOtherQuantitiesAreNotMeant() {
    assertEquals(List.of(), of(PaperBench.BENCH_TEXT, "socket_voltage").methods());
  }
}
