package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.PaperBench;

class RecordReaderTest {
  private static final Visit VISIT = Paper.draft(PaperBench.DRAFT_TEXT);

  private static Entry found(String id) {
    return VISIT.found().stream().filter(entry -> entry.id().equals(id)).findFirst().orElseThrow();
  }

  private static <T> T in(Map<String, T> map, String name) {
    return Objects.requireNonNull(map.get(name), name);
  }

  private static String typed(Value value) {
    return ((Value.Amount) value).typed().text();
  }

  @Test
  void theBenchHasItsHeading() {
    assertEquals("north-light", Paper.BENCH.name());
    assertEquals(ZoneId.of("Europe/London"), Paper.BENCH.zone());
    assertEquals("gb", Paper.BENCH.profile());
    assertEquals("the restorer", in(Paper.BENCH.people(), "AR").name());
  }

  @Test
  void theSiteHasItsEntriesWithTheirDates() {
    Entry socket =
        Paper.BENCH.site().stream()
            .filter(entry -> entry.property().equals("socket_voltage"))
            .findFirst()
            .orElseThrow();
    assertEquals("site.socket_voltage", socket.id());
    assertEquals("bench", socket.thing());
    assertEquals(Optional.of(LocalDate.of(2026, 11, 20)), socket.on());
    assertEquals(Optional.of("pocket"), socket.meter());
  }

  @Test
  void aMeterHasItsDataFromTheDayOn() {
    Bench.Meter meter = in(Paper.BENCH.meters(), "low-ohm");
    assertTrue(meter.on(LocalDate.of(2026, 1, 11)).isEmpty());
    Bench.MeterData data = meter.on(LocalDate.of(2026, 1, 12)).orElseThrow();
    assertEquals(Optional.of(LocalDate.of(2027, 1, 12)), data.due());
    assertEquals(2, in(data.functions(), "resistance").size());
  }

  @Test
  void theInstrumentHasItsThings() {
    assertEquals(Set.of("mains-lead", "front-panel", "case"), Paper.INSTRUMENT.things().keySet());
    assertEquals("fixed lead", in(Paper.INSTRUMENT.things(), "mains-lead").title());
    assertEquals("case", in(Paper.INSTRUMENT.things(), "case").title(), "its id where it has none");
    assertEquals(List.of("photos/front.jpg"), Paper.INSTRUMENT.photos());
  }

  @Test
  void anEntryHasTheIdThatItWasGivenOrItsPlace() {
    Set<String> ids = new TreeSet<>(VISIT.found().stream().map(Entry::id).toList());
    assertTrue(
        ids.containsAll(
            Set.of("e1", "e2", "found.front-panel.earth_resistance.2", "found.mains-lead.cores")),
        ids::toString);
  }

  @Test
  void theShortFormTakesTheRestFromTheOneMethodOfTheBench() {
    Entry reading = found("found.front-panel.earth_resistance.2");
    assertEquals("0.13 Ω", typed(reading.value()));
    assertEquals(Optional.of("low-ohm"), reading.meter());
    assertEquals(Optional.of("1.999 Ω"), reading.range());
    assertEquals(Optional.of("yes"), reading.nulled());
    assertEquals("0.21 A", typed(in(reading.with(), "test_current")));
    assertEquals(
        new Value.Names(Set.of("plug_pin"), "earth pin of the plug"),
        reading.with().get("measured_from"));
  }

  @Test
  void anEntrysOwnWordGoesBeforeThatOfTheMethod() {
    Entry reading = Paper.onTheCase("earth_resistance: {value: 0.13 Ω, test_current: 10 A}");
    assertEquals("10 A", typed(in(reading.with(), "test_current")));
    assertEquals(Optional.of("low-ohm"), reading.meter());
  }

  @Test
  void aMethodSaysNothingOfAReadingWithAnotherMeter() {
    Entry reading = found("e2");
    assertEquals(Optional.of("pocket"), reading.meter());
    assertEquals(Optional.empty(), reading.range());
    assertEquals(Map.of(), reading.with());
  }

  @Test
  void amongSeveralMethodsTheEntryNamesOne() {
    Bench bench =
        Paper.bench(
            PaperBench.BENCH_TEXT
                + "  again: {of: earth_resistance, meter: low-ohm, nulled: no}\n");
    Visit visit =
        Paper.draft(
            Paper.HEAD + "found: {case: {earth_resistance: {value: 0.13 Ω, method: again}}}\n",
            bench);
    assertEquals(Optional.of("no"), visit.found().get(0).nulled());
  }

  @Test
  void aPointerLeadsToItsThing() {
    assertEquals(new Value.Thing("mains-lead"), found("e1").with().get("through"));
  }

  @Test
  void aListOfNamesIsOneEntryWithSeveralCandidates() {
    Entry plug =
        VISIT.left().stream()
            .filter(entry -> entry.property().equals("plug"))
            .findFirst()
            .orElseThrow();
    assertEquals(Set.of("type_g", "none"), ((Value.Names) plug.value()).candidates());
  }

  @Test
  void unknownIsEveryCandidate() {
    Value value = Paper.onTheCase("part_path: unknown").value();
    assertEquals(
        Set.of("bonded", "double_insulated", "signal_common", "floating", "live_chassis"),
        ((Value.Names) value).candidates());
  }

  @Test
  void whatYamlWouldTakeForAnotherTypeIsText() {
    Visit visit =
        Paper.draft(Paper.HEAD + "found: {instrument: {class: 0, nothing_connected: no}}\n");
    assertEquals(
        List.of(Set.of("0"), Set.of("no")),
        visit.found().stream().map(e -> ((Value.Names) e.value()).candidates()).toList());
  }

  @Test
  void aListIsClosedByIdsOrByACount() {
    assertEquals(
        List.of(Optional.of(Set.of("case", "front-panel")), Optional.empty()),
        VISIT.foundLists().stream().map(Visit.Looked::things).toList());
    assertEquals(List.of(2, 1), VISIT.foundLists().stream().map(Visit.Looked::count).toList());
  }

  @Test
  void noneClosesAListAtNothing() {
    Visit visit = Paper.draft(Paper.HEAD + "left: {looked: {exposed_part: none}}\n");
    assertEquals(0, visit.leftLists().get(0).count());
  }

  @Test
  void workJudgementsAndWithdrawalsAreRead() {
    assertEquals("replaced", VISIT.work().get(0).act());
    assertEquals("only here", VISIT.judged().get(0).restriction());
    assertEquals(PaperBench.DRAFT_ID, VISIT.withdrawn().get(0).visit());
    assertEquals("e2", VISIT.withdrawn().get(0).entry());
  }

  @Test
  void aReadingBelowZeroIsNoComplaint() {
    assertEquals("-0.01 Ω", typed(Paper.onTheCase("earth_resistance: -0.01 Ω").value()));
  }

  @Test
  void aVisitOnTheDayItselfIsNotLate() {
    Complaints complaints = new Complaints();
    RecordReader.notAfter(VISIT, VISIT.date(), complaints);
    assertTrue(complaints.isEmpty());
    RecordReader.notAfter(VISIT, VISIT.date().minusDays(1), complaints);
    assertFalse(complaints.isEmpty());
  }
}
