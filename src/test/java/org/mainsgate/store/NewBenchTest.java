package org.mainsgate.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/** A bench that is made, and instruments that are added to it. */
class NewBenchTest {
  private static final String KEEP = "*.yaml -text";
  private static final String BENCH = "format: 1\nprofile: gb\noverlays: [ours.yaml, club.yaml]\n";

  @TempDir Path around;

  private final Complaints complaints = new Complaints();

  private Path folder() {
    return around.resolve("new").resolve("bench");
  }

  private boolean start() throws IOException {
    return BenchFolder.start(folder(), BENCH, KEEP, complaints);
  }

  private BenchFolder started() throws IOException {
    assertTrue(start(), complaints::renderAll);
    return BenchFolder.open(folder(), complaints).orElseThrow();
  }

  private String complained() {
    return complaints.renderAll().replaceAll("\\s+", " ");
  }

  @Test
  void aNewBenchHasItsFileItsAttributesAndItsFolder() throws IOException {
    assertTrue(start());
    assertEquals(BENCH, Files.readString(folder().resolve("bench.yaml")));
    assertEquals(KEEP + "\n", Files.readString(folder().resolve(".gitattributes")));
    assertTrue(Files.isDirectory(folder().resolve("instruments")));
    assertEquals("", complained());
  }

  @Test
  void aBenchThatIsThereStaysAsItIs() throws IOException {
    started();
    assertFalse(BenchFolder.start(folder(), "other", KEEP, complaints));
    assertEquals(BENCH, Files.readString(folder().resolve("bench.yaml")));
    assertTrue(complained().contains("this file is there already"), this::complained);
  }

  @Test
  void attributesThatHaveTheLineAreLeftAsTheyAre() throws IOException {
    Files.createDirectories(folder());
    Files.writeString(folder().resolve(".gitattributes"), "*.jpg binary\n" + KEEP + "\n");
    started();
    assertEquals(
        "*.jpg binary\n" + KEEP + "\n", Files.readString(folder().resolve(".gitattributes")));
  }

  @Test
  void attributesWithoutTheLineMakeNoBench() throws IOException {
    Files.createDirectories(folder());
    Files.writeString(folder().resolve(".gitattributes"), "*.jpg binary\n");
    assertFalse(start());
    assertTrue(complained().contains("without the line `" + KEEP + "`"), this::complained);
    assertFalse(Files.exists(folder().resolve("bench.yaml")));
    assertFalse(Files.exists(folder().resolve("instruments")));
  }

  @Test
  void aFolderInPlaceOfTheAttributesMakesNoBench() throws IOException {
    Files.createDirectories(folder().resolve(".gitattributes"));
    assertFalse(start());
    assertFalse(complaints.isEmpty());
    assertFalse(Files.exists(folder().resolve("bench.yaml")));
  }

  @Test
  void aFileWhereTheFolderIsDueMakesNoBench() throws IOException {
    Files.createDirectories(folder().getParent());
    Files.writeString(folder(), "");
    assertFalse(start());
    assertTrue(complained().contains("a file stands where a folder is due"), this::complained);
  }

  @Test
  void whereThereIsNoBenchItIsSaid() {
    assertTrue(BenchFolder.open(around, complaints).isEmpty());
    assertTrue(complained().contains("no bench here"), this::complained);
  }

  @Test
  void theProfileAndTheOverlaysAreKnownBeforeAnythingElse() throws IOException {
    BenchFolder bench = started();
    assertEquals(Optional.of("gb"), bench.profile().map(Text::value));
    assertEquals(
        List.of("ours.yaml", "club.yaml"), bench.overlays().stream().map(Text::value).toList());
    assertFalse(bench.isPacked());
  }

  @Test
  void anInstrumentIsAddedWithItsFile() throws IOException {
    BenchFolder bench = started();
    assertEquals(
        Optional.of("instruments/NL-01/instrument.yaml"), bench.add("NL-01", "x", complaints));
    assertEquals("x", Files.readString(folder().resolve("instruments/NL-01/instrument.yaml")));
    assertFalse(bench.has("NL-01"), "it was opened before");
    BenchFolder again = BenchFolder.open(folder(), complaints).orElseThrow();
    assertTrue(again.has("NL-01"));
    assertFalse(again.has("nl-01"));
    assertFalse(again.has("NL-02"));
    assertEquals("", complained());
  }

  @Test
  void aSecondOneOfATagIsRefused() throws IOException {
    BenchFolder bench = started();
    assertTrue(bench.add("NL-01", "x", complaints).isPresent());
    assertEquals(Optional.empty(), bench.add("NL-01", "y", complaints));
    assertTrue(complained().contains("this file is there already"), this::complained);
    assertEquals("x", Files.readString(folder().resolve("instruments/NL-01/instrument.yaml")));
  }

  @Test
  void oneThatDiffersInCapitalsAloneIsRefused() throws IOException {
    BenchFolder bench = started();
    assertTrue(bench.add("NL-01", "x", complaints).isPresent());
    assertEquals(Optional.empty(), bench.add("nl-01", "y", complaints));
    assertTrue(
        complained().contains("there is `NL-01`, which differs in capitals alone"),
        this::complained);
    assertFalse(Files.exists(folder().resolve("instruments/nl-01")));
  }

  @Test
  void whatIsNoTagIsRefused() throws IOException {
    BenchFolder bench = started();
    assertEquals(Optional.empty(), bench.add("../NL-01", "x", complaints));
    assertTrue(complained().contains("`../NL-01` can't be a tag"), this::complained);
  }

  @Test
  void aFolderWhoseNameIsNoTagIsComplainedOf() throws IOException {
    started();
    Path folder = Files.createDirectories(folder().resolve("instruments/two words"));
    Files.writeString(folder.resolve("instrument.yaml"), "");
    BenchFolder bench = BenchFolder.open(folder(), complaints).orElseThrow();
    StoredInstrument read =
        bench.instrument(
            "two words", new PaperBench(around.resolve("p")).bench(), PaperBench.reader());
    assertTrue(read.complaints().renderAll().contains("can't be a tag"));
  }

  @Test
  void theFolderOfAStoppedAddIsANoteAndNoInstrument() throws IOException {
    started();
    Files.createDirectory(folder().resolve("instruments/NL-01"));
    BenchFolder bench = BenchFolder.open(folder(), complaints).orElseThrow();
    assertEquals(List.of(), bench.tags());
    assertEquals(
        List.of(
            "no instrument yet, an `add` was stopped: give it again, or take the folder away:"
                + " instruments/NL-01"),
        bench.notes());
    assertTrue(bench.add("NL-01", "x", complaints).isPresent());
  }

  @Test
  void aFolderWithVisitsAndNoInstrumentIsNotTakenForAStoppedAdd() throws IOException {
    started();
    Files.createDirectories(folder().resolve("instruments/NL-01/visits"));
    BenchFolder bench = BenchFolder.open(folder(), complaints).orElseThrow();
    assertEquals(List.of("NL-01"), bench.tags());
    assertEquals(List.of(), bench.notes());
  }

  @Test
  void aStrayFileAmongTheInstrumentsIsANoteUnlessItIsHidden() throws IOException {
    started();
    Files.writeString(folder().resolve("instruments/list.txt"), "");
    Files.writeString(folder().resolve("instruments/.hidden"), "");
    BenchFolder bench = BenchFolder.open(folder(), complaints).orElseThrow();
    assertEquals(List.of("not a part of the record: instruments/list.txt"), bench.notes());
  }

  @Test
  void aDraftIsANewFile() throws IOException {
    BenchFolder bench = started();
    String path = "instruments/NL-01/visits/2026-11-25-AR-7f3a.draft.yaml";
    assertEquals(Optional.of(path), bench.draft("NL-01", "2026-11-25-AR-7f3a", "x", complaints));
    assertEquals("x", Files.readString(folder().resolve(path)));
    assertEquals(Optional.empty(), bench.draft("NL-01", "2026-11-25-AR-7f3a", "y", complaints));
    assertEquals("x", Files.readString(folder().resolve(path)));
  }

  @Test
  void aFolderIsMadeWithAllThatIsInItOrNotAtAll() throws IOException {
    Path target = around.resolve("whole");
    NewFolder.whole(target, in -> Files.writeString(in.resolve("a"), "x"));
    assertEquals("x", Files.readString(target.resolve("a")));
    IOException second =
        assertThrows(
            IOException.class,
            () -> NewFolder.whole(target, in -> Files.writeString(in.resolve("b"), "y")));
    assertTrue(String.valueOf(second.getMessage()).contains("whole"));
    assertFalse(Files.exists(target.resolve("b")));
    try (var left = Files.list(around)) {
      assertEquals(List.of(target), left.toList(), "nothing is left over");
    }
  }

  @Test
  void aPlaceWithoutAFolderAroundItCanHoldNoFile() {
    assertThrows(IllegalArgumentException.class, () -> NewFolder.around(around.getRoot()));
  }

  @Test
  void aFileIsReplacedWholeAndLeavesNothingElse() throws IOException {
    Path file = Files.writeString(around.resolve("a"), "old");
    NewFile.replace(file, new byte[] {'n', 'e', 'w'});
    assertEquals("new", Files.readString(file));
    Path leftOver = around.resolve(".a.mainsgate-0123456789abcdef.tmp");
    Files.writeString(leftOver, "ne");
    NewFile.sweep(around);
    assertFalse(Files.exists(leftOver));
    assertTrue(Files.exists(file));
  }

  @Test
  void aFileOfTheMostBytesIsReadAndOneMoreIsRefused() throws IOException {
    Files.write(around.resolve("a"), new byte[9]);
    FolderReader reader = FolderReader.of(around);
    assertEquals(9, reader.read("a", 9, complaints).orElseThrow().bytes().length);
    assertEquals("", complained());
    assertEquals(Optional.empty(), reader.read("a", 8, complaints));
    assertTrue(
        complained().contains("a file of 9 bytes expected: at most 8 bytes"), this::complained);
  }

  @Test
  void aFileThatIsNotThereIsSaidNotToExist() throws IOException {
    assertEquals(Optional.empty(), FolderReader.of(around).read("a", 9, complaints));
    assertTrue(complained().contains("this does not exist"), this::complained);
  }

  @Test
  void onABenchWithoutInstrumentsNoneIsOffered() throws IOException {
    BenchFolder bench = started();
    StoredInstrument read =
        bench.instrument("NL-01", new PaperBench(around.resolve("p")).bench(), PaperBench.reader());
    assertTrue(
        read.complaints().renderAll().contains("expected: a folder for it"),
        () -> read.complaints().renderAll());
  }

  @Test
  void aFileInTheWayOfAnInstrumentsFolderIsComplainedOf() throws IOException {
    BenchFolder bench = started();
    Files.writeString(folder().resolve("instruments/NL-01"), "");
    assertEquals(Optional.empty(), bench.add("NL-01", "x", complaints));
    assertTrue(complained().contains("a file stands where a folder is due"), this::complained);
  }
}
