package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.mainsgate.formula.Range;
import org.mainsgate.quantity.Display;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.CheckScope;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;

/**
 * Finds which displays of a meter would pass a check, before anybody has measured: the requirement
 * is tried on displays all over the meter's ranges, then over its single steps where the answer
 * changes.
 *
 * <p>What is not recorded yet counts as everything that it can be, so no display may be sure to
 * pass; then nothing is expected.
 */
public final class Expectation {
  /** Into so many parts a range is divided, and so many times its first part is halved again. */
  private static final int PARTS = 16;

  private final Rules rules;
  private final Evidence evidence;

  /** What to expect under these rules, on what is known so far. */
  public Expectation(Rules rules, Evidence evidence) {
    this.rules = rules;
    this.evidence = evidence;
  }

  /**
   * A reading that nobody has taken yet.
   *
   * @param owner the thing that it is of
   * @param quantity what is measured
   * @param with what will be recorded with it
   * @param displays the ranges of the meter
   */
  public record Planned(
      String owner, Property.Quantity quantity, Map<String, Fact> with, List<Display> displays) {

    /** Keeps the collections as they are, the finest range first. */
    public Planned {
      with = Map.copyOf(with);
      displays =
          displays.stream().sorted(Comparator.comparing(shown -> shown.range().to())).toList();
    }
  }

  private record Point(Rational value, Display display, boolean passes) {}

  /** The displays that pass a check of a thing; empty if none does, if all do, or none is sure. */
  public Optional<Expected> of(Check check, String thing, Planned reading) {
    List<Point> points = points(check, thing, reading);
    int first = -1;
    int last = -1;
    for (int i = 0; i < points.size(); i++) {
      if (points.get(i).passes()) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    boolean all = first == 0 && last == points.size() - 1;
    if (first < 0 || all) {
      return Optional.empty();
    }
    Optional<Rational> least = Optional.empty();
    if (first > 0) {
      least = Optional.of(edge(check, thing, reading, points.get(first), points.get(first - 1)));
    }
    Optional<Rational> most = Optional.empty();
    if (last < points.size() - 1) {
      most = Optional.of(edge(check, thing, reading, points.get(last), points.get(last + 1)));
    }
    return Optional.of(new Expected(least, most, reading.quantity().unit()));
  }

  private Rational edge(Check check, String thing, Planned reading, Point good, Point bad) {
    if (!good.display().equals(bad.display())) {
      return good.value();
    }
    Predicate<Rational> passes = at -> passes(check, thing, reading, good.display(), at);
    return Settling.bisect(passes, good.value(), bad.value(), good.display().step());
  }

  /** Displays from zero up, each on the finest range that reaches it. */
  private List<Point> points(Check check, String thing, Planned reading) {
    List<Point> points = new ArrayList<>();
    Rational done = Rational.of(-1);
    for (Display display : reading.displays()) {
      for (Rational at : values(display)) {
        if (at.compareTo(done) > 0) {
          points.add(new Point(at, display, passes(check, thing, reading, display, at)));
          done = at;
        }
      }
    }
    return points;
  }

  private static List<Rational> values(Display display) {
    Rational to = display.range().to();
    List<Rational> values = new ArrayList<>(List.of(Rational.ZERO));
    Rational part = to.dividedBy(Rational.of(PARTS));
    Rational small = part;
    for (int i = 0; i < PARTS; i++) {
      small = small.dividedBy(Rational.of(2));
      values.add(small);
    }
    for (int i = 1; i <= PARTS; i++) {
      values.add(part.times(Rational.of(i)));
    }
    return values.stream().map(at -> wholeSteps(at, display.step())).sorted().distinct().toList();
  }

  private static Rational wholeSteps(Rational value, Rational step) {
    long whole = (long) value.dividedBy(step).up();
    Rational up = step.times(Rational.of(whole));
    return up.compareTo(value) > 0 ? step.times(Rational.of(whole - 1)) : up;
  }

  private boolean passes(Check check, String thing, Planned reading, Display display, Rational at) {
    ExactInterval read = display.at(at);
    ExactInterval possible =
        reading
            .quantity()
            .least()
            .flatMap(bound -> read.intersect(ExactInterval.atLeast(bound)))
            .orElse(read);
    Fact.Amount fact =
        new Fact.Amount(Range.of(possible), true, false, false, List.of(), reading.with());
    Map<String, Map<String, Fact>> all = new HashMap<>(evidence.facts());
    Map<String, Fact> own = new HashMap<>(all.getOrDefault(reading.owner(), Map.of()));
    own.put(reading.quantity().name(), fact);
    all.put(reading.owner(), own);
    Known known =
        new Known(rules.vocabulary(), evidence.withFacts(all)).with(CheckScope.ITEM, thing);
    return check.requirement().evaluate(known) == Truth.MET;
  }
}
