package org.mainsgate.agenda;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.mainsgate.evidence.Equipment;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;

/** The instrument on a day: what the rules, the record and the evidence say of its things. */
record Situation(Rules rules, InstrumentRecord record, Evidence evidence, LocalDate on) {

  Property property(String name) {
    return rules
        .vocabulary()
        .property(name)
        .orElseThrow(() -> new IllegalStateException("no property " + name));
  }

  /** The kind of a thing, if it exists. */
  Optional<String> kindOf(String thing) {
    Instrument.Thing listed = record.instrument().things().get(thing);
    if (listed != null) {
      return Optional.of(listed.kind());
    }
    return rules.vocabulary().kind(thing).filter(kind -> !kind.isListed()).map(Kind::name);
  }

  /** Whether a property can be recorded of a thing. */
  boolean has(String thing, Property property) {
    return kindOf(thing).filter(property::isOf).isPresent();
  }

  /** The things that a property is said of: that which exists once, or all that are listed. */
  List<String> owners(Property property) {
    return property.heading().of().stream()
        .flatMap(owner -> rules.vocabulary().kind(owner).stream())
        .flatMap(
            kind ->
                kind.isListed()
                    ? evidence.list(kind.name()).listing().items().stream()
                    : Stream.of(kind.name()))
        .toList();
  }

  /** What the bench would measure a quantity with. */
  Equipment equipment(Property.Quantity quantity) {
    return Equipment.of(record.bench(), rules, quantity, on);
  }

  /** Whether it was recorded in the sitting that goes on: a draft of this day. */
  boolean isOfThisSitting(String thing, String property) {
    Optional<Fact> fact = evidence.fact(thing, property).filter(Fact::recorded);
    return fact.isPresent()
        && !fact.get().said().isEmpty()
        && fact.get().said().stream().allMatch(said -> isOfThisSitting(said.entry()));
  }

  private boolean isOfThisSitting(String entry) {
    return record.visits().stream()
        .filter(visit -> visit.closing().isEmpty() && visit.date().equals(on))
        .anyMatch(visit -> entry.startsWith(visit.id() + "/"));
  }
}
