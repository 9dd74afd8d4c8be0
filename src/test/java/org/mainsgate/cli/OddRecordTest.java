package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Records that can be read, and that no careful person would have written: each is a finding or a
 * complaint in plain words, never a silence.
 */
class OddRecordTest {
  private static final String VISITS = "instruments/NL-01/visits/";
  private static final String VISIT = VISITS + "2026-11-25-AR-7f3a.draft.yaml";
  private static final String DECIDED =
      "judged:\n  - {check: lead-cores, item: mains-lead, decision: accepted, by: AR, because: x}\n";

  @TempDir Path folder;

  private Path bench(UnaryOperator<String> change) throws IOException {
    Path bench = Run.smallBench(folder.resolve("a"));
    String before = Files.readString(bench.resolve(VISIT));
    String after = change.apply(before);
    assertFalse(before.equals(after), "nothing is changed");
    Files.writeString(bench.resolve(VISIT), after);
    return bench;
  }

  /** The words of a run on one line, however the screen has broken them. */
  private static String words(Run run) {
    return (run.err() + run.out()).replaceAll("\\s+", " ");
  }

  private static void says(Run run, int code, String... wanted) {
    String words = words(run);
    assertEquals(code, run.code(), words);
    for (String some : wanted) {
      assertTrue(words.contains(some), () -> some + " is not in " + words);
    }
  }

  @Test
  void aListCountedFourWithOneNamedIsAHold() throws IOException {
    Path bench = bench(text -> text.replace("exposed_part: [case]", "exposed_part: 4"));
    says(Run.of("check", bench), 10, "list not closed: counted 4, listed 1: exposed metal parts");
  }

  @Test
  void twoObservationsOfOneVisitThatExcludeEachOtherAreAHold() throws IOException {
    Path bench = bench(text -> text.replace("cores: three", "cores: [{is: three}, {is: two}]"));
    says(
        Run.of("check", bench),
        10,
        "readings disagree: cores (fixed lead): three, one of them earth against two");
  }

  @Test
  void aDecisionWhereNobodyMayJudgeHasNoEffectAndIsSaidToHaveNone() throws IOException {
    Path bench = bench(text -> text.replace("cores: three", "cores: two") + DECIDED);
    says(
        Run.of("check", bench),
        20,
        "|#| Three cores for an earthed instrument: fixed lead",
        "a decision of 2026-11-25 has no effect: this is not for a person to judge");
  }

  @Test
  void overRangeOnAMeterOfSeveralRangesNeedsItsRange() throws IOException {
    Path bench = bench(text -> text.replace("earth_resistance: 0.13 Ω", "earth_resistance: OL"));
    Path file = bench.resolve("bench.yaml");
    Files.writeString(file, Files.readString(file).replace("range: 19.99 Ω, ", ""));
    says(Run.of("check", bench), 3, "an over-range display without its range");
  }

  @Test
  void anEntryTakenBackWithoutAReasonIsComplainedAbout() throws IOException {
    Path bench =
        bench(
            text ->
                text.replace(
                        "earth_resistance: 0.13 Ω", "earth_resistance: {id: e1, value: 0.13 Ω}")
                    + "withdrawn:\n  - {entry: e1}\n");
    says(Run.of("check", bench), 3, "missing `reason`", "{entry: e1}");
  }

  /** The first visit closed on the 25th; its words again in a draft of another day. */
  private Path closedWithDraft(String day) throws IOException {
    Path bench = Run.smallBench(folder.resolve("b"));
    assertEquals(0, Run.of("close", bench, "NL-01").code());
    String closed = Files.readString(bench.resolve(VISITS + "2026-11-25-AR-7f3a.yaml"));
    String words = closed.substring(0, closed.indexOf("closed:")).replace("2026-11-25", day);
    Files.writeString(bench.resolve(VISITS + day + "-AR-1111.draft.yaml"), words);
    return bench;
  }

  @Test
  void aDraftOfAnEarlierDateIsClosedWithoutTheLaterVisitThatItDidNotKnow() throws IOException {
    Path bench = closedWithDraft("2026-11-20");
    says(Run.of("close", bench, "NL-01", "--on", "2026-11-26"), 0, "closed: ");
    String closed = Files.readString(bench.resolve(VISITS + "2026-11-20-AR-1111.yaml"));
    assertTrue(closed.contains("after: []") || closed.strip().endsWith("after:"), closed);
    Run after = Run.of("check", bench);
    assertTrue(after.code() == 0 || after.code() == 10, words(after));
  }

  @Test
  void aClosedVisitThatComesAfterOneOfALaterDateIsNoticed() throws IOException {
    Path bench = closedWithDraft("2026-11-26");
    assertEquals(0, Run.of("close", bench, "NL-01", "--on", "2026-11-26").code());
    Path second = bench.resolve(VISITS + "2026-11-26-AR-1111.yaml");
    Path before = bench.resolve(VISITS + "2026-11-20-AR-1111.yaml");
    Files.writeString(
        before, Files.readString(second).replace("date: 2026-11-26", "date: 2026-11-20"));
    Files.delete(second);
    Files.delete(bench.resolve(VISITS + "2026-11-26-AR-1111.yaml.sha256"));
    Files.writeString(
        bench.resolve(VISITS + "2026-11-20-AR-1111.yaml.sha256"),
        Sums.sha256(before) + "  2026-11-20-AR-1111.yaml\n");
    says(
        Run.of("check", bench, "--on", "2026-11-26"),
        3,
        "a closed visit is not as it was closed; no verdict",
        "this visit has an earlier date than `2026-11-25-AR-7f3a`, which it was closed after");
  }

  /** Sums as `sha256sum` makes them. */
  private static final class Sums {
    static String sha256(Path file) throws IOException {
      try {
        return java.util.HexFormat.of()
            .formatHex(
                java.security.MessageDigest.getInstance("SHA-256")
                    .digest(Files.readAllBytes(file)));
      } catch (java.security.NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java has SHA-256", e);
      }
    }
  }
}
