package org.mainsgate.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/** What leaves a bench with a record of one instrument, and how it is read where it arrives. */
class PackTest {
  private static final String VISIT = PaperBench.VISITS + PaperBench.DRAFT_ID;

  @TempDir Path folder;

  private final Complaints complaints = new Complaints();

  private PaperBench closed() {
    PaperBench bench = new PaperBench(folder.resolve("bench"));
    bench.close(LocalDate.of(2026, 11, 25));
    return bench;
  }

  private Pack pack(PaperBench bench) {
    Pack pack = bench.open().pack(PaperBench.TAG, complaints);
    assertEquals("", complaints.renderAll());
    return pack;
  }

  private static String text(Pack pack, String path) {
    return new String(pack.files().getOrDefault(path, new byte[0]), UTF_8);
  }

  @Test
  void itHoldsWhatTheVerdictNeedsAndNoDraft() {
    PaperBench bench = closed();
    bench.write(PaperBench.VISITS + "2026-11-26-AR-0b1c.draft.yaml", "format: 1\n");
    assertEquals(
        List.of("bench.yaml", PaperBench.INSTRUMENT, VISIT + ".yaml", VISIT + ".yaml.sha256"),
        List.copyOf(pack(bench).files().keySet()));
  }

  @Test
  void aProfileAndOverlaysOfTheBenchGoWithIt() {
    PaperBench bench = closed();
    bench.write("rules/own.yaml", "a profile");
    bench.write("ours.yaml", "an overlay");
    bench.change("bench.yaml", "profile: gb", "profile: rules/own.yaml\noverlays: [ours.yaml]");
    Pack pack = pack(bench);
    assertEquals("a profile", text(pack, "rules/own.yaml"));
    assertEquals("an overlay", text(pack, "ours.yaml"));
  }

  @Test
  void theRecordIsTheSameReadFromThePack() {
    PaperBench bench = closed();
    BenchFolder packed = BenchFolder.open(pack(bench), complaints).orElseThrow();
    assertTrue(packed.isPacked());
    assertEquals(List.of(PaperBench.TAG), packed.tags());
    StoredInstrument read =
        packed.instrument(
            PaperBench.TAG,
            packed.bench(PaperBench.reader(), complaints).orElseThrow(),
            PaperBench.reader());
    assertEquals("", read.complaints().renderAll());
    assertEquals(bench.instrument().record(), read.record());
  }

  @Test
  void filesOfAPackAreReadLikeThoseOfAFolder() {
    PackedFiles files =
        new PackedFiles(new Pack(Map.of("a/b/c.txt", new byte[3], "a/d", new byte[1])));
    assertEquals(List.of("b", "d"), files.list("a", complaints));
    assertEquals(List.of(), files.list("b", complaints));
    assertTrue(files.exists("a/d") && files.exists("a/b") && files.isFolder("a/b"));
    assertFalse(files.isFolder("a/d") || files.exists("a/c"));
    assertEquals(3, files.read("a/b/c.txt", 3, complaints).orElseThrow().bytes().length);
    assertEquals("", complaints.renderAll());
    assertEquals(Optional.empty(), files.read("a/b/c.txt", 2, complaints));
    assertEquals(Optional.empty(), files.read("a/c", 2, complaints));
    assertTrue(complaints.renderAll().contains("a file of 3 bytes"), complaints::renderAll);
    assertTrue(complaints.renderAll().contains("this does not exist"), complaints::renderAll);
    assertEquals(List.of(), files.leftovers("a"));
    assertThrows(IllegalStateException.class, () -> files.resolve("a"));
  }

  @Test
  void whoReadsAFileOfAPackCannotChangeIt() {
    byte[] bytes = {1};
    PackedFiles files = new PackedFiles(new Pack(Map.of("a", bytes)));
    byte[] read = files.read("a", 9, complaints).orElseThrow().bytes();
    assertNotSame(bytes, read);
    assertArrayEquals(bytes, read);
  }

  private static final String BENCH =
      """
      format: 1
      # who works here
      people:
        AR: {name: the restorer}
        # the other one
        MB:
          name: the boatbuilder
      # what they have
      meters:
        low-ohm:
          title: low-ohm tester

        pocket: {title: pocket meter}
        clamp: {title: clamp meter}
      methods:
        earth: {of: earth_resistance, meter: low-ohm}
      """;

  private static String extract(String bench, String record) {
    List<Fields> files = new ArrayList<>();
    StrictYaml.readFields("", record.getBytes(UTF_8), new Complaints()).ifPresent(files::add);
    return new String(Extract.of(bench.getBytes(UTF_8), files), UTF_8);
  }

  @Test
  void peopleAndMetersThatNothingNamesStayAtTheBench() {
    assertEquals(
        """
        format: 1
        # who works here
        people:
          AR: {name: the restorer}
          # the other one
        # what they have
        meters:
          low-ohm:
            title: low-ohm tester

          pocket: {title: pocket meter}
        methods:
          earth: {of: earth_resistance, meter: low-ohm}
        """,
        extract(BENCH, "by: AR\nfound: {case: [{meter: pocket}]}\n"));
  }

  @Test
  void whereARecordNamesNobodyAllPeopleStayInIt() {
    assertTrue(extract(BENCH, "by: XX\n").contains("boatbuilder"));
  }

  @Test
  void aNameAsAKeyIsNamedToo() {
    assertTrue(extract(BENCH, "by: AR\nseen: {MB: yes}\n").contains("boatbuilder"));
  }

  @Test
  void whatNamesItselfOnlyIsNotNamed() {
    String bench = BENCH.replace("clamp meter", "clamp");
    assertFalse(extract(bench, "by: AR\n").contains("pocket"));
    assertTrue(
        extract(bench.replace("{title: clamp}", "{title: pocket}"), "by: AR, clamp\nat: clamp\n")
            .contains("pocket meter"));
  }

  @Test
  void aBenchInOneLineOrWithOddLineEndsIsLeftWhole() {
    String line = "{people: {AR: {name: x}, MB: {name: y}}, meters: {}}\n";
    assertEquals(line, extract(line, "by: AR\n"));
    String odd = BENCH.replace("the boatbuilder", "\"the\u2028boatbuilder\"");
    assertEquals(odd, extract(odd, "by: AR\n"));
  }

  @Test
  void linesThatEndInTheWayOfWindowsAreLeftOutAsWell() {
    String windows = BENCH.replace("\n", "\r\n");
    String kept = extract(windows, "by: AR\n");
    assertFalse(kept.contains("boatbuilder"));
    assertFalse(kept.replace("\r\n", "").contains("\n"), "the ends of lines are as they were");
  }

  @Test
  void theProfileIsKnownFromAPackToo() {
    BenchFolder packed = BenchFolder.open(pack(closed()), complaints).orElseThrow();
    assertEquals(Optional.of("gb"), packed.profile().map(Text::value));
  }

  @Test
  void theMetersThatTheVisitsNameGoWithThem() {
    PaperBench bench = new PaperBench(folder.resolve("bench"));
    bench.change("bench.yaml", "238 V, meter: pocket", "238 V, meter: low-ohm");
    bench.change(
        "bench.yaml", "people:\n", "people:\n  MB: {name: the boatbuilder, competence: none}\n");
    bench.change(
        "bench.yaml", "methods:\n", "  clamp: {title: clamp meter, kind: multimeter}\nmethods:\n");
    bench.close(LocalDate.of(2026, 11, 25));
    String packed = text(pack(bench), "bench.yaml");
    assertTrue(packed.contains("pocket:") && packed.contains("AR:"), packed);
    assertFalse(packed.contains("clamp") || packed.contains("boatbuilder"), packed);
  }

  @Test
  void anEntryBesideItsHeadingIsLeftWhereItIs() {
    String bench =
        "people: {AR: {name: x}, MB: {name: y}}\nmeters:\n  a: {title: x}\n  b: {title: y}\n";
    assertEquals(
        "people: {AR: {name: x}, MB: {name: y}}\nmeters:\n  a: {title: x}\n",
        extract(bench, "by: AR\nmeter: a\n"));
  }

  @Test
  void theLastEntryGoesWithItsLinesAndLeavesTheCommentsAfterIt() {
    String bench = "meters:\n  a:\n    title: x\n  b:\n    title: y\n    kind: z\n\n# the end\n";
    assertEquals("meters:\n  a:\n    title: x\n\n# the end\n", extract(bench, "meter: a\n"));
  }

  @Test
  void aFileHasTheNameOfItsPath() {
    assertEquals("a/b", new StoredFile("a/b", new byte[0]).toString());
    assertEquals(
        "instruments/NL-01/photos/front.jpg", BenchFolder.photo("NL-01", "photos/front.jpg"));
  }
}
