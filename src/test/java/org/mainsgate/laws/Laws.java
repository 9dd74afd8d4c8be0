package org.mainsgate.laws;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.Visit;
import org.mainsgate.formula.Ground;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Json;
import org.mainsgate.report.Setting;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Citation;
import org.mainsgate.ruleset.Limit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.ruleset.Standing;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;
import org.mainsgate.verdict.Verdict;

/** The laws, each tried on one random example. */
final class Laws {
  /** What only better knowledge can settle. */
  private static final Set<Reason> OF_IGNORANCE =
      EnumSet.of(
          Reason.NOT_RECORDED, Reason.LIST_OPEN, Reason.TOO_NEAR, Reason.APPLICABILITY_UNKNOWN);

  private Laws() {}

  private static Rules rules(Random random) {
    return Pools.of(Rulebook.every(), random);
  }

  private static Slice slice(Random random) {
    return Slice.random(rules(random), random);
  }

  /** The same of rules under which much passes. */
  private static Slice recordable(Random random) {
    return Slice.random(Pools.of(Rulebook.all(), random), random);
  }

  private static Map<String, Outcome> opinion(Slice slice, Evidence evidence) {
    Set<String> checks = new java.util.HashSet<>();
    slice.rules().checksOf(slice.rules().firstStage()).forEach(check -> checks.add(check.id()));
    return Rulebook.opinion(slice.rules()).outcomes(evidence, checks);
  }

  private static Map<String, Outcome> outcomes(Assessment assessment) {
    Map<String, Outcome> outcomes = new TreeMap<>();
    for (Finding finding : assessment.findings()) {
      outcomes.put(finding.check().id() + "/" + finding.thing(), finding.outcome());
    }
    return outcomes;
  }

  /** The same rules with their checks changed. */
  static Rules changed(Rules r, UnaryOperator<Check> change) {
    Map<String, Check> checks = new LinkedHashMap<>();
    r.checks().forEach((id, check) -> checks.put(id, change.apply(check)));
    return with(r, r.stages(), checks);
  }

  /** The same rules with these stages and checks. */
  static Rules with(Rules r, Map<String, Stage> stages, Map<String, Check> checks) {
    return with(r, stages, checks, r.limits(), r.tables());
  }

  /** The same rules, as if somebody had confirmed every value from memory. */
  static Rules confirmed(Rules r) {
    Map<String, Limit> limits = new LinkedHashMap<>();
    r.limits()
        .forEach(
            (name, l) ->
                limits.put(
                    name,
                    new Limit(
                        name,
                        l.title(),
                        l.value(),
                        l.unit(),
                        l.text(),
                        seen(l.citation()),
                        l.at())));
    Map<String, Rules.CitedTable> tables = new LinkedHashMap<>();
    r.tables()
        .forEach(
            (name, table) -> {
              Map<String, Citation> citations = new HashMap<>(table.citations());
              citations.replaceAll((row, citation) -> seen(citation));
              tables.put(
                  name, new Rules.CitedTable(table.table(), citations, table.texts(), table.at()));
            });
    return with(r, r.stages(), r.checks(), limits, tables);
  }

  private static Citation seen(Citation c) {
    return new Citation(
        c.source(),
        c.title(),
        c.edition(),
        c.clause(),
        Standing.PUBLISHED,
        c.note(),
        c.confirmed());
  }

  private static Rules with(
      Rules r,
      Map<String, Stage> stages,
      Map<String, Check> checks,
      Map<String, Limit> limits,
      Map<String, Rules.CitedTable> tables) {
    return new Rules(
        r.profile(),
        r.title(),
        r.edition(),
        r.identity(),
        r.vocabulary(),
        stages,
        checks,
        limits,
        tables,
        r.dependencies(),
        r.meterKinds(),
        r.overlays(),
        r.order());
  }

  /** The same visit with other entries. */
  static Visit changed(Visit v, UnaryOperator<List<Entry>> found, UnaryOperator<List<Entry>> left) {
    return new Visit(
        v.id(),
        v.date(),
        v.by(),
        found.apply(v.found()),
        v.foundLists(),
        v.work(),
        left.apply(v.left()),
        v.leftLists(),
        v.judged(),
        v.withdrawn(),
        v.note(),
        v.closing(),
        v.at());
  }

  /** The same check with other prerequisites, another requirement and other plausible bands. */
  static Check changed(
      Check c, List<String> requires, TruthFormula requirement, List<Check.Condition> plausible) {
    return changed(c, requires, requirement, plausible, c.consequence());
  }

  /** The same check, which holds where it would fail. */
  static Check mild(Check c) {
    return changed(c, c.requires(), c.requirement(), c.plausible(), Check.Consequence.HOLD);
  }

  private static Check changed(
      Check c,
      List<String> requires,
      TruthFormula requirement,
      List<Check.Condition> plausible,
      Check.Consequence consequence) {
    return new Check(
        c.id(),
        c.title(),
        c.protects(),
        c.stages(),
        c.over(),
        c.needsOne(),
        requires,
        c.applies(),
        requirement,
        consequence,
        c.judgeable(),
        c.provided(),
        plausible,
        c.notes(),
        c.remedies(),
        c.caution(),
        c.citation(),
        c.at());
  }

  /** Plausibility has no part in it: a narrower reading may turn out to be an impossible one. */
  private static Check withoutPlausibility(Check check) {
    return changed(check, check.requires(), check.requirement(), List.of());
  }

  static void monotone(Judge judge, Random random) {
    Slice slice = slice(random);
    Rules rules = changed(slice.rules(), Laws::withoutPlausibility);
    Evidence before = RandomEvidence.about(slice, random, RandomEvidence.Style.LOOSE);
    Evidence after = new Better(slice, random, false).of(before);
    Assessment first = judge.judge(rules, before);
    Assessment second = judge.judge(rules, after);
    Map<String, Outcome> later = outcomes(second);
    for (Finding finding : first.findings()) {
      String id = finding.check().id();
      boolean aboutTheList = finding.check().over().map(finding.thing()::equals).orElse(false);
      if (finding.outcome() != Outcome.HOLD && !aboutTheList) {
        assertEquals(
            finding.outcome(), later.get(id + "/" + finding.thing()), id + " with " + after);
      } else if (finding.outcome() == Outcome.NOT_APPLICABLE) {
        assertTrue(
            second.findings().stream()
                .filter(other -> other.check().id().equals(id))
                .allMatch(other -> other.outcome() == Outcome.NOT_APPLICABLE),
            id + " with " + after);
      }
    }
    if (first.verdict() != Verdict.HOLD) {
      assertEquals(first.verdict(), second.verdict());
    }
  }

  static void plausibility(Judge judge, Random random) {
    Slice slice = banded(random);
    Rules rules = slice.rules();
    Evidence evidence =
        random.nextBoolean()
            ? RandomEvidence.about(slice, random, RandomEvidence.Style.CONTRADICTORY)
            : RandomEvidence.sound(slice, Sound.impossible(slice));
    Map<String, Outcome> with = outcomes(judge.judge(rules, evidence));
    outcomes(judge.judge(changed(rules, Laws::withoutPlausibility), evidence))
        .forEach(
            (finding, outcome) -> {
              Outcome found = with.get(finding);
              boolean takesAway = outcome == Outcome.PASS && found == Outcome.HOLD;
              assertTrue(found == outcome || takesAway, finding + ": " + outcome + ", " + found);
            });
  }

  /** A check that has a band of what is plausible. */
  private static Slice banded(Random random) {
    Rules rules = rules(random);
    List<String> banded =
        rules.checks().values().stream()
            .filter(check -> !check.plausible().isEmpty())
            .map(Check::id)
            .toList();
    return Slice.of(rules, Pools.of(banded, random));
  }

  static void sound(Judge judge, Random random) {
    Slice slice = slice(random);
    Evidence evidence = RandomEvidence.about(slice, random, RandomEvidence.Style.LOOSE);
    Map<String, Outcome> all = outcomes(judge.judge(slice.rules(), evidence));
    for (int i = 0; i < 3; i++) {
      Evidence point = new Better(slice, random, true).of(evidence);
      opinion(slice, point)
          .forEach(
              (finding, outcome) -> {
                Outcome said = all.getOrDefault(finding, Outcome.HOLD);
                boolean contradicts =
                    switch (said) {
                      case HOLD -> false;
                      // A point may be implausible, which takes a pass away.
                      case PASS -> outcome == Outcome.FAIL || outcome == Outcome.NOT_APPLICABLE;
                      case FAIL, NOT_APPLICABLE -> outcome != said;
                    };
                assertTrue(!contradicts, () -> finding + ": " + said + " but at " + point);
              });
    }
  }

  static void nothingRecorded(Judge judge, Random random) {
    Rules rules = rules(random);
    Assessment assessment = judge.judge(rules, Evidence.NONE);
    assertEquals(rules.checksOf(rules.firstStage()).size(), assessment.findings().size());
    assessment.findings().forEach(f -> assertEquals(Outcome.HOLD, f.outcome(), f.check().id()));
    assertEquals(Verdict.HOLD, assessment.verdict());
    Slice slice = Slice.random(rules, random);
    Check alone = slice.focus();
    Evidence listed = listedOnly(alone);
    Map<String, Outcome> outcomes = outcomes(judge.judge(slice.rules(), listed));
    String thing = alone.over().map(kind -> "x").orElse("instrument");
    assertEquals(Outcome.HOLD, outcomes.get(alone.id() + "/" + thing), alone.id());
  }

  /** One thing on a closed list, of which nothing is known. */
  private static Evidence listedOnly(Check check) {
    Map<String, Evidence.Listed> lists = new HashMap<>();
    Listing one = new Listing(List.of("x"), true);
    check
        .over()
        .ifPresent(kind -> lists.put(kind, new Evidence.Listed(one, Optional.empty(), List.of())));
    return new Evidence(Map.of(), lists, Map.of(), List.of());
  }

  static void gap(Judge judge, Random random) {
    Slice slice = slice(random);
    Rules rules = slice.rules();
    Evidence evidence = RandomEvidence.about(slice, random, style(random));
    List<Finding> passed = passed(judge.judge(rules, evidence));
    if (passed.isEmpty()) {
      return;
    }
    Finding finding = Pools.of(passed, random);
    Finding.Input input = Pools.of(finding.inputs(), random);
    String name = input.property().name();
    Map<String, Map<String, Fact>> less = new HashMap<>();
    evidence.facts().forEach((thing, facts) -> less.put(thing, without(facts, name)));
    expectHold(judge.judge(rules, evidence.withFacts(less)), finding, name);
  }

  private static RandomEvidence.Style style(Random random) {
    return Pools.of(List.of(RandomEvidence.Style.values()), random);
  }

  private static List<Finding> passed(Assessment assessment) {
    return assessment.findings().stream()
        .filter(finding -> finding.outcome() == Outcome.PASS && !finding.inputs().isEmpty())
        .toList();
  }

  private static Map<String, Fact> without(Map<String, Fact> facts, String name) {
    Map<String, Fact> less = new HashMap<>();
    facts.forEach(
        (key, fact) -> {
          if (!key.equals(name)) {
            less.put(key, with(fact, without(fact.with(), name)));
          }
        });
    return less;
  }

  private static Fact with(Fact fact, Map<String, Fact> with) {
    if (fact instanceof Fact.Amount x) {
      return new Fact.Amount(
          x.range(), x.recorded(), x.disagrees(), x.impossible(), x.said(), with);
    }
    if (fact instanceof Fact.Named x) {
      return new Fact.Named(x.candidates(), x.recorded(), x.disagrees(), x.said(), with);
    }
    if (fact instanceof Fact.Pointer x) {
      return new Fact.Pointer(
          x.things(), x.complete(), x.recorded(), x.disagrees(), x.said(), with);
    }
    Fact.Varying x = (Fact.Varying) fact;
    return new Fact.Varying(x.range(), x.recorded(), x.disagrees(), x.said(), with);
  }

  private static void expectHold(Assessment after, Finding finding, String gap) {
    String key = finding.check().id() + "/" + finding.thing();
    assertEquals(Outcome.HOLD, outcomes(after).get(key), key + " without " + gap);
    assertNotEquals(Verdict.PASS, after.verdict(), key + " without " + gap);
  }

  static void recordGap(Judge judge, Random random) {
    Slice slice = recordable(random);
    Rules rules = slice.rules();
    InstrumentRecord record = RandomRecord.of(slice, random, true);
    List<Finding> passed = passed(judge.judge(rules, record, RandomRecord.ON));
    if (passed.isEmpty()) {
      return;
    }
    Finding finding = Pools.of(passed, random);
    String name = Pools.of(finding.inputs(), random).property().name();
    InstrumentRecord less = RandomRecord.without(record, name);
    if (less.equals(record)) {
      return; // Nobody records it: it is computed.
    }
    expectHold(judge.judge(rules, less, RandomRecord.ON), finding, name);
  }

  static void shortList(Judge judge, Random random) {
    Slice slice = recordable(random);
    Rules rules = slice.rules();
    InstrumentRecord record = RandomRecord.of(slice, random, true);
    List<Finding> passed =
        passed(judge.judge(rules, record, RandomRecord.ON)).stream()
            .filter(finding -> finding.check().over().isPresent())
            .toList();
    if (passed.isEmpty()) {
      return;
    }
    Finding finding = Pools.of(passed, random);
    InstrumentRecord less = RandomRecord.withoutThing(record, finding.thing());
    Assessment after = judge.judge(rules, less, RandomRecord.ON);
    String key = finding.check().id() + "/" + finding.check().over().orElseThrow();
    assertEquals(Outcome.HOLD, outcomes(after).get(key), key);
    assertNotEquals(Verdict.PASS, after.verdict());
  }

  private static String key(Finding finding) {
    return finding.check().id() + "/" + finding.thing();
  }

  static void prerequisites(Judge judge, Random random) {
    Slice slice = slice(random);
    Rules rules = slice.rules();
    Evidence evidence = RandomEvidence.about(slice, random, style(random));
    Assessment assessment = judge.judge(rules, evidence);
    for (Finding finding : passed(assessment)) {
      Check check = rules.checks().getOrDefault(finding.check().id(), finding.check());
      for (String first : check.requires()) {
        boolean open =
            assessment.findings().stream()
                .filter(other -> other.check().id().equals(first))
                .filter(other -> isOfTheSame(other, check, finding.thing()))
                .anyMatch(
                    other -> other.outcome() == Outcome.HOLD || other.outcome() == Outcome.FAIL);
        assertTrue(!open, key(finding) + " passes before " + first);
      }
    }
  }

  private static boolean isOfTheSame(Finding first, Check check, String thing) {
    boolean sameList =
        first.check().over().isPresent() && first.check().over().equals(check.over());
    return !sameList || first.thing().equals(thing);
  }

  static void decisive(Judge judge, Random random) {
    Slice slice = slice(random);
    Evidence evidence = RandomEvidence.about(slice, random, RandomEvidence.Style.POINTS);
    for (Finding finding : judge.judge(slice.rules(), evidence).findings()) {
      Set<Reason> reasons =
          finding.holds().stream().map(Finding.Hold::reason).collect(Collectors.toSet());
      assertTrue(
          Collections.disjoint(reasons, OF_IGNORANCE) || isOutsideATable(finding),
          () -> key(finding) + " " + finding.holds() + " on " + evidence);
    }
  }

  /** Of a number that no row fits nothing is known, however well it is known itself. */
  private static boolean isOutsideATable(Finding finding) {
    boolean applies =
        finding.check().applies().filter(formula -> !formula.tables().isEmpty()).isPresent();
    boolean open =
        finding.arithmetic().stream()
            .filter(Ground.Comparison.class::isInstance)
            .map(Ground.Comparison.class::cast)
            .anyMatch(c -> !c.left().isBounded() || !c.right().isBounded());
    return open || applies;
  }

  static void secondOpinion(Judge judge, Random random) {
    Slice slice = slice(random);
    Evidence evidence = RandomEvidence.about(slice, random, style(random));
    assertEquals(
        new TreeMap<>(opinion(slice, evidence)),
        outcomes(judge.judge(slice.rules(), evidence)),
        () -> slice.rules().profile() + " on " + evidence);
  }

  static void reproducible(Judge judge, Random random) {
    Slice slice = slice(random);
    Rules rules = slice.rules();
    Evidence evidence = RandomEvidence.about(slice, random, style(random));
    String here = json(judge, rules, evidence);
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag(Pools.of(List.of("tr-TR", "de-DE"), random)));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
      same(here, json(judge, rules, shuffled(evidence, random)));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  private static void same(String first, String second) {
    List<String> lines = first.lines().toList();
    List<String> others = second.lines().toList();
    for (int i = 0; i < Math.min(lines.size(), others.size()); i++) {
      assertEquals(lines.get(i), others.get(i), "in line " + (i + 1));
    }
    assertEquals(first, second);
  }

  private static Evidence shuffled(Evidence evidence, Random random) {
    Map<String, Map<String, Fact>> facts = new LinkedHashMap<>();
    List<String> things = new ArrayList<>(evidence.facts().keySet());
    Collections.shuffle(things, random);
    things.forEach(
        thing ->
            facts.put(thing, shuffled(evidence.facts().getOrDefault(thing, Map.of()), random)));
    return evidence.withFacts(facts);
  }

  private static Map<String, Fact> shuffled(Map<String, Fact> facts, Random random) {
    List<Map.Entry<String, Fact>> entries = new ArrayList<>(facts.entrySet());
    Collections.shuffle(entries, random);
    Map<String, Fact> shuffled = new LinkedHashMap<>();
    entries.forEach(
        entry ->
            shuffled.put(
                entry.getKey(), with(entry.getValue(), shuffled(entry.getValue().with(), random))));
    return shuffled;
  }

  private static String json(Judge judge, Rules rules, Evidence evidence) {
    return json(rules, Notebook.under(rules).record(), judge.judge(rules, evidence));
  }

  /** What the engine says of a record. */
  static String json(Rules rules, InstrumentRecord record) {
    return json(rules, record, Judge.ENGINE.judge(rules, record, RandomRecord.ON));
  }

  private static String json(Rules rules, InstrumentRecord record, Assessment assessment) {
    Setting setting =
        new Setting(record.bench(), rules, false, rules.firstStage(), RandomRecord.ON);
    Instrument instrument = record.instrument();
    Dossier dossier =
        new Dossier(
            setting, instrument, record.visits(), assessment, List.of(), List.of(), List.of());
    return Json.of(setting, List.of(dossier), List.of());
  }

  static void orderFree(Judge judge, Random random) {
    Slice slice = recordable(random);
    Rules rules = slice.rules();
    InstrumentRecord record = RandomRecord.of(slice, random, false);
    InstrumentRecord other = RandomRecord.shuffled(record, random);
    same(
        json(rules, record, judge.judge(rules, record, RandomRecord.ON)),
        json(rules, record, judge.judge(rules, other, RandomRecord.ON)));
  }
}
