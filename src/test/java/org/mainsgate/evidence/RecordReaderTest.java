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

  @Test
  void aProfileMayBeAFileOfTheBench() {
    String own = PaperBench.BENCH_TEXT.replace("profile: gb", "profile: rules/our-own.yaml");
    assertEquals("rules/our-own.yaml", Paper.bench(own).profile());
  }

  @Test
  void aMetersDataAreInTheOrderOfTheirDays() {
    String later =
        "history:\n      - {from: 2026-06-01, calibrated: again}\n      - from: 2026-01-12\n";
    Bench bench =
        Paper.bench(
            PaperBench.BENCH_TEXT.replaceFirst(
                "history:\n *- from: 2026-01-12\n *cal", later + "        cal"));
    Bench.Meter meter = in(bench.meters(), "low-ohm");
    assertEquals(
        List.of(LocalDate.of(2026, 1, 12), LocalDate.of(2026, 6, 1)),
        meter.history().stream().map(Bench.MeterData::from).toList());
    assertEquals("again", meter.on(LocalDate.of(2026, 7, 1)).orElseThrow().calibrated());
  }

  @Test
  void aKindOfMeterMayHaveAFunctionThatNoQuantityAsksFor() {
    assertEquals(Set.of(), Set.copyOf(in(Paper.BENCH.meters(), "pocket").history()));
    Bench bench =
        Paper.bench(
            PaperBench.BENCH_TEXT.replace(
                "          resistance:\n",
                "          current: [{to: 1.999 A, digit: 0.001 A, accuracy: 2 % + 3 digits}]\n          resistance:\n"));
    assertEquals(
        Set.of("current", "resistance"),
        in(bench.meters(), "low-ohm").history().get(0).functions().keySet());
  }

  @Test
  void anEntryByAnotherHandSaysSo() {
    assertEquals(
        Optional.of("AR"), Paper.onTheCase("earth_resistance: {value: 0.1 Ω, by: AR}").by());
    assertEquals(Optional.empty(), Paper.onTheCase("earth_resistance: 0.1 Ω").by());
  }

  @Test
  void headingsBelowWhichNothingStandsYetSayNothing() {
    Visit visit =
        Paper.draft(
            Paper.HEAD
                + "found:\n  case:\n  instrument:\n  looked:\n  every:\nleft:\n  every: {lead: }\n");
    assertEquals(List.of(), visit.found());
    assertEquals(List.of(), visit.left());
  }

  @Test
  void whatIsSaidOfEveryThingOfAKindIsSaidOfThoseThatAreNamed() {
    Visit visit =
        Paper.draft(
            Paper.HEAD
                + "found: {looked: {exposed_part: [case]}, every: {exposed_part: {part_path: bonded}}}\n");
    assertEquals(
        List.of("found.every.exposed_part.case.part_path"),
        visit.found().stream().map(Entry::id).toList());
    assertEquals("case", visit.found().get(0).thing());
  }

  @Test
  void listsAreInTheOrderOfTheirKinds() {
    Visit visit =
        Paper.draft(
            Paper.HEAD
                + "found: {looked: {lead: 1, none: [hazard, fuse], exposed_part: [case]}}\n");
    assertEquals(
        List.of("exposed_part", "fuse", "hazard", "lead"),
        visit.foundLists().stream().map(Visit.Looked::kind).toList());
    assertEquals(
        List.of(1, 0, 0, 1), visit.foundLists().stream().map(Visit.Looked::count).toList());
  }

  @Test
  void severalJudgementsOfOneCheckHaveIdsOfTheirOwnInOrder() {
    String one = "check: lead-sheath-age, item: mains-lead, decision: accepted, by: AR, because: ";
    Visit visit =
        Paper.draft(
            Paper.HEAD
                + "judged: [{"
                + one.replace("mains-lead", "front-panel")
                + "c}, {"
                + one
                + "a}, {"
                + one
                + "b}]\n");
    assertEquals(
        List.of(
            "judged.front-panel.lead-sheath-age",
            "judged.mains-lead.lead-sheath-age",
            "judged.mains-lead.lead-sheath-age.2"),
        visit.judged().stream().map(Visit.Judgement::id).toList());
  }

  @Test
  void aWithdrawalMayNameAnEarlierVisit() {
    Visit visit =
        Paper.draft(
            Paper.HEAD
                + "withdrawn: [{entry: 2026-11-02-AR-0001/e9, reason: probe_slipped}, {entry: 2026-11-01-AR-0001/e2, reason: probe_slipped}]\n");
    assertEquals(
        List.of("2026-11-01-AR-0001", "2026-11-02-AR-0001"),
        visit.withdrawn().stream().map(Visit.Withdrawal::visit).toList());
    assertEquals(
        List.of("e2", "e9"), visit.withdrawn().stream().map(Visit.Withdrawal::entry).toList());
  }

  @Test
  void anInstrumentIsNamedWithWhatIsKnownOfIt() {
    assertEquals(
        "RC oscillator, Harrowgate Instrument Works RO-2, serial number 1187",
        Paper.INSTRUMENT.inWords());
    String bare =
        PaperBench.INSTRUMENT_TEXT
            .replace("maker: Harrowgate Instrument Works\n", "")
            .replace("model: RO-2\n", "")
            .replace("serial: \"1187\"\n", "");
    assertEquals("RC oscillator, no serial number", Paper.instrument(bare).inWords());
  }
}
