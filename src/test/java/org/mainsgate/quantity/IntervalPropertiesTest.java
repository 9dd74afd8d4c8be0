package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.function.BinaryOperator;
import java.util.function.UnaryOperator;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.mainsgate.quantity.Numbers.Nested;

/** The oracle of the doubles is exact arithmetic on fractions. */
@Domain(Numbers.class)
@Domain(DomainContext.Global.class)
class IntervalPropertiesTest {

  private static final MathContext PRECISE = new MathContext(40);
  private static final List<BinaryOperator<Interval>> BINARY =
      List.of(
          Interval::plus,
          Interval::minus,
          Interval::times,
          Interval::dividedBy,
          Interval::min,
          Interval::max,
          Interval::hull);
  private static final List<UnaryOperator<Interval>> UNARY =
      List.of(Interval::negate, Interval::sqrt, Interval::ln, Interval::exp2);

  @Property(tries = 2000)
  void onPointsTheResultIsTheTightestEnclosure(@ForAll double a, @ForAll double b) {
    Interval x = Interval.point(a);
    Interval y = Interval.point(b);
    assertEquals(around(Rational.of(a).plus(Rational.of(b))), x.plus(y));
    assertEquals(around(Rational.of(a).minus(Rational.of(b))), x.minus(y));
    assertEquals(around(Rational.of(a).times(Rational.of(b))), x.times(y));
    if (b != 0) {
      assertEquals(around(Rational.of(a).dividedBy(Rational.of(b))), x.dividedBy(y));
    }
  }

  @Property(tries = 2000)
  void nearbyDoublesSumTightly(
      @ForAll double a, @ForAll @DoubleRange(min = -4, max = 4) double factor) {
    double b = a * factor;
    Assume.that(Double.isFinite(b));
    assertEquals(
        around(Rational.of(a).plus(Rational.of(b))), Interval.point(a).plus(Interval.point(b)));
  }

  @Property(tries = 1000)
  void onIntervalsTheResultIsTheTightestEnclosureOfTheExactOne(
      @ForAll Interval a, @ForAll Interval b) {
    ExactInterval x = ExactInterval.of(a);
    ExactInterval y = ExactInterval.of(b);
    assertEquals(x.plus(y).outward(), a.plus(b));
    assertEquals(x.minus(y).outward(), a.minus(b));
    assertEquals(x.times(y).outward(), a.times(b));
    assertEquals(x.dividedBy(y).outward(), a.dividedBy(b));
    assertEquals(x.min(y).outward(), a.min(b));
    assertEquals(x.max(y).outward(), a.max(b));
    assertEquals(x.hull(y).outward(), a.hull(b));
    assertEquals(x.overlaps(y), a.intersects(b));
    assertEquals(x.atMost(y), a.atMost(b));
    assertEquals(x.lessThan(y), a.lessThan(b));
  }

  @Property(tries = 2000)
  void theRootIsTheTightestEnclosure(@ForAll double any) {
    double square = Math.abs(any);
    Interval root = Interval.point(square).sqrt();
    Rational exact = Rational.of(square);
    assertTrue(Rational.of(root.lo()).power(2).compareTo(exact) <= 0);
    assertTrue(Rational.of(Math.nextUp(root.lo())).power(2).compareTo(exact) > 0);
    assertTrue(Rational.of(root.hi()).power(2).compareTo(exact) >= 0);
    assertTrue(square == 0 || Rational.of(Math.nextDown(root.hi())).power(2).compareTo(exact) < 0);
  }

  @Property
  void theLogarithmEnclosesASeriesOfManyDigits(@ForAll double any) {
    double x = Math.abs(any);
    Assume.that(x > 0);
    Interval ln = Interval.point(x).ln();
    Rational exact = Rational.of(seriesOfLn(x));
    Rational error = Rational.of(new BigDecimal("1E-30"));
    assertTrue(Rational.of(ln.lo()).compareTo(exact.plus(error)) <= 0, () -> ln + " " + exact);
    assertTrue(Rational.of(ln.hi()).compareTo(exact.minus(error)) >= 0, () -> ln + " " + exact);
    assertTrue(ln.hi() - ln.lo() <= 4 * Math.ulp(ln.hi()) + 4 * Double.MIN_VALUE);
  }

  @Property
  void powersOfTwoEncloseTheExactRoots(
      @ForAll @IntRange(min = -4000, max = 4000) int dividend,
      @ForAll @IntRange(min = 0, max = 4) int shift) {
    int divisor = 1 << shift;
    Interval power = Interval.point((double) dividend / divisor).exp2();
    Rational exact = Rational.of(2).power(dividend);
    assertTrue(Rational.of(power.lo()).power(divisor).compareTo(exact) <= 0);
    assertTrue(
        power.hi() == Double.POSITIVE_INFINITY
            || Rational.of(power.hi()).power(divisor).compareTo(exact) >= 0);
    assertTrue(
        power.hi() >= Double.MAX_VALUE || power.hi() - power.lo() <= 4 * Math.ulp(power.hi()));
  }

  @Property(tries = 1000)
  void narrowerOperandsNeverGiveAWiderResult(@ForAll Nested a, @ForAll Nested b) {
    for (BinaryOperator<Interval> operation : BINARY) {
      assertInside(operation.apply(a.inner(), b.inner()), operation.apply(a.outer(), b.outer()));
    }
    for (UnaryOperator<Interval> operation : UNARY) {
      assertInside(operation.apply(a.inner()), operation.apply(a.outer()));
    }
  }

  @Property
  void powersOfNeighbouringExponentsKeepTheOrder(
      @ForAll @IntRange(min = -1080, max = 1030) int whole,
      @ForAll @IntRange(min = -4, max = 4) int steps) {
    double near = whole + steps * Math.ulp((double) whole);
    Interval wide = new Interval(Math.min(whole, near), Math.max(whole, near));
    assertInside(Interval.point(whole).exp2(), wide.exp2());
    assertInside(Interval.point(near).exp2(), wide.exp2());
  }

  @Property(tries = 1000)
  void narrowingNeverOverturnsADecision(@ForAll Nested a, @ForAll Nested b) {
    assertKept(a.outer().atMost(b.outer()), a.inner().atMost(b.inner()));
    assertKept(a.outer().lessThan(b.outer()), a.inner().lessThan(b.inner()));
    assertKept(a.outer().atLeast(b.outer()), a.inner().atLeast(b.inner()));
    assertKept(a.outer().moreThan(b.outer()), a.inner().moreThan(b.inner()));
  }

  @Property
  void pointsAreAlwaysDecided(@ForAll double a, @ForAll double b) {
    Interval x = Interval.point(a);
    Interval y = Interval.point(b);
    assertEquals(Truth.of(a <= b), x.atMost(y));
    assertEquals(Truth.of(a < b), x.lessThan(y));
    assertEquals(Truth.of(a >= b), x.atLeast(y));
    assertEquals(Truth.of(a > b), x.moreThan(y));
  }

  private static Interval around(Rational exact) {
    return new Interval(exact.down(), exact.up());
  }

  private static void assertInside(Interval inner, Interval outer) {
    assertTrue(
        outer.lo() <= inner.lo() && inner.hi() <= outer.hi(),
        () -> inner + " is not inside " + outer);
  }

  private static void assertKept(Truth wide, Truth narrow) {
    assertTrue(wide == Truth.UNDECIDED || wide == narrow, () -> wide + " became " + narrow);
  }

  /**
   * {@code e ln 2 + 2 artanh((m − 1)/(m + 1))} for {@code x = m 2^e}, {@code 1 ≤ m < 2}, by the
   * Taylor series of artanh.
   */
  private static BigDecimal seriesOfLn(double x) {
    int exponent = Math.getExponent(Math.max(x, Double.MIN_NORMAL));
    BigDecimal two = BigDecimal.valueOf(2);
    BigDecimal mantissa =
        exponent >= 0
            ? new BigDecimal(x).divide(two.pow(exponent), PRECISE)
            : new BigDecimal(x).multiply(two.pow(-exponent));
    while (mantissa.compareTo(BigDecimal.ONE) < 0) {
      mantissa = mantissa.multiply(two);
      exponent--;
    }
    return lnNearOne(mantissa).add(BigDecimal.valueOf(exponent).multiply(lnNearOne(two)));
  }

  private static BigDecimal lnNearOne(BigDecimal mantissa) {
    BigDecimal y = mantissa.subtract(BigDecimal.ONE).divide(mantissa.add(BigDecimal.ONE), PRECISE);
    BigDecimal square = y.multiply(y, PRECISE);
    BigDecimal power = y;
    BigDecimal sum = BigDecimal.ZERO;
    for (int n = 1; n < 90; n += 2) {
      sum = sum.add(power.divide(BigDecimal.valueOf(n), PRECISE));
      power = power.multiply(square, PRECISE);
    }
    return sum.multiply(BigDecimal.valueOf(2));
  }
}
