package org.mainsgate.source;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Each character of a value points at its own place in the file, in every style of YAML. */
class TextTest {

  @Test
  void plain() {
    Text text = valueOf("a: core * 2 # m\n");
    assertEquals("core * 2", text.value());
    assertEquals("1:4 1:5 1:6 1:7 1:8 1:9 1:10 1:11 1:12", places(text));
    assertFalse(text.quoted());
  }

  @Test
  void plainOverSeveralLines() {
    Text text = valueOf("a: xy  \n   z\n\n  w\n");
    assertEquals("xy z\nw", text.value());
    assertEquals("1:4 1:5 1:6 2:4 3:1 4:3 4:4", places(text));
  }

  @Test
  void singleQuoted() {
    Text text = valueOf("a: 'it''s x'\n");
    assertEquals("it's x", text.value());
    assertEquals("1:5 1:6 1:7 1:9 1:10 1:11 1:12", places(text));
    assertTrue(text.quoted());
  }

  @Test
  void doubleQuotedWithEscapes() {
    Text text = valueOf("a: \"x\\u00B5\\ty\\U0001F600\\x41z\"\n");
    assertEquals("xµ\ty😀Az", text.value());
    assertEquals("1:5 1:6 1:12 1:14 1:15 1:15 1:25 1:29 1:30", places(text));
  }

  @Test
  void doubleQuotedOverSeveralLines() {
    Text text = valueOf("a: \"x \\\n   y\n\n  z  w\"\n");
    assertEquals("x y\nz  w", text.value());
    assertEquals("1:5 1:6 2:4 3:1 4:3 4:4 4:5 4:6 4:7", places(text));
  }

  @Test
  void doubleQuotedWithBlankLinesAfterAnEscapedLineEnd() {
    Text text = valueOf("a: \"x\\\n\n  y\"\n");
    assertEquals("x\ny", text.value());
    assertEquals("1:5 2:1 3:3 3:4", places(text));
  }

  @Test
  void literal() {
    Text text = valueOf("a: | # how\n\n   x\n     y\n\n   z\nb: 1\n");
    assertEquals("\nx\n  y\n\nz\n", text.value());
    assertEquals("2:1 3:4 3:5 4:4 4:5 4:6 4:7 5:1 6:4 6:5 6:5", places(text));
  }

  @Test
  void literalWithItsOwnIndentation() {
    Text text = valueOf("a: |1-\n  x\n y\n");
    assertEquals(" x\ny", text.value());
    assertEquals("2:2 2:3 2:4 3:2 3:3", places(text));
  }

  @Test
  void literalWithCarriageReturns() {
    Text text = valueOf("a: |\r\n  x\r\n  y\r\n");
    assertEquals("x\ny\n", text.value());
    assertEquals("2:3 2:4 3:3 3:4 3:4", places(text));
  }

  @Test
  void folded() {
    Text text = valueOf("a: >-\n  x\n  y\n\n  z\n    w\n  v\n");
    assertEquals("x y\nz\n  w\nv", text.value());
    assertEquals("2:3 2:4 3:3 3:4 5:3 5:4 6:3 6:4 6:5 6:6 7:3 7:4", places(text));
  }

  @Test
  void afterCharactersOfTwoCharsTheColumnsAreStillThoseOfAnEditor() {
    Text text = valueOf("a: 😀 x\n");
    assertEquals("1:4 1:4 1:5 1:6 1:7", places(text));
  }

  @Test
  void aBlankValueStandsAfterItsColon() {
    Text text = valueOf("a:\nb: 1\n");
    assertTrue(text.isBlank());
    assertEquals("1:3", places(text));
    assertFalse(valueOf("a: ''\n").isBlank());
    assertFalse(valueOf("a: ~\n").isBlank());
  }

  @Test
  void anOffsetOutsideTheValueIsRefused() {
    Text text = valueOf("a: xy\n");
    assertThrows(IndexOutOfBoundsException.class, () -> text.at(3));
    assertThrows(IndexOutOfBoundsException.class, () -> text.at(-1));
  }

  @Test
  void aWholeTextStandsWhereItStands() {
    Text text = Text.whole(new SourceText("f", "a\nb"));
    assertEquals("1:1 1:2 2:1 2:2", places(text));
    assertEquals("a\nb", text.toString());
  }

  @Test
  void textsAreEqualIfTheySayTheSameAtTheSamePlace() {
    assertEquals(valueOf("a: x\n"), valueOf("a: x # again\n"));
    assertEquals(valueOf("a: x\n").hashCode(), valueOf("a: x # again\n").hashCode());
    assertNotEquals(valueOf("a: x\n"), valueOf("a:  x\n"));
    assertNotEquals(valueOf("a: x\n"), valueOf("a: y\n"));
  }

  private static Text valueOf(String yaml) {
    Complaints complaints = new Complaints();
    Fields fields = StrictYaml.readFields("f", yaml.getBytes(UTF_8), complaints).orElseThrow();
    assertEquals("", complaints.renderAll());
    return (Text) fields.get("a").orElseThrow();
  }

  private static String places(Text text) {
    return IntStream.rangeClosed(0, text.value().length())
        .mapToObj(text::at)
        .map(at -> at.line() + ":" + at.column())
        .collect(Collectors.joining(" "));
  }
}
