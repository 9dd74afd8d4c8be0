package org.mainsgate.agenda;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.evidence.Equipment;
import org.mainsgate.formula.Nature;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Expectation;
import org.mainsgate.verdict.Expected;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;

/** Makes tasks of what is wanted: each with what goes with it, and with what to expect. */
final class Tasks {
  private final Situation situation;
  private final List<Finding> findings;

  Tasks(Situation situation, Assessment assessment) {
    this.situation = situation;
    this.findings =
        assessment.findings().stream()
            .filter(finding -> finding.outcome() != Outcome.NOT_APPLICABLE)
            .toList();
  }

  List<Task> of(Wants wants) {
    List<Task> tasks = new ArrayList<>();
    for (String name : wants.lists()) {
      Kind kind = situation.rules().vocabulary().kind(name).orElseThrow();
      List<String> listed = situation.evidence().list(name).listing().items();
      tasks.add(new Task.Closing(kind, listed, wants.why(name)));
    }
    for (Wants.Key key : wants.entries()) {
      tasks.add(entry(key, wants.why(key)));
    }
    return tasks;
  }

  private Task.Entry entry(Wants.Key key, List<Why> whys) {
    Property property = situation.property(key.property());
    return new Task.Entry(
        key.thing(),
        situation.evidence().title(key.thing()),
        property,
        with(key, property),
        whys,
        measured(property).map(situation::equipment),
        expected(key, property));
  }

  /** What the checks want to be recorded with it, but for what the bench's method says. */
  private List<Property> with(Wants.Key key, Property property) {
    Set<Property> with = new LinkedHashSet<>();
    for (Finding finding : findings) {
      boolean applies =
          finding.holds().stream().noneMatch(h -> h.reason() == Reason.APPLICABILITY_UNKNOWN);
      for (Finding.Input input : finding.inputs()) {
        Place place = Place.of(input, situation.rules().vocabulary());
        if (place.isCompanion()
            && place.base().equals(property)
            && place.things().contains(key.thing())) {
          place.more().filter(more -> isDue(more, applies)).ifPresent(with::add);
        }
        pointer(key, input).ifPresent(with::add);
      }
    }
    measured(property).ifPresent(q -> with.removeIf(p -> isSaid(p, situation.equipment(q))));
    return with.stream().sorted((a, b) -> a.name().compareTo(b.name())).toList();
  }

  private static boolean isDue(Property property, boolean applies) {
    return switch (property.heading().tier()) {
      case GATE -> true;
      case IF_PRESENT -> applies;
      case NOTE -> false;
    };
  }

  private static boolean isSaid(Property property, Equipment equipment) {
    return equipment.with().containsKey(property.name());
  }

  /** The pointer of an entry, where there are several things that it can mean. */
  private Optional<Property> pointer(Wants.Key key, Finding.Input input) {
    String[] path = input.name().split("\\.", -1);
    if (path.length < 2 || !path[0].equals(key.property())) {
      return Optional.empty();
    }
    return situation
        .rules()
        .vocabulary()
        .property(path[1])
        .filter(Property.Pointer.class::isInstance)
        .filter(
            found ->
                situation.evidence().list(((Property.Pointer) found).to()).listing().items().size()
                    > 1);
  }

  private static Optional<Property.Quantity> measured(Property property) {
    return property instanceof Property.Quantity quantity && quantity.nature() == Nature.MEASURED
        ? Optional.of(quantity)
        : Optional.empty();
  }

  /** The displays that would pass every check that compares it. */
  private Optional<Expected> expected(Wants.Key key, Property property) {
    Optional<Property.Quantity> quantity = measured(property);
    Optional<Equipment> equipment = quantity.map(situation::equipment);
    if (equipment.isEmpty() || equipment.get().displays().isEmpty()) {
      return Optional.empty();
    }
    Expectation.Planned reading =
        new Expectation.Planned(
            key.thing(),
            quantity.orElseThrow(),
            equipment.get().with(),
            equipment.get().displays());
    Expectation expectation = new Expectation(situation.rules(), situation.evidence());
    Optional<Expected> all = Optional.empty();
    for (Finding finding : findings) {
      if (compares(finding, key)) {
        Optional<Expected> one = expectation.of(finding.check(), finding.thing(), reading);
        Optional<Expected> before = all;
        all = before.isEmpty() ? one : one.isEmpty() ? before : before.flatMap(one.get()::and);
      }
    }
    return all;
  }

  private static boolean compares(Finding finding, Wants.Key key) {
    boolean asks =
        finding.check().requirement().inputs().stream()
            .anyMatch(input -> String.join(".", input.reference().path()).equals(key.property()));
    return asks
        && finding.inputs().stream()
            .anyMatch(
                input ->
                    input.name().equals(key.property()) && input.owners().contains(key.thing()));
  }
}
