package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.RulesetFile.StopEntry;
import org.mainsgate.ruleset.RulesetFile.WorkStepEntry;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;

/**
 * Reads the order of the work: everything that is asked for stands in exactly one step, and no stop
 * waits for what comes after it.
 */
final class WorkOrder {
  private final Vocabulary vocabulary;
  private final Map<String, Check> checks;
  private final Wording wording;
  private final Complaints complaints;
  private final Map<String, WorkStep> steps = new LinkedHashMap<>();
  private final Map<String, Integer> placeOf = new HashMap<>();
  private final Map<String, Position> stops = new LinkedHashMap<>();

  WorkOrder(
      Vocabulary vocabulary, Map<String, Check> checks, Wording wording, Complaints complaints) {
    this.vocabulary = vocabulary;
    this.checks = checks;
    this.wording = wording;
    this.complaints = complaints;
  }

  /** The steps in the order of the files; none where no file names any. */
  List<WorkStep> read(List<RulesetFile> files) {
    int before = complaints.count();
    for (RulesetFile file : files) {
      if (file.profile() != null && !file.order().isEmpty()) {
        Position at = file.order().values().iterator().next().title().at();
        complaints.add(at, "an order of work in a profile", "`order` in a common file alone");
      } else {
        file.order().forEach(this::step);
      }
    }
    if (complaints.count() == before && !steps.isEmpty()) {
      demandAll(files.get(0).at());
      stops.forEach(this::demandReachable);
    }
    return List.copyOf(steps.values());
  }

  private void step(String id, WorkStepEntry entry) {
    int place = steps.size();
    List<String> asks = new ArrayList<>();
    for (Text text : entry.asks()) {
      wording
          .oneOf("property", text, askable())
          .filter(name -> place(name, place, text))
          .ifPresent(asks::add);
    }
    List<String> closes = new ArrayList<>();
    for (Text text : entry.closes()) {
      wording
          .oneOf("list of things", text, listed())
          .filter(name -> place(name, place, text))
          .ifPresent(closes::add);
    }
    WorkStep step =
        new WorkStep(
            id,
            entry.title().value(),
            Wording.orEmpty(entry.says()),
            asks,
            closes,
            Wording.orEmpty(entry.caution()),
            wording.yes(entry.eachVisit()),
            after(entry.after()),
            stop(id, entry.stop()));
    if (steps.putIfAbsent(id, step) != null) {
      complaints.add(entry.title(), "the step `" + id + "` is given twice", "one of them");
    }
  }

  /** Steps that stand before this one. */
  private List<String> after(List<Text> texts) {
    List<String> after = new ArrayList<>();
    texts.forEach(
        text -> wording.oneOf("earlier step", text, steps.keySet()).ifPresent(after::add));
    return after;
  }

  private boolean place(String name, int place, Text text) {
    boolean first = placeOf.putIfAbsent(name, place) == null;
    if (!first) {
      complaints.add(text, "`" + name + "` stands in two steps", "one of them");
    }
    return first;
  }

  private Optional<WorkStep.Stop> stop(String id, @Nullable StopEntry entry) {
    if (entry == null) {
      return Optional.empty();
    }
    List<String> until = new ArrayList<>();
    entry
        .until()
        .forEach(text -> wording.oneOf("check", text, checks.keySet()).ifPresent(until::add));
    if (until.isEmpty()) {
      complaints.add(entry.title(), "a stop that nothing opens", "`until:` with checks");
      return Optional.empty();
    }
    stops.put(id, entry.title().at());
    return Optional.of(
        new WorkStep.Stop(entry.title().value(), until, entry.says().value().strip()));
  }

  /** What may stand in a step: all but what is recorded with something else. */
  private List<String> askable() {
    return vocabulary.properties().values().stream()
        .filter(property -> !(property instanceof Property.Pointer))
        .filter(vocabulary::isSaidOfThings)
        .map(Property::name)
        .toList();
  }

  private List<String> listed() {
    return vocabulary.listedKinds().stream().map(Kind::name).toList();
  }

  private void demandAll(Position at) {
    Stream<String> asked =
        vocabulary.properties().values().stream()
            .filter(vocabulary::isAskedAtTheInstrument)
            .map(Property::name);
    Stream.concat(asked, listed().stream())
        .filter(name -> !placeOf.containsKey(name))
        .forEach(
            name ->
                complaints.add(
                    at, "`" + name + "` stands in no step of the order of work", "it in one"));
  }

  /** A stop that waits for something behind it would never open. */
  private void demandReachable(String id, Position at) {
    WorkStep step = steps.get(id);
    int place = List.copyOf(steps.keySet()).indexOf(id);
    Set<String> late = new LinkedHashSet<>();
    Set<String> seen = new HashSet<>();
    if (step != null) {
      step.stop().ifPresent(stop -> stop.until().forEach(check -> late(check, place, late, seen)));
    }
    for (String name : late) {
      complaints.add(
          at,
          "this stop waits for `" + name + "`, which comes after it",
          "`" + name + "` in this step or an earlier one");
    }
  }

  private void late(String id, int place, Set<String> late, Set<String> seen) {
    Check check = checks.get(id);
    if (check == null || !seen.add(id)) {
      return;
    }
    names(check).filter(name -> placeOf.getOrDefault(name, 0) > place).forEach(late::add);
    check.requires().forEach(first -> late(first, place, late, seen));
  }

  /** What a check rests on: properties, and lists that have to be closed. */
  private static Stream<String> names(Check check) {
    Stream<TruthFormula> formulas =
        Stream.of(
                check.applies().stream(),
                Stream.of(check.requirement()),
                check.provided().stream().map(Check.Condition::that))
            .flatMap(part -> part);
    return Stream.concat(
        check.over().stream(),
        formulas.flatMap(
            formula ->
                Stream.concat(
                    formula.lists().stream(),
                    formula.inputs().stream().flatMap(in -> in.reference().path().stream()))));
  }
}
