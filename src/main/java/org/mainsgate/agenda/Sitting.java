package org.mainsgate.agenda;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.mainsgate.agenda.Why.Cause;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.WorkStep;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Outcome;

/**
 * Adds what every sitting begins with: what is true for an hour and a reading needs, and the steps
 * that are done each time. Only what a draft of the day says already is believed.
 */
final class Sitting {
  private final Situation situation;
  private final Assessment assessment;
  private final Wants wants;

  Sitting(Situation situation, Assessment assessment, Wants wants) {
    this.situation = situation;
    this.assessment = assessment;
    this.wants = wants;
  }

  void add() {
    before();
    momentary();
    if (isAtTheInstrument()) {
      situation.rules().order().stream().filter(WorkStep::eachVisit).forEach(this::step);
    }
  }

  /** Steps that a step with something open in it comes after; the last step is looked at first. */
  private void before() {
    List<WorkStep> order = situation.rules().order();
    for (int i = order.size() - 1; i >= 0; i--) {
      WorkStep step = order.get(i);
      if (isOpen(step)) {
        order.stream().filter(first -> step.after().contains(first.id())).forEach(this::step);
      }
    }
  }

  private boolean isOpen(WorkStep step) {
    return wants.lists().stream().anyMatch(step.closes()::contains)
        || wants.entries().stream().anyMatch(key -> step.asks().contains(key.property()));
  }

  private void momentary() {
    Set<Wants.Key> done = new HashSet<>();
    while (done.addAll(wants.entries())) {
      wants.entries().forEach(this::momentary);
    }
  }

  /** The momentary states that some check wants to be true of a reading. */
  private void momentary(Wants.Key key) {
    Set<Property> states =
        assessment.findings().stream()
            .filter(finding -> finding.outcome() != Outcome.NOT_APPLICABLE)
            .flatMap(finding -> finding.inputs().stream())
            .map(input -> Place.of(input, situation.rules().vocabulary()))
            .filter(place -> place.isMomentary() && place.base().name().equals(key.property()))
            .map(place -> place.more().orElseThrow())
            .collect(Collectors.toSet());
    states.stream().sorted((a, b) -> a.name().compareTo(b.name())).forEach(this::ask);
  }

  private void ask(Property property) {
    for (String owner : situation.owners(property)) {
      if (!situation.isOfThisSitting(owner, property.name())) {
        wants.entry(owner, property, new Why(Cause.EACH_SITTING, ""));
      }
    }
  }

  private boolean isAtTheInstrument() {
    List<Wants.Key> entries = wants.entries();
    return !wants.lists().isEmpty()
        || entries.stream()
            .map(key -> situation.property(key.property()))
            .anyMatch(property -> property.heading().home() == Property.Home.VISIT);
  }

  private void step(WorkStep step) {
    step.asks().stream()
        .map(situation::property)
        .filter(property -> property.heading().home() == Property.Home.VISIT)
        .filter(property -> property.heading().tier() == Property.Tier.GATE)
        .forEach(this::ask);
  }
}
