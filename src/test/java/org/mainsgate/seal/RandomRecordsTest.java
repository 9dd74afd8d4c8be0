package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.signature.Fingerprint;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.Pack;
import org.mainsgate.verdict.Verdict;

/**
 * Records by chance, sealed and verified: the verdict and the pages come out again. A dozen, or a
 * thousand with {@code -Deverything}.
 */
class RandomRecordsTest {
  /** Where independent judges look for them. */
  private static final Path LEFT = Path.of("target/reports/random");

  private static final Path STANDARD = Path.of("src/test/resources/benches/standard");
  private static final Pattern NUMBER = Pattern.compile("[0-9]+\\.[0-9]+|[1-9][0-9]*");
  private static final List<String> WORDS =
      List.of("sound", "damaged", "three", "two", "steady", "changed", "none", "direct", "secure");

  @BeforeAll
  static void leaveTheCertificates() throws Exception {
    Files.createDirectories(LEFT);
    // What an earlier run left is signed with keys that are no longer there.
    try (Stream<Path> earlier = Files.list(LEFT)) {
      for (Path file : earlier.toList()) {
        Files.delete(file);
      }
    }
    Files.write(LEFT.resolve("restorer.cer"), Made.certificateOf(Made.RESTORER));
    Files.write(LEFT.resolve("keeper.cer"), Made.certificateOf(Made.KEEPER));
  }

  /** As it is sealed, or accepted once by the keeper. */
  private static byte[] sealed(byte[] unsigned, int number) throws Exception {
    byte[] sealed = Seal.certify(unsigned, Made.signing(false), Made.NOW);
    byte[] accepted =
        number % 2 == 0
            ? sealed
            : Seal.accept(
                    SealedFile.read(sealed, new ArrayList<>()).orElseThrow(),
                    Made.signing(true),
                    Made.NOW)
                .orElseThrow();
    String name = "record-" + number + "-accepted-" + number % 2 + ".pdf";
    Files.write(LEFT.resolve(name), accepted);
    return accepted;
  }

  @Test
  void theVerdictAndThePagesComeOutAgain() throws Exception {
    int wanted = System.getProperty("everything") == null ? 12 : 1_000;
    Set<Verdict> seen = EnumSet.noneOf(Verdict.class);
    int done = 0;
    for (int seed = 0; done < wanted; seed++) {
      Pack pack = pack(new Random(seed));
      Terms terms = Made.of("NL-01").terms().forTag("ST-01");
      SealedRecord record =
          SealedRecord.of(pack, new Shelf().files(Shelf.Choice.named("gb")), terms);
      Complaints complaints = new Complaints();
      Desk.Judged judged = record.judged(terms, complaints).orElse(null);
      if (judged != null && complaints.isEmpty()) {
        byte[] unsigned = record.unsigned(judged, terms, Made.PDF);
        assertArrayEquals(unsigned, record.unsigned(judged, terms, Made.PDF), "made twice");
        Verification found = Made.verify(sealed(unsigned, done));
        assertEquals(List.of(), found.broken(), "seed " + seed);
        assertEquals(Verification.PageSeen.SAME, found.page());
        assertEquals(judged.dossier().assessment().verdict(), found.verdict().orElseThrow());
        seen.add(found.verdict().orElseThrow());
        done++;
      }
      assertTrue(seed < 20 * wanted, "hardly any record can be read");
    }
    assertTrue(seen.size() >= 2, () -> "always the same: " + seen);
  }

  /** The standard record, closed, with a few numbers and words of its visit changed. */
  private static Pack pack(Random random) throws Exception {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("bench.yaml", Files.readAllBytes(STANDARD.resolve("bench.yaml")));
    String folder = "instruments/ST-01/";
    files.put(
        folder + "instrument.yaml",
        Files.readAllBytes(STANDARD.resolve(folder + "instrument.yaml")));
    try (var drafts = Files.list(STANDARD.resolve(folder + "visits"))) {
      Path draft =
          drafts.filter(path -> path.toString().endsWith(".draft.yaml")).findFirst().orElseThrow();
      String name = draft.getFileName().toString().replace(".draft", "");
      String text =
          changed(Files.readString(draft), random) + "\nclosed: {on: 2026-11-25, after: []}\n";
      byte[] visit = text.getBytes(StandardCharsets.UTF_8);
      files.put(folder + "visits/" + name, visit);
      String line = Fingerprint.of(visit).hex() + "  " + name + "\n";
      files.put(folder + "visits/" + name + ".sha256", line.getBytes(StandardCharsets.UTF_8));
    }
    return new Pack(files);
  }

  private static String changed(String visit, Random random) {
    int from = visit.indexOf("found:");
    String found = visit.substring(from);
    for (int changes = random.nextInt(4); changes > 0; changes--) {
      found = random.nextBoolean() ? number(found, random) : word(found, random);
    }
    return visit.substring(0, from) + found;
  }

  private static String number(String text, Random random) {
    List<int[]> places =
        NUMBER.matcher(text).results().map(m -> new int[] {m.start(), m.end()}).toList();
    int[] place = places.get(random.nextInt(places.size()));
    StringBuilder digits = new StringBuilder(text.substring(place[0], place[1]));
    for (int i = 0; i < digits.length(); i++) {
      if (digits.charAt(i) != '.' && random.nextInt(3) == 0) {
        digits.setCharAt(i, (char) ('1' + random.nextInt(9)));
      }
    }
    return text.substring(0, place[0]) + digits + text.substring(place[1]);
  }

  private static String word(String text, Random random) {
    Matcher matcher = Pattern.compile(WORDS.get(random.nextInt(WORDS.size()))).matcher(text);
    return matcher.find() ? matcher.replaceFirst(WORDS.get(random.nextInt(WORDS.size()))) : text;
  }
}
