package org.mainsgate.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.formula.Ground;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Print;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Said;

/**
 * A finding in the words of the trade, the same on the screen and on paper.
 *
 * @param words the names for people of what the record says
 */
public record Phrases(Vocabulary words) {

  /** The check, and the thing where that is not the instrument itself. */
  public static String title(Finding finding) {
    return finding.check().over().isEmpty()
        ? finding.check().title()
        : finding.check().title() + ": " + finding.thingTitle();
  }

  /** What was asked, one line for each; what was recorded stands beside it. */
  List<String> asked(Finding finding) {
    long choices = finding.arithmetic().stream().filter(Ground.Choice.class::isInstance).count();
    return finding.arithmetic().stream()
        .map(
            ground ->
                ground instanceof Ground.Choice choice
                    ? (choices > 1 ? subjectTitle(finding, choice) + ": " : "") + question(choice)
                    : ground(finding, ground))
        .distinct()
        .toList();
  }

  /**
   * The comparison that says most: of a pass the first that is met, since of two ways to pass the
   * other one need not be.
   */
  static Optional<Ground.Comparison> telling(Finding finding) {
    if (finding.outcome() != Outcome.PASS) {
      return finding.deciding();
    }
    return finding.arithmetic().stream()
        .filter(ground -> ground.truth() == Truth.MET)
        .filter(Ground.Comparison.class::isInstance)
        .map(Ground.Comparison.class::cast)
        .findFirst();
  }

  /** The one line that says most about a pass. */
  String brief(Finding finding) {
    return telling(finding)
        .map(ground -> ground(finding, ground))
        .orElseGet(() -> String.join("; ", chosen(finding)));
  }

  /** The observations that a pass rests on. */
  private List<String> chosen(Finding finding) {
    return finding.arithmetic().stream()
        .filter(Ground.Choice.class::isInstance)
        .map(ground -> (Ground.Choice) ground)
        .map(choice -> titles(property(subject(choice)), choice.candidates()))
        .distinct()
        .toList();
  }

  /** A ground with both its sides and how it came out by itself. */
  String ground(Finding finding, Ground ground) {
    String items =
        ground.items().values().stream().map(item -> item + ": ").collect(Collectors.joining());
    return items + alone(finding, ground);
  }

  private String alone(Finding finding, Ground ground) {
    if (ground instanceof Ground.Comparison comparison) {
      return left(finding, comparison)
          + " against "
          + right(finding, comparison)
          + ": "
          + came(comparison);
    }
    if (ground instanceof Ground.Choice choice) {
      return choice(finding, choice);
    }
    Ground.OpenList list = (Ground.OpenList) ground;
    return "the list of " + plural(list.kind()) + " is not closed";
  }

  /** Whether both sides are known and still the answer is open. */
  static boolean isNear(Ground.Comparison comparison) {
    return comparison.truth() == Truth.UNDECIDED
        && comparison.left().isBounded()
        && comparison.right().isBounded();
  }

  /** How a comparison came out, with its margin. */
  private static String came(Ground.Comparison comparison) {
    Truth truth = comparison.truth();
    String words = isNear(comparison) ? "too near the limit" : truth(truth);
    return Margin.of(comparison).map(margin -> margin.words(truth)).orElse(words);
  }

  /** A truth value for people. */
  static String truth(Truth truth) {
    return switch (truth) {
      case MET -> "met";
      case UNDECIDED -> "not decided";
      case NOT_MET -> "not met";
    };
  }

  private String left(Finding finding, Ground.Comparison comparison) {
    Optional<Finding.Input> input = input(finding, comparison.leftText());
    if (input.isPresent()) {
      return reading(input.get(), comparison.left(), comparison.unit());
    }
    return terms(finding, comparison.leftTerms(), comparison.left(), comparison.unit(), true);
  }

  /** The other side, with its direction where that is not "at most". */
  private String right(Finding finding, Ground.Comparison comparison) {
    Optional<Finding.Input> input = input(finding, comparison.rightText());
    String sum =
        input.isPresent()
            ? reading(input.get(), comparison.right(), comparison.unit())
            : terms(finding, comparison.rightTerms(), comparison.right(), comparison.unit(), false);
    return switch (comparison.operator()) {
      case "≥" -> "at least " + sum;
      case ">" -> "more than " + sum;
      case "<" -> "less than " + sum;
      default -> sum;
    };
  }

  /** {@code 0.13 Ω (0.097 to 0.163)}: as typed, then what it means. */
  private static String reading(Finding.Input input, ExactInterval value, Unit unit) {
    if (!input.fact().recorded()) {
      return input.title() + " not recorded";
    }
    List<Said> said = input.fact().said();
    Unit printed = said.stream().flatMap(one -> one.unit().stream()).findFirst().orElse(unit);
    String typed = said.stream().map(Said::text).distinct().collect(Collectors.joining(", "));
    // An over-range display has no unit of its own to be read with.
    boolean unitSaid = said.stream().anyMatch(one -> one.unit().isPresent());
    String known = unitSaid ? Print.interval(value, printed) : Print.quantity(value, printed);
    return value.isPoint() && said.size() == 1 ? typed : typed + " (" + known + ")";
  }

  private String terms(
      Finding finding, List<Ground.Term> terms, ExactInterval whole, Unit unit, boolean named) {
    List<Ground.Term> told = terms.stream().filter(term -> !isNothing(term)).toList();
    if (told.isEmpty()) {
      return Print.quantity(whole, unit);
    }
    return told.stream()
        .map(term -> term(finding, term, named || terms.size() > 1))
        .collect(Collectors.joining(" + "))
        .replace(" + -", " − ");
  }

  /** An addend of exactly zero adds nothing to a sum but length. */
  private static boolean isNothing(Ground.Term term) {
    return term.value().equals(ExactInterval.point(Rational.ZERO));
  }

  private String term(Finding finding, Ground.Term term, boolean named) {
    String value = Print.quantity(term.value(), term.unit());
    boolean cited = finding.limits().stream().anyMatch(limit -> isOf(limit, term.label()));
    return named && !cited ? value + " (" + label(finding, term.label()) + ")" : value;
  }

  /** The text of a term as a person says it, without factors that are one. */
  private String label(Finding finding, String text) {
    return Stream.of(text.split(" \\* ", -1))
        .filter(factor -> finding.limits().stream().noneMatch(limit -> isOne(limit, factor)))
        .map(this::spoken)
        .collect(Collectors.joining(" × "));
  }

  private static boolean isOne(Finding.Used limit, String factor) {
    return limit.name().equals(factor) && limit.text().equals("1");
  }

  /** Whether a term is a limit, or the cell of a row that was used. */
  private static boolean isOf(Finding.Used limit, String label) {
    int row = limit.name().indexOf('[');
    return row < 0
        ? limit.name().equals(label)
        : label.matches("[a-z0-9_]+\\([^()]*\\)\\.[a-z0-9_]+")
            && label.startsWith(limit.name().substring(0, row) + "(");
  }

  /** The text of a formula as a person says it. */
  private String spoken(String label) {
    return words.property(label).map(Property::title).orElse(label.replace('_', ' '));
  }

  private String choice(Finding finding, Ground.Choice choice) {
    String is =
        input(finding, subject(choice))
            .map(this::recorded)
            .orElseGet(() -> titles(property(subject(choice)), choice.candidates()));
    String found = subjectTitle(finding, choice) + ": " + is;
    return choice.truth() == Truth.MET ? found : found + "; " + question(choice);
  }

  private String subjectTitle(Finding finding, Ground.Choice choice) {
    String subject = subject(choice);
    return input(finding, subject)
        .map(Finding.Input::title)
        .orElseGet(() -> spoken(property(subject)));
  }

  private String question(Ground.Choice choice) {
    String wanted = titles(property(subject(choice)), choice.wanted());
    return (choice.negated() ? "anything but " : "") + wanted + "? " + answer(choice.truth());
  }

  /** What a choice is about; of two observations that shall agree, the first. */
  private static String subject(Ground.Choice choice) {
    int is = choice.text().indexOf(' ');
    return is < 0 ? choice.text() : choice.text().substring(0, is);
  }

  private static String answer(Truth truth) {
    return switch (truth) {
      case MET -> "yes";
      case UNDECIDED -> "not known";
      case NOT_MET -> "no";
    };
  }

  /** What is in force of an input, as recorded. */
  String recorded(Finding.Input input) {
    Fact fact = input.fact();
    if (!fact.recorded() && fact.said().isEmpty()) {
      return "not recorded";
    }
    String said = fact.said().stream().map(Said::text).distinct().collect(Collectors.joining(", "));
    return fact.recorded() ? said : said + " (not settled)";
  }

  /** What an input can be: an interval, or the names that are left. */
  String known(Finding.Input input) {
    Fact fact = input.fact();
    if (fact instanceof Fact.Amount number) {
      return Print.quantity(number.range().exact(), unit(input));
    }
    if (fact instanceof Fact.Varying varying) {
      return Print.quantity(varying.range().lowest().hull(varying.range().highest()), unit(input));
    }
    if (fact instanceof Fact.Named) {
      return titles(input.property().name(), candidates(input));
    }
    return String.join(" or ", candidates(input));
  }

  /** The names that are left of an input, in the order of their list. */
  static List<String> candidates(Finding.Input input) {
    if (input.fact() instanceof Fact.Pointer pointer) {
      return pointer.things().stream().sorted().toList();
    }
    if (input.fact() instanceof Fact.Named named
        && input.property() instanceof Property.Observation observation) {
      return observation.values().values().stream().filter(named.candidates()::contains).toList();
    }
    throw new IllegalArgumentException("no name: " + input.name());
  }

  /** The unit to print an input in: the one it was typed in, else the vocabulary's. */
  static Unit unit(Finding.Input input) {
    Optional<Unit> typed =
        input.fact().said().stream().flatMap(said -> said.unit().stream()).findFirst();
    if (typed.isEmpty() && input.property() instanceof Property.Quantity quantity) {
      return quantity.unit();
    }
    return typed.orElseThrow(() -> new IllegalArgumentException("no number: " + input.name()));
  }

  /** The input that a formula writes so; empty where several things have one of that name. */
  static Optional<Finding.Input> input(Finding finding, String text) {
    List<Finding.Input> named =
        finding.inputs().stream()
            .filter(input -> text.equals(input.name()) || text.endsWith("." + input.name()))
            .toList();
    return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
  }

  private String titles(String property, List<String> values) {
    if (values.isEmpty()) {
      return "nothing";
    }
    return values.stream().map(value -> title(property, value)).collect(Collectors.joining(" or "));
  }

  /** A named value for people. */
  String title(String property, String value) {
    return words
        .property(property)
        .filter(Property.Observation.class::isInstance)
        .map(found -> ((Property.Observation) found).title(value))
        .orElse(value);
  }

  /** A property for people. */
  String titleOf(String property) {
    return words.property(property).map(Property::title).orElse(property);
  }

  String plural(String kind) {
    return words.kind(kind).map(Kind::plural).orElse(kind);
  }

  private static String property(String path) {
    return path.substring(path.lastIndexOf('.') + 1);
  }

  /** A remark with its value. */
  static String note(Finding.Remark note) {
    if (note.shows().isEmpty() || note.unit().isEmpty()) {
      return note.says();
    }
    return note.says() + " (" + Print.quantity(note.shows().get(), note.unit().get()) + ")";
  }

  /** The verdict in capitals, for a heading. */
  static String capitals(String word) {
    return word.toUpperCase(Locale.ROOT);
  }
}
