package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.mainsgate.quantity.Truth.MET;
import static org.mainsgate.quantity.Truth.NOT_MET;
import static org.mainsgate.quantity.Truth.UNDECIDED;

import org.junit.jupiter.api.Test;

/**
 * The strong tables of S. C. Kleene, "Introduction to Metamathematics" (1952), section 64 (from
 * memory).
 */
class TruthTest {

  @Test
  void andIsTheLesser() {
    assertEquals(NOT_MET, NOT_MET.and(NOT_MET));
    assertEquals(NOT_MET, NOT_MET.and(UNDECIDED));
    assertEquals(NOT_MET, NOT_MET.and(MET));
    assertEquals(NOT_MET, UNDECIDED.and(NOT_MET));
    assertEquals(UNDECIDED, UNDECIDED.and(UNDECIDED));
    assertEquals(UNDECIDED, UNDECIDED.and(MET));
    assertEquals(NOT_MET, MET.and(NOT_MET));
    assertEquals(UNDECIDED, MET.and(UNDECIDED));
    assertEquals(MET, MET.and(MET));
  }

  @Test
  void orIsTheGreater() {
    assertEquals(NOT_MET, NOT_MET.or(NOT_MET));
    assertEquals(UNDECIDED, NOT_MET.or(UNDECIDED));
    assertEquals(MET, NOT_MET.or(MET));
    assertEquals(UNDECIDED, UNDECIDED.or(NOT_MET));
    assertEquals(UNDECIDED, UNDECIDED.or(UNDECIDED));
    assertEquals(MET, UNDECIDED.or(MET));
    assertEquals(MET, MET.or(NOT_MET));
    assertEquals(MET, MET.or(UNDECIDED));
    assertEquals(MET, MET.or(MET));
  }

  @Test
  void notExchangesTheEnds() {
    assertEquals(MET, NOT_MET.not());
    assertEquals(UNDECIDED, UNDECIDED.not());
    assertEquals(NOT_MET, MET.not());
  }

  @Test
  void impliesIsMetFromNothing() {
    assertEquals(MET, NOT_MET.implies(NOT_MET));
    assertEquals(MET, NOT_MET.implies(UNDECIDED));
    assertEquals(MET, NOT_MET.implies(MET));
    assertEquals(UNDECIDED, UNDECIDED.implies(NOT_MET));
    assertEquals(UNDECIDED, UNDECIDED.implies(UNDECIDED));
    assertEquals(MET, UNDECIDED.implies(MET));
    assertEquals(NOT_MET, MET.implies(NOT_MET));
    assertEquals(UNDECIDED, MET.implies(UNDECIDED));
    assertEquals(MET, MET.implies(MET));
  }

  @Test
  void aBooleanIsDecided() {
    assertEquals(MET, Truth.of(true));
    assertEquals(NOT_MET, Truth.of(false));
  }
}
