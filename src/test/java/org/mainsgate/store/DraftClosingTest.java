package org.mainsgate.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.evidence.Visit;
import org.mainsgate.source.Complaints;

class DraftClosingTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final String CLOSED = PaperBench.VISITS + PaperBench.DRAFT_ID + ".yaml";
  private static final String SIDECAR = CLOSED + ".sha256";

  @TempDir Path folder;
  private PaperBench bench;

  @BeforeEach
  void aBench() {
    bench = new PaperBench(folder);
  }

  private List<Visit> visits() {
    StoredInstrument stored = bench.instrument();
    assertTrue(stored.complaints().isEmpty(), stored.complaints()::renderAll);
    return stored.record().orElseThrow().visits();
  }

  @Test
  void theClosedVisitSaysWhatTheDraftSaid() {
    Visit draft = visits().get(0);
    bench.close(DAY);
    Visit closed = visits().get(0);
    assertEquals(1, visits().size());
    assertEquals(
        draft.found().stream().map(e -> e.id() + e.value()).toList(),
        closed.found().stream().map(e -> e.id() + e.value()).toList());
    assertEquals(DAY, closed.closing().orElseThrow().on());
    assertEquals(List.of(), closed.closing().orElseThrow().after());
  }

  @Test
  void theBytesOfTheDraftComeFirstAndAreNotTouched() {
    bench.close(DAY);
    assertEquals(
        PaperBench.DRAFT_TEXT + "closed:\n  on: 2026-11-25\n  after: []\n", bench.text(CLOSED));
  }

  @Test
  void theSidecarIsALineOfSha256sum() {
    Closed closed = bench.close(DAY);
    assertEquals(StoredFile.sha256(bench.text(CLOSED).getBytes(UTF_8)), closed.hash());
    assertEquals(closed.hash() + "  " + PaperBench.DRAFT_ID + ".yaml\n", bench.text(SIDECAR));
    assertEquals(CLOSED, closed.path());
  }

  /** FIPS 180-4, the example of the message {@code abc}. */
  @Test
  void theHashIsSha256() {
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        StoredFile.sha256("abc".getBytes(UTF_8)));
  }

  @Test
  void nothingElseIsLeftInTheFolder() {
    bench.close(DAY);
    assertEquals(
        List.of(PaperBench.DRAFT_ID + ".yaml", PaperBench.DRAFT_ID + ".yaml.sha256"),
        bench.visits());
  }

  @Test
  void theNextVisitNamesTheHeads() {
    Closed first = bench.close(DAY);
    another("2026-11-26-AR-0b1c");
    Closed second = bench.close(LocalDate.of(2026, 11, 26));
    assertEquals(List.of(first.hash()), after(second));
    assertEquals(List.of(second.hash()), bench.instrument().heads());
  }

  @Test
  void visitsThatDidNotKnowEachOtherAreBothHeads() {
    Closed first = bench.close(DAY);
    String text = bench.text(CLOSED);
    String sidecar = bench.text(SIDECAR);
    bench.delete(CLOSED);
    bench.delete(SIDECAR);
    another("2026-11-26-AR-0b1c");
    Closed second = bench.close(LocalDate.of(2026, 11, 26));
    bench.write(CLOSED, text);
    bench.write(SIDECAR, sidecar);
    List<String> both = List.of(first.hash(), second.hash()).stream().sorted().toList();
    assertEquals(both, bench.instrument().heads());
    another("2026-11-27-AR-1111");
    assertEquals(both, after(bench.close(LocalDate.of(2026, 11, 27))));
    assertEquals(
        List.of("2026-11-25-AR-7f3a", "2026-11-26-AR-0b1c", "2026-11-27-AR-1111"),
        visits().stream().map(Visit::id).toList());
  }

  private void another(String id) {
    bench.write(
        PaperBench.VISITS + id + ".draft.yaml",
        "format: 1\ndate: " + id.substring(0, 10) + "\nby: AR\n");
  }

  private List<String> after(Closed closed) {
    return visits().stream()
        .filter(visit -> visit.id().equals(closed.visit()))
        .findFirst()
        .orElseThrow()
        .closing()
        .orElseThrow()
        .after();
  }

  @Test
  void aLastLineWithoutAnEndGetsOne() {
    bench.write(PaperBench.DRAFT, PaperBench.DRAFT_TEXT.stripTrailing());
    bench.close(DAY);
    assertTrue(bench.text(CLOSED).startsWith(PaperBench.DRAFT_TEXT + "closed:\n"));
  }

  @Test
  void aDraftBetweenBracesIsRefusedWithTheFix() {
    bench.write(PaperBench.DRAFT, "{format: 1, date: 2026-11-25, by: AR}\n");
    String refused = bench.closingRefused(DAY);
    assertTrue(refused.contains("not `{...}`"), refused);
    assertEquals(List.of(PaperBench.DRAFT_ID + ".draft.yaml"), bench.visits());
  }

  @Test
  void aDraftThatEndsInItsOwnEndMarkIsRefused() {
    bench.write(PaperBench.DRAFT, PaperBench.DRAFT_TEXT + "...\n");
    String refused = bench.closingRefused(DAY);
    assertTrue(refused.contains("lines added at its end would change it"), refused);
  }

  @Test
  void aDraftWithAComplaintIsNotClosed() {
    bench.change(PaperBench.DRAFT, "class: I", "class: IX");
    assertTrue(bench.closingRefused(DAY).contains("unknown value `IX`"));
    assertEquals(List.of(PaperBench.DRAFT_ID + ".draft.yaml"), bench.visits());
  }

  @Test
  void aDayBeforeTheVisitIsRefused() {
    String refused = bench.closingRefused(DAY.minusDays(1));
    assertTrue(refused.contains("a date up to `2026-11-24`"), refused);
  }

  @Test
  void withoutADraftThereIsNothingToClose() {
    bench.close(DAY);
    assertTrue(bench.closingRefused(DAY).contains("there is no draft to close"));
  }

  @Test
  void amongSeveralDraftsOneMustBeNamed() throws IOException {
    another("2026-11-24-AR-0b1c");
    assertTrue(bench.closingRefused(DAY).contains("several drafts"));
    Complaints complaints = new Complaints();
    Optional<Closed> closed =
        bench
            .open()
            .close(
                PaperBench.TAG,
                Optional.of("2026-11-24-AR-0b1c"),
                DAY,
                bench.bench(),
                PaperBench.reader(),
                complaints);
    assertEquals("2026-11-24-AR-0b1c", closed.orElseThrow().visit());
    assertTrue(Files.exists(bench.path(PaperBench.DRAFT)));
  }

  /** Stopped after the first step: the closed visit is there, without a sidecar. */
  @Test
  void aClosingStoppedBeforeTheSidecarIsFinished() {
    Closed whole = bench.close(DAY);
    bench.delete(SIDECAR);
    bench.write(PaperBench.DRAFT, PaperBench.DRAFT_TEXT);
    assertEquals(1, visits().size(), "the draft does not count beside its closed visit");
    assertTrue(bench.instrument().notes().get(0).contains("is not finished"));
    // On another day: what was closed stays closed as it was.
    assertEquals(whole, bench.close(DAY.plusDays(3)));
    assertEquals(
        List.of(PaperBench.DRAFT_ID + ".yaml", PaperBench.DRAFT_ID + ".yaml.sha256"),
        bench.visits());
    assertEquals(List.of(), bench.instrument().notes());
  }

  /** Stopped after the second step: the draft is still there. */
  @Test
  void aClosingStoppedBeforeTheDraftIsDeletedIsFinished() {
    Closed whole = bench.close(DAY);
    bench.write(PaperBench.DRAFT, PaperBench.DRAFT_TEXT);
    assertEquals(1, visits().size());
    assertEquals(whole, bench.close(DAY));
    assertFalse(Files.exists(bench.path(PaperBench.DRAFT)));
  }

  /** Stopped in the middle of the first step: a temporary file is there. */
  @Test
  void aLeftoverIsReportedAndSweptByTheNextClosing() {
    String leftover =
        PaperBench.VISITS + "." + PaperBench.DRAFT_ID + ".yaml.mainsgate-0123456789abcdef.tmp";
    bench.write(leftover, "form");
    assertEquals(
        List.of("left over from an interrupted write: " + leftover), bench.instrument().notes());
    assertTrue(Files.exists(bench.path(leftover)), "reading never writes");
    bench.close(DAY);
    assertFalse(Files.exists(bench.path(leftover)));
  }

  @Test
  void aTemporaryFileOfAnotherProgramIsLeftAlone() {
    String other = PaperBench.VISITS + ".sync.tmp";
    bench.write(other, "x");
    bench.close(DAY);
    assertTrue(Files.exists(bench.path(other)));
  }

  @Test
  void anExistingFileIsNeverReplaced() {
    bench.write(CLOSED, "mine");
    assertThrows(
        FileAlreadyExistsException.class,
        () -> NewFile.write(bench.path(CLOSED), "theirs".getBytes(UTF_8)));
    assertEquals("mine", bench.text(CLOSED));
    assertEquals(2, bench.visits().size(), "no temporary file stays");
  }
}
