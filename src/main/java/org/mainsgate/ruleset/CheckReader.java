package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Formula;
import org.mainsgate.formula.Meaning;
import org.mainsgate.formula.NumberFormula;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.OverlayFile.AmendEntry;
import org.mainsgate.ruleset.RulesetFile.CheckEntry;
import org.mainsgate.ruleset.RulesetFile.ConditionEntry;
import org.mainsgate.ruleset.RulesetFile.NoteEntry;
import org.mainsgate.ruleset.RulesetFile.RemedyEntry;
import org.mainsgate.ruleset.RulesetFile.StepEntry;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/** Reads one check: its formulas are understood in its own scope. */
final class CheckReader {
  private static final Map<String, Check.Consequence> CONSEQUENCES =
      Map.of("fail", Check.Consequence.FAIL, "hold", Check.Consequence.HOLD);
  static final String A_PERSON_MAY = "a person may";

  private final CheckScope scope;
  private final Citations citations;
  private final Wording wording;
  private final Complaints complaints;

  CheckReader(CheckScope scope, Citations citations, Wording wording, Complaints complaints) {
    this.scope = scope;
    this.citations = citations;
    this.wording = wording;
    this.complaints = complaints;
  }

  /** The check with everything that overlays add to it. */
  Optional<Check> read(
      String id, CheckEntry entry, Optional<String> over, List<AmendEntry> amendments) {
    Optional<Check> check = read(id, entry, over);
    for (AmendEntry amendment : amendments) {
      check = check.map(found -> amended(found, amendment));
    }
    return check;
  }

  private Check amended(Check check, AmendEntry entry) {
    Check.Consequence consequence =
        Optional.ofNullable(entry.consequence())
            .flatMap(text -> wording.oneOf("consequence", text, CONSEQUENCES))
            .orElse(check.consequence());
    return new Check(
        check.id(),
        check.title(),
        check.protects(),
        check.stages(),
        check.over(),
        check.needsOne(),
        Stream.concat(check.requires().stream(), entry.requires().stream().map(Text::value))
            .distinct()
            .toList(),
        check.applies(),
        optional(entry.requirement()).map(check.requirement()::and).orElse(check.requirement()),
        consequence,
        // A fail is never released by judgement.
        check.judgeable() && consequence == Check.Consequence.HOLD,
        Stream.concat(check.provided().stream(), conditions(entry.provided()).stream()).toList(),
        check.plausible(),
        check.notes(),
        check.remedies(),
        (check.caution() + " " + Wording.orEmpty(entry.caution())).strip(),
        check.citation(),
        check.at());
  }

  private Optional<Check> read(String id, CheckEntry entry, Optional<String> over) {
    entry
        .steps()
        .forEach((name, step) -> step(name, step, scope, complaints).ifPresent(scope::add));
    Optional<TruthFormula> applies = optional(entry.applies());
    Optional<TruthFormula> requirement = truth(entry.requirement());
    Optional<Check.Consequence> consequence =
        wording.oneOf("consequence", entry.consequence(), CONSEQUENCES);
    List<Check.Condition> provided = conditions(entry.provided());
    List<Check.Condition> plausible = conditions(entry.plausible());
    List<Check.Note> notes = notes(entry.notes());
    List<Check.Remedy> remedies = remedies(entry.remedy());
    Optional<Citation> citation = citations.of(entry.source());
    if (requirement.isEmpty() || consequence.isEmpty() || citation.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Check(
            id,
            entry.title().value(),
            entry.protects().value(),
            RulesReader.names(entry.stage()),
            over,
            needsOne(entry, over),
            entry.requires().stream().map(Text::value).toList(),
            applies,
            requirement.get(),
            consequence.get(),
            judgeable(entry),
            provided,
            plausible,
            notes,
            remedies,
            Wording.orEmpty(entry.caution()),
            citation.get(),
            entry.at()));
  }

  /** A named statement; the name may mean nothing else. */
  static Optional<Meaning.TruthStep> statement(
      String name, StepEntry entry, CheckScope scope, Complaints complaints) {
    if (isTaken(name, entry, scope, complaints)) {
      return Optional.empty();
    }
    return Formula.parse(entry.is(), complaints)
        .flatMap(formula -> formula.asTruth(scope, complaints))
        .map(value -> new Meaning.TruthStep(name, entry.title().value(), value));
  }

  private static boolean isTaken(
      String name, StepEntry entry, CheckScope scope, Complaints complaints) {
    boolean taken = scope.knows(name) || Formula.isReserved(name);
    if (taken) {
      complaints.add(entry.is(), "`" + name + "` already means something else", "another name");
    }
    return taken;
  }

  /** A named intermediate value; the name may mean nothing else. */
  static Optional<Meaning.Step> step(
      String name, StepEntry entry, CheckScope scope, Complaints complaints) {
    if (isTaken(name, entry, scope, complaints)) {
      return Optional.empty();
    }
    return Formula.parse(entry.is(), complaints)
        .flatMap(formula -> formula.asNumber(scope, null, complaints))
        .map(value -> new Meaning.Step(name, entry.title().value(), value));
  }

  private boolean needsOne(CheckEntry entry, Optional<String> over) {
    @Nullable Text none = entry.none();
    if (none == null) {
      return false;
    }
    if (over.isEmpty()) {
      complaints.add(none, "a check that runs over no list counts none", "`none` beside `over`");
    }
    return wording.oneOf("outcome", none, List.of("hold")).isPresent();
  }

  private boolean judgeable(CheckEntry entry) {
    @Nullable Text judge = entry.judge();
    if (judge == null) {
      return false;
    }
    boolean may = wording.oneOf("answer", judge, List.of(A_PERSON_MAY)).isPresent();
    if (may && "fail".equals(entry.consequence().value())) {
      complaints.add(judge, "a fail is never released by judgement", "`consequence: hold`");
    }
    return may;
  }

  private Optional<TruthFormula> truth(Text text) {
    return Formula.parse(text, complaints).flatMap(formula -> formula.asTruth(scope, complaints));
  }

  private Optional<TruthFormula> optional(@Nullable Text text) {
    return text == null ? Optional.empty() : truth(text);
  }

  private List<Check.Condition> conditions(List<ConditionEntry> entries) {
    List<Check.Condition> conditions = new ArrayList<>();
    for (ConditionEntry entry : entries) {
      truth(entry.that())
          .ifPresent(
              that -> conditions.add(new Check.Condition(that, entry.otherwise().value().strip())));
    }
    return conditions;
  }

  private List<Check.Note> notes(List<NoteEntry> entries) {
    List<Check.Note> notes = new ArrayList<>();
    for (NoteEntry entry : entries) {
      Optional<NumberFormula> shows =
          Optional.ofNullable(entry.shows())
              .flatMap(text -> Formula.parse(text, complaints))
              .flatMap(formula -> formula.asNumber(scope, null, complaints));
      truth(entry.when())
          .ifPresent(when -> notes.add(new Check.Note(when, entry.says().value().strip(), shows)));
    }
    return notes;
  }

  private List<Check.Remedy> remedies(List<RemedyEntry> entries) {
    List<Check.Remedy> remedies = new ArrayList<>();
    for (RemedyEntry entry : entries) {
      Optional<TruthFormula> when = optional(entry.when());
      if (entry.when() == null || when.isPresent()) {
        remedies.add(new Check.Remedy(when, entry.says().value().strip()));
      }
    }
    return remedies;
  }
}
