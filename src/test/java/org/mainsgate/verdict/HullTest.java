package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mainsgate.formula.Range;
import org.mainsgate.formula.Varying;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/** Two facts about one thing together: everything that either allows. */
class HullTest {
  private static final Fact.Named TWO = named(true, "two");
  private static final Fact.Named THREE = named(true, "three");

  private static Fact.Named named(boolean recorded, String... values) {
    return new Fact.Named(Set.of(values), recorded, false, List.of(), Map.of());
  }

  private static ExactInterval from(int lo, int hi) {
    return new ExactInterval(Rational.of(lo), Rational.of(hi));
  }

  private static Fact.Amount amount(int lo, int hi, Map<String, Fact> with) {
    return new Fact.Amount(Range.of(from(lo, hi)), true, false, false, List.of(), with);
  }

  private static Fact.Pointer pointer(boolean complete, String thing) {
    return new Fact.Pointer(Set.of(thing), complete, true, false, List.of(), Map.of());
  }

  private static Fact.Varying varying(int lowest, int nominal, int highest) {
    return new Fact.Varying(
        new Varying(from(lowest, lowest), from(nominal, nominal), from(highest, highest)),
        true,
        false,
        List.of(),
        Map.of());
  }

  @Test
  void numbersReachFromTheLowestToTheHighest() {
    Fact.Amount both = (Fact.Amount) Hull.of(amount(1, 2, Map.of()), amount(5, 6, Map.of()));
    assertEquals(from(1, 6), both.range().exact());
    assertTrue(both.recorded());
    assertFalse(both.disagrees() || both.impossible());
  }

  @Test
  void namesAreAllOfThem() {
    Fact.Named both = (Fact.Named) Hull.of(TWO, THREE);
    assertEquals(Set.of("two", "three"), both.candidates());
    assertFalse(both.disagrees(), "they may be of different things");
  }

  @Test
  void pointersAreCompleteWhereBothAre() {
    Fact.Pointer both = (Fact.Pointer) Hull.of(pointer(true, "a"), pointer(true, "b"));
    assertEquals(Set.of("a", "b"), both.things());
    assertTrue(both.complete());
    assertFalse(((Fact.Pointer) Hull.of(pointer(true, "a"), pointer(false, "b"))).complete());
    assertFalse(((Fact.Pointer) Hull.of(pointer(false, "a"), pointer(true, "b"))).complete());
  }

  @Test
  void whatVariesVariesOverBoth() {
    Fact.Varying both = (Fact.Varying) Hull.of(varying(1, 2, 3), varying(2, 5, 9));
    assertEquals(new Varying(from(1, 2), from(2, 5), from(3, 9)), both.range());
  }

  @Test
  void itIsRecordedWhereBothAreAndDisagreesWhereEitherDoes() {
    assertFalse(Hull.of(TWO, named(false, "three")).recorded());
    assertFalse(Hull.of(named(false, "three"), TWO).recorded());
    assertTrue(Hull.of(Hull.disagreeing(TWO), THREE).disagrees());
    assertTrue(Hull.of(TWO, Hull.disagreeing(THREE)).disagrees());
  }

  @Test
  void ofWhatStandsWithThemOnlyWhatStandsWithBothIsKnown() {
    Fact both = Hull.of(amount(1, 2, Map.of("a", TWO, "b", TWO)), amount(1, 2, Map.of("a", THREE)));
    assertEquals(Set.of("a"), both.with().keySet());
    assertEquals(
        Set.of("two", "three"), ((Fact.Named) both.with().getOrDefault("a", TWO)).candidates());
  }

  @Test
  void anyFactCanBeUncertainOrContested() {
    Map<String, Fact> with = Map.of("a", TWO);
    List<Fact> facts = List.of(amount(1, 2, with), TWO, pointer(true, "a"), varying(1, 2, 3));
    for (Fact fact : facts) {
      assertTrue(fact.recorded() && !fact.disagrees());
      Fact uncertain = Hull.unrecorded(fact);
      assertFalse(uncertain.recorded() || uncertain.disagrees());
      assertEquals(fact.getClass(), uncertain.getClass());
      Fact contested = Hull.disagreeing(fact);
      assertTrue(contested.recorded() && contested.disagrees());
      assertEquals(fact.getClass(), contested.getClass());
      assertEquals(fact.with(), contested.with());
    }
  }

  @Test
  void theWorseOfTwoVerdictsCounts() {
    assertEquals(Verdict.FAIL, Verdict.HOLD.worse(Verdict.FAIL));
    assertEquals(Verdict.FAIL, Verdict.FAIL.worse(Verdict.HOLD));
    assertEquals(Verdict.HOLD, Verdict.HOLD.worse(Verdict.PASS));
    assertEquals(Verdict.PASS, Verdict.PASS.worse(Verdict.PASS));
    assertEquals("not-applicable", Outcome.NOT_APPLICABLE.word());
  }
}
