package org.mainsgate.laws;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.mainsgate.Golden;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Verdict;

/**
 * Of every instrument of the demo bench that passes: no entry that a pass needs can be left out,
 * and hardly a number can be a thousand times too great or too small, without the pass being gone.
 * What goes unnoticed is listed with its reason in a golden file, so that more of it is seen.
 */
class NothingGoesUnnoticedTest {
  private static final Path BENCH = Path.of("demo-data", "north-light");

  /** The day that the demo bench is asked about, as its README says. */
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  private static final Pattern NUMBER = Pattern.compile("[0-9]+(\\.[0-9]+)?");

  /** One passing instrument in one stage. */
  private record Passing(
      String tag, CopiedBench copy, Rules rules, Stage stage, CopiedBench.Opinion opinion) {

    boolean isNoticed(String file, Leaf changed) {
      return copy.with(file, changed)
          .judged(rules, stage, DAY)
          .filter(found -> found.assessment().verdict() == Verdict.PASS)
          .isEmpty();
    }

    String name() {
      return tag + "-" + stage.id();
    }
  }

  private static List<Passing> passing() {
    List<Passing> passing = new ArrayList<>();
    for (String tag : CopiedBench.tags(BENCH)) {
      CopiedBench copy = CopiedBench.of(BENCH, tag);
      Rules rules = Rulebook.named(copy.profile());
      for (Stage stage : rules.stages().values()) {
        copy.judged(rules, stage, DAY)
            .filter(found -> found.assessment().verdict() == Verdict.PASS)
            .map(found -> new Passing(tag, copy, rules, stage, found))
            .ifPresent(passing::add);
      }
    }
    return passing;
  }

  @Test
  void noEntryCanBeLeftOutAndHardlyANumberBeAThousandTimesWrong() {
    Map<String, String> tables = new TreeMap<>();
    List<String> unexplained = new ArrayList<>();
    for (Passing one : passing()) {
      tables.put(one.name(), table(one, unexplained));
    }
    assertFalse(tables.isEmpty(), "no instrument of the demo bench passes");
    assertEquals(List.of(), unexplained);
    Golden.check("laws/unnoticed", tables);
  }

  /** A place in a file where an entry or a number stands. */
  private record Spot(String file, List<String> place) {
    String text() {
      return file + " " + String.join(".", place);
    }
  }

  private static String table(Passing one, List<String> unexplained) {
    Map<Spot, String> entries = new LinkedHashMap<>();
    Map<Spot, String> numbers = new LinkedHashMap<>();
    int all = 0;
    for (Spot spot : entries(one)) {
      all++;
      Leaf file = one.copy().file(spot.file());
      if (!one.isNoticed(spot.file(), file.without(spot.place()))) {
        entries.put(spot, why(one, spot));
      }
    }
    int count = 0;
    for (Spot spot : numbers(one)) {
      count++;
      String text = String.valueOf(one.copy().file(spot.file()).at(spot.place()));
      boolean great = isNoticed(one, spot, scaled(text, 3));
      boolean small = isNoticed(one, spot, scaled(text, -3));
      if (!great || !small) {
        String way = great ? "too small" : small ? "too great" : "either way";
        numbers.put(spot, way + ": " + reason(one, spot, great || small));
      }
    }
    entries.forEach((spot, why) -> complain(one, spot, why, unexplained));
    numbers.forEach((spot, why) -> complain(one, spot, why, unexplained));
    long neither = numbers.values().stream().filter(why -> why.startsWith("either")).count();
    return "Left out, "
        + entries.size()
        + " of "
        + all
        + " entries are not missed:\n"
        + lines(entries)
        + "\nA thousand times too great and too small, "
        + neither
        + " of "
        + count
        + " numbers go unnoticed; one way only, "
        + (numbers.size() - neither)
        + ":\n"
        + lines(numbers);
  }

  private static void complain(Passing one, Spot spot, String why, List<String> unexplained) {
    if (why.endsWith(UNEXPLAINED)) {
      unexplained.add(one.name() + ": " + spot.text() + ": " + why);
    }
  }

  private static String lines(Map<Spot, String> spots) {
    StringBuilder text = new StringBuilder();
    spots.forEach(
        (spot, why) -> text.append("  ").append(spot.text()).append(": ").append(why).append('\n'));
    return text.toString();
  }

  private static boolean isNoticed(Passing one, Spot spot, String text) {
    return one.isNoticed(spot.file(), one.copy().file(spot.file()).with(spot.place(), text));
  }

  /** Every number in the text with its point moved. */
  private static String scaled(String text, int places) {
    return NUMBER
        .matcher(text)
        .replaceAll(
            found -> new BigDecimal(found.group()).scaleByPowerOfTen(places).toPlainString());
  }

  /** Everything recorded: plate, place, what was found, lists, decisions, what was taken back. */
  private static List<Spot> entries(Passing one) {
    List<Spot> entries = new ArrayList<>();
    add(one, CopiedBench.BENCH, List.of("site"), entries);
    add(one, CopiedBench.INSTRUMENT, List.of("plate"), entries);
    for (String visit : one.copy().visits()) {
      add(one, visit, List.of("judged"), entries);
      add(one, visit, List.of("withdrawn"), entries);
      for (String part : List.of("found", "left")) {
        Object said = Leaf.children(one.copy().file(visit).tree()).getOrDefault(part, Map.of());
        for (String thing : Leaf.children(said).keySet()) {
          addAll(one, visit, List.of(part, thing), entries);
        }
      }
    }
    return entries;
  }

  /** What is said of one thing, of every thing of a kind, or of lists. */
  private static void addAll(Passing one, String file, List<String> place, List<Spot> entries) {
    if (!place.get(1).equals("every")) {
      add(one, file, place, entries);
      return;
    }
    Leaf.children(one.copy().file(file).at(place))
        .keySet()
        .forEach(kind -> add(one, file, Leaf.longer(place, kind), entries));
  }

  /** The entries below a place; several of one property stand in a list. */
  private static void add(Passing one, String file, List<String> place, List<Spot> entries) {
    if (!one.copy().file(file).places().contains(place)) {
      return;
    }
    Leaf.children(one.copy().file(file).at(place))
        .forEach(
            (name, said) -> {
              List<String> at = Leaf.longer(place, name);
              boolean several =
                  said instanceof List<?> list && (!isOfTexts(list) || name.equals("none"));
              if (several) {
                Leaf.children(said)
                    .keySet()
                    .forEach(number -> entries.add(new Spot(file, Leaf.longer(at, number))));
              } else {
                entries.add(new Spot(file, at));
              }
            });
  }

  /** A list of names is one entry; of readings, one each. */
  private static boolean isOfTexts(List<?> list) {
    return list.stream().allMatch(item -> item instanceof String text && !isNumber(text));
  }

  private static boolean isNumber(String text) {
    return Typed.parse(text) instanceof Typed typed && typed.unit().isPresent();
  }

  /** Every quantity that is typed, in entries and in what stands with them. */
  private static List<Spot> numbers(Passing one) {
    List<Spot> numbers = new ArrayList<>();
    List<Spot> places = new ArrayList<>(entries(one));
    add(one, CopiedBench.BENCH, List.of("methods"), places);
    for (Spot entry : places) {
      Leaf file = one.copy().file(entry.file());
      for (List<String> place : Leaf.places(file.at(entry.place()), entry.place())) {
        String last = place.get(place.size() - 1);
        boolean says = !List.of("note", "range", "on", "id").contains(last);
        if (says
            && file.at(place) instanceof String text
            && isNumber(text)
            && !text.endsWith("AWG")) {
          numbers.add(new Spot(entry.file(), place));
        }
      }
    }
    return numbers;
  }

  private static final String UNEXPLAINED = "no reason";

  private static String reason(Passing one, Spot spot, boolean oneWay) {
    String why = why(one, spot);
    if (!why.equals(UNEXPLAINED)) {
      return why;
    }
    Leaf without = one.copy().file(spot.file()).without(spot.place());
    boolean needed = one.isNoticed(spot.file(), without);
    return oneWay
        ? "limited on one side only"
        : needed ? "has to be recorded, but its size decides nothing here" : UNEXPLAINED;
  }

  /** Why it does not matter to this instrument, in words. */
  private static String why(Passing one, Spot spot) {
    Vocabulary words = one.rules().vocabulary();
    Optional<Property> property =
        spot.place().stream()
            .filter(key -> words.property(key).isPresent())
            .reduce((first, second) -> second)
            .flatMap(words::property);
    if (property.isEmpty()) {
      return isOfAnIdleList(one, spot)
          ? "a list that no check of this stage looks at"
          : UNEXPLAINED;
    }
    if (spot.place().get(0).equals("methods") && !isOfUse(one, spot)) {
      return "a way of measuring what no check that applies here asks for";
    }
    Optional<String> aside = setAside(one, spot);
    if (aside.isPresent()) {
      return "does not count, " + aside.get();
    }
    if (property.get().heading().tier() == Property.Tier.NOTE && !isAsked(one, property.get())) {
      return "a note, never judged";
    }
    if (!isAsked(one, property.get())) {
      return "asked for by no check that applies here";
    }
    return isOneOfSeveral(one, spot) ? "one of several that count together" : UNEXPLAINED;
  }

  /** Whether it closes a list over which no check of the stage runs. */
  private static boolean isOfAnIdleList(Passing one, Spot spot) {
    if (!spot.place().contains("looked")) {
      return false;
    }
    boolean none = spot.place().contains("none");
    Object text = one.copy().file(spot.file()).at(spot.place());
    String kind = none ? text.toString() : spot.place().get(spot.place().size() - 1);
    return one.rules().checksOf(one.stage()).stream()
        .noneMatch(
            check ->
                check.over().filter(kind::equals).isPresent()
                    || Slice.formulas(check).stream()
                        .anyMatch(formula -> formula.lists().contains(kind)));
  }

  /** Whether the bench's way of measuring is one of something that is asked for. */
  private static boolean isOfUse(Passing one, Spot spot) {
    Object method = one.copy().file(spot.file()).at(spot.place().subList(0, 2));
    return Optional.ofNullable(Leaf.children(method).get("of"))
        .flatMap(of -> one.rules().vocabulary().property(of.toString()))
        .filter(property -> isAsked(one, property))
        .isPresent();
  }

  private static boolean isOneOfSeveral(Passing one, Spot spot) {
    Leaf file = one.copy().file(spot.file());
    return spot.place().size() > 3
        && file.at(spot.place().subList(0, 3)) instanceof List<?> list
        && list.size() > 1;
  }

  private static Optional<String> setAside(Passing one, Spot spot) {
    Leaf file = one.copy().file(spot.file());
    String id = spot.file() + "/" + String.join(".", spot.place());
    String given =
        spot.file()
            + "/"
            + Leaf.children(file.at(spot.place().subList(0, Math.min(4, spot.place().size()))))
                .getOrDefault("id", "without an id of its own");
    return one.opinion().inForce().setAside().stream()
        .filter(
            found ->
                found.entry().equals(given)
                    || id.equals(found.entry())
                    || id.startsWith(found.entry() + "."))
        .map(found -> found.why())
        .findFirst();
  }

  /** Whether a finding that applies rests on such an entry. */
  private static boolean isAsked(Passing one, Property property) {
    return one.opinion().assessment().findings().stream()
        .filter(finding -> finding.outcome() != org.mainsgate.verdict.Outcome.NOT_APPLICABLE)
        .flatMap(finding -> finding.inputs().stream())
        .anyMatch(input -> List.of(input.name().split("\\.")).contains(property.name()));
  }
}
