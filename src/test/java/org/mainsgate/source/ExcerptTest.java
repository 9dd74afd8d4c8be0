package org.mainsgate.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ExcerptTest {

  @Test
  void aShortLineIsShownWhole() {
    assertEquals("    a: x\n       ^\n", new Excerpt("a: x", 4, 20).render());
  }

  @Test
  void theCaretMayStandAfterTheEnd() {
    assertEquals("    a:\n      ^\n", new Excerpt("a:", 3, 20).render());
    assertEquals("    a:\n      ^\n", new Excerpt("a:", 30, 20).render());
  }

  @Test
  void aTabIsSpelledOutAndTheCaretStaysRight() {
    assertEquals("    a:\\tx\n        ^\n", new Excerpt("a:\tx", 4, 20).render());
  }

  @Test
  void wideCharactersTakeTwoCellsAndCombiningOnesNone() {
    assertEquals("    漢e\u0301x\n       ^\n", new Excerpt("漢e\u0301x", 4, 20).render());
  }

  @Test
  void aLongLineIsCutOnBothSidesOfTheCaret() {
    String line = "0123456789".repeat(5);
    assertEquals("    …3456789012…\n            ^\n", new Excerpt(line, 31, 12).render());
  }

  @Property
  void noExcerptIsWiderThanItsWidthAndTheCaretStandsBelowTheCharacter(
      @ForAll @IntRange(max = 200) int before, @ForAll @IntRange(max = 200) int after) {
    String line = "a".repeat(before) + "X" + "b".repeat(after);
    String[] lines = new Excerpt(line, before + 1, 30).render().split("\n", -1);
    assertEquals('X', lines[0].charAt(lines[1].indexOf('^')));
    int shown = lines[0].length() - Excerpt.INDENT;
    assertTrue(line.length() <= 30 ? shown == line.length() : 20 <= shown && shown <= 30, lines[0]);
  }
}
