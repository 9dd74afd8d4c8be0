package org.mainsgate.verdict;

import java.util.Optional;
import org.mainsgate.quantity.Print;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;

/**
 * The displays of a meter that would pass a check.
 *
 * @param least the smallest of them, in SI units; empty if small ones pass too
 * @param most the greatest of them; empty if great ones pass too
 * @param unit the unit to print them in
 */
public record Expected(Optional<Rational> least, Optional<Rational> most, Unit unit) {

  /** Something is expected, and a display can be it. */
  public Expected {
    if (least.isEmpty() && most.isEmpty()) {
      throw new IllegalArgumentException("nothing is expected");
    }
  }

  /** The displays that pass both; empty if none does. */
  public Optional<Expected> and(Expected other) {
    Optional<Rational> from = both(least, other.least, true);
    Optional<Rational> to = both(most, other.most, false);
    boolean none = from.isPresent() && to.isPresent() && from.get().compareTo(to.get()) > 0;
    return none ? Optional.empty() : Optional.of(new Expected(from, to, unit));
  }

  private static Optional<Rational> both(
      Optional<Rational> a, Optional<Rational> b, boolean greater) {
    if (a.isEmpty() || b.isEmpty()) {
      return a.or(() -> b);
    }
    return Optional.of(greater ? a.get().max(b.get()) : a.get().min(b.get()));
  }

  /** In words: {@code 0.16 Ω or less}. */
  public String words() {
    String symbol = " " + unit.symbol();
    if (least.isEmpty()) {
      return Print.value(most.orElseThrow(), unit) + symbol + " or less";
    }
    return most.map(to -> Print.value(least.get(), unit) + " to " + Print.value(to, unit) + symbol)
        .orElseGet(() -> Print.value(least.get(), unit) + symbol + " or more");
  }
}
