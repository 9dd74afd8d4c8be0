package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.mainsgate.signature.StampingAuthority;

/** Keys, seals, hand-overs and what the other side sees of them, from the command line. */
class SealCommandsTest {
  private static final Path DEMO = Path.of("demo-data/north-light");
  private static final String NOW = "2026-11-25T18:00:00Z";

  @TempDir Path folder;
  private Path bench;
  private final Map<String, String> variables = new HashMap<>();

  @BeforeEach
  void aBenchAndAKey() {
    bench = Run.copy(DEMO, folder.resolve("bench"));
    variables.put("MAINSGATE_HOME", folder.resolve("home").toString());
    variables.put("MAINSGATE_PASSWORD", "a long enough sentence");
    assertEquals(0, run("identity", "new", "--name", "the restorer").code());
  }

  private Surroundings around(Optional<String> typed) {
    return new Surroundings() {
      @Override
      public Optional<String> variable(String name) {
        return Optional.ofNullable(variables.get(name));
      }

      @Override
      public Optional<char[]> ask(String prompt) {
        return typed.map(String::toCharArray);
      }

      @Override
      public Path userHome() {
        return folder.resolve("nobody");
      }
    };
  }

  private Run run(Object... arguments) {
    return Run.around(around(Optional.empty()), NOW, arguments);
  }

  private Path out(String name) {
    return folder.resolve(name);
  }

  private Path sealed(String tag) {
    Path file = out(tag + ".pdf");
    Run run = run("seal", bench, tag, "-o", file);
    assertTrue(Files.exists(file), run.err());
    return file;
  }

  // ── keys ───────────────────────────────────────────────────────────────────────────────────

  @Test
  void aKeyIsItsOwnersAlone() throws IOException {
    Path key = folder.resolve("home/identity.p12");
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(key)));
    assertEquals(
        "rwx------",
        PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("home"))));
  }

  @Test
  void aKeyIsNeverWrittenOver() throws IOException {
    byte[] before = Files.readAllBytes(folder.resolve("home/identity.p12"));
    Run again = run("identity", "new", "--name", "somebody else");
    assertEquals(3, again.code());
    assertTrue(again.err().replaceAll("\\s+", " ").contains("is not written over"), again.err());
    assertArrayEquals(before, Files.readAllBytes(folder.resolve("home/identity.p12")));
  }

  @Test
  void aWrongPasswordIsSaidInWords() {
    variables.put("MAINSGATE_PASSWORD", "another sentence");
    Run run = run("seal", bench, "NL-01", "-o", out("a.pdf"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("the password is wrong"), run.err());
    assertFalse(Files.exists(out("a.pdf")));
  }

  @Test
  void whereNobodyGivesAPasswordItSaysHow() {
    variables.remove("MAINSGATE_PASSWORD");
    Run run = run("seal", bench, "NL-01", "-o", out("a.pdf"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("--password-file"), run.err());
  }

  @Test
  void aPasswordComesFromAFileOrFromAPerson() throws IOException {
    variables.remove("MAINSGATE_PASSWORD");
    Path file = Files.writeString(out("password"), "a long enough sentence\nmore\n");
    assertEquals(0, run("identity", "show", "--password-file", file).code());
    Run typed = Run.around(around(Optional.of("a long enough sentence")), NOW, "identity", "show");
    assertEquals(0, typed.code(), typed.err());
  }

  @Test
  void aShortPasswordIsRefused() {
    variables.put("MAINSGATE_HOME", folder.resolve("other").toString());
    variables.put("MAINSGATE_PASSWORD", "short");
    Run run = run("identity", "new", "--name", "x");
    assertEquals(3, run.code());
    assertFalse(Files.exists(folder.resolve("other/identity.p12")));
  }

  @Test
  void aCertificateOutsideItsDaysSignsNothing() {
    Run early =
        Run.around(
            around(Optional.empty()),
            "2026-11-20T18:00:00Z",
            "seal",
            bench,
            "NL-01",
            "-o",
            out("a.pdf"));
    assertEquals(3, early.code());
    assertTrue(early.err().contains("does not count before 2026-11-25"), early.err());
    Run late =
        Run.around(
            around(Optional.empty()),
            "2037-01-01T18:00:00Z",
            "seal",
            bench,
            "NL-01",
            "-o",
            out("a.pdf"));
    assertEquals(3, late.code());
    assertTrue(late.err().contains("ran out on 2036-11-25"), late.err());
    assertFalse(Files.exists(out("a.pdf")));
  }

  @Test
  void onlyWhatWasHeardFromItsOwnerMakesAKeyKnown() {
    Path file = sealed("NL-01");
    String groups = groups(run("identity", "show").out());
    variables.put("MAINSGATE_HOME", folder.resolve("receiver").toString());
    assertEquals(31, run("verify", file).code());
    Run shown = run("identity", "trust", file);
    assertEquals(3, shown.code());
    assertTrue(shown.out().contains("Nothing was written down"), shown.out());
    Run wrong = run("identity", "trust", file, "--heard", groups.replace('1', '2'));
    assertEquals(31, wrong.code());
    assertEquals(0, run("identity", "trust", file, "--heard", groups, "--as", "R.").code());
    Run known = run("verify", file);
    assertEquals(0, known.code());
    assertTrue(known.out().contains("yes: R."), known.out());
  }

  private static String groups(String shown) {
    int at = shown.indexOf("fingerprint") + 11;
    return shown.substring(at).strip().replaceAll("\\s+", " ").substring(0, 59);
  }

  // ── sealed and verified ────────────────────────────────────────────────────────────────────

  @Test
  void aSealedRecordEndsLikeItsVerdict() {
    assertEquals(0, run("seal", bench, "NL-01", "-o", out("1.pdf")).code());
    assertEquals(10, run("seal", bench, "NL-02", "-o", out("2.pdf")).code());
    assertEquals(20, run("seal", bench, "NL-04", "-o", out("4.pdf")).code());
    assertEquals(0, run("verify", out("1.pdf")).code());
    assertEquals(10, run("verify", out("2.pdf")).code());
    assertEquals(20, run("verify", out("4.pdf")).code());
  }

  @Test
  void recordsAreNumberedAndKept() throws IOException {
    sealed("NL-01");
    Run second = run("seal", bench, "NL-01", "-o", out("second.pdf"));
    assertTrue(second.out().contains("record 2 of NL-01"), second.out());
    Path kept = bench.resolve("instruments/NL-01/reports/0002_2026-11-25_record.pdf");
    assertArrayEquals(Files.readAllBytes(out("second.pdf")), Files.readAllBytes(kept));
  }

  @Test
  void anAuthorityThatDoesNotAnswerIsNamedAndNothingIsSealed() {
    Run run = run("seal", bench, "NL-01", "--timestamp", "http://127.0.0.1:9/", "-o", out("a.pdf"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("http://127.0.0.1:9/ does not answer"), run.err());
    assertFalse(Files.exists(out("a.pdf")));
    assertFalse(Files.exists(bench.resolve("instruments/NL-01/reports")));
  }

  @Test
  void anAuthorityStampsTheTime() throws IOException {
    StampingAuthority authority = new StampingAuthority();
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          byte[] answer = authority.ask(exchange.getRequestBody().readAllBytes());
          exchange.sendResponseHeaders(200, answer.length);
          exchange.getResponseBody().write(answer);
          exchange.close();
        });
    server.start();
    try {
      String address = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
      variables.put("MAINSGATE_TIMESTAMP", address);
      Path file = sealed("NL-01");
      assertTrue(run("verify", file).out().contains("stamped 2026-11-25T18:00:30Z"));
    } finally {
      server.stop(0);
    }
  }

  @Test
  void nothingIsSealedWhileADraftIsOpen() throws IOException {
    Files.writeString(
        bench.resolve("instruments/NL-01/visits/2026-11-25-RS-9z9z.draft.yaml"),
        "format: 1\ndate: 2026-11-25\nby: RS\nfound:\n  mains-lead: {sheath: damaged}\n");
    Run run = run("seal", bench, "NL-01", "-o", out("a.pdf"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("is still a draft"), run.err());
    assertFalse(Files.exists(out("a.pdf")));
  }

  @Test
  void nothingIsWrittenOver() throws IOException {
    Files.writeString(out("a.pdf"), "mine");
    Run run = run("seal", bench, "NL-01", "-o", out("a.pdf"));
    assertEquals(3, run.code());
    assertEquals("mine", Files.readString(out("a.pdf")));
    assertFalse(Files.exists(bench.resolve("instruments/NL-01/reports")));
  }

  @Test
  void oneByteMoreIsAltered() throws IOException {
    Path file = sealed("NL-01");
    byte[] bytes = Files.readAllBytes(file);
    Files.write(out("longer.pdf"), Arrays.copyOf(bytes, bytes.length + 1));
    Run run = run("verify", out("longer.pdf"));
    assertEquals(30, run.code());
    assertTrue(run.out().contains("1 bytes follow after the last signature"), run.out());
    Files.write(out("cut.pdf"), Arrays.copyOf(bytes, bytes.length / 2));
    assertEquals(30, run("verify", out("cut.pdf")).code());
    assertEquals(30, run("verify", out("longer.pdf"), "--json").code());
  }

  @Test
  void whatIsNoSealedRecordIsSaidToBeNone() throws IOException {
    Files.writeString(out("a.txt"), "no PDF at all");
    assertEquals(30, run("verify", out("a.txt")).code());
    assertEquals(3, run("verify", out("none.pdf")).code());
    assertEquals(3, run("verify", folder).code());
    try (var large = new java.io.RandomAccessFile(out("large.pdf").toFile(), "rw")) {
      large.setLength(200L << 20);
    }
    Run run = run("verify", out("large.pdf"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("larger than 32 MiB"), run.err());
  }

  @Test
  void aClockThatIsSetBackSealsNothing() {
    variables.put("MAINSGATE_HOME", folder.resolve("early").toString());
    String early = "2026-11-10T09:00:00Z";
    Surroundings around = around(Optional.empty());
    assertEquals(0, Run.around(around, early, "identity", "new", "--name", "x").code());
    Run run =
        Run.around(around, early, "seal", bench, "NL-01", "--on", "2026-11-25", "-o", out("a.pdf"));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("set the clock first"), run.err());
    assertFalse(Files.exists(out("a.pdf")));
  }

  @Test
  void theRecordIsTakenOutIntoANewFolderOnly() throws IOException {
    Path file = sealed("NL-01");
    assertEquals(0, run("verify", file, "--extract", out("taken")).code());
    Path visit = Path.of("instruments/NL-01/visits/2026-11-20-RS-7f3a.yaml");
    assertArrayEquals(
        Files.readAllBytes(DEMO.resolve(visit)),
        Files.readAllBytes(out("taken").resolve("bench").resolve(visit)));
    assertEquals(3, run("verify", file, "--extract", out("taken")).code());
    Run judged = run("check", out("taken/bench"), "NL-01");
    assertEquals(0, judged.code(), judged.err());
  }

  @Test
  void theBenchTellsOfLaterVisits() throws IOException {
    Path file = sealed("NL-01");
    assertTrue(
        run("verify", file, "--bench", bench).out().contains("the bench has no later visit"));
    Path visits = bench.resolve("instruments/NL-01/visits");
    Files.writeString(
        visits.resolve("2026-11-25-RS-9z9z.draft.yaml"),
        "format: 1\ndate: 2026-11-25\nby: RS\nfound:\n  mains-lead: {sheath: damaged}\n");
    assertEquals(0, run("close", bench, "NL-01", "--on", "2026-11-25").code());
    Run later = run("verify", file, "--bench", bench);
    assertTrue(later.out().contains("there are later visits"), later.out());
  }

  // ── handed over and accepted ───────────────────────────────────────────────────────────────

  @Test
  void onlyWhatPassesForUseIsLent() {
    Run fails =
        run("handover", bench, "NL-04", "--to", "the school", "--as", "lent", "-o", out("a.pdf"));
    assertEquals(3, fails.code());
    assertTrue(fails.err().contains("only what passes is lent; this fails"), fails.err());
    Run cold =
        run(
            "handover",
            bench,
            "NL-01",
            "--to",
            "the school",
            "--as",
            "lent",
            "--until",
            "2026-12-20",
            "--place",
            "the physics room",
            "--user",
            "the teacher",
            "-o",
            out("a.pdf"));
    assertEquals(3, cold.code());
    assertTrue(cold.err().contains("says nothing about use"), cold.err());
    assertFalse(Files.exists(out("a.pdf")));
    assertFalse(Files.exists(bench.resolve("instruments/NL-01/reports")));
  }

  /** Its yearly pass rests on a judgement: "shown on the bench only". */
  private Run lent(String... more) {
    return lentUntil("2026-12-20", more);
  }

  private Run lentUntil(String day, String... more) {
    List<Object> words =
        new ArrayList<>(List.of("handover", bench, "NL-01", "--stage", "yearly", "--as", "lent"));
    words.addAll(List.of("--to", "the school", "--until", day, "--place", "the lab"));
    words.addAll(List.of("-o", out("lent.pdf"), "--user"));
    words.addAll(Arrays.asList(more));
    return run(words.toArray());
  }

  @Test
  void whatAJudgementReleasedIsLentToSomebodyCompetentOnly() throws IOException {
    Run anybody = lent("a pupil");
    assertEquals(3, anybody.code());
    assertTrue(anybody.err().contains("`--competent`"), anybody.err());
    assertFalse(Files.exists(out("lent.pdf")));
    assertEquals(0, lent("the teacher", "--competent", "electrician").code());
    try (PDDocument file = Loader.loadPDF(out("lent.pdf").toFile())) {
      PDFTextStripper first = new PDFTextStripper();
      first.setEndPage(1);
      String page = first.getText(file).replaceAll("\\s+", " ");
      assertTrue(page.contains("Record 1 of NL-01: restricted"), page);
      assertTrue(page.contains("Only: shown on the bench only, looked at again before"), page);
      assertTrue(page.contains("what the user is competent for electrician"), page);
    }
    Run told = run("verify", out("lent.pdf"));
    String said = told.out().replaceAll("\\s+", " ");
    assertTrue(said.contains("RESTRICTED. Only: shown on the bench only"), told.out());
    assertTrue(
        said.contains("by judgement Sheath not hardened: fixed lead. Only: shown"), told.out());
    String json = run("verify", out("lent.pdf"), "--json").out();
    assertTrue(json.contains("\"only\": \"shown on the bench only"), json);
    assertEquals(0, run("tag", out("lent.pdf"), "-o", out("tag.pdf")).code());
    try (PDDocument tag = Loader.loadPDF(out("tag.pdf").toFile())) {
      String words = new PDFTextStripper().getText(tag).replaceAll("\\s+", " ");
      assertTrue(words.contains("pass, restricted"), words);
      assertTrue(words.contains("Only: shown on the bench only"), words);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"a\nb", "a\tb", "a\rb", "a\u2028b", "a\u202eb", "a\u0007b", "a\u0000b"})
  void whatIsSaidIsOneLineOfPlainText(String words) {
    Run run = run("handover", bench, "NL-04", "--to", words, "--as", "sold", "-o", out("a.pdf"));
    assertEquals(2, run.code());
    assertTrue(run.err().replaceAll("\\s+", " ").contains("one line of plain text can"), run.err());
    assertFalse(Files.exists(out("a.pdf")));
  }

  @Test
  void whatDoesNotPassGoesOutWithItsPlugMadeHarmless() {
    Run without =
        run(
            "handover",
            bench,
            "NL-04",
            "--to",
            "a museum",
            "--as",
            "sold",
            "--seller",
            "private",
            "--use",
            "display",
            "-o",
            out("a.pdf"));
    assertEquals(3, without.code());
    assertTrue(without.err().contains("--plug"), without.err());
    Run with =
        run(
            "handover",
            bench,
            "NL-04",
            "--to",
            "a museum",
            "--as",
            "sold",
            "--seller",
            "private",
            "--use",
            "display",
            "--plug",
            "cut-off",
            "--plug-by",
            "the restorer",
            "-o",
            out("a.pdf"));
    assertEquals(20, with.code(), with.err());
    Run seen = run("verify", out("a.pdf"));
    assertEquals(20, seen.code());
    assertTrue(seen.out().contains("a museum"), seen.out());
  }

  @Test
  void aLoanThatComesBackIsHeldAgainstWhatWentOut() throws IOException {
    Path lent = out("lent.pdf");
    Run out =
        run(
            "handover",
            bench,
            "NL-01",
            "--to",
            "the school",
            "--as",
            "lent",
            "--stage",
            "yearly",
            "--until",
            "2026-12-20",
            "--place",
            "the physics room",
            "--user",
            "the teacher",
            "--competent",
            "a physicist, shown how",
            "-o",
            lent);
    assertEquals(0, out.code(), out.err());
    Run another =
        run(
            "handover",
            bench,
            "NL-09",
            "--to",
            "us",
            "--as",
            "returned",
            "--tells",
            "used, not opened",
            "--went-out",
            lent,
            "-o",
            out("b.pdf"));
    assertTrue(another.err().contains("a record of another instrument"), another.err());
    Object[] home = {
      "handover",
      bench,
      "NL-01",
      "--to",
      "us",
      "--as",
      "returned",
      "--stage",
      "yearly",
      "--tells",
      "used, dropped",
      "--went-out",
      lent,
      "-o",
      out("b.pdf"),
      "--plug",
      "cut-off",
      "--plug-by",
      "the restorer"
    };
    Run unseen = run(home);
    assertEquals(3, unseen.code());
    assertTrue(unseen.err().contains("nothing was looked at since it went out"), unseen.err());
    draftOf("NL-01", "mains-lead: {sheath: damaged}");
    assertEquals(0, run("close", bench, "NL-01", "--on", "2026-11-25").code());
    Run back = run(home);
    assertEquals(20, back.code(), back.err());
    assertEquals(20, run("verify", out("b.pdf")).code());
    assertTrue(run("verify", lent, "--bench", bench).out().contains("there are later visits"));
    assertEquals(10, run("verify", lent, "--bench", bench).code());
  }

  private void draftOf(String tag, String found) throws IOException {
    Files.writeString(
        bench.resolve("instruments/" + tag + "/visits/2026-11-25-RS-9z9z.draft.yaml"),
        "format: 1\ndate: 2026-11-25\nby: RS\nfound:\n  " + found + "\n");
  }

  @ParameterizedTest
  @CsvSource({
    "2026-12-20, --next, 2030-01-01, at most twelve months",
    "2025-01-01, --next, 2027-01-01, expected a day after",
    "2026-12-20, --on, 2026-12-01, a record is of a day that has been"
  })
  void noDayIsPromisedThatReadingsDoNotReach(String until, String option, String day, String says) {
    Run run = lentUntil(until, "the teacher", "--competent", "electrician", option, day);
    assertEquals(3, run.code());
    assertTrue(run.err().replaceAll("\\s+", " ").contains(says), run.err());
    assertFalse(Files.exists(out("lent.pdf")));
  }

  @Test
  void aRecordOfTheColdStageSaysNowhereThatItMayBeUsed() throws IOException {
    Path file = sealed("NL-01");
    String told = run("verify", file).out().replaceAll("\\s+", " ");
    assertTrue(told.contains("FIRST CONNECTION ONLY, supervised; no word about use"), told);
    assertTrue(told.contains("compare it with what is in front of you"), told);
    String[] sold = {"--to", "a", "--as", "sold", "--seller", "private", "--use", "bench"};
    List<Object> words = new ArrayList<>(List.of("handover", bench, "NL-09", "-o", out("n.pdf")));
    words.addAll(Arrays.asList(sold));
    words.addAll(List.of("--next", "2027-01-01"));
    Run next = run(words.toArray());
    assertEquals(3, next.code());
    assertTrue(next.err().contains("no meaning for a first connection"), next.err());
    assertEquals(0, run("tag", file, "-o", out("tag.pdf")).code());
    try (PDDocument tag = Loader.loadPDF(out("tag.pdf").toFile());
        PDDocument record = Loader.loadPDF(file.toFile())) {
      String tied = new PDFTextStripper().getText(tag).replaceAll("\\s+", " ");
      assertTrue(tied.contains("First connection only, restricted"), tied);
      assertTrue(tied.contains("Only: shown on the bench only"), tied);
      PDFTextStripper first = new PDFTextStripper();
      first.setEndPage(1);
      String page = first.getText(record).replaceAll("\\s+", " ");
      assertTrue(page.contains("First connection only. Record 1 of NL-01: restricted"), page);
      assertFalse(page.contains("twelve months"), page);
    }
  }

  @Test
  void whoeverAcceptsSignsInThePlaceThatWasPrepared() throws IOException {
    Path file = sealed("NL-01");
    byte[] before = Files.readAllBytes(file);
    Run accepted = run("accept", file, "-o", out("accepted.pdf"));
    assertEquals(0, accepted.code(), accepted.err());
    assertArrayEquals(before, Files.readAllBytes(file), "the file stays as it was");
    assertTrue(run("verify", out("accepted.pdf")).out().contains("1 person has signed"));
    Files.write(out("longer.pdf"), Arrays.copyOf(before, before.length + 1));
    assertEquals(30, run("accept", out("longer.pdf"), "-o", out("no.pdf")).code());
    assertFalse(Files.exists(out("no.pdf")));
  }

  @Test
  void tagsAreMadeOfSealedRecordsOnly() throws IOException {
    Path file = sealed("NL-04");
    assertEquals(0, run("tag", file, "-o", out("tags.pdf")).code());
    assertEquals(0, run("tag", file, "--small", "-o", out("label.pdf")).code());
    Path left = Path.of("target/reports/tags.pdf");
    Files.createDirectories(left.getParent());
    Files.copy(out("tags.pdf"), left, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    Files.writeString(out("a.txt"), "no PDF");
    assertEquals(30, run("tag", out("a.txt"), "-o", out("none.pdf")).code());
    assertFalse(Files.exists(out("none.pdf")));
  }

  @Test
  void unknownRulesAreKnownOnceTheirIdentityWasCompared() throws IOException {
    Path file = bench.resolve("bench.yaml");
    Files.createDirectories(bench.resolve("rules"));
    Files.writeString(
        bench.resolve("rules/ours.yaml"),
        """
        format: 1
        overlay: ours
        title: ours
        edition: own
        language: 1
        for: "2026.1"
        limits:
          short_lead: {value: 1.9 m, source: practice, standing: common practice}
        """);
    Files.writeString(
        file,
        Files.readString(file)
            .replace("profile: gb\n", "profile: gb\noverlays: [rules/ours.yaml]\n"));
    Path sealed = sealed("NL-01");
    assertEquals(32, run("verify", sealed).code());
    Run shown = run("rules", "trust", sealed);
    assertEquals(3, shown.code());
    String identity = shown.out().replaceAll("(?s).*identity ([0-9a-f]{64}).*", "$1");
    assertEquals(
        32, run("rules", "trust", sealed, "--identity", "0".repeat(64), "--because", "x").code());
    assertEquals(
        0, run("rules", "trust", sealed, "--identity", identity, "--because", "ours").code());
    assertEquals(0, run("verify", sealed).code());
  }
}
