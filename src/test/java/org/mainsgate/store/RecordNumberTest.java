package org.mainsgate.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.source.Complaints;

/** No two sealed records of an instrument have one number. */
class RecordNumberTest {
  private static final byte[] BYTES = {1, 2, 3};

  @TempDir Path around;

  private final Complaints complaints = new Complaints();
  private Path reports = Path.of("");
  private RecordFiles files = new PackedFiles(new Pack(Map.of()));

  @BeforeEach
  void aFolder() throws IOException {
    files = FolderReader.of(around);
    reports = around.resolve("reports");
  }

  private RecordNumber next() throws IOException {
    return RecordNumber.next(files, "reports");
  }

  private List<String> names() throws IOException {
    try (var all = Files.list(reports)) {
      return all.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void theFirstIsOneAndIsKeptUnderItsName() throws IOException {
    try (RecordNumber first = next()) {
      assertEquals(1, first.number());
      assertEquals(List.of(".1.number"), names());
      assertEquals(
          Optional.of("reports/0001_pass.pdf"), first.keep("0001_pass.pdf", BYTES, complaints));
    }
    assertEquals(List.of("0001_pass.pdf"), names());
  }

  @Test
  void oneThatIsMadeMeanwhileHasTheNext() throws IOException {
    try (RecordNumber first = next();
        RecordNumber second = next()) {
      assertEquals(List.of(1, 2), List.of(first.number(), second.number()));
    }
    assertFalse(Files.exists(reports), "nothing was kept, and nothing is left");
  }

  @Test
  void afterOneThatWasGivenBackTheNumberIsFreeAgain() throws IOException {
    next().close();
    try (RecordNumber again = next()) {
      assertEquals(1, again.number());
    }
  }

  @Test
  void theNextIsOneMoreThanTheHighestKeptWhateverElseLiesThere() throws IOException {
    Files.createDirectories(reports);
    Files.writeString(reports.resolve("0007_hold.pdf"), "");
    Files.writeString(reports.resolve("0009_hold.txt"), "");
    Files.writeString(reports.resolve("12_hold.pdf"), "");
    try (RecordNumber next = next()) {
      assertEquals(8, next.number());
    }
  }

  @Test
  void aNumberOfAStoppedProgramIsLeftOutAndSweptOnceAHigherOneIsKept() throws IOException {
    Files.createDirectories(reports);
    Files.writeString(reports.resolve(".3.number"), "");
    try (RecordNumber next = next()) {
      assertEquals(4, next.number());
      next.keep("0004_pass.pdf", BYTES, complaints);
      assertTrue(Files.exists(reports.resolve(".3.number")), "not before a higher one was kept");
    }
    try (RecordNumber next = next()) {
      assertEquals(5, next.number());
      next.keep("0005_pass.pdf", BYTES, complaints);
    }
    assertEquals(List.of("0004_pass.pdf", "0005_pass.pdf"), names());
  }

  @Test
  void whatIsStillHeldIsNoLeftoverAndWhatNobodyHoldsIs() throws IOException {
    try (RecordNumber held = next()) {
      Files.writeString(reports.resolve(".9.number"), "");
      assertEquals(
          List.of("left over from an interrupted write: reports/.9.number"),
          files.leftovers("reports"));
      assertEquals(1, held.number());
    }
  }

  @Test
  void aRecordIsKeptUnderItsOwnNumberOnly() throws IOException {
    try (RecordNumber first = next()) {
      assertThrows(
          IllegalArgumentException.class, () -> first.keep("0002_pass.pdf", BYTES, complaints));
      assertThrows(
          IllegalArgumentException.class, () -> first.keep("0001_pass.txt", BYTES, complaints));
    }
  }

  @Test
  void nothingIsWrittenOver() throws IOException {
    try (RecordNumber first = next()) {
      Files.writeString(reports.resolve("0001_pass.pdf"), "mine");
      assertEquals(Optional.empty(), first.keep("0001_pass.pdf", BYTES, complaints));
    }
    assertEquals("mine", Files.readString(reports.resolve("0001_pass.pdf")));
    assertFalse(complaints.isEmpty());
  }

  @Test
  void aFileInPlaceOfTheFolderIsAFault() throws IOException {
    Files.writeString(reports, "");
    assertThrows(IOException.class, this::next);
  }

  @Test
  void theNumberOfTheHighestKeptIsSweptToo() throws IOException {
    Files.createDirectories(reports);
    Files.writeString(reports.resolve("0005_hold.pdf"), "");
    Files.writeString(reports.resolve(".5.number"), "");
    try (RecordNumber next = next()) {
      assertEquals(6, next.number());
      next.keep("0006_pass.pdf", BYTES, complaints);
    }
    assertEquals(List.of("0005_hold.pdf", "0006_pass.pdf"), names());
  }

  @Test
  void theRecordsOfAnInstrumentLieBesideIt() throws IOException {
    PaperBench bench = new PaperBench(around.resolve("bench"));
    try (RecordNumber first = bench.open().nextRecord(PaperBench.TAG)) {
      assertEquals(
          Optional.of("instruments/NL-03/reports/0001_pass.pdf"),
          first.keep("0001_pass.pdf", BYTES, complaints));
    }
  }
}
