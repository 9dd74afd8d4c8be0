package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mainsgate.laws.Broken;
import org.mainsgate.laws.Judge;
import org.mainsgate.laws.Law;

/** The laws find out engines that are wrong in one way each, and let the engine stand. */
class SuiteIsWorthSomethingTest {
  private static final int TRIES = 400;

  private static boolean isRefuted(Law law, Judge judge) {
    for (long seed = 0; seed < TRIES; seed++) {
      try {
        law.tryOn(judge, seed);
      } catch (AssertionError broken) {
        return true;
      }
    }
    return false;
  }

  @ParameterizedTest
  @EnumSource
  void aBrokenEngineIsFoundOut(Broken engine) {
    Set<Law> silent = new TreeSet<>(engine.refutedBy());
    silent.removeIf(law -> isRefuted(law, engine));
    assertEquals(Set.of(), silent, "laws that say nothing against " + engine);
  }

  @Test
  void everyLawFindsOutSomeBrokenEngine() {
    EnumSet<Law> idle = EnumSet.allOf(Law.class);
    for (Broken engine : Broken.values()) {
      idle.removeAll(engine.refutedBy());
    }
    assertEquals(EnumSet.noneOf(Law.class), idle);
  }

  @ParameterizedTest
  @EnumSource
  void theEngineKeepsTheLaw(Law law) {
    assertTrue(!isRefuted(law, Judge.ENGINE));
  }
}
