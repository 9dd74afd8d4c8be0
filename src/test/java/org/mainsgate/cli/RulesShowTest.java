package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Limit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Visible;

/** What {@code rules show} says, whatever the rules are. */
class RulesShowTest {
  private static final String FROM_MEMORY = "from memory: holds until confirmed";

  @Test
  void withoutANameEveryCheckIsListedOnceInEachOfItsStages() {
    String list = Run.of("rules", "show").out();
    for (Check check : rules("gb").checks().values()) {
      long lines = list.lines().filter(line -> line.strip().startsWith(check.id() + " ")).count();
      assertEquals(check.stages().size(), lines, check.id());
    }
  }

  @Test
  void everyCheckIsShownInFullWithinEightyColumns() {
    Run all = Run.of("rules", "show", "--all");
    assertEquals(0, all.code(), all.err());
    all.out()
        .lines()
        .forEach(
            line -> {
              assertTrue(Visible.width(line) <= 80, line);
              assertEquals(line.stripTrailing(), line);
            });
    for (String part :
        List.of("must hold", "what to find out", "its tests", "limits, by profile")) {
      assertTrue(all.out().contains("\n" + part + "\n"), part);
    }
  }

  @Test
  void aLimitStandsUnderEveryProfileSideBySide() {
    String shown = flat(Run.of("rules", "show", "earth-continuity").out());
    for (String profile : new Shelf().profiles()) {
      Limit limit =
          Optional.ofNullable(rules(profile).limits().get("earth_test_current")).orElseThrow();
      assertTrue(
          shown.matches(".*\\b" + profile + "\\b[^;]* " + limit.text() + " .*"),
          profile + " " + limit.text());
    }
  }

  @Test
  void aValueFromMemoryIsShownToHold() {
    Set<String> resting = new TreeSet<>();
    Rules rules = rules("new-equipment");
    rules
        .checks()
        .values()
        .forEach(
            check ->
                check.statements().stream()
                    .flatMap(statement -> statement.limits().stream())
                    .flatMap(name -> Optional.ofNullable(rules.limits().get(name)).stream())
                    .filter(limit -> limit.citation().isUnconfirmed())
                    .forEach(limit -> resting.add(check.id())));
    assertFalse(resting.isEmpty());
    for (String check : resting) {
      String shown = flat(Run.of("rules", "show", check, "--profile", "new-equipment").out());
      assertTrue(shown.contains(FROM_MEMORY), check);
    }
  }

  @Test
  void oneProfileAloneIsShownWithoutTheOthers() {
    String shown = Run.of("rules", "show", "earth-continuity", "--profile", "gb").out();
    assertTrue(shown.contains("    gb  20 mA"), shown);
    String limits = shown.substring(0, shown.indexOf("what to find out"));
    assertFalse(limits.contains("eu  ") || limits.contains("us  "), limits);
  }

  @Test
  void theTestsOfACheckAreNamedWithWhatTheyExpect() {
    String shown = Run.of("rules", "show", "earth-continuity").out();
    String tests = shown.substring(shown.indexOf("its tests"));
    assertTrue(tests.contains("\n  fail\n"), tests);
    assertTrue(tests.contains("\n  hold: not recorded\n"), tests);
    assertTrue(tests.contains("    - a sound record passes every earth check (gb, eu)"), tests);
  }

  @Test
  void anUnknownCheckIsAnsweredWithTheNearest() {
    Run run = Run.of("rules", "show", "erth-continuity");
    assertEquals(3, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().contains("nearest: `earth-continuity`"), run.err());
  }

  @Test
  void anUnknownProfileIsAnsweredWithTheNearest() {
    Run run = Run.of("rules", "show", "--profile", "gp");
    assertEquals(3, run.code());
    assertTrue(run.err().contains("`gb`"), run.err());
  }

  @Test
  void whatAnOverlayAddsIsShownWithItsTests() {
    String overlay = "src/test/resources/overlays/our-workshop.yaml";
    String shown = Run.of("rules", "show", "lead-length", "--profile", overlay).out();
    assertTrue(shown.contains("lead-length"), shown);
    assertTrue(shown.contains("its tests"), shown);
  }

  private static String flat(String shown) {
    return shown.replaceAll("\\s+", " ");
  }

  private static Rules rules(String profile) {
    return new Shelf().open(Shelf.Choice.named(profile), new Complaints()).orElseThrow();
  }
}
