package org.mainsgate.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SourceTextTest {

  @Test
  void linesEndAtALineFeedWithOrWithoutACarriageReturn() {
    SourceText source = new SourceText("a", "one\r\ntwo\n\nthree\r");
    List<String> lines = IntStream.rangeClosed(1, source.lines()).mapToObj(source::line).toList();
    assertEquals(List.of("one", "two", "", "three\r"), lines);
  }

  @Test
  void aTextOfNothingButLineEndsHasAllItsLines() {
    SourceText source = new SourceText("a", "\n".repeat(1000));
    assertEquals(1001, source.lines());
    assertEquals(new Position("a", 1001, 1), source.position(1000));
  }

  @Test
  void anEmptyTextHasOneEmptyLine() {
    SourceText source = new SourceText("a", "");
    assertEquals(1, source.lines());
    assertEquals("", source.line(1));
    assertEquals(new Position("a", 1, 1), source.position(0));
  }

  @Test
  void positionsCountFromOne() {
    SourceText source = new SourceText("a", "ab\nc");
    assertEquals(new Position("a", 1, 1), source.position(0));
    assertEquals(new Position("a", 1, 3), source.position(2));
    assertEquals(new Position("a", 2, 1), source.position(3));
    assertEquals(new Position("a", 2, 2), source.position(4));
  }

  @Test
  void aCharacterOfTwoCharsIsOneColumn() {
    SourceText source = new SourceText("a", "x\n😀y😀");
    assertEquals(new Position("a", 2, 1), source.position(2));
    assertEquals(new Position("a", 2, 2), source.position(4));
    assertEquals(new Position("a", 2, 4), source.position(7));
  }

  @Test
  void codePointsAreFoundByTheirNumber() {
    SourceText source = new SourceText("a", "x😀y");
    assertEquals(
        List.of(0, 1, 3, 4, 4),
        IntStream.range(0, 5).map(source::indexOfCodePoint).boxed().toList());
  }

  @Test
  void thereIsNoPositionOutsideTheText() {
    SourceText source = new SourceText("a", "ab");
    assertThrows(IndexOutOfBoundsException.class, () -> source.position(3));
    assertThrows(IndexOutOfBoundsException.class, () -> source.position(-1));
  }

  @Test
  void positionsAreInTheOrderOfAReader() {
    Position first = new Position("a", 2, 9);
    assertEquals(-1, Integer.signum(first.compareTo(new Position("b", 1, 1))));
    assertEquals(-1, Integer.signum(first.compareTo(new Position("a", 10, 1))));
    assertEquals(-1, Integer.signum(first.compareTo(new Position("a", 2, 10))));
    assertEquals(0, first.compareTo(new Position("a", 2, 9)));
    assertEquals("a:2:9", first.toString());
  }

  @Test
  void aPositionBeforeTheFirstLineOrColumnCannotExist() {
    assertThrows(IllegalArgumentException.class, () -> new Position("a", 0, 1));
    assertThrows(IllegalArgumentException.class, () -> new Position("a", 1, 0));
  }
}
