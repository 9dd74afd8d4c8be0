package org.mainsgate.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.formula.Input;
import org.mainsgate.formula.Meaning;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.report.CheckCard.Ask;
import org.mainsgate.report.CheckCard.Formula;
import org.mainsgate.report.CheckCard.When;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Dependency;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.ruleset.Vocabulary;

/** The cards of all checks under several profiles of one edition. */
final class CheckCards {
  private final Map<String, Rules> profiles;
  private final List<CheckTest> tests;

  /**
   * Cards under these rules.
   *
   * @param profiles the rules by the profile's name, at least one; all of one vocabulary
   * @param tests what the rules' own tests expect
   */
  CheckCards(Map<String, Rules> profiles, List<CheckTest> tests) {
    this.profiles = new LinkedHashMap<>(profiles);
    this.tests = List.copyOf(tests);
  }

  /** The ids of all checks, in the order of the rules. */
  Set<String> ids() {
    Set<String> ids = new LinkedHashSet<>();
    profiles.values().forEach(rules -> ids.addAll(rules.checks().keySet()));
    return ids;
  }

  /** The stages with the checks that belong to each; a check of several stands in each of them. */
  Map<Stage, List<Check>> byStage() {
    Map<String, Stage> stages = new LinkedHashMap<>();
    profiles.values().forEach(rules -> rules.stages().forEach(stages::putIfAbsent));
    Map<Stage, List<Check>> all = new LinkedHashMap<>();
    stages.forEach(
        (id, stage) ->
            all.put(
                stage,
                ids().stream().map(this::check).filter(c -> c.stages().contains(id)).toList()));
    return all;
  }

  /** What a check is judged on, in words. */
  String over(Check check) {
    return check
        .over()
        .map(kind -> "each " + vocabulary().kind(kind).map(Kind::title).orElse(kind))
        .orElse("the instrument");
  }

  /** The card of a check. */
  CheckCard of(String id) {
    return new Writer(id).card();
  }

  private Rules under(String id) {
    return profiles.values().stream()
        .filter(rules -> rules.checks().containsKey(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no check " + id));
  }

  private Check check(String id) {
    return Optional.ofNullable(under(id).checks().get(id)).orElseThrow();
  }

  private Vocabulary vocabulary() {
    return profiles.values().iterator().next().vocabulary();
  }

  /** Writes one card. */
  private final class Writer {
    private final Check check;
    private final Rules rules;
    private final List<TruthFormula> statements;
    private final Collection<Meaning> steps;
    private final FormulaInWords words;

    Writer(String id) {
      this.rules = under(id);
      this.check = CheckCards.this.check(id);
      this.statements = check.statements();
      this.steps = steps();
      Map<String, String> titles = new LinkedHashMap<>();
      steps.forEach(step -> titles.put(name(step), title(step)));
      this.words = new FormulaInWords(rules, titles);
    }

    CheckCard card() {
      SideBySide beside = new SideBySide(check, rules, profiles);
      return new CheckCard(
          check.id(),
          check.title(),
          check.protects(),
          check.stages().stream().map(id -> rules.stage(id).map(Stage::title).orElse(id)).toList(),
          over(check),
          check.applies().map(this::formula).orElse(Formula.NONE),
          formula(check.requirement()),
          steps.stream().map(this::step).toList(),
          consequence(),
          check.requires().stream().map(this::link).toList(),
          onlyUnder(),
          beside.limits(),
          beside.tables(),
          asks(),
          check.provided().stream().map(this::condition).toList(),
          check.plausible().stream().map(this::condition).toList(),
          check.notes().stream().map(n -> new When(formula(n.when()), n.says())).toList(),
          check.remedies().stream().map(this::remedy).toList(),
          voidedBy(),
          check.caution(),
          SideBySide.sentence(SideBySide.cited(check.citation())),
          expected());
    }

    /** The steps of all statements and of the numbers that remarks show. */
    private Collection<Meaning> steps() {
      Map<String, Meaning> all = new LinkedHashMap<>();
      Stream.concat(
              statements.stream().flatMap(statement -> statement.steps().stream()),
              check.notes().stream()
                  .flatMap(note -> note.shows().stream())
                  .flatMap(shown -> shown.steps().stream()))
          .forEach(step -> all.putIfAbsent(name(step), step));
      return all.values();
    }

    private Formula formula(TruthFormula formula) {
      return formula(formula.text());
    }

    private Formula formula(String text) {
      return new Formula(text, words.of(text));
    }

    private CheckCard.Step step(Meaning step) {
      return new CheckCard.Step(name(step), title(step), formula(textOf(step)));
    }

    private CheckCard.Link link(String id) {
      Check other = rules.checks().get(id);
      return new CheckCard.Link(id, other == null ? id : other.title());
    }

    private When condition(Check.Condition condition) {
      return new When(formula(condition.that()), condition.otherwise());
    }

    private When remedy(Check.Remedy remedy) {
      return new When(remedy.when().map(this::formula).orElse(Formula.NONE), remedy.says());
    }

    private String consequence() {
      return switch (check.consequence()) {
        case FAIL -> "fail; nobody can judge it away";
        case HOLD ->
            check.judgeable()
                ? "hold; a competent person may judge it, and says why"
                : "hold; to be put right first, nobody can judge it away";
      };
    }

    private List<String> onlyUnder() {
      List<String> having =
          profiles.entrySet().stream()
              .filter(e -> e.getValue().checks().containsKey(check.id()))
              .map(Map.Entry::getKey)
              .toList();
      return having.size() == profiles.size() ? List.of() : having;
    }

    private List<Ask> asks() {
      Set<String> names = new LinkedHashSet<>();
      Stream.concat(Stream.of(check.requirement()), asking())
          .flatMap(statement -> statement.inputs().stream())
          .map(Input::reference)
          .forEach(reference -> names.addAll(reference.path()));
      return names.stream()
          .flatMap(name -> rules.vocabulary().property(name).stream())
          .map(property -> ask(property, names))
          .toList();
    }

    /** What a pass rests on; remarks and remedies ask for nothing. */
    private Stream<TruthFormula> asking() {
      return Stream.of(
              check.applies().stream(),
              check.provided().stream().map(Check.Condition::that),
              check.plausible().stream().map(Check.Condition::that))
          .flatMap(part -> part);
    }

    private Ask ask(Property property, Set<String> asked) {
      return new Ask(
          property.name(),
          property.title(),
          owners(property, asked).stream().map(this::owner).collect(Collectors.joining(", ")),
          vocabulary().isSaidOfThings(property),
          takes(property),
          property.heading().method(),
          property.heading().caution());
    }

    /** Of what it is said; of other entries, only those that this check asks for. */
    private List<String> owners(Property property, Set<String> asked) {
      List<String> all = property.heading().of();
      List<String> here = all.stream().filter(asked::contains).toList();
      return here.isEmpty() ? all : here;
    }

    private String owner(String name) {
      return rules
          .vocabulary()
          .kind(name)
          .map(Kind::title)
          .or(() -> rules.vocabulary().property(name).map(Property::title))
          .orElse(name);
    }

    private String takes(Property property) {
      if (property instanceof Property.Quantity quantity) {
        return quantity(quantity);
      }
      if (property instanceof Property.Observation observation) {
        return observation.values().values().stream()
            .map(value -> valueWords(observation, value))
            .collect(Collectors.joining("; "));
      }
      return "the id of a " + owner(((Property.Pointer) property).to());
    }

    private static String quantity(Property.Quantity quantity) {
      String units =
          quantity.units().stream().map(unit -> unit.symbol()).collect(Collectors.joining(", "));
      if (quantity.derived()) {
        return "in " + units + ", computed from the date; nobody writes it";
      }
      return switch (quantity.nature()) {
        case MEASURED -> "measured, in " + units;
        case MARKED -> "as marked, in " + units;
        case VARIES -> "as it varies, in " + units;
      };
    }

    private List<String> voidedBy() {
      Set<String> names = new LinkedHashSet<>();
      asks().forEach(ask -> names.add(ask.name()));
      check.over().ifPresent(names::add);
      Map<List<String>, Set<String>> voided = new LinkedHashMap<>();
      for (Dependency work : rules.dependencies()) {
        if (work.voids().stream().anyMatch(names::contains)) {
          voided.computeIfAbsent(work.does(), does -> new LinkedHashSet<>()).add(work.on());
        }
      }
      return voided.entrySet().stream()
          .map(entry -> work(entry.getKey()) + " on " + places(entry.getKey(), entry.getValue()))
          .toList();
    }

    /** The kinds of thing; in one word where these acts void nothing on any other. */
    private String places(List<String> acts, Set<String> kinds) {
      Set<String> all =
          rules.dependencies().stream()
              .filter(work -> work.does().equals(acts))
              .map(Dependency::on)
              .collect(Collectors.toSet());
      return kinds.size() > 3 && kinds.equals(all)
          ? "any part of it"
          : kinds.stream().map(kind -> "the " + owner(kind)).collect(Collectors.joining("; "));
    }

    private String work(List<String> acts) {
      return acts.isEmpty()
          ? "any work"
          : acts.stream().map(this::act).collect(Collectors.joining(", "));
    }

    private String act(String name) {
      Vocabulary.Act act = rules.vocabulary().acts().get(name);
      return act == null ? name : act.title();
    }

    private List<CheckCard.Tests> expected() {
      Map<String, List<String>> byOutcome = new LinkedHashMap<>();
      for (CheckTest test : tests) {
        if (test.check().equals(check.id())) {
          byOutcome
              .computeIfAbsent(test.outcome(), outcome -> new ArrayList<>())
              .add(test.name() + " (" + String.join(", ", test.profiles()) + ")");
        }
      }
      return byOutcome.entrySet().stream()
          .map(entry -> new CheckCard.Tests(entry.getKey(), entry.getValue()))
          .toList();
    }
  }

  private static String valueWords(Property.Observation observation, String value) {
    String title = observation.title(value);
    return title.equals(value) ? "`" + value + "`" : "`" + value + "` (" + title + ")";
  }

  private static String name(Meaning step) {
    return step instanceof Meaning.Step number ? number.name() : ((Meaning.TruthStep) step).name();
  }

  private static String title(Meaning step) {
    return step instanceof Meaning.Step number
        ? number.title()
        : ((Meaning.TruthStep) step).title();
  }

  private static String textOf(Meaning step) {
    return step instanceof Meaning.Step number
        ? number.value().text()
        : ((Meaning.TruthStep) step).value().text();
  }
}
