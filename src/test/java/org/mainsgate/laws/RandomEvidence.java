package org.mainsgate.laws;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.Range;
import org.mainsgate.formula.Varying;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Judged;

/**
 * Evidence as no workshop would have it: what a sound instrument shows, spoilt in places, known
 * widely or to the point, with gaps.
 */
public final class RandomEvidence {
  private static final Rational TENTH = Rational.of(1, 10);

  private final Slice slice;
  private final Random random;
  private final Style style;
  private final Sound guide;
  private final double sound;

  /** How much is known. */
  public enum Style {
    /** Gaps, intervals, sets and open lists; nothing contradicts anything. */
    LOOSE,
    /** The same, with entries that disagree or can't be true. */
    CONTRADICTORY,
    /** Everything recorded, to the point, within the tables. */
    POINTS
  }

  private RandomEvidence(Slice slice, Random random, Style style, Sound guide, double sound) {
    this.slice = slice;
    this.random = random;
    this.style = style;
    this.guide = guide;
    this.sound = sound;
  }

  private static RandomEvidence of(Slice slice, Random random, Style style) {
    double sound = Pools.of(List.of(1.0, 0.97, 0.9, 0.9, 0.6), random);
    return new RandomEvidence(slice, random, style, Sound.of(slice), sound);
  }

  /** Random evidence of what a slice asks for. */
  static Evidence about(Slice slice, Random random, Style style) {
    return of(slice, random, style).evidence();
  }

  /** Random evidence of what some check asks for, and those before it. */
  public static Evidence of(Rules rules, String check, Random random, Style style) {
    return about(Slice.of(rules, check), random, style);
  }

  /** A sound instrument, with one thing of each kind, known to the point. */
  static Evidence sound(Slice slice, Sound sound) {
    return new RandomEvidence(slice, new Random(0), Style.POINTS, sound, 2).evidence();
  }

  /** A fact of a property that nobody has recorded yet, to the point. */
  static Fact fact(Slice slice, Random random, Property property, Evidence evidence) {
    return of(slice, random, Style.POINTS).fact(property, evidence.lists());
  }

  /** A number that is known to the point, in the property's first unit. */
  static Fact point(Rules rules, String name, String number) {
    Property.Quantity property =
        (Property.Quantity) rules.vocabulary().property(name).orElseThrow();
    Range range = Range.of(ExactInterval.point(Pools.si(property, number)));
    return new Fact.Amount(range, true, false, false, List.of(), Map.of());
  }

  private Evidence evidence() {
    Map<String, Evidence.Listed> lists = new HashMap<>();
    slice.lists().forEach(kind -> lists.put(kind, list(kind, count(kind))));
    Map<String, Map<String, Fact>> facts = new HashMap<>();
    for (Kind kind : slice.rules().vocabulary().kinds().values()) {
      List<String> things = kind.isListed() ? items(lists, kind.name()) : List.of(kind.name());
      things.forEach(thing -> facts.put(thing, facts(kind.name(), lists)));
    }
    return new Evidence(Map.of(), lists, facts, judged(lists));
  }

  private int count(String kind) {
    int count = sound > 1 ? 1 : Pools.of(List.of(0, 1, 1, 1, 2), random);
    return slice.pointsTo(kind) ? Math.max(1, count) : count;
  }

  private static List<String> items(Map<String, Evidence.Listed> lists, String kind) {
    return lists.getOrDefault(kind, Evidence.Listed.OPEN).listing().items();
  }

  private Evidence.Listed list(String kind, int count) {
    List<String> items = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      items.add(kind + "-" + i);
    }
    boolean closed = style == Style.POINTS || random.nextInt(6) > 0;
    return new Evidence.Listed(new Listing(items, closed), Optional.empty(), List.of());
  }

  private List<Judged> judged(Map<String, Evidence.Listed> lists) {
    List<Judged> judged = new ArrayList<>();
    slice.rules().checks().values().stream()
        .filter(check -> check.judgeable() && random.nextInt(3) == 0)
        .forEach(
            check -> {
              List<String> things =
                  check.over().map(kind -> items(lists, kind)).orElse(List.of("instrument"));
              things.forEach(thing -> judged.add(judged(check.id(), thing)));
            });
    return judged;
  }

  private static Judged judged(String check, String thing) {
    return new Judged(
        "v/j", check, thing, "somebody", "a licence", "seen", "", LocalDate.of(2026, 11, 25));
  }

  private Map<String, Fact> facts(String owner, Map<String, Evidence.Listed> lists) {
    Map<String, Fact> facts = new HashMap<>();
    for (Property property : slice.of(owner)) {
      if (!isGap()) {
        facts.put(property.name(), fact(property, lists));
      }
    }
    return facts;
  }

  private boolean isGap() {
    return style != Style.POINTS && random.nextDouble() > 0.5 + sound / 2;
  }

  private Fact fact(Property property, Map<String, Evidence.Listed> lists) {
    Map<String, Fact> with = facts(property.name(), lists);
    if (property instanceof Property.Quantity && !property.isMomentary()) {
      slice.names().stream()
          .map(name -> slice.rules().vocabulary().property(name).orElseThrow())
          .filter(other -> other.isMomentary() && !isGap())
          .forEach(other -> with.put(other.name(), fact(other, lists)));
    }
    boolean disagrees = style == Style.CONTRADICTORY && random.nextInt(25) == 0;
    if (property instanceof Property.Observation observation) {
      return new Fact.Named(names(observation), true, disagrees, List.of(), with);
    }
    if (property instanceof Property.Pointer pointer) {
      return pointer(pointer, lists, with);
    }
    Property.Quantity quantity = (Property.Quantity) property;
    if (quantity.nature() == Nature.VARIES) {
      return new Fact.Varying(varying(quantity), true, disagrees, List.of(), with);
    }
    boolean impossible = style == Style.CONTRADICTORY && random.nextInt(25) == 0;
    return new Fact.Amount(
        Range.of(number(quantity)), true, disagrees, impossible, List.of(), with);
  }

  private Varying varying(Property.Quantity property) {
    ExactInterval value = number(property);
    if (sound > 1 || !value.isBounded() || random.nextBoolean()) {
      return new Varying(value, value, value);
    }
    ExactInterval part = ExactInterval.point(TENTH);
    ExactInterval step = value.times(part);
    return new Varying(value.minus(step), value, value.plus(step));
  }

  private Fact pointer(
      Property.Pointer pointer, Map<String, Evidence.Listed> lists, Map<String, Fact> with) {
    List<String> items = items(lists, pointer.to());
    if (items.isEmpty()) {
      return new Fact.Pointer(Set.of(), false, false, false, List.of(), with);
    }
    boolean both = style != Style.POINTS && random.nextInt(4) == 0;
    Set<String> things = both ? Set.copyOf(items) : Set.of(Pools.of(items, random));
    return new Fact.Pointer(things, true, true, false, List.of(), with);
  }

  private Set<String> names(Property.Observation property) {
    Set<String> names = new HashSet<>();
    boolean isSound = random.nextDouble() < sound;
    names.add(isSound ? guide.name(property) : Pools.name(property, random));
    if (style != Style.POINTS && random.nextDouble() > 0.5 + sound / 2) {
      names.addAll(property.values().values().subList(0, 1 + random.nextInt(2)));
    }
    return names;
  }

  private ExactInterval number(Property.Quantity property) {
    boolean isSound = random.nextDouble() < sound;
    Rational usual = isSound ? guide.number(property) : Pools.number(slice, property, random);
    if (style == Style.POINTS) {
      return ExactInterval.point(usual);
    }
    boolean odd = random.nextInt(40) == 0;
    Rational value = odd ? Pools.oddNumber(slice, property, random) : usual;
    return switch (random.nextInt(isSound ? 20 : 8)) {
      case 0 -> widened(property, value);
      case 1 -> ExactInterval.of(least(property, value), value);
      case 2 -> ExactInterval.atLeast(value);
      case 3 -> possible(property);
      default -> random.nextInt(3) == 0 ? ExactInterval.point(value) : narrow(value);
    };
  }

  private static ExactInterval widened(Property.Quantity property, Rational value) {
    Rational half = value.dividedBy(Rational.of(2));
    return ExactInterval.of(least(property, half), value.plus(half));
  }

  private static ExactInterval narrow(Rational value) {
    Rational less = value.minus(value.times(TENTH));
    return ExactInterval.of(less, value.plus(value.times(TENTH)));
  }

  private static Rational least(Property.Quantity property, Rational otherwise) {
    return property.least().orElse(otherwise.min(Rational.ZERO));
  }

  /** Everything that a quantity can be. */
  static ExactInterval possible(Property.Quantity property) {
    return property.least().map(ExactInterval::atLeast).orElse(ExactInterval.UNBOUNDED);
  }
}
