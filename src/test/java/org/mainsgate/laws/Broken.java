package org.mainsgate.laws;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.Visit;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.Range;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;
import org.mainsgate.verdict.Verdict;

/** Engines that are wrong in one way each, and the laws that find them out. */
public enum Broken implements Judge {
  /** Never wrong, and of no use. */
  ALWAYS_HOLDS {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return each(ENGINE.judge(rules, evidence), finding -> as(finding, Outcome.HOLD));
    }
  },
  ALWAYS_PASSES {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return each(ENGINE.judge(rules, evidence), finding -> as(finding, Outcome.PASS));
    }
  },
  IGNORES_PREREQUISITES {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return ENGINE.judge(Laws.changed(rules, Broken::withoutPrerequisites), evidence);
    }
  },
  /** What the values settle counts as known, also where nobody has recorded it. */
  IGNORES_RECORDEDNESS {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return ENGINE.judge(rules, filled(rules, evidence));
    }
  },
  IGNORES_OPEN_LISTS {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      Map<String, Evidence.Listed> lists = new HashMap<>();
      evidence.lists().forEach((kind, list) -> lists.put(kind, closed(list)));
      return ENGINE.judge(
          rules, new Evidence(Map.of(), lists, evidence.facts(), evidence.judged()));
    }
  },
  /** What may not apply does not apply. */
  GUESSES_APPLICABILITY {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return each(ENGINE.judge(rules, evidence), Broken::notApplicable);
    }
  },
  /** A reading is a number. */
  TAKES_THE_MIDDLE {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return ENGINE.judge(rules, evidence.withFacts(middles(evidence.facts())));
    }
  },
  /** What can't be true does not fail. */
  SOFTENS_FAILS {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      Rules bands = Laws.changed(rules, Broken::plausibleInstead);
      Set<String> impossible = new HashSet<>();
      for (Finding finding : ENGINE.judge(bands, evidence).findings()) {
        if (finding.outcome() == Outcome.FAIL && !finding.check().plausible().isEmpty()) {
          impossible.add(finding.check().id() + "/" + finding.thing());
        }
      }
      return each(
          ENGINE.judge(rules, evidence),
          finding ->
              impossible.contains(finding.check().id() + "/" + finding.thing())
                  ? as(finding, Outcome.HOLD)
                  : finding);
    }
  },
  /** Of several entries in one place it sees the first one only. */
  FIRST_ENTRY_COUNTS {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return ENGINE.judge(rules, evidence);
    }

    @Override
    public Assessment judge(Rules rules, InstrumentRecord record, LocalDate on) {
      List<Visit> visits = record.visits().stream().map(Broken::firsts).toList();
      return ENGINE.judge(
          rules, new InstrumentRecord(record.bench(), record.instrument(), visits), on);
    }
  },
  /** Writes the way its machine is used to. */
  FOLLOWS_THE_LOCALE {
    @Override
    public Assessment judge(Rules rules, Evidence evidence) {
      return each(
          ENGINE.judge(rules, evidence),
          finding -> because(finding, String.format(Locale.getDefault(), "%.1f", 0.5)));
    }
  };

  /** The laws that must find it out. */
  public Set<Law> refutedBy() {
    return switch (this) {
      case ALWAYS_HOLDS -> Set.of(Law.DECISIVE, Law.SECOND_OPINION);
      case ALWAYS_PASSES -> Set.of(Law.NOTHING_RECORDED, Law.SOUND, Law.GAP, Law.SECOND_OPINION);
      case IGNORES_PREREQUISITES -> Set.of(Law.PREREQUISITES, Law.SECOND_OPINION);
      case IGNORES_RECORDEDNESS -> Set.of(Law.GAP, Law.RECORD_GAP, Law.SECOND_OPINION);
      case IGNORES_OPEN_LISTS -> Set.of(Law.SHORT_LIST, Law.SECOND_OPINION);
      case GUESSES_APPLICABILITY -> Set.of(Law.MONOTONE, Law.SOUND, Law.NOTHING_RECORDED);
      case TAKES_THE_MIDDLE -> Set.of(Law.MONOTONE, Law.SOUND, Law.SECOND_OPINION);
      case SOFTENS_FAILS -> Set.of(Law.PLAUSIBILITY);
      case FIRST_ENTRY_COUNTS -> Set.of(Law.ORDER_FREE);
      case FOLLOWS_THE_LOCALE -> Set.of(Law.REPRODUCIBLE);
    };
  }

  private static Assessment each(Assessment assessment, UnaryOperator<Finding> change) {
    List<Finding> findings = assessment.findings().stream().map(change).toList();
    Verdict verdict = Verdict.of(findings.stream().map(Finding::outcome).toList());
    return new Assessment(assessment.stage(), verdict, findings);
  }

  private static Finding as(Finding f, Outcome outcome) {
    List<Finding.Hold> holds =
        outcome == Outcome.HOLD
            ? List.of(new Finding.Hold(Reason.TOO_NEAR, "as always"))
            : List.of();
    return new Finding(
        f.check(),
        f.thing(),
        f.thingTitle(),
        outcome,
        holds,
        f.because(),
        f.arithmetic(),
        f.inputs(),
        f.limits(),
        f.notes(),
        f.settles(),
        f.remedy(),
        f.judged());
  }

  private static Finding because(Finding f, String text) {
    return new Finding(
        f.check(),
        f.thing(),
        f.thingTitle(),
        f.outcome(),
        f.holds(),
        text,
        f.arithmetic(),
        f.inputs(),
        f.limits(),
        f.notes(),
        f.settles(),
        f.remedy(),
        f.judged());
  }

  private static Finding notApplicable(Finding finding) {
    boolean unknown =
        finding.holds().stream().anyMatch(hold -> hold.reason() == Reason.APPLICABILITY_UNKNOWN);
    return unknown ? as(finding, Outcome.NOT_APPLICABLE) : finding;
  }

  private static Check withoutPrerequisites(Check check) {
    return Laws.changed(check, List.of(), check.requirement(), check.plausible());
  }

  static Check plausibleInstead(Check check) {
    TruthFormula asked =
        check.plausible().stream()
            .map(Check.Condition::that)
            .findFirst()
            .orElse(check.requirement());
    return Laws.changed(check, check.requires(), asked, check.plausible());
  }

  private static Evidence.Listed closed(Evidence.Listed list) {
    return new Evidence.Listed(
        new Listing(list.listing().items(), true), Optional.empty(), List.of());
  }

  private static Evidence filled(Rules rules, Evidence evidence) {
    Map<String, Map<String, Fact>> all = new HashMap<>();
    rules
        .vocabulary()
        .kinds()
        .values()
        .forEach(
            kind -> {
              List<String> things =
                  kind.isListed()
                      ? evidence.list(kind.name()).listing().items()
                      : List.of(kind.name());
              things.forEach(
                  thing ->
                      all.put(
                          thing,
                          filled(
                              rules, kind.name(), evidence.facts().getOrDefault(thing, Map.of()))));
            });
    return evidence.withFacts(all);
  }

  private static Map<String, Fact> filled(Rules rules, String owner, Map<String, Fact> own) {
    Map<String, Fact> facts = new HashMap<>(own);
    for (Property property : rules.vocabulary().properties().values()) {
      boolean with = rules.vocabulary().with(owner, property.name()).isPresent();
      if ((property.isOf(owner) || with) && !facts.containsKey(property.name())) {
        anything(property).ifPresent(fact -> facts.put(property.name(), fact));
      }
    }
    return facts;
  }

  private static Optional<Fact> anything(Property property) {
    if (property instanceof Property.Observation observation) {
      Set<String> all = new HashSet<>(observation.values().values());
      return Optional.of(new Fact.Named(all, true, false, List.of(), Map.of()));
    }
    if (property instanceof Property.Quantity quantity) {
      Range all = Range.of(RandomEvidence.possible(quantity));
      return Optional.of(new Fact.Amount(all, true, false, false, List.of(), Map.of()));
    }
    return Optional.empty();
  }

  private static Map<String, Map<String, Fact>> middles(Map<String, Map<String, Fact>> facts) {
    Map<String, Map<String, Fact>> all = new HashMap<>();
    facts.forEach(
        (thing, own) -> {
          Map<String, Fact> changed = new HashMap<>(own);
          changed.replaceAll((name, fact) -> middle(fact));
          all.put(thing, changed);
        });
    return all;
  }

  private static Fact middle(Fact fact) {
    if (!(fact instanceof Fact.Amount amount)) {
      return fact;
    }
    Rational lo = amount.range().exact().lo();
    Rational hi = amount.range().exact().hi();
    if (lo == null || hi == null) {
      return fact;
    }
    Rational middle = lo.plus(hi).dividedBy(Rational.of(2));
    return new Fact.Amount(
        Range.of(ExactInterval.point(middle)),
        amount.recorded(),
        amount.disagrees(),
        amount.impossible(),
        amount.said(),
        amount.with());
  }

  private static Visit firsts(Visit visit) {
    return Laws.changed(visit, Broken::firsts, Broken::firsts);
  }

  private static List<Entry> firsts(List<Entry> entries) {
    Map<String, Entry> first = new LinkedHashMap<>();
    entries.forEach(entry -> first.putIfAbsent(entry.thing() + " " + entry.property(), entry));
    return new ArrayList<>(first.values());
  }
}
