package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.mainsgate.laws.Judge;
import org.mainsgate.laws.RandomEvidence;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Rules;

/**
 * Whatever an accepted overlay adds, no finding is better with it than without it. A random overlay
 * may be refused; what is looked at then is that enough of them are not.
 */
class OverlayPropertiesTest {
  private static final List<String> ON_A_LEAD =
      List.of(
          "sheath is sound",
          "lead_length <= our_length",
          "core_area >= our_area",
          "class is I implies cores is three",
          "plug_state is sound or attachment is detachable",
          "not (strands is moulded)");
  private static final List<String> ON_THE_INSTRUMENT =
      List.of(
          "chassis_tie is none",
          "rated_power <= our_power",
          "supply_arrangement is not switched_mode",
          "all l in lead: l.lead_length <= our_length");
  private static final List<String> ON_A_PART =
      List.of(
          "earth_resistance <= our_base",
          "earth_resistance.through.lead_length <= our_length",
          "earth_resistance.test_current >= our_current",
          "part_path is not double_insulated");
  private static final Map<String, List<String>> OURS =
      Map.of(
          "our_length", List.of("1 m", "2.5 m", "5 m"),
          "our_area", List.of("0.75 mm²", "1.0 mm²"),
          "our_power", List.of("40 W", "1 kW"),
          "our_base", List.of("0.05 Ω", "0.1 Ω"),
          "our_current", List.of("0.1 A", "10 A"));

  /** Values on both sides of those of the profiles; the looser ones are refused. */
  private static final Map<String, List<String>> MOVED =
      Map.of(
          "earth_test_current", List.of("10 mA", "0.2 A", "1 A"),
          "copper_share", List.of("0", "0.5", "1"),
          "detachable_lead_base", List.of("0.05 Ω", "0.09 Ω", "0.2 Ω"),
          "short_lead", List.of("1 m", "1.9 m", "3 m"),
          "extra_low_limit", List.of("12 V", "60 V"),
          "stepped_core_area", List.of("0.5 mm²", "1.0 mm²"),
          "plausible_share", List.of("0.5", "0.9", "0.95"));

  @Property(tries = 600, edgeCases = EdgeCasesMode.NONE)
  void noFindingIsBetterUnderAnOverlay(@ForAll long seed) {
    Random random = new Random(seed);
    String profile = random.nextBoolean() ? "gb" : "eu";
    Rules plain = profile.equals("gb") ? Rulebook.gb() : Rulebook.eu();
    String overlay = overlay(plain, random);
    Optional<Rules> accepted = Rulebook.ifAccepted(profile, overlay);
    Statistics.label("overlay")
        .collect(accepted.isPresent() ? "accepted" : "refused")
        .coverage(c -> c.check("accepted").percentage(p -> p > 30));
    if (accepted.isEmpty()) {
      return;
    }
    Rules strict = accepted.get();
    List<String> checks = concerned(plain, overlay);
    for (RandomEvidence.Style style : RandomEvidence.Style.values()) {
      for (int i = 0; i < 5; i++) {
        String check = of(checks, random);
        Evidence evidence = RandomEvidence.of(plain, check, random, style);
        Rules loose = Rulebook.cut(plain, strict, check);
        compare(loose, Rulebook.cut(strict, plain, check), evidence, overlay);
      }
    }
    Statistics.label("outcome").coverage(c -> c.check("lower").percentage(p -> p > 0.5));
  }

  /** The checks that an overlay amends, or whose limits it moves; all if there are none. */
  private static List<String> concerned(Rules plain, String overlay) {
    List<String> concerned = new ArrayList<>();
    for (Check check : plain.checks().values()) {
      boolean moved =
          check.requirement().limits().stream().anyMatch(limit -> overlay.contains(limit + ":"));
      if (moved || overlay.contains("  " + check.id() + ":\n")) {
        concerned.add(check.id());
      }
    }
    return concerned.isEmpty() ? List.copyOf(plain.checks().keySet()) : concerned;
  }

  private static void compare(Rules plain, Rules strict, Evidence evidence, String overlay) {
    Assessment loose = Judge.ENGINE.judge(plain, evidence);
    Assessment tight = Judge.ENGINE.judge(strict, evidence);
    Map<String, Outcome> outcomes = outcomes(tight);
    outcomes(loose)
        .forEach(
            (finding, outcome) -> {
              Outcome now = outcomes.get(finding);
              assertTrue(
                  now != null && isNoBetter(now, outcome),
                  () -> finding + ": " + outcome + " to " + now + "\n" + overlay + evidence);
              Statistics.label("outcome").collect(now == outcome ? "same" : "lower");
            });
    assertTrue(
        tight.verdict().compareTo(loose.verdict()) == 0
            || loose.verdict().worse(tight.verdict()) == tight.verdict(),
        () -> "stage: " + loose.verdict() + " to " + tight.verdict() + "\n" + overlay + evidence);
  }

  /** What does not apply is the same with and without; else pass, hold and fail, in this order. */
  private static boolean isNoBetter(Outcome now, Outcome before) {
    boolean concerned = now != Outcome.NOT_APPLICABLE && before != Outcome.NOT_APPLICABLE;
    return concerned ? now.compareTo(before) >= 0 : now == before;
  }

  private static Map<String, Outcome> outcomes(Assessment assessment) {
    Map<String, Outcome> outcomes = new LinkedHashMap<>();
    assessment.findings().forEach(f -> outcomes.put(f.check().id() + "/" + f.thing(), f.outcome()));
    return outcomes;
  }

  private static String overlay(Rules rules, Random random) {
    StringBuilder amend = new StringBuilder();
    List<Check> checks = new ArrayList<>(rules.checks().values());
    int count = random.nextInt(4);
    for (int i = 0; i < count; i++) {
      Check check = check(checks, random);
      checks.remove(check);
      amend.append(amendment(rules, check, random));
    }
    StringBuilder limits = new StringBuilder();
    OURS.forEach(
        (name, values) -> {
          if (amend.indexOf(name) >= 0) {
            limits.append(limit(name, of(values, random)));
          }
        });
    MOVED.forEach(
        (name, values) -> {
          if (rules.limits().containsKey(name) && random.nextInt(5) == 0) {
            limits.append(limit(name, of(values, random)));
          }
        });
    return "format: 1\noverlay: ours\ntitle: Ours\nedition: own\nlanguage: 1\nfor: \"2026.1\"\n"
        + (limits.isEmpty() ? "" : "limits:\n" + limits)
        + (amend.isEmpty() ? "" : "amend:\n" + amend);
  }

  /** A check that a person may judge, every other time: few are, and much can go wrong there. */
  private static Check check(List<Check> checks, Random random) {
    List<Check> judgeable = checks.stream().filter(Check::judgeable).toList();
    return of(judgeable.isEmpty() || random.nextBoolean() ? checks : judgeable, random);
  }

  private static String amendment(Rules rules, Check check, Random random) {
    List<String> lines = new ArrayList<>();
    boolean judgeable = check.judgeable();
    if (random.nextInt(2) == 0) {
      lines.add("requirement: \"" + of(pool(check), random) + "\"");
    }
    if (random.nextInt(judgeable ? 2 : 4) == 0 || lines.isEmpty()) {
      lines.add("consequence: fail");
    }
    if (random.nextInt(3) == 0) {
      lines.add("requires: [" + of(List.copyOf(rules.checks().keySet()), random) + "]");
    }
    if (random.nextInt(4) == 0) {
      lines.add("provided: [{that: \"" + of(pool(check), random) + "\", otherwise: not as asked}]");
    }
    return "  " + check.id() + ":\n    " + String.join("\n    ", lines) + "\n";
  }

  private static List<String> pool(Check check) {
    return switch (check.over().orElse("")) {
      case "lead" -> ON_A_LEAD;
      case "exposed_part" -> ON_A_PART;
      default -> ON_THE_INSTRUMENT;
    };
  }

  private static String limit(String name, String value) {
    return "  " + name + ": {value: " + value + ", source: practice, standing: common practice}\n";
  }

  private static <T> T of(List<T> values, Random random) {
    return values.get(random.nextInt(values.size()));
  }
}
