package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.mainsgate.quantity.Truth.MET;
import static org.mainsgate.quantity.Truth.NOT_MET;
import static org.mainsgate.quantity.Truth.UNDECIDED;

import org.junit.jupiter.api.Test;

class IntervalTest {

  private static final double MAX = Double.MAX_VALUE;
  private static final double INFINITY = Double.POSITIVE_INFINITY;

  @Test
  void whatHoldsNoNumberIsNoInterval() {
    assertThrows(IllegalArgumentException.class, () -> new Interval(2, 1));
    assertThrows(IllegalArgumentException.class, () -> new Interval(Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> new Interval(1, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new Interval(INFINITY, INFINITY));
    assertThrows(IllegalArgumentException.class, () -> new Interval(-INFINITY, -INFINITY));
  }

  @Test
  void negativeZeroIsZero() {
    assertEquals(Interval.point(0.0), Interval.point(-0.0));
    assertEquals(Interval.point(0.0), Interval.point(0.0).negate());
  }

  @Test
  void exactResultsAreNotWidened() {
    assertEquals(Interval.point(0.75), Interval.point(0.5).plus(Interval.point(0.25)));
    assertEquals(Interval.point(0.25), Interval.point(0.75).minus(Interval.point(0.5)));
    assertEquals(Interval.point(0.375), Interval.point(0.75).times(Interval.point(0.5)));
    assertEquals(Interval.point(1.5), Interval.point(0.75).dividedBy(Interval.point(0.5)));
    assertEquals(Interval.point(1.5), Interval.point(2.25).sqrt());
    assertEquals(Interval.point(8), Interval.point(3).exp2());
    assertEquals(Interval.point(0.125), Interval.point(-3).exp2());
  }

  @Test
  void inexactResultsAreOneStepWide() {
    Interval sum = Interval.point(0.1).plus(Interval.point(0.2));
    assertEquals(new Interval(Math.nextDown(0.1 + 0.2), 0.1 + 0.2), sum);
    Interval third = Interval.point(1).dividedBy(Interval.point(3));
    assertEquals(new Interval(1.0 / 3, Math.nextUp(1.0 / 3)), third);
    Interval negativeDivisor = Interval.point(1).dividedBy(Interval.point(-3));
    assertEquals(third.negate(), negativeDivisor);
    Interval root = Interval.point(2).sqrt();
    assertEquals(new Interval(Math.nextDown(Math.sqrt(2)), Math.sqrt(2)), root);
  }

  @Test
  void overflowStaysABound() {
    Interval max = Interval.point(MAX);
    assertEquals(new Interval(MAX, INFINITY), max.plus(max));
    assertEquals(new Interval(-INFINITY, -MAX), max.negate().minus(max));
    assertEquals(new Interval(MAX, INFINITY), max.times(max));
    assertEquals(new Interval(-INFINITY, -MAX), max.times(max.negate()));
    assertEquals(new Interval(MAX, INFINITY), max.dividedBy(Interval.point(0.5)));
    assertEquals(new Interval(MAX, INFINITY), Interval.point(1024).exp2());
    assertEquals(Interval.point(0), max.minus(max));
  }

  @Test
  void underflowStaysABound() {
    Interval tiny = Interval.point(Double.MIN_VALUE);
    assertEquals(new Interval(0, Double.MIN_VALUE), tiny.times(tiny));
    assertEquals(new Interval(-Double.MIN_VALUE, 0), tiny.times(tiny.negate()));
    assertEquals(new Interval(0, Double.MIN_VALUE), tiny.dividedBy(Interval.point(3)));
    assertEquals(Interval.point(0x1p-537), tiny.sqrt());
    assertEquals(new Interval(0, Double.MIN_VALUE), Interval.point(-1074.5).exp2());
    assertEquals(new Interval(0, Double.MIN_VALUE), Interval.point(-1e9).exp2());
  }

  @Test
  void zeroTimesNoBoundIsZero() {
    assertEquals(Interval.point(0), Interval.UNBOUNDED.times(Interval.point(0)));
    assertEquals(Interval.point(0), Interval.point(0).dividedBy(new Interval(1, INFINITY)));
    assertEquals(new Interval(0, INFINITY), new Interval(0, 1).times(new Interval(0, INFINITY)));
  }

  @Test
  void quotientsWithoutBoundKeepTheirSign() {
    Interval fromOne = new Interval(1, INFINITY);
    assertEquals(new Interval(0, INFINITY), fromOne.dividedBy(fromOne));
    assertEquals(new Interval(-INFINITY, 0), fromOne.dividedBy(fromOne.negate()));
    assertEquals(new Interval(-1, INFINITY), new Interval(-1, INFINITY).dividedBy(fromOne));
    assertEquals(new Interval(0, 2), new Interval(1, 2).dividedBy(fromOne));
  }

  @Test
  void productsCoverAllSigns() {
    Interval around = new Interval(-2, 3);
    assertEquals(new Interval(-6, 9), around.times(around));
    assertEquals(new Interval(-15, 10), around.times(new Interval(-5, -4)));
    assertEquals(new Interval(-10, 15), around.times(new Interval(4, 5)));
    assertEquals(new Interval(-0.5, 0.75), around.dividedBy(new Interval(4, 5)));
  }

  @Test
  void outsideTheDomainNothingIsKnown() {
    assertEquals(Interval.UNBOUNDED, Interval.point(1).dividedBy(new Interval(0, 1)));
    assertEquals(Interval.UNBOUNDED, Interval.point(0).dividedBy(Interval.point(0)));
    assertEquals(Interval.UNBOUNDED, new Interval(-Double.MIN_VALUE, 4).sqrt());
    assertEquals(new Interval(0, 2), new Interval(0, 4).sqrt());
    assertEquals(Interval.UNBOUNDED, new Interval(0, 1).ln());
    assertEquals(INFINITY, new Interval(1, INFINITY).ln().hi());
    assertEquals(new Interval(1, INFINITY), new Interval(1, INFINITY).sqrt());
    assertEquals(new Interval(0, 2), new Interval(-INFINITY, 1).exp2());
    assertEquals(new Interval(2, INFINITY), new Interval(1, INFINITY).exp2());
  }

  @Test
  void setOperationsAreExact() {
    Interval low = new Interval(0, 2);
    Interval high = new Interval(1, 3);
    assertEquals(new Interval(0, 2), low.min(high));
    assertEquals(new Interval(1, 3), low.max(high));
    assertEquals(new Interval(0, 3), low.hull(high));
    assertEquals(new Interval(0, 3), high.hull(low));
    assertTrue(low.intersects(high));
    assertTrue(low.intersects(new Interval(2, 9)));
    assertTrue(new Interval(2, 9).intersects(low));
    assertFalse(low.intersects(new Interval(2.5, 3)));
    assertFalse(new Interval(2.5, 3).intersects(low));
    assertTrue(low.contains(0) && low.contains(2));
    assertFalse(low.contains(-0.1) || low.contains(2.1));
    assertTrue(Interval.point(1).isPoint());
    assertFalse(low.isPoint());
    assertTrue(low.isBounded());
    assertFalse(new Interval(0, INFINITY).isBounded());
    assertFalse(new Interval(-INFINITY, 0).isBounded());
  }

  @Test
  void comparisonsAreDecidedOnlyForAllPairs() {
    Interval limit = new Interval(2, 3);
    assertTruths(new Interval(0, 1.9), limit, MET, MET, NOT_MET, NOT_MET);
    assertTruths(new Interval(0, 2), limit, MET, UNDECIDED, UNDECIDED, NOT_MET);
    assertTruths(new Interval(0, 2.1), limit, UNDECIDED, UNDECIDED, UNDECIDED, UNDECIDED);
    assertTruths(new Interval(2.1, 2.2), limit, UNDECIDED, UNDECIDED, UNDECIDED, UNDECIDED);
    assertTruths(new Interval(2.9, 5), limit, UNDECIDED, UNDECIDED, UNDECIDED, UNDECIDED);
    assertTruths(new Interval(3, 5), limit, UNDECIDED, NOT_MET, MET, UNDECIDED);
    assertTruths(new Interval(3.1, 5), limit, NOT_MET, NOT_MET, MET, MET);
    assertTruths(Interval.UNBOUNDED, limit, UNDECIDED, UNDECIDED, UNDECIDED, UNDECIDED);
    assertTruths(new Interval(3.1, INFINITY), limit, NOT_MET, NOT_MET, MET, MET);
    assertTruths(Interval.point(2), Interval.point(2), MET, NOT_MET, MET, NOT_MET);
  }

  private static void assertTruths(
      Interval left, Interval right, Truth atMost, Truth lessThan, Truth atLeast, Truth moreThan) {
    assertEquals(atMost, left.atMost(right), left + " ≤ " + right);
    assertEquals(lessThan, left.lessThan(right), left + " < " + right);
    assertEquals(atLeast, left.atLeast(right), left + " ≥ " + right);
    assertEquals(moreThan, left.moreThan(right), left + " > " + right);
    ExactInterval exactLeft = ExactInterval.of(left);
    ExactInterval exactRight = ExactInterval.of(right);
    assertEquals(atMost, exactLeft.atMost(exactRight), exactLeft + " ≤ " + exactRight);
    assertEquals(lessThan, exactLeft.lessThan(exactRight), exactLeft + " < " + exactRight);
    assertEquals(atLeast, exactLeft.atLeast(exactRight), exactLeft + " ≥ " + exactRight);
    assertEquals(moreThan, exactLeft.moreThan(exactRight), exactLeft + " > " + exactRight);
  }
}
