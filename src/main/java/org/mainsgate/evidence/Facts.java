package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.Range;
import org.mainsgate.formula.Varying;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Hull;
import org.mainsgate.verdict.Said;

/** Entries turned into facts, one by one and together. */
final class Facts {
  private final Rules rules;
  private final Bench bench;

  Facts(Rules rules, Bench bench) {
    this.rules = rules;
    this.bench = bench;
  }

  /**
   * What one entry says.
   *
   * @param file the visit or file that it stands in
   * @param date the date of the visit
   * @param by the person of the visit
   * @param momentary what was true at that time only
   */
  Fact single(Entry entry, String file, LocalDate date, String by, Map<String, Fact> momentary) {
    Property property = property(entry.property());
    LocalDate day = entry.on().orElse(date);
    Map<String, Fact> with = new HashMap<>();
    if (property instanceof Property.Quantity) {
      with.putAll(momentary);
    }
    entry
        .with()
        .forEach(
            (name, value) -> with.put(name, plain(property(name), value, List.of(), Map.of())));
    if (property instanceof Property.Quantity quantity
        && entry.value() instanceof Value.Amount amount) {
      Reading reading = Reading.of(entry, quantity, bench, rules.meterKinds(), day);
      Said said =
          new Said(
              file + "/" + entry.id(),
              day,
              entry.by().orElse(by),
              amount.typed().text(),
              amount.typed().unit(),
              reading.how(),
              amount.typed().nominal(),
              reading.display());
      return amount(quantity, amount.typed(), reading.bounds(), List.of(said), with);
    }
    Said said =
        new Said(
            file + "/" + entry.id(),
            day,
            entry.by().orElse(by),
            text(entry),
            Optional.empty(),
            "",
            Optional.empty(),
            Optional.empty());
    return plain(property, entry.value(), List.of(said), with);
  }

  /** What a value says that no meter stands behind. */
  private static Fact plain(
      Property property, Value value, List<Said> said, Map<String, Fact> with) {
    if (value instanceof Value.Names names) {
      return new Fact.Named(names.candidates(), true, false, said, with);
    }
    if (value instanceof Value.Thing thing) {
      return new Fact.Pointer(Set.of(thing.thing()), true, true, false, said, with);
    }
    Typed typed = ((Value.Amount) value).typed();
    return amount((Property.Quantity) property, typed, typed.bounds(), said, with);
  }

  private static Fact amount(
      Property.Quantity quantity,
      Typed typed,
      ExactInterval bounds,
      List<Said> said,
      Map<String, Fact> with) {
    if (quantity.nature() == Nature.VARIES) {
      return new Fact.Varying(varying(typed), true, false, said, with);
    }
    ExactInterval possible =
        quantity.least().map(ExactInterval::atLeast).orElse(ExactInterval.UNBOUNDED);
    Optional<ExactInterval> left = bounds.intersect(possible);
    ExactInterval range = left.orElseGet(() -> ExactInterval.point(quantity.least().orElseThrow()));
    return new Fact.Amount(Range.of(range), true, false, left.isEmpty(), said, with);
  }

  private static Varying varying(Typed typed) {
    ExactInterval all = typed.bounds();
    Rational lo = all.lo();
    Rational hi = all.hi();
    ExactInterval nominal = typed.nominal().map(ExactInterval::point).orElse(all);
    return new Varying(
        lo == null ? ExactInterval.UNBOUNDED : ExactInterval.point(lo),
        nominal,
        hi == null ? ExactInterval.UNBOUNDED : ExactInterval.point(hi));
  }

  /**
   * What several entries of one property of one thing say together; nothing where there is none.
   */
  Optional<Fact> together(List<Fact> facts) {
    Optional<Fact> hull = facts.stream().reduce(Hull::of);
    return exclude(facts) ? hull.map(Hull::disagreeing) : hull;
  }

  /** Whether no value is left that all of them allow. */
  private static boolean exclude(List<Fact> facts) {
    List<ExactInterval> ranges = new ArrayList<>();
    List<Set<String>> sets = new ArrayList<>();
    for (Fact fact : facts) {
      if (fact instanceof Fact.Amount amount) {
        ranges.add(amount.range().exact());
      } else if (fact instanceof Fact.Varying varying) {
        ranges.add(varying.range().nominal());
      } else if (fact instanceof Fact.Named named) {
        sets.add(named.candidates());
      } else if (fact instanceof Fact.Pointer pointer) {
        sets.add(pointer.things());
      }
    }
    return haveNothingInCommon(ranges)
        || sets.stream().reduce(Facts::common).map(Set::isEmpty).orElse(false);
  }

  private static boolean haveNothingInCommon(List<ExactInterval> ranges) {
    Optional<ExactInterval> common = ranges.stream().findFirst();
    for (ExactInterval range : ranges) {
      common = common.flatMap(range::intersect);
    }
    return !ranges.isEmpty() && common.isEmpty();
  }

  private static Set<String> common(Set<String> a, Set<String> b) {
    Set<String> common = new HashSet<>(a);
    common.retainAll(b);
    return common;
  }

  /** What an entry says, as people read it. */
  String text(Entry entry) {
    Property property = property(entry.property());
    if (entry.value() instanceof Value.Amount amount) {
      return amount.typed().text();
    }
    if (entry.value() instanceof Value.Thing thing) {
      return thing.thing();
    }
    Value.Names names = (Value.Names) entry.value();
    Property.Observation observation = (Property.Observation) property;
    if (names.candidates().size() == observation.values().values().size()) {
      return "unknown";
    }
    return String.join(
        " or ",
        observation.values().values().stream()
            .filter(names.candidates()::contains)
            .map(observation::title)
            .toList());
  }

  private Property property(String name) {
    return rules
        .vocabulary()
        .property(name)
        .orElseThrow(() -> new IllegalStateException("no property " + name));
  }
}
