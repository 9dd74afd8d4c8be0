package org.mainsgate.evidence;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
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
import org.mainsgate.quantity.Form;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Hull;
import org.mainsgate.verdict.Said;

/** Entries turned into facts, one by one and together. */
final class Testimony {
  private final Rules rules;
  private final Bench bench;
  private final LocalDate on;

  /** For a day that is asked about, to which the age of entries is counted. */
  Testimony(Rules rules, Bench bench, LocalDate on) {
    this.rules = rules;
    this.bench = bench;
    this.on = on;
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
    String id = file + "/" + entry.id();
    String writer = entry.by().orElse(by);
    Map<String, Fact> with = new HashMap<>();
    if (property instanceof Property.Quantity) {
      with.putAll(momentary);
      with.remove(property.name());
    }
    entry
        .with()
        .forEach(
            (name, value) -> {
              Said said = said(id + "." + name, day, writer, property(name), value);
              with.put(name, plain(property(name), value, said, Map.of()));
            });
    // What stands in a file without a date may be of any day.
    boolean dated = entry.on().isPresent() || !by.isEmpty();
    age(property, id, day, writer)
        .filter(age -> dated)
        .ifPresent(age -> with.put(Vocabulary.AGE, age));
    Said said = said(id, day, writer, property, entry.value()).saying(text(entry));
    if (property instanceof Property.Quantity quantity
        && entry.value() instanceof Value.Amount amount) {
      Reading reading = Reading.of(entry, quantity, bench, rules.meterKinds(), day);
      return amount(
          quantity,
          amount.typed(),
          entry.bound().map(worst -> bounded(reading.bounds(), worst)).orElse(reading.bounds()),
          // Of a thing that another one speaks for, no display was read.
          entry.bound().isPresent()
              ? said.bound(reading.how())
              : said.read(reading.how(), reading.display()),
          with);
    }
    return plain(property, entry.value(), said, with);
  }

  /** What a reading says of other things, among which it was the worst. */
  private static ExactInterval bounded(ExactInterval bounds, Property.Worst worst) {
    Rational end = worst == Property.Worst.HIGHEST ? bounds.hi() : bounds.lo();
    if (end == null) {
      return ExactInterval.UNBOUNDED;
    }
    return worst == Property.Worst.HIGHEST ? ExactInterval.atMost(end) : ExactInterval.atLeast(end);
  }

  /** How many days ago it was written, where rules may ask; nothing is known of the future. */
  private Optional<Fact> age(Property property, String id, LocalDate day, String by) {
    long days = ChronoUnit.DAYS.between(day, on);
    return rules
        .vocabulary()
        .property(Vocabulary.AGE)
        .filter(found -> found.isOf(property.name()) && days >= 0)
        .map(found -> age((Property.Quantity) found, days, id + "." + Vocabulary.AGE, day, by));
  }

  private static Fact age(Property.Quantity age, long days, String id, LocalDate day, String by) {
    Rational exact = Rational.of(days).times(age.unit().factor());
    String text = days + " " + age.unit().symbol();
    Said said =
        new Said(
            id, day, by, text, Optional.of(age.unit()), "", Optional.of(exact), Optional.empty());
    ExactInterval range = ExactInterval.point(exact);
    return new Fact.Amount(Range.of(range), true, false, false, List.of(said), Map.of());
  }

  private static Said said(String entry, LocalDate day, String by, Property property, Value value) {
    Optional<Typed> typed =
        value instanceof Value.Amount amount ? Optional.of(amount.typed()) : Optional.empty();
    return new Said(
        entry,
        day,
        by,
        text(property, value),
        typed.flatMap(Typed::unit),
        "",
        typed.flatMap(Typed::nominal),
        Optional.empty());
  }

  /** What a method of the bench says of every reading. */
  static Fact given(Property property, Value value, Bench.Method method, LocalDate day) {
    Said said = said(method.name() + "." + property.name(), day, "", property, value);
    return plain(property, value, said, Map.of());
  }

  /** What a value says that no meter stands behind. */
  private static Fact plain(Property property, Value value, Said said, Map<String, Fact> with) {
    if (value instanceof Value.Names names) {
      return new Fact.Named(names.candidates(), true, false, List.of(said), with);
    }
    if (value instanceof Value.Thing thing) {
      return new Fact.Pointer(Set.of(thing.thing()), true, true, false, List.of(said), with);
    }
    Typed typed = ((Value.Amount) value).typed();
    return amount((Property.Quantity) property, typed, typed.bounds(), said, with);
  }

  private static Fact amount(
      Property.Quantity quantity,
      Typed typed,
      ExactInterval bounds,
      Said said,
      Map<String, Fact> with) {
    if (quantity.nature() == Nature.VARIES) {
      return new Fact.Varying(varying(typed), true, false, List.of(said), with);
    }
    ExactInterval possible =
        quantity.least().map(ExactInterval::atLeast).orElse(ExactInterval.UNBOUNDED);
    Optional<ExactInterval> left = bounds.intersect(possible);
    ExactInterval range = left.orElseGet(() -> ExactInterval.point(quantity.least().orElseThrow()));
    return new Fact.Amount(Range.of(range), true, false, left.isEmpty(), List.of(said), with);
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
        || sets.stream().reduce(Testimony::common).map(Set::isEmpty).orElse(false);
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

  /** The words before the worst reading, where another thing was no worse. */
  private static String bound(Property.Worst worst, Form form) {
    boolean over = form == Form.ABOVE || form == Form.OVER_RANGE;
    return switch (worst) {
      case HIGHEST -> over ? "not known beside " : form == Form.BELOW ? "" : "at most ";
      case LOWEST -> over ? "" : form == Form.BELOW ? "not known beside " : "at least ";
    };
  }

  /** What an entry says, as people read it. */
  String text(Entry entry) {
    String text = text(property(entry.property()), entry.value());
    int others = entry.worstOf().size();
    return entry
        .bound()
        .map(worst -> bound(worst, ((Value.Amount) entry.value()).typed().form()))
        .map(words -> words + text + " (worst of " + (others + 1) + ")")
        .orElse(others == 0 ? text : text + " (worst of " + (others + 1) + ")");
  }

  private static String text(Property property, Value value) {
    if (value instanceof Value.Amount amount) {
      return amount.typed().text();
    }
    if (value instanceof Value.Thing thing) {
      return thing.thing();
    }
    Value.Names names = (Value.Names) value;
    Property.Observation observation = (Property.Observation) property;
    List<String> all = observation.values().values();
    return names.candidates().size() == all.size()
        ? "unknown"
        : String.join(
            " or ",
            all.stream().filter(names.candidates()::contains).map(observation::title).toList());
  }

  private Property property(String name) {
    return rules
        .vocabulary()
        .property(name)
        .orElseThrow(() -> new IllegalStateException("no property " + name));
  }
}
