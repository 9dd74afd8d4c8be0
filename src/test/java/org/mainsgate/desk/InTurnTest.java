package org.mainsgate.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Work by several at once whose results arrive in order. */
class InTurnTest {
  private static List<Integer> upTo(int most) {
    return IntStream.range(0, most).boxed().toList();
  }

  @Property(tries = 100)
  void whateverIsReadyFirstTheResultsArriveInTheOrderOfTheThings(
      @ForAll @IntRange(max = 200) int most, @ForAll @IntRange(min = 1, max = 97) int seed) {
    List<Integer> arrived = new ArrayList<>();
    InTurn.each(
        upTo(most),
        thing -> {
          if (thing * 31 % 97 < seed) {
            Thread.onSpinWait();
          }
          return thing;
        },
        arrived::add);
    assertEquals(upTo(most), arrived);
  }

  @Test
  void onlyAFewResultsWaitHoweverManyThingsThereAre() {
    AtomicInteger waiting = new AtomicInteger();
    int[] most = {0};
    InTurn.each(
        upTo(10_000),
        thing -> {
          waiting.incrementAndGet();
          return thing;
        },
        thing -> most[0] = Math.max(most[0], waiting.getAndDecrement()));
    assertTrue(most[0] <= 8 * Runtime.getRuntime().availableProcessors(), () -> "" + most[0]);
  }

  @Test
  void whatGoesWrongWithOneIsThrownWhereItsResultWouldArrive() {
    List<Integer> arrived = new ArrayList<>();
    IllegalStateException thrown =
        assertThrows(
            IllegalStateException.class,
            () ->
                InTurn.each(
                    upTo(50),
                    thing -> {
                      if (thing == 20) {
                        throw new IllegalStateException("twenty");
                      }
                      return thing;
                    },
                    arrived::add));
    assertEquals("twenty", thrown.getMessage());
    assertEquals(upTo(20), arrived);
  }
}
