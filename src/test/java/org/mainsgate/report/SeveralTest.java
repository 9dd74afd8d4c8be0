package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Of several instruments the screen says what is open, and counts what has passed. */
class SeveralTest {
  private final Screen screen = new Screen(Palette.NONE);

  @Test
  void whatHasPassedIsANumberWhereThereAreSeveral() {
    String text = screen.oneOfSeveral(Samples.near());
    assertTrue(text.contains("passes: "), text);
    assertFalse(text.contains("| | Protection class"), text);
    assertTrue(text.contains("|-| Protective earth continuity"), text);
    assertTrue(text.contains("too near the limit"), text);
  }
}
