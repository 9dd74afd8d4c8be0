package org.mainsgate.laws;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.Range;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;

/**
 * Better knowledge of the same instrument: intervals and sets narrowed, gaps filled, lists closed.
 *
 * @param points whether everything is known in the end, and to the point
 */
record Better(Slice slice, Random random, boolean points) {
  private static final String OVERLOOKED = "overlooked-";

  Evidence of(Evidence evidence) {
    Map<String, Evidence.Listed> lists = new HashMap<>();
    new TreeMap<>(evidence.lists()).forEach((kind, list) -> lists.put(kind, closed(kind, list)));
    Evidence listed = new Evidence(Map.of(), lists, evidence.facts(), evidence.judged());
    Map<String, Map<String, Fact>> facts = new HashMap<>();
    for (Kind kind : slice.rules().vocabulary().kinds().values()) {
      List<String> things =
          kind.isListed() ? listed.list(kind.name()).listing().items() : List.of(kind.name());
      for (String thing : things) {
        Map<String, Fact> own = evidence.facts().getOrDefault(thing, Map.of());
        facts.put(thing, better(kind.name(), own, listed, thing.startsWith(OVERLOOKED)));
      }
    }
    return listed.withFacts(facts);
  }

  /** An open list may turn out to be longer when it is closed. */
  private Evidence.Listed closed(String kind, Evidence.Listed list) {
    if (list.listing().closed() || (!points && random.nextBoolean())) {
      return list;
    }
    List<String> items = new ArrayList<>(list.listing().items());
    if (random.nextBoolean()) {
      items.add(OVERLOOKED + kind);
    }
    return new Evidence.Listed(new Listing(items, true), Optional.empty(), List.of());
  }

  /**
   * Of one thing, or of what was recorded with an entry.
   *
   * @param whole whether nothing stays open: whoever lists one thing more has looked at it
   */
  private Map<String, Fact> better(
      String owner, Map<String, Fact> facts, Evidence lists, boolean whole) {
    Map<String, Fact> better = new HashMap<>();
    Vocabulary words = slice.rules().vocabulary();
    for (String name : slice.names()) {
      Property property = words.property(name).orElseThrow();
      boolean with = words.property(owner).isPresent();
      boolean own = with ? words.with(owner, property.name()).isPresent() : property.isOf(owner);
      Fact fact = facts.get(property.name());
      if (fact != null) {
        better.put(property.name(), better(property, fact, lists));
      } else if (own && (points || whole || random.nextInt(3) == 0)) {
        better.put(property.name(), filled(property, lists));
      }
    }
    return better;
  }

  private Fact filled(Property property, Evidence lists) {
    return RandomEvidence.fact(slice, random, property, lists);
  }

  private Fact better(Property property, Fact fact, Evidence lists) {
    Map<String, Fact> with =
        property instanceof Property.Pointer
            ? fact.with()
            : better(property.name(), fact.with(), lists, false);
    if (fact instanceof Fact.Amount amount) {
      Range range = Range.of(narrower(amount.range().exact()));
      return new Fact.Amount(range, true, false, false, amount.said(), with);
    }
    if (fact instanceof Fact.Named named) {
      return new Fact.Named(fewer(named.candidates()), true, false, named.said(), with);
    }
    if (fact instanceof Fact.Pointer pointer) {
      return pointer.things().isEmpty()
          ? filled(property, lists)
          : new Fact.Pointer(fewer(pointer.things()), true, true, false, pointer.said(), with);
    }
    return fact;
  }

  private Set<String> fewer(Set<String> values) {
    List<String> all = new ArrayList<>(new TreeSet<>(values));
    int keep = points ? 1 : 1 + random.nextInt(all.size());
    while (all.size() > keep) {
      all.remove(random.nextInt(all.size()));
    }
    return Set.copyOf(all);
  }

  private ExactInterval narrower(ExactInterval value) {
    if (!points && random.nextInt(3) == 0) {
      return value;
    }
    Rational lo = value.lo();
    Rational hi = value.hi();
    Rational from = lo != null ? lo : hi == null ? Rational.ZERO : hi.minus(Rational.of(3));
    Rational to = hi != null ? hi : from.plus(Rational.of(3));
    Rational x = between(from, to);
    Rational y = points ? x : between(from, to);
    return ExactInterval.of(x.min(y), x.max(y));
  }

  /** The ends more often than what lies between. */
  private Rational between(Rational lo, Rational hi) {
    return lo.plus(hi.minus(lo).times(Rational.of(Math.min(8, random.nextInt(12)), 8)));
  }
}
