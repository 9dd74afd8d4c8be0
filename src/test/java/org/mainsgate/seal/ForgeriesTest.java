package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Whatever is made of a sealed file, it is not taken for one: a few files of each family, and
 * thousands with {@code -Deverything}.
 */
class ForgeriesTest {

  @Test
  void noForgeryIsAccepted() throws Exception {
    byte[] sealed = Made.of("NL-01").sealed();
    byte[] accepted =
        Seal.accept(
                SealedFile.read(sealed, new ArrayList<>()).orElseThrow(),
                Made.signing(true),
                Made.NOW)
            .orElseThrow();
    assertEquals(List.of(), Made.brokenIn(accepted), "the file that is forged is good");
    int each = System.getProperty("everything") == null ? 12 : 500;
    Map<String, Integer> taken = new LinkedHashMap<>();
    Map<String, Integer> tried = new LinkedHashMap<>();
    for (int seed = 0; seed < each; seed++) {
      Forger forger = new Forger(sealed, accepted, seed);
      for (Map.Entry<String, Forger.Forgery> family : forger.families().entrySet()) {
        byte[] forged = family.getValue().of();
        tried.merge(family.getKey(), 1, Integer::sum);
        if (Made.brokenIn(forged).isEmpty() && !isPrefix(forged, accepted)) {
          taken.merge(family.getKey(), 1, Integer::sum);
        }
      }
    }
    assertEquals(Map.of(), taken);
    assertEquals(21, tried.size());
  }

  /** Without its last acceptance a file is what it was before it. */
  private static boolean isPrefix(byte[] forged, byte[] accepted) throws IOException {
    return forged.length < accepted.length
        && java.util.Arrays.equals(forged, 0, forged.length, accepted, 0, forged.length);
  }
}
