package org.mainsgate.source;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is read, and as what; what a person is told about the rest stands in the golden files. */
class StrictYamlTest {

  private final Complaints complaints = new Complaints();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no",
        "yes",
        "true",
        "null",
        "~",
        "010",
        "0x1F",
        "12:30",
        "190:20:30",
        "1e3",
        "1e999999",
        "2026-11-25",
        "1.50",
        ".inf",
        ".nan",
        "-0.01 Ω",
        "> 200 MΩ x",
        "1_000",
        "=",
        "230 V +10/-6 %",
        "a#b",
        "C:\\x",
        "a,b"
      })
  void everyScalarIsTheTextThatWasWritten(String written) {
    if (written.startsWith(">")) {
      assertEquals("{a=" + written + "}", shape("a: '" + written + "'\n"));
    } else {
      assertEquals("{a=" + written + "}", shape("a: " + written + "\n"));
    }
    assertTrue(complaints.isEmpty(), complaints::renderAll);
  }

  @Test
  void listsAndFieldsKeepTheirOrder() {
    assertEquals(
        "{z=[1, {b=2, a=[]}], a={}, m=}", shape("z:\n  - 1\n  - b: 2\n    a: []\na: {}\nm:\n"));
    assertTrue(complaints.isEmpty(), complaints::renderAll);
  }

  @Test
  void aDocumentMayHaveMarksAtItsStartAndEnd() {
    assertEquals("{a=1}", shape("---\na: 1\n...\n"));
    assertTrue(complaints.isEmpty(), complaints::renderAll);
  }

  @Test
  void aByteOrderMarkAtTheStartIsNoCharacter() {
    assertEquals("{a=1}", shape("\uFEFFa: 1\n"));
    Position at =
        StrictYaml.read("f", "\uFEFFa: 1\n".getBytes(UTF_8), complaints).orElseThrow().at();
    assertEquals(new Position("f", 1, 1), at);
    assertTrue(complaints.isEmpty(), complaints::renderAll);
  }

  @Test
  void nodesStandWhereTheyStart() {
    Fields fields =
        StrictYaml.readFields("f", "\na:\n  - x\n  - {b: 1}\n".getBytes(UTF_8), complaints)
            .orElseThrow();
    assertEquals(new Position("f", 2, 1), fields.at());
    assertEquals(new Position("f", 2, 1), fields.fields().get(0).key().at());
    Items items = (Items) fields.get("a").orElseThrow();
    assertEquals(new Position("f", 3, 3), items.at());
    assertEquals(new Position("f", 4, 5), items.items().get(1).at());
  }

  @Test
  void thirtyTwoLevelsAreReadAndThirtyThreeAreNot() {
    shape("[".repeat(32) + "]".repeat(32));
    assertTrue(complaints.isEmpty(), complaints::renderAll);
    shape("[".repeat(33) + "]".repeat(33));
    assertEquals(1, complaints.count());
  }

  @Test
  void aHundredThousandNodesAreReadAndOneMoreIsNot() {
    String items = "a,".repeat(StrictYaml.MOST_NODES - 1);
    assertTrue(StrictYaml.read("f", ("[" + items + "]").getBytes(UTF_8), complaints).isPresent());
    assertTrue(complaints.isEmpty(), complaints::renderAll);
    assertTrue(StrictYaml.read("f", ("[" + items + "b]").getBytes(UTF_8), complaints).isEmpty());
    assertEquals(new Position("f", 1, 2 * StrictYaml.MOST_NODES), complaints.sorted().get(0).at());
  }

  @Test
  void aMebibyteIsReadAndAByteMoreIsNot() {
    byte[] most = new byte[StrictYaml.MOST_BYTES];
    Arrays.fill(most, (byte) 'a');
    assertTrue(StrictYaml.read("f", most, complaints).isPresent());
    assertTrue(complaints.isEmpty(), complaints::renderAll);
    byte[] more = Arrays.copyOf(most, most.length + 1);
    assertTrue(StrictYaml.read("f", more, complaints).isEmpty());
    assertEquals(1, complaints.count());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a: &x 1",
        "a: !x 1",
        "a: 1\na: 2",
        "a: 1\n'a': 2",
        "{a: 1, a: 2}",
        "[&x {}]",
        "&x a: 1",
        "!x a: 1",
        "! a"
      })
  void whatMakesSenseWithoutTheForbiddenIsFollowedFurther(String yaml) {
    assertTrue(StrictYaml.read("f", yaml.getBytes(UTF_8), complaints).isPresent());
    assertEquals(1, complaints.count(), complaints::renderAll);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a: *x",
        "- *x",
        "*x : 1",
        "<<: {a: 1}",
        "a: 1\n---\nb: 2",
        "[a]: 1",
        "{a: 1}: 2",
        "a: 'x",
        "a: b: c",
        "",
        "---\n",
        "# x\n",
        "a: \u0001",
        "a: \"\\0\"",
        "a: \"\\uD800\"",
        "a: \"\\u2028\"",
        "a: \"\\r\"",
        "a: \u202E",
        "[-]",
        "a: |\n   \n # b",
        "a: 'b'# c",
        "[a]#b",
        "[a,#b\nc]",
        "a: 'b\nc'",
        "a: [b,\nc]",
        "a:\n - \"b\n c\"",
        "a: 'b\n\tc'",
        "a: \u2028",
        "a: \u0085",
        "a: \uFFFF",
        "a: 1\rb: 2",
        "a: \uFEFF1"
      })
  void theRestIsNotReadAtAll(String yaml) {
    assertTrue(StrictYaml.read("f", yaml.getBytes(UTF_8), complaints).isEmpty());
    assertTrue(complaints.count() >= 1);
  }

  @Test
  void theFirstOfTwoFieldsWithOneNameStays() {
    assertEquals("{a=1, b=2}", shape("a: 1\nb: 2\na: 3\n"));
  }

  @Test
  void unpairedSurrogatesAreNoUtf8() {
    assertTrue(
        StrictYaml.read("f", new byte[] {'a', (byte) 0xED, (byte) 0xA0, (byte) 0x80}, complaints)
            .isEmpty());
    assertEquals(new Position("f", 1, 2), complaints.sorted().get(0).at());
  }

  @Test
  void atTheTopThereMustBeFields() {
    assertTrue(StrictYaml.readFields("f", "a".getBytes(UTF_8), complaints).isEmpty());
    assertEquals("the file does not start with a field", complaints.sorted().get(0).what());
  }

  private String shape(String yaml) {
    return StrictYaml.read("f", yaml.getBytes(UTF_8), complaints).map(Shape::of).orElse("nothing");
  }
}
