package org.mainsgate.quantity;

import java.util.Optional;

/**
 * What is known of the part of a reading that belongs to the test leads: the true value is the
 * reading less this.
 */
public sealed interface Nulling {

  /** The leads were nulled, or the quantity knows none: they add nothing. */
  Nulling YES = new Nulled();

  /**
   * The leads were not nulled: they add something, nobody knows how much, and never less than
   * nothing.
   */
  Nulling NO = new NotNulled(Optional.empty());

  /** The leads were not nulled; they add something between nothing and this SI value. */
  static Nulling atMost(Rational value) {
    return new NotNulled(Optional.of(value));
  }

  /** With the probes joined the meter showed this SI value. */
  static Nulling shortReads(Rational value) {
    return new ShortReads(value);
  }

  /** What the leads add to a reading on this range, in SI units. */
  ExactInterval leads(MeterRange range);

  /** See {@link Nulling#YES}. */
  record Nulled() implements Nulling {
    @Override
    public ExactInterval leads(MeterRange range) {
      return ExactInterval.point(Rational.ZERO);
    }
  }

  /** See {@link Nulling#NO}. */
  record NotNulled(Optional<Rational> most) implements Nulling {
    @Override
    public ExactInterval leads(MeterRange range) {
      return most.map(value -> ExactInterval.of(Rational.ZERO, value))
          .orElseGet(() -> ExactInterval.atLeast(Rational.ZERO));
    }
  }

  /** See {@link Nulling#shortReads}. */
  record ShortReads(Rational value) implements Nulling {
    @Override
    public ExactInterval leads(MeterRange range) {
      Rational half = range.halfWidth(value);
      return ExactInterval.of(value.minus(half), value.plus(half));
    }
  }
}
