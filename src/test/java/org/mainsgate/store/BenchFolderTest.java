package org.mainsgate.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.Visit;
import org.mainsgate.source.Complaints;

class BenchFolderTest {
  /** What the visit of the next day starts with. */
  private static final String NEXT = "format: 1\ndate: 2026-11-26\nby: AR\n";

  @TempDir Path folder;
  private PaperBench bench;

  @BeforeEach
  void aBench() {
    bench = new PaperBench(folder.resolve("bench"));
  }

  @Test
  void theInstrumentsAreSortedByTag() {
    bench.write("instruments/NL-04/instrument.yaml", "");
    bench.write("instruments/A-1/instrument.yaml", "");
    assertEquals(List.of("A-1", "NL-03", "NL-04"), bench.open().tags());
  }

  @Test
  void anInstrumentThatCantBeReadStopsNoOther() {
    bench.write("instruments/A-1/instrument.yaml", "format: 1\n");
    BenchFolder open = bench.open();
    List<StoredInstrument> all =
        open.tags().stream()
            .map(tag -> open.instrument(tag, bench.bench(), PaperBench.reader()))
            .toList();
    assertFalse(all.get(0).complaints().isEmpty());
    assertEquals(Optional.empty(), all.get(0).record());
    assertTrue(all.get(1).record().isPresent());
  }

  @Test
  void thoseThatAreNamedAreWantedOnceInTheirOrderElseAll() {
    BenchFolder open = bench.open();
    assertEquals(open.tags(), open.wanted(List.of()));
    assertEquals(List.of("A-1", "NL-03"), open.wanted(List.of("NL-03", "A-1", "NL-03")));
  }

  @Test
  void anInstrumentThatIsNotThereIsComplainedOfWithTheNearest() {
    StoredInstrument stored = bench.open().instrument("NL-3", bench.bench(), PaperBench.reader());
    assertTrue(stored.complaints().renderAll().contains("nearest: `NL-03`"));
  }

  @Test
  void aTagThatLeadsElsewhereIsNoTag() {
    StoredInstrument stored =
        bench.open().instrument("../instruments/NL-03", bench.bench(), PaperBench.reader());
    assertFalse(stored.complaints().isEmpty());
    assertEquals(List.of(), stored.files());
  }

  @Test
  void theBytesAndHashesOfAllFilesAreKept() {
    bench.close(LocalDate.of(2026, 11, 25));
    List<StoredFile> files = bench.instrument().files();
    assertEquals(
        List.of(
            PaperBench.INSTRUMENT,
            PaperBench.VISITS + PaperBench.DRAFT_ID + ".yaml",
            PaperBench.VISITS + PaperBench.DRAFT_ID + ".yaml.sha256"),
        files.stream().map(StoredFile::path).toList());
    assertArrayEquals(PaperBench.INSTRUMENT_TEXT.getBytes(UTF_8), files.get(0).bytes());
  }

  @Test
  void aLinkThatStaysInsideIsFollowed() throws IOException {
    bench.move(PaperBench.DRAFT, "kept.yaml");
    Files.createSymbolicLink(bench.path(PaperBench.DRAFT), bench.path("kept.yaml"));
    assertTrue(bench.instrument().record().isPresent());
  }

  @Test
  void aPictureThatLeadsOutOfTheBenchIsNotRead() {
    bench.write("../secret.jpg", "x");
    Complaints complaints = new Complaints();
    assertEquals(Optional.empty(), bench.open().file("../secret.jpg", complaints));
    assertFalse(complaints.isEmpty());
  }

  @Test
  void aPictureMayBeLargerThanARecord() {
    bench.write("instruments/NL-03/photos/front.jpg", "x".repeat(2 << 20));
    Complaints complaints = new Complaints();
    assertTrue(bench.open().file("instruments/NL-03/photos/front.jpg", complaints).isPresent());
  }

  @Test
  void otherFilesAreNotedAndHiddenOnesPassedOver() {
    bench.write(PaperBench.VISITS + "remarks.txt", "x");
    bench.write(PaperBench.VISITS + ".DS_Store", "x");
    assertEquals(
        List.of("not a part of the record: " + PaperBench.VISITS + "remarks.txt"),
        bench.instrument().notes());
  }

  @Test
  void aWithdrawalMayNameAnEntryOfAnEarlierVisit() {
    bench.close(LocalDate.of(2026, 11, 25));
    bench.write(
        PaperBench.VISITS + "2026-11-26-AR-0b1c.draft.yaml",
        NEXT + "withdrawn: [{entry: 2026-11-25-AR-7f3a/e1, reason: misread}]\n");
    InstrumentRecord record = bench.instrument().record().orElseThrow();
    Visit.Withdrawal withdrawal = record.visits().get(1).withdrawn().get(0);
    assertEquals("2026-11-25-AR-7f3a", withdrawal.visit());
    assertEquals("e1", withdrawal.entry());
  }

  @Test
  void aWithdrawalOfAnEntryThatIsNotInTheEarlierVisitIsComplainedOf() {
    bench.close(LocalDate.of(2026, 11, 25));
    bench.write(
        PaperBench.VISITS + "2026-11-26-AR-0b1c.draft.yaml",
        NEXT + "withdrawn: [{entry: 2026-11-25-AR-7f3a/e5, reason: misread}]\n");
    String complaints = bench.instrument().complaints().renderAll();
    assertTrue(complaints.contains("expected: one of `e1`, `e2`"), complaints);
  }

  @Test
  void touchedVisitsAreToldFromUnreadableOnes() {
    bench.change(PaperBench.DRAFT, "class: I", "class: IX");
    assertFalse(bench.instrument().altered());
    bench.change(PaperBench.DRAFT, "class: IX", "class: I");
    bench.close(LocalDate.of(2026, 11, 25));
    assertFalse(bench.instrument().altered());
    bench.change(PaperBench.VISITS + PaperBench.DRAFT_ID + ".yaml", "forty", "fifty");
    assertTrue(bench.instrument().altered());
  }
}
