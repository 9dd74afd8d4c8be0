package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.mainsgate.source.Visible;

class ScreenTest {

  private final Screen screen = new Screen(Palette.NONE);

  @Test
  void aReadingTooNearIsShownWithWhatWouldPass() throws IOException {
    Golden.check("near.txt", screen.instrument(Samples.near()));
  }

  @Test
  void aFailComesFirst() throws IOException {
    Golden.check("unearthed.txt", screen.instrument(Samples.unearthed()));
  }

  @Test
  void aPassSaysWhatItDoesNotReach() throws IOException {
    Golden.check("sound.txt", screen.instrument(Samples.sound()));
  }

  @Test
  void anOpenListIsOneLine() throws IOException {
    Golden.check("blank.txt", screen.instrument(Samples.blank()));
  }

  @Test
  void whatAddsNothingToALimitIsNotPrinted() {
    // Under this profile the lead's copper is not added: its share is 0.
    String text = screen.instrument(Samples.soundUnder("eu"));
    assertTrue(text.contains("against 0.3 Ω: "), text);
    assertFalse(text.contains(" 0 Ω"), text);
  }

  @Test
  void allVerdictsStandAtTheEnd() throws IOException {
    Golden.check(
        "summary.txt",
        screen.summary(
            Samples.setting(),
            Stream.of(Samples.near(), Samples.unearthed(), Samples.sound())
                .map(Screen.Verdicted::of)
                .toList(),
            List.of("NL-99")));
  }

  @Test
  void noLineIsWiderThanTheScreen() {
    for (Dossier dossier : List.of(Samples.near(), Samples.unearthed(), Samples.blank())) {
      screen
          .instrument(dossier)
          .lines()
          .forEach(line -> assertTrue(Visible.width(line) <= 80, () -> "too wide: " + line));
    }
  }

  @Test
  void aWordThatNoLineHoldsIsBroken() {
    assertEquals("  " + "m".repeat(78) + "\n  mm\n", new Lines().add(2, "m".repeat(80)).toString());
  }

  @Test
  void aNumberIsNotPartedFromItsUnit() {
    assertEquals(
        "m".repeat(74) + "\n0.1 mm²\n", new Lines().add(0, "m".repeat(74) + " 0.1 mm²").toString());
    assertEquals(
        "m".repeat(74) + " 3\nmetres\n",
        new Lines().add(0, "m".repeat(74) + " 3 metres").toString());
  }

  @Test
  void wideCharactersCountTwice() {
    assertEquals("漢".repeat(40) + "\n漢\n", new Lines().add(0, "漢".repeat(41)).toString());
  }

  @Test
  void whatCouldMoveTheTerminalIsSpelledOut() {
    assertEquals("a\\u001b[2Jb\n", new Lines().add(0, "a\u001b[2Jb").toString());
  }

  @Test
  void colourAddsNothingButEscapes() {
    String plain = screen.instrument(Samples.near());
    String painted = new Screen(Palette.ANSI).instrument(Samples.near());
    assertFalse(painted.equals(plain));
    assertEquals(plain, painted.replaceAll("\u001b\\[[0-9;]*m", ""));
  }
}
