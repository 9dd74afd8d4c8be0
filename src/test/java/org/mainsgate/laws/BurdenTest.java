package org.mainsgate.laws;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.mainsgate.Golden;
import org.mainsgate.formula.Input;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Verdict;

/**
 * What the rules ask of a person for a standard instrument: class I, valves, one transformer. Every
 * entry of its record is needed, and there are no more of them than the budget allows.
 *
 * <p>The record is the bench {@code standard} of the test resources, or {@code standard-PROFILE}
 * where a profile asks for something else. What a bench writes once is not counted, nor what its
 * ways of measuring fill in. Values from memory count as confirmed: what they ask for is asked.
 */
class BurdenTest {
  private static final String YEARLY = "yearly";
  private static final String TAG = "ST-01";
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  /** Our own budget: a quarter of an hour for the first time, five minutes a year later. */
  private static final Load FIRST = new Load(12, 10, 30);

  private static final Load AGAIN = new Load(4, 0, 10);

  /**
   * Entries that a person makes.
   *
   * @param readings what is measured
   * @param typed other numbers, from a plate, a marking or a tape
   * @param ticks observations, and lists that are closed
   */
  private record Load(int readings, int typed, int ticks) {
    boolean fits(Load budget) {
      return readings <= budget.readings && typed <= budget.typed && ticks <= budget.ticks;
    }

    Load plus(Load other) {
      return new Load(readings + other.readings, typed + other.typed, ticks + other.ticks);
    }

    @Override
    public String toString() {
      return readings + " readings, " + typed + " other typed values, " + ticks + " ticks";
    }
  }

  /** Something written down: a place in a file, and what it costs. */
  private record Item(String file, List<String> place, Load load) {}

  @Test
  void theFirstStageStaysWithinItsBudgetUnderEachProfile() {
    Map<String, String> counts = new TreeMap<>();
    for (Rules rules : Rulebook.all()) {
      CopiedBench bench = bench("standard", rules);
      List<Item> items = new ArrayList<>(items(bench, bench.visits(), rules));
      items.addAll(below(bench, CopiedBench.INSTRUMENT, List.of("plate"), rules));
      counts.put(rules.profile(), weighed(bench, rules, rules.firstStage(), items, FIRST));
    }
    Golden.check("laws/burden", counts);
  }

  @Test
  void aYearLaterLittleIsRecordedAnew() {
    assumeTrue(
        Rulebook.all().stream().anyMatch(rules -> rules.stage(YEARLY).isPresent()),
        "no stage is called yearly");
    Map<String, String> counts = new TreeMap<>();
    for (Rules rules : Rulebook.all()) {
      CopiedBench bench = bench("standard-" + YEARLY, rules);
      List<String> visits = bench.visits();
      List<String> last = visits.subList(visits.size() - 1, visits.size());
      Stage stage = rules.stage(YEARLY).orElseThrow();
      counts.put(rules.profile(), weighed(bench, rules, stage, items(bench, last, rules), AGAIN));
    }
    Golden.check("laws/burden-" + YEARLY, counts);
  }

  private static CopiedBench bench(String name, Rules rules) {
    Path benches = Path.of("src", "test", "resources", "benches");
    Path own = benches.resolve(name + "-" + rules.profile());
    return CopiedBench.of(Files.exists(own) ? own : benches.resolve(name), TAG);
  }

  /** Counts the items, after making sure that it passes with all and with none less. */
  private static String weighed(
      CopiedBench bench, Rules rules, Stage stage, List<Item> items, Load budget) {
    Rules known = Laws.confirmed(rules);
    assertEquals(List.of(), open(bench, known, stage), rules.profile() + " does not pass");
    List<String> idle = new ArrayList<>();
    Load all = new Load(0, 0, 0);
    for (Item item : items) {
      CopiedBench less = bench.with(item.file(), bench.file(item.file()).without(item.place()));
      if (open(less, known, stage).isEmpty()) {
        idle.add(item.file() + " " + String.join(".", item.place()));
      }
      all = all.plus(item.load());
    }
    assertEquals(List.of(), idle, rules.profile() + " does not need");
    assertTrue(all.fits(budget), rules.profile() + ": " + all + "; the budget is " + budget);
    return all + "\n";
  }

  /** What keeps a stage from passing; empty if it passes. */
  private static List<String> open(CopiedBench bench, Rules rules, Stage stage) {
    Optional<CopiedBench.Opinion> opinion = bench.judged(rules, stage, DAY);
    if (opinion.isEmpty()) {
      return List.of("can't be read");
    }
    List<Finding> findings = opinion.get().assessment().findings();
    List<String> open = new ArrayList<>();
    for (Finding finding : findings) {
      if (finding.outcome() == Outcome.HOLD || finding.outcome() == Outcome.FAIL) {
        open.add(finding.check().id() + "/" + finding.thing() + " " + finding.holds());
      }
    }
    boolean passes = opinion.get().assessment().verdict() == Verdict.PASS;
    return passes || !open.isEmpty() ? open : List.of("nothing passed");
  }

  private static List<Item> items(CopiedBench bench, List<String> visits, Rules rules) {
    List<Item> items = new ArrayList<>();
    for (String visit : visits) {
      items.addAll(below(bench, visit, List.of("found"), rules));
      items.addAll(below(bench, visit, List.of("left"), rules));
    }
    return items;
  }

  /** Every property and every closed list that somebody has written below a place. */
  private static List<Item> below(CopiedBench bench, String file, List<String> from, Rules rules) {
    List<Item> items = new ArrayList<>();
    for (List<String> place : bench.file(file).places()) {
      boolean inside = place.size() > from.size() && place.subList(0, from.size()).equals(from);
      String name = inside ? place.get(place.size() - 1) : "";
      Optional<Property> property = rules.vocabulary().property(name);
      boolean list = place.size() > 1 && place.get(place.size() - 2).equals("looked");
      if (inside && list) {
        items.add(new Item(file, place, new Load(0, 0, 1)));
      } else if (inside && property.isPresent()) {
        items.add(new Item(file, place, load(property.get())));
      }
    }
    return items;
  }

  private static Load load(Property property) {
    if (!(property instanceof Property.Quantity quantity)) {
      return new Load(0, 0, 1);
    }
    boolean measured = quantity.nature() == Nature.MEASURED;
    return measured ? new Load(1, 0, 0) : new Load(0, 1, 0);
  }

  /** What is never asked for must not be needed, but for what the bench writes once. */
  @Test
  void noCheckNeedsANote() {
    Set<String> needed = new TreeSet<>();
    for (Rules rules : Rulebook.all()) {
      for (Check check : rules.checks().values()) {
        List<TruthFormula> formulas = new ArrayList<>(List.of(check.requirement()));
        check.applies().ifPresent(formulas::add);
        check.provided().forEach(condition -> formulas.add(condition.that()));
        for (TruthFormula formula : formulas) {
          formula.inputs().stream()
              .map(Input::reference)
              .map(reference -> reference.path().get(reference.path().size() - 1))
              .filter(name -> isNote(rules, name))
              .forEach(name -> needed.add(check.id() + ": " + name));
        }
      }
    }
    assertEquals(Set.of(), needed);
  }

  /** The age of an entry is computed; nobody is asked for it. */
  private static boolean isNote(Rules rules, String name) {
    Property.Heading heading = rules.vocabulary().property(name).orElseThrow().heading();
    return heading.tier() == Property.Tier.NOTE
        && heading.home() != Property.Home.BENCH
        && !name.equals("age");
  }
}
