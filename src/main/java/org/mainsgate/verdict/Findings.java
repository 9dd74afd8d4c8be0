package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.mainsgate.formula.Ground;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.quantity.Truth;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.CheckScope;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Vocabulary;

/**
 * Makes the finding of one check on one thing. The first line that fits:
 *
 * <pre>
 * applies is not met                                        not applicable
 * applies is undecided                                      hold
 * requirement is not met                                    the check's consequence
 *                                                           (hold, where it rests on an unconfirmed limit)
 * requirement is met, and nothing takes the pass away       pass
 * anything else                                             hold
 * </pre>
 */
final class Findings {
  private final Rules rules;
  private final Evidence evidence;
  private final Check check;
  private final String thing;
  private final Known facts;
  private final Basis basis;

  Findings(Rules rules, Evidence evidence, Check check, String thing, Known facts) {
    this.rules = rules;
    this.evidence = evidence;
    this.check = check;
    this.thing = thing;
    this.facts = facts;
    this.basis = new Basis(rules, evidence, facts);
  }

  private static Truth applies(Check check, Known facts) {
    return check.applies().map(formula -> formula.evaluate(facts)).orElse(Truth.MET);
  }

  Finding make(List<Check> waiting, Optional<Judged> judged) {
    Draft draft = new Draft(check, thing, evidence.title(thing));
    if (neverApplies()) {
      return draft.because(why(check, facts)).finish(Outcome.NOT_APPLICABLE);
    }
    draft.inputs(inputs());
    Truth applies = applies(check, facts);
    if (applies == Truth.NOT_MET) {
      return unconfirmedApplicability(draft);
    }
    if (applies == Truth.UNDECIDED) {
      return unknownApplicability(draft);
    }
    Truth truth = check.requirement().evaluate(facts);
    draft.arithmetic(check.requirement().explain(facts));
    draft.limits(basis.used(formulas()));
    remarks(draft);
    judged.filter(found -> !check.judgeable()).ifPresent(found -> withoutEffect(draft, found));
    if (truth == Truth.NOT_MET) {
      draft.remedy(remedy());
      if (check.consequence() == Check.Consequence.FAIL && isConfirmed()) {
        return draft.finish(Outcome.FAIL);
      }
    }
    new Objections(draft, waiting).raise(truth);
    return settle(draft, truth, judged);
  }

  private Finding settle(Draft draft, Truth truth, Optional<Judged> judged) {
    boolean forJudgement = truth == Truth.NOT_MET && check.consequence() == Check.Consequence.HOLD;
    if (forJudgement && check.judgeable() && draft.isClear() && judged.isPresent()) {
      return draft.judged(judged.get()).finish(Outcome.PASS);
    }
    if (forJudgement) {
      notMet(draft);
    }
    return draft.finish(draft.isClear() && truth == Truth.MET ? Outcome.PASS : Outcome.HOLD);
  }

  /** Who has written a decision down must not believe that it counts. */
  private static void withoutEffect(Draft draft, Judged judged) {
    String says =
        "a decision of " + judged.on() + " has no effect: this is not for a person to judge";
    draft.note(new Finding.Remark(says, Optional.empty(), Optional.empty()));
  }

  private void notMet(Draft draft) {
    if (check.judgeable()) {
      draft.hold(
          Reason.PERSON_MUST_JUDGE, "the requirement is not met; a competent person may judge it");
      draft.settle(
          "Put it right, or let a competent person judge it and write down why (`judged:`)");
    } else {
      draft.hold(Reason.NOT_MET, "the requirement is not met");
      draft.settle(
          "Do what is said under `to do`, and record it again; this stage may not settle it");
    }
  }

  private Finding unconfirmedApplicability(Draft draft) {
    draft.limits(basis.used(check.applies().map(List::of).orElse(List.of())));
    new Objections(draft, List.of()).unconfirmedLimits();
    return draft.finish(Outcome.HOLD);
  }

  private Finding unknownApplicability(Draft draft) {
    List<String> missing = new ArrayList<>();
    for (Finding.Input input : basis.inputs(check.applies().orElseThrow())) {
      if (!input.fact().recorded() || isOpen(input.fact())) {
        missing.add(input.title());
      }
    }
    String text =
        missing.isEmpty() ? "it is not certain" : "not known: " + String.join(", ", missing);
    draft.hold(Reason.APPLICABILITY_UNKNOWN, "whether this applies: " + text);
    missing.forEach(title -> draft.settle("Find out: " + title));
    return draft.finish(Outcome.HOLD);
  }

  private static boolean isOpen(Fact fact) {
    return fact instanceof Fact.Named named && named.candidates().size() > 1;
  }

  /** Which observation says that a check does not apply. */
  static String why(Check check, Known facts) {
    List<String> reasons = new ArrayList<>();
    for (Ground ground : check.applies().orElseThrow().explain(facts)) {
      if (ground.truth() == Truth.NOT_MET && ground instanceof Ground.Choice choice) {
        reasons.add(title(facts, choice));
      }
    }
    return reasons.isEmpty() ? "it is not about this" : String.join("; ", reasons);
  }

  private static String title(Known facts, Ground.Choice choice) {
    return facts.titles(choice.text(), choice.candidates());
  }

  /** The formulas that a pass rests on. */
  private List<TruthFormula> formulas() {
    List<TruthFormula> all = new ArrayList<>();
    check.applies().ifPresent(all::add);
    all.add(check.requirement());
    check.provided().forEach(condition -> all.add(condition.that()));
    return all;
  }

  private List<Finding.Input> inputs() {
    Map<String, Finding.Input> all = new LinkedHashMap<>();
    for (TruthFormula formula : formulas()) {
      basis
          .inputs(formula)
          .forEach(input -> all.putIfAbsent(input.thing() + " " + input.name(), input));
    }
    return List.copyOf(all.values());
  }

  /** Whether the check is certainly about something else, and no value from memory says so. */
  boolean neverApplies() {
    return applies(check, facts) == Truth.NOT_MET
        && check.applies().map(this::isConfirmed).orElse(true);
  }

  /** Whether the requirement, and that it applies, rest on confirmed values. */
  private boolean isConfirmed() {
    return isConfirmed(check.requirement()) && check.applies().map(this::isConfirmed).orElse(true);
  }

  private boolean isConfirmed(TruthFormula formula) {
    return basis.used(List.of(formula)).stream().noneMatch(used -> used.citation().isUnconfirmed());
  }

  private void remarks(Draft draft) {
    for (Check.Note note : check.notes()) {
      if (note.when().evaluate(facts) == Truth.MET) {
        draft.note(
            new Finding.Remark(
                note.says(),
                note.shows().map(shows -> shows.exact(facts)),
                note.shows().map(shows -> shows.unit())));
      }
    }
  }

  private String remedy() {
    for (Check.Remedy remedy : check.remedies()) {
      if (remedy.when().map(when -> when.evaluate(facts) == Truth.MET).orElse(true)) {
        return remedy.says();
      }
    }
    return "";
  }

  /** Everything that takes a pass away, named. */
  private final class Objections {
    private final Draft draft;
    private final List<Check> waiting;

    Objections(Draft draft, List<Check> waiting) {
      this.draft = draft;
      this.waiting = waiting;
    }

    void raise(Truth truth) {
      notRecorded();
      disagreeing();
      implausible();
      if (truth == Truth.UNDECIDED) {
        undecided();
      }
      notAsAsked();
      waiting();
      unconfirmedLimits();
      if (truth == Truth.MET) {
        better();
      }
    }

    /** What would not do, until something better was written down and nothing was done between. */
    private void better() {
      Set<String> said = new TreeSet<>();
      for (Finding.Input input : draft.inputs()) {
        String property = input.name().split("\\.", 2)[0];
        for (String owner : input.owners()) {
          for (Fact earlier : evidence.superseded(owner, property)) {
            String text = texts(earlier) + " of " + earlier.said().get(0).on();
            if (!asksForAge(property) && wouldNotDo(owner, property, earlier) && said.add(text)) {
              draft.hold(
                  Reason.DISAGREE,
                  input.title()
                      + " ("
                      + input.thing()
                      + "): "
                      + text
                      + " would not do, and no work was recorded since");
              draft.settle(
                  "Write down the work that made it better, or take back the wrong entry with its reason");
            }
          }
        }
      }
    }

    private boolean asksForAge(String property) {
      return draft.inputs().stream()
          .anyMatch(input -> input.name().equals(property + "." + Vocabulary.AGE));
    }

    private boolean wouldNotDo(String owner, String property, Fact earlier) {
      Known then =
          new Known(rules.vocabulary(), evidence.with(owner, property, earlier))
              .with(CheckScope.ITEM, thing);
      return check.requirement().evaluate(then) == Truth.NOT_MET;
    }

    private void notRecorded() {
      Set<String> said = new TreeSet<>();
      for (Finding.Input input : draft.inputs()) {
        boolean missing = !input.fact().recorded() && !goesWithMissing(input);
        if (missing && said.add(input.title() + input.thing())) {
          String why = input.lost().isEmpty() ? "" : "; " + input.lost();
          draft.hold(Reason.NOT_RECORDED, input.title() + " (" + input.thing() + ")" + why);
          draft.settle("Record: " + input.title() + " (" + input.thing() + ")");
        }
      }
    }

    /** Whether it says how something was measured that nobody has measured. */
    private boolean goesWithMissing(Finding.Input input) {
      int point = input.name().indexOf('.');
      String base = point < 0 ? "" : input.name().substring(0, point);
      return draft.inputs().stream()
          .anyMatch(
              other ->
                  other.name().equals(base)
                      && other.thing().equals(input.thing())
                      && !other.fact().recorded());
    }

    private void disagreeing() {
      Set<String> said = new TreeSet<>();
      for (Finding.Input input : draft.inputs()) {
        if (input.fact().disagrees() && said.add(input.title() + input.thing())) {
          draft.hold(
              Reason.DISAGREE, input.title() + " (" + input.thing() + "): " + texts(input.fact()));
          draft.settle(
              "Find out why it changed; take back the wrong entry with its reason, or measure again after work");
        }
      }
    }

    private String texts(Fact fact) {
      return String.join(" against ", fact.said().stream().map(Said::text).toList());
    }

    private void implausible() {
      for (Finding.Input input : draft.inputs()) {
        if (input.fact() instanceof Fact.Amount number && number.impossible()) {
          draft.hold(
              Reason.IMPLAUSIBLE, input.title() + " is below zero; null the test leads again");
          draft.settle("Null the test leads and measure again");
        }
      }
      for (Check.Condition condition : check.plausible()) {
        if (condition.that().evaluate(facts) == Truth.NOT_MET) {
          draft.hold(Reason.IMPLAUSIBLE, condition.otherwise());
          draft.settle("Measure again, and look at how it was measured");
        }
      }
    }

    private void undecided() {
      for (Ground ground : draft.arithmetic()) {
        if (ground.truth() != Truth.UNDECIDED) {
          continue;
        }
        if (ground instanceof Ground.Comparison comparison) {
          near(comparison);
        } else if (ground instanceof Ground.Choice choice && !draft.misses(choice.text())) {
          draft.hold(Reason.NOT_RECORDED, title(facts, choice) + ": not certain");
          draft.settle("Find out which it is: " + title(facts, choice));
        }
      }
      if (draft.isClear()) {
        draft.hold(Reason.TOO_NEAR, "the values allow both answers");
      }
    }

    private void near(Ground.Comparison comparison) {
      boolean bounded = comparison.left().isBounded() && comparison.right().isBounded();
      boolean complete = draft.inputs().stream().allMatch(input -> input.fact().recorded());
      if (!bounded && complete && !check.requirement().tables().isEmpty()) {
        draft.hold(Reason.LIMIT_UNCONFIRMED, "no table row fits " + comparison.rightText());
        draft.settle(
            "Look at what was recorded, and at the tables `"
                + String.join("`, `", check.requirement().tables())
                + "`");
      } else if (bounded || complete) {
        draft.hold(
            Reason.TOO_NEAR, "for this meter and what is known, the values allow both answers");
        new Settling(rules, evidence, check, thing).of(draft.inputs()).forEach(draft::settle);
      }
    }

    private void notAsAsked() {
      for (Check.Condition condition : check.provided()) {
        boolean known =
            basis.inputs(condition.that()).stream().allMatch(input -> input.fact().recorded());
        if (known && condition.that().evaluate(facts) != Truth.MET) {
          draft.hold(Reason.NOT_AS_ASKED, condition.otherwise());
          draft.settle("Measure again as asked");
        }
      }
    }

    private void waiting() {
      for (Check first : waiting) {
        draft.hold(Reason.PREREQUISITE_OPEN, first.title());
      }
    }

    private void unconfirmedLimits() {
      for (Finding.Used used : draft.limits()) {
        if (used.citation().isUnconfirmed()) {
          draft.hold(
              Reason.LIMIT_UNCONFIRMED, used.title() + " (" + used.text() + ") is from memory");
          draft.settle("Read it in " + used.citation().title() + " and confirm it in the profile");
        }
      }
    }
  }
}
