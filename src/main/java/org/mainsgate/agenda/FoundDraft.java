package org.mainsgate.agenda;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.mainsgate.formula.Nature;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.WorkStep;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Said;

/**
 * The part {@code found} of a draft: what is open, by thing, each in the order of the work. What is
 * asked alike of several things of a kind, and is not measured, stands once below {@code every}.
 */
final class FoundDraft {
  private static final int THING = 2;
  private static final int ENTRY = 4;
  private static final int OF_EVERY = 6;

  /** An entry, and the step in which it is found out. */
  private record Numbered(int number, WorkStep step, Task.Entry entry) {}

  private final Rules rules;
  private final Evidence evidence;
  private final Commented text;
  private final Map<String, List<Numbered>> things = new LinkedHashMap<>();
  private final List<Task.Closing> lists = new ArrayList<>();
  private final Map<Kind, List<Task.Entry>> every = new LinkedHashMap<>();

  /** What was told further up, and need not be again. */
  private final Set<String> told;

  /**
   * The part for these steps.
   *
   * @param steps those at the instrument, in the order in which they are numbered from 1
   * @param told the cautions that stand further up already
   */
  FoundDraft(
      Rules rules, Evidence evidence, List<Agenda.Step> steps, Set<String> told, Commented text) {
    this.rules = rules;
    this.evidence = evidence;
    this.told = new HashSet<>(told);
    this.text = text;
    for (int i = 0; i < steps.size(); i++) {
      for (Task task : steps.get(i).tasks()) {
        add(i + 1, steps.get(i).step(), task);
      }
    }
    lists.forEach(this::alike);
    things.values().removeIf(List::isEmpty);
  }

  static boolean isOfVisit(Task task) {
    return !(task instanceof Task.Entry entry)
        || entry.property().heading().home() == Property.Home.VISIT;
  }

  private void add(int number, WorkStep step, Task task) {
    if (task instanceof Task.Closing closing) {
      lists.add(closing);
    } else if (task instanceof Task.Entry entry && isOfVisit(entry)) {
      things
          .computeIfAbsent(entry.thing(), thing -> new ArrayList<>())
          .add(new Numbered(number, step, entry));
    }
  }

  /** Moves what is open of everything on a list to one place. */
  private void alike(Task.Closing closing) {
    List<String> ids = closing.listed();
    if (ids.size() < 2) {
      return;
    }
    List<Task.Entry> alike =
        entries(ids.get(0)).stream()
            .filter(entry -> !isMeasured(entry.property()))
            .filter(entry -> ids.stream().allMatch(id -> asks(id, entry.property())))
            .toList();
    if (alike.isEmpty()) {
      return;
    }
    every.put(closing.kind(), alike);
    List<Property> moved = alike.stream().map(Task.Entry::property).toList();
    things.forEach(
        (id, own) -> own.removeIf(n -> ids.contains(id) && moved.contains(n.entry().property())));
  }

  private List<Task.Entry> entries(String thing) {
    return things.getOrDefault(thing, List.of()).stream().map(Numbered::entry).toList();
  }

  private boolean asks(String thing, Property property) {
    return entries(thing).stream().anyMatch(entry -> entry.property().equals(property));
  }

  /** Writes it. */
  void write() {
    if (things.isEmpty() && lists.isEmpty()) {
      return;
    }
    text.line("found:");
    things.entrySet().stream()
        .sorted(Comparator.comparing(thing -> thing.getValue().get(0).number()))
        .forEach(
            thing -> {
              thing(thing.getKey(), thing.getValue());
              text.line("");
            });
    looked();
    every();
    text.line("");
  }

  private void thing(String thing, List<Numbered> entries) {
    String title = evidence.title(thing);
    boolean same = title.equalsIgnoreCase(thing.replace('-', ' '));
    text.heading(THING, thing, same ? "" : title);
    asLastTime(thing, entries).ifPresent(words -> text.comment(ENTRY, "as last time: " + words));
    int last = 0;
    for (Numbered numbered : entries) {
      if (numbered.number() != last) {
        text.comment(ENTRY, numbered.number() + ". " + numbered.step().title());
      }
      last = numbered.number();
      entry(ENTRY, numbered.entry());
    }
  }

  private void entry(int indent, Task.Entry entry) {
    Property.Heading heading = entry.property().heading();
    if (!heading.caution().isEmpty() && told.add(heading.caution())) {
      text.comment(indent, "caution: " + heading.caution());
    }
    if (isOneOfSeveral(entry) && told.add(heading.name())) {
      text.comment(
          indent,
          "Measure each. The worst, with `worst_of: [the others]` beside its value, may stand for"
              + " all of them.");
    }
    text.open(indent, Form.of(entry), about(entry));
  }

  /** Whether one reading may speak for others that are asked for too. */
  private boolean isOneOfSeveral(Task.Entry entry) {
    return entry.property() instanceof Property.Quantity quantity
        && quantity.worst().isPresent()
        && things.keySet().stream().filter(id -> asks(id, quantity)).count() > 1;
  }

  private static String about(Task.Entry entry) {
    Why why = entry.whys().get(0);
    boolean plain = why.cause() == Why.Cause.NEVER || why.cause() == Why.Cause.EACH_SITTING;
    return entry.property().title()
        + (plain ? "" : " (" + why.words() + ")")
        + (isWithoutMeter(entry) ? "; no meter of the bench measures it" : "")
        + entry.expected().map(expected -> "; expect " + expected.words()).orElse("");
  }

  private static boolean isWithoutMeter(Task.Entry entry) {
    return entry.equipment().filter(equipment -> equipment.meters().isEmpty()).isPresent();
  }

  /** How the thing was built when it was last looked at, as far as that still counts. */
  private Optional<String> asLastTime(String thing, List<Numbered> entries) {
    List<String> asked = entries.stream().map(n -> n.entry().property().name()).toList();
    List<String> known =
        rules.vocabulary().properties().values().stream()
            .filter(property -> isConstruction(property) && !asked.contains(property.name()))
            .flatMap(
                property ->
                    evidence.fact(thing, property.name()).stream()
                        .map(fact -> property.title() + " " + said(fact)))
            .toList();
    return known.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", known));
  }

  private static boolean isConstruction(Property property) {
    return property.heading().home() == Property.Home.VISIT
        && !property.isMomentary()
        && !isMeasured(property);
  }

  private static boolean isMeasured(Property property) {
    return property instanceof Property.Quantity quantity && quantity.nature() == Nature.MEASURED;
  }

  private static String said(Fact fact) {
    return fact.said().stream().map(Said::text).distinct().collect(Collectors.joining(", "));
  }

  /** The lists to close; of a kind of which nothing is listed it can only be said that it is so. */
  private void looked() {
    if (lists.isEmpty()) {
      return;
    }
    text.line("  looked:");
    text.comment(ENTRY, "Who has looked for all of a kind closes its list here:");
    List<String> unlisted = new ArrayList<>();
    for (Task.Closing closing : lists) {
      if (closing.listed().isEmpty()) {
        unlisted.add(closing.kind().name() + " (" + closing.kind().plural() + ")");
      } else {
        text.open(ENTRY, Form.of(closing), "all " + closing.kind().plural());
      }
    }
    if (!unlisted.isEmpty()) {
      text.comment(
          ENTRY,
          "Not listed so far. What is there, list in instrument.yaml and then close as above;"
              + " where you looked and there is none, name the kind in `none`: "
              + String.join(", ", unlisted));
      text.open(ENTRY, "none: [...]");
    }
  }

  /** What may be said once of all things that the same visit closes the list of. */
  private void every() {
    if (every.isEmpty()) {
      return;
    }
    text.line("  every:");
    text.comment(
        ENTRY,
        "What is the same for each of a kind whose ids stand in `looked` above. Where one differs,"
            + " leave it here, and write it below each of them.");
    every.forEach(
        (kind, entries) -> {
          text.heading(ENTRY, kind.name(), "each of the " + kind.plural());
          entries.forEach(entry -> entry(OF_EVERY, entry));
        });
  }
}
