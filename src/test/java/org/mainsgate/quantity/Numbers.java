package org.mainsgate.quantity;

import java.math.BigDecimal;
import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tuple;
import net.jqwik.api.domains.DomainContextBase;

/**
 * The random numbers of this package's properties: everyday decimals, small whole numbers, and
 * doubles of every size down to the subnormal.
 */
final class Numbers extends DomainContextBase {

  /** A narrower interval of each kind inside a wider one. */
  record Nested(Interval inner, Interval outer) {}

  /** The same with exact ends. */
  record ExactNested(ExactInterval inner, ExactInterval outer, Rational inside) {}

  @Provide
  static Arbitrary<Double> doubles() {
    return Arbitraries.frequencyOf(
        Tuple.of(
            4,
            Arbitraries.bigDecimals()
                .between(new BigDecimal("-1000"), new BigDecimal("1000"))
                .ofScale(3)
                .map(BigDecimal::doubleValue)),
        Tuple.of(2, Arbitraries.integers().between(-9, 9).map(Integer::doubleValue)),
        Tuple.of(
            4,
            Arbitraries.longs()
                .withDistribution(RandomDistribution.uniform())
                .map(Double::longBitsToDouble)
                .filter(Double::isFinite)),
        Tuple.of(
            2,
            Arbitraries.longs()
                .between(-3_000_000_000_000_000L, 3_000_000_000_000_000L)
                .map(n -> n * Double.MIN_VALUE)),
        Tuple.of(
            1,
            Arbitraries.of(
                0.0,
                -0.0,
                Double.MIN_VALUE,
                -Double.MIN_VALUE,
                Double.MIN_NORMAL,
                Double.MAX_VALUE,
                -Double.MAX_VALUE,
                0x1p-960,
                0x1p1022,
                1 + 0x1p-52)));
  }

  @Provide
  static Arbitrary<Interval> intervals() {
    Arbitrary<Interval> bounded =
        Combinators.combine(doubles(), doubles())
            .as((a, b) -> new Interval(Math.min(a, b), Math.max(a, b)));
    return Arbitraries.frequencyOf(
        Tuple.of(4, bounded),
        Tuple.of(3, doubles().map(Interval::point)),
        Tuple.of(1, doubles().map(lo -> new Interval(lo, Double.POSITIVE_INFINITY))),
        Tuple.of(1, doubles().map(hi -> new Interval(Double.NEGATIVE_INFINITY, hi))),
        Tuple.of(1, Arbitraries.just(Interval.UNBOUNDED)));
  }

  @Provide
  static Arbitrary<Nested> nested() {
    Arbitrary<Nested> bounded =
        doubles()
            .array(double[].class)
            .ofSize(4)
            .map(double[]::clone)
            .map(
                ends -> {
                  Arrays.sort(ends);
                  return new Nested(new Interval(ends[1], ends[2]), new Interval(ends[0], ends[3]));
                });
    return Combinators.combine(bounded, Arbitraries.integers().between(0, 9)).as(Numbers::opened);
  }

  private static Nested opened(Nested nested, int choice) {
    double lo = choice == 1 || choice == 3 ? Double.NEGATIVE_INFINITY : nested.outer.lo();
    double hi = choice == 2 || choice == 3 ? Double.POSITIVE_INFINITY : nested.outer.hi();
    return new Nested(nested.inner, new Interval(lo, hi));
  }

  @Provide
  static Arbitrary<Rational> rationals() {
    return Arbitraries.frequencyOf(
        Tuple.of(
            3,
            Arbitraries.bigDecimals()
                .between(new BigDecimal("-1000"), new BigDecimal("1000"))
                .ofScale(4)
                .map(Rational::of)),
        Tuple.of(
            3,
            Combinators.combine(
                    Arbitraries.longs().between(-12, 12), Arbitraries.longs().between(1, 12))
                .as(Rational::of)),
        Tuple.of(1, doubles().map(Rational::of)));
  }

  @Provide
  static Arbitrary<ExactNested> exactNested() {
    return Combinators.combine(rationals().list().ofSize(5), Arbitraries.integers().between(0, 9))
        .as(
            (ends, choice) -> {
              Rational[] sorted = ends.toArray(Rational[]::new);
              Arrays.sort(sorted);
              ExactInterval inner = ExactInterval.of(sorted[1], sorted[3]);
              ExactInterval outer =
                  new ExactInterval(
                      choice == 1 || choice == 3 ? null : sorted[0],
                      choice == 2 || choice == 3 ? null : sorted[4]);
              return new ExactNested(inner, outer, sorted[2]);
            });
  }
}
