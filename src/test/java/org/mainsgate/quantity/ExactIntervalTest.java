package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ExactIntervalTest {

  private static final ExactInterval ONE_TO_TWO = between("1", "2");
  private static final ExactInterval FROM_ONE = ExactInterval.atLeast(Rational.ONE);
  private static final ExactInterval UP_TO_ONE = ExactInterval.atMost(Rational.ONE);
  private static final ExactInterval ZERO = ExactInterval.point(Rational.ZERO);

  @Test
  void theEndsAreInOrder() {
    assertThrows(IllegalArgumentException.class, () -> between("2", "1"));
  }

  @Test
  void aSumThatSitsOnItsLimitIsAtMostTheLimit() {
    ExactInterval sum = point("0.1").plus(point("0.2"));
    assertEquals(Truth.MET, sum.atMost(point("0.3")));
    assertEquals(Truth.NOT_MET, sum.moreThan(point("0.3")));
  }

  @Test
  void aMissingEndStaysMissing() {
    assertEquals(ExactInterval.atLeast(Rational.of(2)), FROM_ONE.plus(ONE_TO_TWO));
    assertEquals(ExactInterval.atMost(Rational.ONE), ONE_TO_TWO.minus(FROM_ONE));
    assertEquals(ExactInterval.UNBOUNDED, FROM_ONE.minus(FROM_ONE));
    assertEquals(ExactInterval.atMost(Rational.of(-1)), FROM_ONE.negate());
    assertEquals(ExactInterval.atLeast(Rational.of(-1)), UP_TO_ONE.negate());
  }

  @Test
  void productsAndQuotientsWithoutBoundKeepTheirSign() {
    assertEquals(ZERO, ExactInterval.UNBOUNDED.times(ZERO));
    assertEquals(FROM_ONE, FROM_ONE.times(FROM_ONE));
    assertEquals(ExactInterval.atMost(Rational.of(-1)), FROM_ONE.times(FROM_ONE.negate()));
    assertEquals(ExactInterval.UNBOUNDED, UP_TO_ONE.times(FROM_ONE));
    assertEquals(between("0", "2"), ONE_TO_TWO.dividedBy(FROM_ONE));
    assertEquals(between("-2", "0"), ONE_TO_TWO.dividedBy(FROM_ONE.negate()));
    assertEquals(ExactInterval.atLeast(Rational.ZERO), FROM_ONE.dividedBy(FROM_ONE));
    assertEquals(between("0.5", "2"), ONE_TO_TWO.dividedBy(ONE_TO_TWO));
    assertEquals(ExactInterval.UNBOUNDED, ONE_TO_TWO.dividedBy(UP_TO_ONE));
  }

  @Test
  void theLesserAndTheGreaterKnowTheBoundThatHolds() {
    assertEquals(ExactInterval.of(Rational.ONE, Rational.of(2)), ONE_TO_TWO.min(FROM_ONE));
    assertEquals(FROM_ONE, ONE_TO_TWO.max(FROM_ONE));
    assertEquals(UP_TO_ONE, ONE_TO_TWO.min(UP_TO_ONE));
    assertEquals(ONE_TO_TWO, ONE_TO_TWO.max(UP_TO_ONE));
  }

  @Test
  void hullAndIntersectionAreExact() {
    assertEquals(between("1", "5"), ONE_TO_TWO.hull(between("4", "5")));
    assertEquals(ExactInterval.UNBOUNDED, UP_TO_ONE.hull(FROM_ONE));
    assertEquals(Optional.of(point("1")), UP_TO_ONE.intersect(FROM_ONE));
    assertEquals(Optional.of(point("2")), ONE_TO_TWO.intersect(between("2", "3")));
    assertEquals(Optional.empty(), ONE_TO_TWO.intersect(between("3", "4")));
    assertEquals(Optional.empty(), between("3", "4").intersect(ONE_TO_TWO));
    assertEquals(Optional.of(ONE_TO_TWO), ExactInterval.UNBOUNDED.intersect(ONE_TO_TWO));
  }

  @Test
  void containmentIncludesTheEnds() {
    assertTrue(ONE_TO_TWO.contains(Rational.ONE));
    assertTrue(ONE_TO_TWO.contains(Rational.of(2)));
    assertFalse(ONE_TO_TWO.contains(Rational.of("0.9")));
    assertFalse(ONE_TO_TWO.contains(Rational.of("2.1")));
    assertTrue(FROM_ONE.contains(ONE_TO_TWO));
    assertTrue(ONE_TO_TWO.contains(ONE_TO_TWO));
    assertFalse(ONE_TO_TWO.contains(FROM_ONE));
    assertFalse(ONE_TO_TWO.contains(between("0", "2")));
  }

  @Test
  void theShapeIsAsItsEnds() {
    assertTrue(point("1").isPoint());
    assertFalse(ONE_TO_TWO.isPoint());
    assertFalse(ExactInterval.UNBOUNDED.isPoint());
    assertTrue(ONE_TO_TWO.isBounded());
    assertFalse(FROM_ONE.isBounded());
    assertFalse(UP_TO_ONE.isBounded());
    assertTrue(ExactInterval.UNBOUNDED.isUnbounded());
    assertFalse(FROM_ONE.isUnbounded());
    assertFalse(UP_TO_ONE.isUnbounded());
    assertEquals("[0.5, …]", ExactInterval.atLeast(Rational.of("0.5")).toString());
    assertEquals("[…, 1/3]", ExactInterval.atMost(Rational.of(1, 3)).toString());
  }

  @Test
  void doublesAreThereAndBackOutward() {
    ExactInterval tenth = point("0.1");
    assertTrue(ExactInterval.of(tenth.outward()).contains(tenth));
    assertEquals(0.1, tenth.outward().hi());
    assertEquals(Math.nextDown(0.1), tenth.outward().lo());
    assertEquals(Interval.UNBOUNDED, ExactInterval.UNBOUNDED.outward());
    assertEquals(ExactInterval.UNBOUNDED, ExactInterval.of(Interval.UNBOUNDED));
  }

  @Test
  void functionsThroughDoublesEnclose() {
    assertEquals(point("1.5"), point("2.25").sqrt());
    assertEquals(between("1", "2"), between("1", "4").sqrt());
    assertEquals(ExactInterval.UNBOUNDED, between("-1", "4").sqrt());
    assertEquals(ExactInterval.UNBOUNDED, UP_TO_ONE.sqrt());
    assertEquals(point("8"), point("3").exp2());
    assertEquals(ExactInterval.UNBOUNDED, UP_TO_ONE.ln());
    assertTrue(point("1").ln().contains(Rational.ZERO));
  }

  @Test
  void piIsEnclosedByNeighbouringDoubles() {
    // The first fifty decimals, from memory; OEIS A000796.
    Rational pi =
        Rational.of(new BigDecimal("3.14159265358979323846264338327950288419716939937510"));
    assertTrue(ExactInterval.PI.contains(pi));
    assertEquals(Math.nextUp(Interval.PI.lo()), Interval.PI.hi());
  }

  private static ExactInterval between(String lo, String hi) {
    return ExactInterval.of(Rational.of(lo), Rational.of(hi));
  }

  private static ExactInterval point(String value) {
    return ExactInterval.point(Rational.of(value));
  }
}
