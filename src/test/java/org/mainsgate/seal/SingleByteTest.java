package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Not one byte of a sealed record is another without being noticed. All positions with {@code
 * -Deverything}, else a sample by seed and all that stands between the objects.
 */
class SingleByteTest {
  private static final int SAMPLE = 250;

  @Test
  void everyChangeOfOneByteIsNoticed() throws Exception {
    byte[] file = Made.of("NL-01").sealed();
    List<Integer> unnoticed = new ArrayList<>();
    positions(file).parallel().forEach(at -> look(file, at, unnoticed));
    assertEquals(List.of(), unnoticed);
  }

  private static IntStream positions(byte[] file) {
    if (System.getProperty("everything") != null) {
      return IntStream.range(0, file.length);
    }
    TreeSet<Integer> some = new TreeSet<>();
    Random random = new Random(1958);
    IntStream.range(0, SAMPLE).forEach(n -> some.add(random.nextInt(file.length)));
    IntStream.range(0, 24).forEach(some::add);
    IntStream.range(file.length - 60, file.length).forEach(some::add);
    return some.stream().mapToInt(Integer::intValue);
  }

  private static void look(byte[] file, int at, List<Integer> unnoticed) {
    byte[] changed = file.clone();
    changed[at] ^= (byte) (1 << (at % 8));
    if (Made.brokenIn(changed).isEmpty()) {
      synchronized (unnoticed) {
        unnoticed.add(at);
      }
    }
  }
}
