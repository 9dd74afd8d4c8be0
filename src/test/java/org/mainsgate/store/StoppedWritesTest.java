package org.mainsgate.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mainsgate.source.Complaints;

/** Writes that are stopped, or fail, at each of their steps on the disk. */
class StoppedWritesTest {
  private static final byte[] OLD = "old".getBytes(UTF_8);
  private static final byte[] NEW = "something new".getBytes(UTF_8);
  private static final String LEFT = ".NL-01.pdf.mainsgate-0123456789abcdef.tmp";

  @TempDir Path folder;

  private enum Fault {
    STOPPED,
    FAILED;

    /** Meets one step; a program that was stopped does not take the next either. */
    SteppedDisk.Steps at(int number, int[] done) {
      return (step, file) -> {
        int now = ++done[0];
        if (this == STOPPED && now >= number) {
          throw new Turns.Stopped();
        }
        if (this == FAILED && now == number) {
          throw step.equals("write") || step.equals("force")
              ? new IOException("Input/output error")
              : new FileSystemException(file, null, "Input/output error");
        }
      };
    }
  }

  private enum Work {
    START,
    ADD,
    DRAFT,
    CLOSE,
    KEEP;

    Program program() {
      return switch (this) {
        case START -> Program.start(PaperBench.BENCH_TEXT);
        case ADD -> Program.add(Program.NEW);
        case DRAFT -> Program.draft("2026-11-27-AR-9999");
        case CLOSE -> Program.close(PaperBench.DRAFT_ID);
        case KEEP -> Program.keep(Program.RECORD);
      };
    }

    void prepare(Path place) throws IOException {
      Files.createDirectories(place);
      if (this != START) {
        new PaperBench(place);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Work.class)
  void whereverAWorkIsStoppedOrFailsTheSameAgainEndsIt(Work work) throws IOException {
    Path whole = folder.resolve("whole");
    work.prepare(whole);
    work.program().on(whole, new Complaints());
    for (Fault fault : Fault.values()) {
      boolean met = true;
      for (int number = 1; met; number++) {
        Path place = folder.resolve(fault + "-" + number);
        work.prepare(place);
        met = isMet(work, fault, number, place, files(whole));
      }
    }
  }

  /** Whether there were so many steps. */
  private static boolean isMet(
      Work work, Fault fault, int number, Path place, Map<String, String> whole)
      throws IOException {
    String where = work + ", " + fault + " at step " + number;
    int[] done = {0};
    Optional<String> said = Optional.empty();
    Complaints complaints = new Complaints();
    try {
      said = work.program().on(SteppedDisk.path(place, fault.at(number, done)), complaints);
      assertEquals(said.isEmpty(), !complaints.isEmpty(), where);
    } catch (Turns.Stopped | IOException stopped) {
      // Told, or not: what counts is what is there.
    }
    if (said.isPresent()) {
      assertWhole(work, whole, files(place), where);
    }
    if (work != Work.START || Files.exists(place.resolve("bench.yaml"))) {
      assertEquals("", complaintsOf(place), where);
    }
    work.program().on(place, new Complaints());
    assertWhole(work, whole, files(place), where + ", then again");
    assertEquals("", complaintsOf(place), where + ", then again");
    assertTrue(number < 1_000, "no end");
    return done[0] >= number;
  }

  /** A record that was kept, but not acknowledged, keeps its number, and so does one given up. */
  private static void assertWhole(
      Work work, Map<String, String> whole, Map<String, String> found, String where) {
    if (work == Work.KEEP) {
      assertTrue(
          found.entrySet().stream()
              .filter(file -> file.getKey().endsWith(Program.RECORD))
              .allMatch(file -> file.getValue().equals(Program.RECORD)),
          where);
      assertTrue(found.keySet().stream().anyMatch(name -> name.endsWith(Program.RECORD)), where);
    } else {
      assertEquals(whole, found, where);
    }
  }

  private static String complaintsOf(Path place) {
    Complaints complaints = new Complaints();
    Optional<BenchFolder> bench = BenchFolder.open(place, complaints);
    bench
        .flatMap(found -> found.bench(PaperBench.reader(), complaints))
        .ifPresent(
            site ->
                bench.get().tags().stream()
                    .map(tag -> bench.get().instrument(tag, site, PaperBench.reader()))
                    .forEach(found -> complaints.addAll(found.complaints())));
    return complaints.renderAll();
  }

  /** All files but the temporary ones of a program that was stopped. */
  private static Map<String, String> files(Path place) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(place)) {
      for (Path each : all.filter(Files::isRegularFile).toList()) {
        String name = each.getFileName().toString();
        if (!TemporaryFile.isName(name) && !RecordNumber.isName(name)) {
          files.put(place.relativize(each).toString(), Files.readString(each));
        }
      }
    }
    return files;
  }

  @Test
  void whatIsToldOfAFailedWriteIsTrue() throws IOException {
    boolean unforced = false;
    for (int number = 1; number < 40; number++) {
      Path target = folder.resolve(number + ".yaml");
      try {
        NewFile.write(SteppedDisk.path(target, Fault.FAILED.at(number, new int[1])), NEW);
        assertEquals("something new", Files.readString(target));
      } catch (NewFile.Unforced there) {
        unforced = true;
        assertEquals("something new", Files.readString(target));
        assertTrue(there.toString().contains("may not outlast a loss of power"));
      } catch (IOException none) {
        assertFalse(Files.exists(target), () -> "told of none: " + none);
      }
    }
    assertTrue(unforced, "the force of the folder was not met");
  }

  @Test
  void whatIsReplacedIsOldOrNewAndNeverHalf() throws IOException {
    for (Fault fault : Fault.values()) {
      for (int number = 1; number < 20; number++) {
        Path target = folder.resolve(fault + ".pdf");
        Files.write(target, OLD);
        boolean done = true;
        boolean mayBeNew = false;
        try {
          NewFile.replace(SteppedDisk.path(target, fault.at(number, new int[1])), NEW);
        } catch (NewFile.Unforced there) {
          mayBeNew = true;
        } catch (Turns.Stopped stopped) {
          done = Files.readString(target).equals("something new");
        } catch (IOException failed) {
          done = false;
        }
        assertEquals(done || mayBeNew ? "something new" : "old", Files.readString(target));
      }
    }
  }

  @Test
  void aFolderIsThereWithAllThatBelongsIntoItOrNotAtAll() throws IOException {
    for (Fault fault : Fault.values()) {
      for (int number = 1; number < 60; number++) {
        Path target = folder.resolve(fault + "-" + number);
        try {
          NewFolder.whole(
              SteppedDisk.path(target, fault.at(number, new int[1])),
              inside -> {
                NewFile.write(inside.resolve("a"), NEW);
                NewFile.write(inside.resolve("b"), NEW);
              });
        } catch (Turns.Stopped | IOException stopped) {
          // What counts is what is there.
        }
        if (Files.exists(target)) {
          assertTrue(Files.exists(target.resolve("a")) && Files.exists(target.resolve("b")));
        }
      }
    }
  }

  @Test
  void everyFolderThatIsNewIsForced() throws IOException {
    StringBuilder forced = new StringBuilder();
    SteppedDisk.Steps listening =
        (step, file) -> {
          if (step.equals("force")) {
            forced.append(folder.relativize(Path.of(file))).append(' ');
          }
        };
    NewFolder.make(SteppedDisk.path(folder.resolve("a/b/c"), listening));
    String inside = forced.substring(forced.indexOf(" ") + 1);
    assertEquals(" a a/b ", inside, "after the one that was there, each that got a new name");
  }

  @Test
  void twoWritesNeverShareATemporaryName() {
    Path target = folder.resolve("NL-01.pdf");
    assertFalse(TemporaryFile.pathBeside(target).equals(TemporaryFile.pathBeside(target)));
    assertTrue(TemporaryFile.isName(TemporaryFile.pathBeside(target).getFileName().toString()));
  }

  @Test
  void whatIsStillWrittenIsNeitherReportedNorSwept() throws IOException {
    Path left = folder.resolve(LEFT);
    Files.write(left, OLD);
    try (FileChannel writer = FileChannel.open(left, StandardOpenOption.WRITE);
        FileLock lock = writer.lock()) {
      assertTrue(lock.isValid());
      assertFalse(TemporaryFile.isLeftOver(left));
      NewFile.sweep(folder);
      assertTrue(Files.exists(left));
    }
    assertTrue(TemporaryFile.isLeftOver(left));
    NewFile.sweep(folder);
    assertFalse(Files.exists(left));
  }

  @Test
  void aNumberThatAStoppedProgramHeldIsLeftOutAndSweptLater() throws IOException {
    PaperBench bench = new PaperBench(folder.resolve("bench"));
    bench.write("instruments/NL-03/reports/.1.number", "");
    assertEquals(
        List.of("left over from an interrupted write: instruments/NL-03/reports/.1.number"),
        bench.instrument().notes());
    Optional<String> second = Program.keep(Program.RECORD).on(bench.folder(), new Complaints());
    assertEquals("instruments/NL-03/reports/0002" + Program.RECORD, second.orElseThrow());
    Program.keep(Program.RECORD).on(bench.folder(), new Complaints());
    assertEquals(List.of(), bench.instrument().notes());
  }

  @Test
  void aNumberThatIsGivenBackIsTheNext() throws IOException {
    PaperBench bench = new PaperBench(folder.resolve("bench"));
    try (RecordNumber first = bench.open().nextRecord(PaperBench.TAG);
        RecordNumber second = bench.open().nextRecord(PaperBench.TAG)) {
      assertEquals(1, first.number());
      assertEquals(2, second.number());
    }
    assertFalse(Files.exists(bench.path("instruments/NL-03/reports")), "nothing was kept");
    try (RecordNumber again = bench.open().nextRecord(PaperBench.TAG)) {
      assertEquals(1, again.number());
      assertThrows(
          IllegalArgumentException.class,
          () -> again.keep("0007_2026-11-27_record.pdf", NEW, new Complaints()));
    }
  }

  @Test
  void anAddThatWasStoppedIsANoteAndTheRestIsJudged() throws IOException {
    PaperBench bench = new PaperBench(folder.resolve("bench"));
    Files.createDirectories(bench.path("instruments/NL-09"));
    assertEquals(List.of(PaperBench.TAG), bench.open().tags());
    assertTrue(
        bench.open().notes().get(0).contains("give it again"), bench.open().notes()::toString);
    assertTrue(Program.add(Program.NEW).on(bench.folder(), new Complaints()).isPresent());
    assertEquals(List.of(PaperBench.TAG, Program.NEW), bench.open().tags());
  }

  @Test
  void anInstrumentThatLostItsFileIsNoNote() throws IOException {
    PaperBench bench = new PaperBench(folder.resolve("bench"));
    bench.delete(PaperBench.INSTRUMENT);
    assertEquals(List.of(PaperBench.TAG), bench.open().tags());
    assertFalse(bench.instrument().complaints().isEmpty());
  }

  @Test
  void whatIsTypedIntoADraftWhileItIsClosedIsNotLost() throws IOException {
    PaperBench bench = new PaperBench(folder.resolve("bench"));
    SteppedDisk.Steps typing =
        (step, file) -> {
          if (step.equals("createLink") && file.endsWith(Sidecar.ENDING)) {
            bench.write(PaperBench.DRAFT, PaperBench.DRAFT_TEXT + "# more\n");
          }
        };
    Complaints complaints = new Complaints();
    Program.close(PaperBench.DRAFT_ID).on(SteppedDisk.path(bench.folder(), typing), complaints);
    assertTrue(
        complaints.renderAll().contains("is closed as it was before"), complaints::renderAll);
    assertEquals(PaperBench.DRAFT_TEXT + "# more\n", bench.text(PaperBench.DRAFT));
  }

  @Test
  void aFileThatIsThereIsNotReplacedOnADiskWithoutSecondNamesEither() throws IOException {
    Path target = folder.resolve("there.yaml");
    SteppedDisk.Steps noLinks =
        (step, file) -> {
          if (step.equals("createLink")) {
            throw new FileSystemException(file, null, "Operation not supported");
          }
        };
    NewFile.write(SteppedDisk.path(target, noLinks), OLD);
    assertThrows(
        FileAlreadyExistsException.class,
        () -> NewFile.write(SteppedDisk.path(target, noLinks), NEW));
    assertEquals("old", Files.readString(target));
  }
}
