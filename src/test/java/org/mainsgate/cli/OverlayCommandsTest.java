package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.laws.Rulebook;

/** A bench with local rules, as a person meets it on the screen. */
class OverlayCommandsTest {
  private static final Path FOLDER = Path.of("src/test/resources/overlays");
  private static final Path OURS = FOLDER.resolve("our-workshop.yaml");
  private static final Path TESTS = FOLDER.resolve("our-workshop.tests.yaml");
  private static final String READING = "earth_resistance: 0.13 Ω";
  private static final String VISIT = "instruments/NL-01/visits/2026-11-25-AR-7f3a.draft.yaml";

  @TempDir Path folder;

  @Test
  void whatPassesUnderTheProfileFailsUnderTheOverlay() {
    Path bench = Run.smallBench(folder);
    // 0.12 Ω in a lead of 0.0585 Ω: within 0.1 Ω + copper, over 0.05 Ω + copper.
    edit(bench.resolve(VISIT), READING, "earth_resistance: 0.12 ± 0.001 Ω");
    Run plain = Run.of("check", bench);
    lay(bench);
    Run laid = Run.of("check", bench);
    assertEquals(0, plain.code(), plain.out() + plain.err());
    assertEquals(20, laid.code(), laid.out() + laid.err());
    assertTrue(laid.out().contains("Local rules: our-workshop, edition own"), laid.out());
    assertNotEquals(identity(plain), identity(laid));
  }

  @Test
  void theOverlayLiesOnAnotherProfileToo() {
    Path bench = Run.smallBench(folder);
    lay(bench);
    Run laid = Run.of("check", bench, "--profile", "eu");
    assertTrue(laid.out().contains("Local rules: our-workshop"), laid.out() + laid.err());
  }

  @Test
  void whatIsRelaxedStandsInTheJsonAndOnTheScreen() {
    Path bench = Run.smallBench(folder);
    lay(bench);
    Path overlay = bench.resolve("rules/our-workshop.yaml");
    edit(overlay, "short_lead: {value: 1.5 m", "short_lead: {value: 2.5 m");
    Run refused = Run.of("check", bench);
    assertEquals(3, refused.code());
    assertTrue(
        refused.err().contains("rules/our-workshop.yaml:13:23: `short_lead` is loosened"),
        refused.err());
    edit(
        overlay,
        "amend:",
        "relaxes:\n  - {what: short_lead, because: our benches are long, by: the restorer}\n\namend:");
    Run laid = Run.of("check", bench);
    assertTrue(
        laid.out()
            .replaceAll("\\s+", " ")
            .contains(
                "Relaxed by local rules: longest lead that counts as short: 2.5 m instead of 2 m; because: our benches are long; by: the restorer"),
        laid.out() + laid.err());
    String json = Run.of("check", bench, "--json").out();
    assertTrue(json.contains("\"because\": \"our benches are long\""), json);
  }

  @Test
  void anOverlayThatIsNotThereIsComplainedAboutWhereItIsNamed() {
    Path bench = Run.smallBench(folder);
    edit(
        bench.resolve("bench.yaml"), "profile: gb\n", "profile: gb\noverlays: [rules/ours.yaml]\n");
    Run run = Run.of("check", bench);
    assertEquals(3, run.code());
    assertTrue(
        run.err().startsWith("bench.yaml:6:12: no overlay `rules/ours.yaml`: this does not exist"),
        run.err());
  }

  @Test
  void anOverlayOutsideTheBenchIsRefused() {
    Path bench = Run.smallBench(folder);
    Run.copy(FOLDER, folder.resolve("rules"));
    edit(
        bench.resolve("bench.yaml"),
        "profile: gb\n",
        "profile: gb\noverlays: [../rules/our-workshop.yaml]\n");
    Run run = Run.of("check", bench);
    assertEquals(3, run.code());
    assertTrue(run.err().startsWith("bench.yaml:6:12: "), run.err());
  }

  @Test
  void rulesCheckLaysAnOverlayOnEveryProfile() {
    Run run = Run.of("rules", "check", OURS);
    assertEquals(0, run.code(), run.err());
    int gb = Rulebook.gb().checks().size() + 1;
    int eu = Rulebook.eu().checks().size() + 1;
    assertTrue(run.out().contains("\ngb+our-workshop: " + gb + " checks, "), run.out());
    assertTrue(run.out().contains("\neu+our-workshop: " + eu + " checks, "), run.out());
  }

  @Test
  void anOverlaysCheckThatNeedsNoEvidenceIsRefused() throws IOException {
    Path overlay = folder.resolve("blind.yaml");
    Files.writeString(
        overlay,
        Files.readString(OURS)
            .replace(
                "requirement: lead_length <= our_longest_lead",
                "requirement: our_longest_lead > 0 m"));
    Run run = Run.of("rules", "check", overlay);
    assertEquals(3, run.code());
    assertTrue(
        run.err()
            .replaceAll("\\s+", " ")
            .contains("`lead-length` says pass before anything is recorded"),
        run.err());
  }

  @Test
  void rulesTestRunsTheTestsOfAnOverlay() throws IOException {
    Run run = Run.of("rules", "test", OURS);
    assertEquals(0, run.code(), run.out() + run.err());
    Path copy = folder.resolve("our-workshop.yaml");
    Files.copy(OURS, copy);
    Files.writeString(
        folder.resolve("our-workshop.tests.yaml"),
        Files.readString(TESTS).replace("lead_length: 3.1 m", "lead_length: 2.9 m"));
    Run wrong = Run.of("rules", "test", copy);
    assertEquals(3, wrong.code());
    assertFalse(wrong.out().contains(" 0 failed"), wrong.out());
  }

  private void lay(Path bench) {
    Run.copy(FOLDER, bench.resolve("rules"));
    edit(
        bench.resolve("bench.yaml"),
        "profile: gb\n",
        "profile: gb\noverlays: [rules/our-workshop.yaml]\n");
  }

  private static String identity(Run run) {
    return run.out()
        .lines()
        .filter(line -> line.contains("identity"))
        .reduce((a, b) -> b)
        .orElseThrow();
  }

  private static void edit(Path file, String from, String to) {
    try {
      String text = Files.readString(file);
      assertTrue(text.contains(from), from);
      Files.writeString(file, text.replace(from, to));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
