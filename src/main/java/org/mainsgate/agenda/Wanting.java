package org.mainsgate.agenda;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.agenda.Why.Cause;
import org.mainsgate.formula.Ground;
import org.mainsgate.formula.Input;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.Reference;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.quantity.Truth;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;
import org.mainsgate.verdict.Said;

/** Reads from findings that hold which entries and lists would settle them. */
final class Wanting {
  private final Situation situation;
  private final Wants wants;
  private boolean asked;

  Wanting(Situation situation, Wants wants) {
    this.situation = situation;
    this.wants = wants;
  }

  /** Reads one finding; false if it holds and there is nothing that could be written down. */
  boolean of(Finding finding) {
    if (finding.outcome() != Outcome.HOLD) {
      return true;
    }
    asked = false;
    for (Finding.Hold hold : finding.holds()) {
      of(finding, hold);
    }
    missing(finding);
    formulas(finding.check())
        .flatMap(formula -> formula.lists().stream())
        .distinct()
        .filter(this::isOpen)
        .forEach(kind -> list(kind, ""));
    return asked;
  }

  private void of(Finding finding, Finding.Hold hold) {
    switch (hold.reason()) {
      case LIST_OPEN -> list(finding.thing(), hold.text());
      case TOO_NEAR -> near(finding);
      case DISAGREE -> disagreeing(finding);
      case IMPLAUSIBLE -> implausible(finding, hold.text());
      case NOT_AS_ASKED ->
          conditions(finding, finding.check().provided(), hold.text(), Cause.NOT_AS_ASKED);
      case NOT_RECORDED,
          PREREQUISITE_OPEN,
          APPLICABILITY_UNKNOWN,
          LIMIT_UNCONFIRMED,
          PERSON_MUST_JUDGE,
          NOT_MET -> {
        // What is missing is read from the inputs; the others are no matter of entries.
      }
    }
  }

  private static Stream<TruthFormula> formulas(Check check) {
    return Stream.of(
            check.applies().stream(),
            Stream.of(check.requirement()),
            check.provided().stream().map(Check.Condition::that))
        .flatMap(part -> part);
  }

  private boolean isOpen(String kind) {
    return !situation.evidence().list(kind).listing().closed();
  }

  private void list(String kind, String text) {
    boolean counted = situation.evidence().list(kind).counted().isPresent();
    wants.list(kind, counted ? new Why(Cause.LIST_OPEN, text) : new Why(Cause.NEVER, ""));
    asked = true;
  }

  private void entry(String thing, Property property, Cause cause, String text) {
    wants.entry(thing, property, new Why(cause, text));
    asked = asked || wants.has(thing, property.name());
  }

  /** Everything that is not recorded, or leaves open what the check depends on. */
  private void missing(Finding finding) {
    boolean applies = finding.holds().stream().noneMatch(Wanting::isApplicability);
    Set<String> deciding =
        finding.check().applies().stream()
            .flatMap(formula -> names(formula))
            .collect(Collectors.toSet());
    boolean gateOpen =
        finding.inputs().stream()
            .filter(input -> deciding.contains(input.name()) && isMissing(finding, input, true))
            .anyMatch(input -> place(input).base().heading().tier() == Property.Tier.GATE);
    for (Finding.Input input : finding.inputs()) {
      pointers(finding, input);
      boolean decides = deciding.contains(input.name());
      boolean due =
          applies
              || place(input).base().heading().tier() == Property.Tier.GATE
              || (decides && !gateOpen);
      if (due && isMissing(finding, input, decides && !applies)) {
        missing(input);
      }
    }
  }

  private static boolean isApplicability(Finding.Hold hold) {
    return hold.reason() == Reason.APPLICABILITY_UNKNOWN;
  }

  private static Stream<String> names(TruthFormula formula) {
    return formula.inputs().stream()
        .map(Input::reference)
        .map(Reference::path)
        .map(path -> String.join(".", path));
  }

  private Place place(Finding.Input input) {
    return Place.of(input, situation.rules().vocabulary());
  }

  private static boolean isMissing(Finding finding, Finding.Input input, boolean decides) {
    if (!input.fact().recorded()) {
      return true;
    }
    boolean open = input.fact() instanceof Fact.Named named && named.candidates().size() > 1;
    return open && (decides || finding.arithmetic().stream().anyMatch(g -> leavesOpen(g, input)));
  }

  private static boolean leavesOpen(Ground ground, Finding.Input input) {
    return ground instanceof Ground.Choice choice
        && choice.truth() == Truth.UNDECIDED
        && Stream.of(choice.text().split(" "))
            .anyMatch(name -> name.equals(input.name()) || name.endsWith("." + input.name()));
  }

  private void missing(Finding.Input input) {
    Place place = place(input);
    for (String thing : place.things()) {
      Optional<Fact> base =
          situation.evidence().fact(thing, place.base().name()).filter(Fact::recorded);
      if (base.isEmpty()) {
        String lost = situation.evidence().lost(thing, place.base().name());
        entry(thing, place.base(), lost.isEmpty() ? Cause.NEVER : Cause.VOID, lost);
      } else if (place.more().isPresent()) {
        incomplete(thing, place, input);
      } else if (input.fact().recorded()) {
        entry(thing, place.base(), Cause.UNCERTAIN, texts(input.fact()));
      }
    }
  }

  /** What belongs to an entry that is there is missing or leaves too much open. */
  private void incomplete(String thing, Place place, Finding.Input input) {
    Property more = place.more().orElseThrow();
    if (place.isMomentary() && situation.isOfThisSitting(thing, place.base().name())) {
      situation.owners(more).forEach(owner -> entry(owner, more, Cause.NEVER, ""));
    } else if (input.fact().recorded()) {
      entry(thing, place.base(), Cause.UNCERTAIN, more.title() + ", " + texts(input.fact()));
    } else {
      entry(thing, place.base(), Cause.INCOMPLETE, more.title());
    }
  }

  /** A list that a reading points into has to be closed; of several things it has to name one. */
  private void pointers(Finding finding, Finding.Input input) {
    Place place = place(input);
    place.pointers().stream().filter(this::isOpen).forEach(kind -> list(kind, ""));
    if (place.pointers().isEmpty()) {
      return;
    }
    String first = input.name().split("\\.", -1)[0];
    String pointer = input.name().split("\\.", -1)[1];
    boolean several =
        situation.evidence().list(place.pointers().get(0)).listing().items().size() > 1;
    Property reading = situation.property(first);
    for (String thing : things(finding, reading)) {
      boolean silent =
          situation
              .evidence()
              .fact(thing, first)
              .filter(fact -> fact.recorded() && !fact.with().containsKey(pointer))
              .isPresent();
      if (several && silent) {
        entry(thing, reading, Cause.INCOMPLETE, situation.property(pointer).title());
      }
    }
  }

  private List<String> things(Finding finding, Property property) {
    return situation.has(finding.thing(), property)
        ? List.of(finding.thing())
        : situation.owners(property);
  }

  /** Readings that leave both answers open; where there are none, other numbers that do. */
  private void near(Finding finding) {
    Set<String> required = names(finding.check().requirement()).collect(Collectors.toSet());
    List<Finding.Input> wide =
        finding.inputs().stream()
            .filter(input -> required.contains(input.name()) && isWide(input.fact()))
            .toList();
    List<Finding.Input> readings =
        wide.stream().filter(input -> isMeasured(place(input).base())).toList();
    for (Finding.Input input : readings.isEmpty() ? wide : readings) {
      again(place(input), Cause.TOO_NEAR, texts(input.fact()));
    }
  }

  private static boolean isWide(Fact fact) {
    return fact.recorded()
        && fact instanceof Fact.Amount amount
        && !amount.range().exact().isPoint();
  }

  private static boolean isMeasured(Property property) {
    return property instanceof Property.Quantity quantity && quantity.nature() == Nature.MEASURED;
  }

  private void again(Place place, Cause cause, String text) {
    place.things().forEach(thing -> entry(thing, place.base(), cause, text));
  }

  private void disagreeing(Finding finding) {
    for (Finding.Input input : finding.inputs()) {
      if (input.fact().disagrees()) {
        again(place(input), Cause.DISAGREE, texts(input.fact()));
      }
    }
  }

  private void implausible(Finding finding, String text) {
    for (Finding.Input input : finding.inputs()) {
      if (input.fact() instanceof Fact.Amount amount && amount.impossible()) {
        again(place(input), Cause.IMPLAUSIBLE, texts(input.fact()));
      }
    }
    conditions(finding, finding.check().plausible(), text, Cause.IMPLAUSIBLE);
  }

  /** What the conditions with these words rest on: the readings, else everything. */
  private void conditions(
      Finding finding, List<Check.Condition> conditions, String text, Cause cause) {
    for (Check.Condition condition : conditions) {
      if (condition.otherwise().equals(text)) {
        List<Place> places =
            names(condition.that()).map(name -> named(finding, name)).distinct().toList();
        List<Place> readings = places.stream().filter(p -> isMeasured(p.base())).toList();
        (readings.isEmpty() ? places : readings).forEach(place -> again(place, cause, text));
        places.stream()
            .filter(Place::isMomentary)
            .map(place -> place.more().orElseThrow())
            .forEach(m -> situation.owners(m).forEach(owner -> entry(owner, m, cause, text)));
      }
    }
  }

  /** The entry of a name; what only makes a reading plausible is no input of the finding. */
  private Place named(Finding finding, String name) {
    return finding.inputs().stream()
        .filter(input -> input.name().equals(name))
        .findFirst()
        .map(this::place)
        .orElseGet(
            () -> {
              Property first = situation.property(name.split("\\.", -1)[0]);
              return new Place(first, Optional.empty(), List.of(), things(finding, first));
            });
  }

  private static String texts(Fact fact) {
    return fact.said().stream().map(Said::text).distinct().collect(Collectors.joining(", "));
  }
}
