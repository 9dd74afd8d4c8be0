package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Listing;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.CheckScope;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;

/**
 * The rules, applied: evidence in, findings out. It keeps nothing between two calls.
 *
 * <p>A check that runs over a list gives a finding for each thing on it, one for the list itself
 * where nobody has closed it, and one that does not apply where a person has counted none.
 */
public final class Engine {
  /** A thing of which nothing can be recorded: no id has a space. */
  private static final String NOBODY = "any thing";

  private final Rules rules;

  /** An engine for these rules. */
  public Engine(Rules rules) {
    this.rules = rules;
  }

  /** What a stage says on this evidence. */
  public Assessment assess(Stage stage, Evidence evidence) {
    Run run = new Run(evidence);
    List<Finding> findings = new ArrayList<>();
    for (Check check : rules.checksOf(stage)) {
      findings.addAll(run.findings(check));
    }
    Verdict verdict = Verdict.of(findings.stream().map(Finding::outcome).toList());
    return new Assessment(stage, verdict, findings);
  }

  /**
   * A check that says something else than hold before anybody has recorded anything.
   *
   * @param check the check
   * @param outcome what it says
   */
  public record Blind(Check check, Outcome outcome) {}

  /** The checks that must not be used, since they need no evidence for what they say. */
  public List<Blind> blind() {
    List<Blind> blind = new ArrayList<>();
    Run run = new Run(Evidence.NONE);
    for (Check check : rules.checks().values()) {
      Finding finding = run.judge(check, check.over().isPresent() ? NOBODY : Kinds.INSTRUMENT);
      if (finding.outcome() != Outcome.HOLD) {
        blind.add(new Blind(check, finding.outcome()));
      }
    }
    return blind;
  }

  /** One pass over one instrument. */
  private final class Run {
    private final Evidence evidence;
    private final Known known;
    private final Map<String, List<Finding>> done = new HashMap<>();
    private final Map<String, Known> about = new HashMap<>();

    Run(Evidence evidence) {
      this.evidence = evidence;
      this.known = new Known(rules.vocabulary(), evidence);
    }

    List<Finding> findings(Check check) {
      List<Finding> before = done.get(check.id());
      if (before != null) {
        return before;
      }
      List<Finding> findings =
          check
              .over()
              .map(kind -> overList(check, kind))
              .orElseGet(() -> List.of(judge(check, Kinds.INSTRUMENT)));
      done.put(check.id(), findings);
      return findings;
    }

    private List<Finding> overList(Check check, String kind) {
      Evidence.Listed list = evidence.list(kind);
      Listing listing = list.listing();
      List<Finding> findings = new ArrayList<>();
      listing.items().forEach(item -> findings.add(judge(check, item)));
      if (listing.closed() && listing.items().isEmpty()) {
        findings.add(none(check, kind));
      } else if (!listing.closed()) {
        findings.add(open(check, kind, list));
      }
      return findings;
    }

    /** The finding where a person has counted none: most checks have nothing to say then. */
    private Finding none(Check check, String kind) {
      Known anything = known.with(CheckScope.ITEM, NOBODY);
      boolean never = new Findings(rules, evidence, check, NOBODY, anything).neverApplies();
      return check.needsOne() && !never
          ? Lists.nothingListed(check, plural(kind))
          : Lists.none(check, plural(kind));
    }

    /**
     * The finding for the list itself; none of its things matters where the check never applies.
     */
    private Finding open(Check check, String kind, Evidence.Listed list) {
      Known anything = known.with(CheckScope.ITEM, NOBODY);
      if (new Findings(rules, evidence, check, NOBODY, anything).neverApplies()) {
        return Lists.notApplicable(check, kind, plural(kind), anything);
      }
      return Lists.openList(check, kind, plural(kind), list);
    }

    Finding judge(Check check, String thing) {
      Known facts = about.computeIfAbsent(thing, id -> known.with(CheckScope.ITEM, id));
      List<Check> waiting = new ArrayList<>();
      for (String id : check.requires()) {
        Check first = rules.checks().get(id);
        if (first != null && !passed(first, check, thing)) {
          waiting.add(first);
        }
      }
      Optional<Judged> judged =
          evidence.judged().stream()
              .filter(found -> found.check().equals(check.id()) && found.thing().equals(thing))
              .findFirst();
      return new Findings(rules, evidence, check, thing, facts).make(waiting, judged);
    }

    /** Whether a prerequisite has passed: on this thing, where both run over the same list. */
    private boolean passed(Check first, Check check, String thing) {
      boolean same = first.over().isPresent() && first.over().equals(check.over());
      return findings(first).stream()
          .filter(finding -> !same || finding.thing().equals(thing))
          .allMatch(
              finding ->
                  finding.outcome() == Outcome.PASS || finding.outcome() == Outcome.NOT_APPLICABLE);
    }

    private String plural(String kind) {
      return rules.vocabulary().kind(kind).orElseThrow().plural();
    }
  }
}
