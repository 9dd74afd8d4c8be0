package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.mainsgate.formula.Range;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Print;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.CheckScope;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;

/**
 * Finds what would settle a hold that is too near its limit: the largest display of the same meter,
 * in the same range, that would pass, found over the meter's own steps.
 */
final class Settling {
  private final Rules rules;
  private final Evidence evidence;
  private final Check check;
  private final String thing;

  Settling(Rules rules, Evidence evidence, Check check, String thing) {
    this.rules = rules;
    this.evidence = evidence;
    this.check = check;
    this.thing = thing;
  }

  List<String> of(List<Finding.Input> inputs) {
    List<String> settles = new ArrayList<>();
    for (Finding.Input input : inputs) {
      if (input.fact() instanceof Fact.Amount number && isReading(number)) {
        settles.add(display(input, number));
      }
    }
    if (settles.isEmpty()) {
      widest(inputs).ifPresent(input -> settles.add(narrower(input)));
    }
    return settles;
  }

  private static boolean isReading(Fact.Amount number) {
    return number.said().size() == 1
        && number.said().get(0).display().isPresent()
        && number.said().get(0).shown().isPresent();
  }

  private String display(Finding.Input input, Fact.Amount number) {
    Said said = number.said().get(0);
    Rational shown = said.shown().orElseThrow();
    Rational step = said.display().orElseThrow().step();
    Rational top = said.display().orElseThrow().range().to();
    Unit unit = said.unit().orElseThrow();
    Predicate<Rational> passes = at -> passes(input, number, said, at);
    if (passes.test(Rational.ZERO)) {
      Rational last = bisect(passes, Rational.ZERO, shown, step);
      return "A display of "
          + Print.value(last, unit)
          + " "
          + unit.symbol()
          + " or less would pass";
    }
    if (passes.test(top)) {
      Rational first = bisect(passes, top, shown, step);
      return "A display of "
          + Print.value(first, unit)
          + " "
          + unit.symbol()
          + " or more would pass";
    }
    return "No display of this meter in this range would pass; measure with a meter of smaller limits of error";
  }

  /** The display nearest to the second that still passes, starting from one that does. */
  static Rational bisect(
      Predicate<Rational> passes, Rational passing, Rational other, Rational step) {
    Rational good = passing;
    Rational bad = other;
    while (good.minus(bad).abs().compareTo(step) > 0) {
      Rational middle = between(good, bad, step);
      if (passes.test(middle)) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return good;
  }

  /** A whole number of steps from the first toward the second, about half the way. */
  private static Rational between(Rational from, Rational to, Rational step) {
    Rational steps = to.minus(from).dividedBy(step.times(Rational.of(2)));
    long whole = (long) steps.up();
    long some = whole == 0 ? steps.signum() : whole;
    return from.plus(step.times(Rational.of(some)));
  }

  private boolean passes(Finding.Input input, Fact.Amount number, Said said, Rational at) {
    ExactInterval read = said.display().orElseThrow().at(at);
    Optional<Rational> least =
        input.property() instanceof Property.Quantity quantity
            ? quantity.least()
            : Optional.empty();
    ExactInterval possible =
        least.flatMap(bound -> read.intersect(ExactInterval.atLeast(bound))).orElse(read);
    Fact.Amount other =
        new Fact.Amount(Range.of(possible), true, false, false, number.said(), number.with());
    Known changed =
        new Known(rules.vocabulary(), replacing(input, other)).with(CheckScope.ITEM, thing);
    return check.requirement().evaluate(changed) == Truth.MET;
  }

  private Evidence replacing(Finding.Input input, Fact.Amount fact) {
    String owner = evidence.fact(thing, input.name()).isPresent() ? thing : Kinds.INSTRUMENT;
    Map<String, Map<String, Fact>> all = new HashMap<>(evidence.facts());
    Map<String, Fact> own = new HashMap<>(all.getOrDefault(owner, Map.of()));
    own.put(input.name(), fact);
    all.put(owner, own);
    return evidence.withFacts(all);
  }

  /** The number with the widest interval for its size. */
  private static Optional<Finding.Input> widest(List<Finding.Input> inputs) {
    Optional<Finding.Input> widest = Optional.empty();
    double most = 0;
    for (Finding.Input input : inputs) {
      double width = input.fact() instanceof Fact.Amount number ? width(number) : 0;
      if (width > most) {
        widest = Optional.of(input);
        most = width;
      }
    }
    return widest;
  }

  private static double width(Fact.Amount number) {
    double lo = number.range().outward().lo();
    double hi = number.range().outward().hi();
    double size = Math.max(Math.abs(lo), Math.abs(hi));
    return size == 0 ? 0 : (hi - lo) / size;
  }

  private static String narrower(Finding.Input input) {
    Unit unit =
        input.property() instanceof Property.Quantity quantity
            ? quantity.unit()
            : input.fact().said().get(0).unit().orElseThrow();
    ExactInterval range = ((Fact.Amount) input.fact()).range().exact();
    return "Know it more closely: " + input.title() + " (" + Print.quantity(range, unit) + ")";
  }
}
