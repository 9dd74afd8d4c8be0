package org.mainsgate.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;

/**
 * The rulesets that the program carries, held to their own tests; and the tests held to account.
 */
class RulesetsTest {
  private static @Nullable TrialReport whole;

  private final Shelf shelf = new Shelf();

  @Test
  void everyTestOfTheRulesetsFindsWhatItExpects() {
    TrialReport report = all();
    assertEquals(List.of(), report.failures());
    assertTrue(report.ran() > 300, "ran " + report.ran());
  }

  @Test
  void everyPossibleOutcomeOfEveryCheckIsSeen() {
    assertEquals(List.of(), all().uncovered());
  }

  @Test
  void everyValueMovedByATenthIsNoticed() {
    assertEquals(List.of(), all().unnoticed());
  }

  @Test
  void aTestThatExpectsSomethingElseFails() {
    Map<String, byte[]> tests = tests();
    tests.replaceAll((name, bytes) -> changed(bytes, "stage: \"pass\"", "stage: \"fail\""));
    tests.replaceAll((name, bytes) -> changed(bytes, "stage: pass", "stage: fail"));
    TrialReport report = run(tests, about("none"));
    assertTrue(report.failures().size() >= 4, report.failures()::toString);
    assertEquals("pass", report.failures().get(0).found());
  }

  @Test
  void withoutTheTestsOfOneFileValuesMoveUnnoticed() {
    Map<String, byte[]> tests = tests();
    tests.remove("fuses.tests.yaml");
    TrialReport report = run(tests, about("rulesets/2026.1/fuses.yaml"));
    assertTrue(report.unnoticed().contains("fuse_most × 1.1"), report.unnoticed()::toString);
    assertTrue(report.uncovered().contains("fuse-makeshift: fail"));
  }

  @Test
  void aRecordThatCantBeUnderstoodIsComplainedAboutWhereItStands() {
    Map<String, byte[]> tests = tests();
    tests.replaceAll(
        (name, bytes) ->
            name.endsWith("records.tests.yaml")
                ? changed(bytes, "core_area: 1.0 mm²", "core_area: 1.0 Ω")
                : bytes);
    Complaints complaints = new Complaints();
    assertEquals(
        Optional.empty(), Trial.run(shelf, profiles(), tests, Trial.Concern.ALL, complaints));
    assertTrue(
        complaints.sorted().get(0).at().toString().startsWith("records.tests.yaml:"),
        complaints.renderAll());
  }

  private static byte[] changed(byte[] bytes, String from, String to) {
    return new String(bytes, StandardCharsets.UTF_8)
        .replace(from, to)
        .getBytes(StandardCharsets.UTF_8);
  }

  private static Trial.Concern about(String file) {
    return new Trial.Concern(Map.of(), Set.of(file));
  }

  /** The whole run, made once: it moves every value of every profile. */
  private TrialReport all() {
    TrialReport found = whole;
    if (found == null) {
      found = run(tests(), Trial.Concern.ALL);
      whole = found;
    }
    return found;
  }

  private TrialReport run(Map<String, byte[]> tests, Trial.Concern concern) {
    Complaints complaints = new Complaints();
    Optional<TrialReport> report = Trial.run(shelf, profiles(), tests, concern, complaints);
    assertEquals("", complaints.renderAll());
    return report.orElseThrow();
  }

  private Map<String, Shelf.Choice> profiles() {
    Map<String, Shelf.Choice> profiles = new LinkedHashMap<>();
    shelf.profiles().forEach(name -> profiles.put(name, Shelf.Choice.named(name)));
    return profiles;
  }

  private Map<String, byte[]> tests() {
    Map<String, byte[]> tests = new LinkedHashMap<>();
    shelf.tests().forEach(file -> tests.put(file, shelf.bytes(file).orElseThrow()));
    return tests;
  }
}
