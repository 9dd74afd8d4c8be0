package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.function.BinaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.mainsgate.quantity.Numbers.ExactNested;

@Domain(Numbers.class)
@Domain(DomainContext.Global.class)
class ExactIntervalPropertiesTest {

  private static final Map<BinaryOperator<ExactInterval>, BinaryOperator<Rational>> BINARY =
      Map.of(
          ExactInterval::plus,
          Rational::plus,
          ExactInterval::minus,
          Rational::minus,
          ExactInterval::times,
          Rational::times,
          ExactInterval::min,
          Rational::min,
          ExactInterval::max,
          Rational::max);

  @Property(tries = 1000)
  void theResultOnPointsIsInsideTheResultOnIntervals(@ForAll ExactNested a, @ForAll ExactNested b) {
    BINARY.forEach(
        (operation, exact) -> {
          Rational point = exact.apply(a.inside(), b.inside());
          assertTrue(operation.apply(a.inner(), b.inner()).contains(point));
          assertTrue(operation.apply(a.outer(), b.outer()).contains(point));
        });
    if (b.inside().signum() != 0) {
      assertTrue(a.outer().dividedBy(b.outer()).contains(a.inside().dividedBy(b.inside())));
    }
  }

  @Property(tries = 1000)
  void narrowerOperandsNeverGiveAWiderResult(@ForAll ExactNested a, @ForAll ExactNested b) {
    for (BinaryOperator<ExactInterval> operation : BINARY.keySet()) {
      assertInside(operation.apply(a.inner(), b.inner()), operation.apply(a.outer(), b.outer()));
    }
    assertInside(a.inner().dividedBy(b.inner()), a.outer().dividedBy(b.outer()));
    assertInside(a.inner().hull(b.inner()), a.outer().hull(b.outer()));
    assertInside(a.inner().sqrt(), a.outer().sqrt());
    assertInside(a.inner().ln(), a.outer().ln());
    assertInside(a.inner().exp2(), a.outer().exp2());
  }

  @Property
  void boundedProductsHaveTheTightestEnds(
      @ForAll Rational a, @ForAll Rational b, @ForAll Rational c, @ForAll Rational d) {
    ExactInterval product = hull(a, b).times(hull(c, d));
    ExactInterval ends = hull(a.times(c), a.times(d)).hull(hull(b.times(c), b.times(d)));
    assertEquals(ends, product);
  }

  @Property
  void theIntersectionIsWhatBothContain(
      @ForAll ExactNested a, @ForAll ExactNested b, @ForAll Rational value) {
    boolean both = a.outer().contains(value) && b.outer().contains(value);
    assertEquals(
        both, a.outer().intersect(b.outer()).map(common -> common.contains(value)).orElse(false));
  }

  @Property
  void aDecisionHoldsForEveryPairOfPoints(@ForAll ExactNested a, @ForAll ExactNested b) {
    int order = a.inside().compareTo(b.inside());
    assertAgrees(a.outer().atMost(b.outer()), order <= 0);
    assertAgrees(a.outer().lessThan(b.outer()), order < 0);
    assertAgrees(a.outer().atLeast(b.outer()), order >= 0);
    assertAgrees(a.outer().moreThan(b.outer()), order > 0);
  }

  @Property
  void theDoublesAroundContainIt(@ForAll ExactNested a) {
    assertInside(a.outer(), ExactInterval.of(a.outer().outward()));
  }

  private static ExactInterval hull(Rational a, Rational b) {
    return ExactInterval.of(a.min(b), a.max(b));
  }

  private static void assertInside(ExactInterval inner, ExactInterval outer) {
    assertTrue(outer.contains(inner), () -> inner + " is not inside " + outer);
  }

  private static void assertAgrees(Truth truth, boolean onPoints) {
    assertTrue(truth == Truth.UNDECIDED || truth == Truth.of(onPoints));
  }
}
