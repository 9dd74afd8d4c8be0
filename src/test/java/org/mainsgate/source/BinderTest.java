package org.mainsgate.source;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class BinderTest {

  private final Complaints complaints = new Complaints();

  record Lead(Text coreArea, @Nullable Text plug) {}

  record All(
      Position at,
      Text name,
      @Nullable Text note,
      Node any,
      Lead lead,
      @Nullable Lead spare,
      List<Text> words,
      List<Lead> leads,
      List<List<Text>> rows,
      Map<String, Text> answers,
      Map<String, Lead> byName,
      @Nullable Fields loose,
      @Nullable Items open,
      @Nullable Text default_) {}

  record Nested(@Nullable Text value, List<Nested> inner) {}

  record Unbindable(String name) {}

  @Test
  void componentsTakeTheFieldsOfTheirNames() {
    All all =
        bind(
                """
            name: BR-07
            note: old
            any: [1]
            lead: {core_area: 1 mm², plug: type_g}
            spare: {core_area: 2 mm²}
            words: [a, b]
            leads: [{core_area: 3 mm²}]
            rows: [[x], []]
            answers: {z: no, a: yes}
            by_name: {k: {core_area: 4 mm²}}
            loose: {any: thing}
            open: [what]
            default: d
            """,
                All.class)
            .orElseThrow();
    assertEquals(new Position("f", 1, 1), all.at());
    assertEquals("BR-07", all.name().value());
    assertEquals("old", String.valueOf(all.note()));
    assertInstanceOf(Items.class, all.any());
    assertEquals("1 mm²", all.lead().coreArea().value());
    assertEquals("type_g", String.valueOf(all.lead().plug()));
    assertEquals("[a, b]", all.words().toString());
    assertEquals("3 mm²", all.leads().get(0).coreArea().value());
    assertEquals("[[x], []]", all.rows().toString());
    assertEquals("{z=no, a=yes}", all.answers().toString());
    assertEquals("{k=Lead[coreArea=4 mm², plug=null]}", all.byName().toString());
    assertEquals(List.of("{any=thing}"), Stream.ofNullable(all.loose()).map(Shape::of).toList());
    assertEquals(List.of("[what]"), Stream.ofNullable(all.open()).map(Shape::of).toList());
    assertEquals("d", String.valueOf(all.default_()));
  }

  @Test
  void whatMayBeLeftOutMayAlsoBeLeftBlank() {
    All absent = bind("name: x\nany: y\nlead: {core_area: z}\n", All.class).orElseThrow();
    All blank =
        bind(
                """
                name: x
                any: y
                lead: {core_area: z, plug: }
                note:
                spare:
                words:
                leads:
                answers:
                by_name:
                loose:
                """,
                All.class)
            .orElseThrow();
    for (All all : List.of(absent, blank)) {
      assertNull(all.note());
      assertNull(all.spare());
      assertNull(all.lead().plug());
      assertNull(all.loose());
      assertEquals(List.of(), all.words());
      assertEquals(List.of(), all.leads());
      assertEquals(Map.of(), all.answers());
      assertEquals(Map.of(), all.byName());
    }
  }

  @Test
  void twoQuotesWithNothingInThemAreAValue() {
    assertEquals("", String.valueOf(bind("value: ''\n", Nested.class).orElseThrow().value()));
  }

  @Test
  void recordsMayStandInThemselves() {
    Nested nested = bind("inner: [{inner: [{value: deep}]}]\n", Nested.class).orElseThrow();
    assertEquals("deep", String.valueOf(nested.inner().get(0).inner().get(0).value()));
  }

  @Test
  void whatIsRequiredMayNotBeMissingOrBlank() {
    assertTrue(bind("name:\nlead: {plug: x}\n", All.class).isEmpty());
    assertEquals(
        List.of("f:1:1: missing `any`", "f:1:6: missing `name`", "f:2:7: missing `core_area`"),
        said());
  }

  @Test
  void anItemOrAnswerMayNotBeBlank() {
    assertTrue(
        bind(
                "name: x\nany: y\nlead: {core_area: z}\nwords:\n  - a\n  -\nanswers:\n  k:\n",
                All.class)
            .isEmpty());
    assertEquals(List.of("f:6:4: an item of `words` is blank", "f:8:5: `k` is blank"), said());
  }

  @Test
  void aMisspeltFieldIsNotMissingToo() {
    assertTrue(bind("core_aera: 1\n", Lead.class).isEmpty());
    assertEquals(List.of("f:1:1: unknown field `core_aera`"), said());
  }

  @Test
  void aStrangeFieldBesideAMissingOneIsTwoComplaints() {
    assertTrue(bind("colour: red\n", Lead.class).isEmpty());
    assertEquals(List.of("f:1:1: missing `core_area`", "f:1:1: unknown field `colour`"), said());
  }

  @Test
  void thePositionIsNoField() {
    assertTrue(bind("name: x\nany: y\nlead: {core_area: z}\nat: here\n", All.class).isEmpty());
    assertEquals(List.of("f:4:1: unknown field `at`"), said());
  }

  @Test
  void eachFieldMustBeOfItsKind() {
    assertTrue(
        bind(
                "name: [x]\nany: y\nlead: z\nwords: {a: b}\nanswers: [c]\nloose: d\nopen: e\n",
                All.class)
            .isEmpty());
    assertEquals(
        List.of(
            "f:1:7: `name` is a list",
            "f:3:7: `lead` is a single value",
            "f:4:8: `words` is a set of fields",
            "f:5:10: `answers` is a list",
            "f:6:8: `loose` is a single value",
            "f:7:7: `open` is a single value"),
        said());
  }

  @Test
  void complaintsFromBeforeDoNotStopABinding() {
    complaints.add(new Position("other", 1, 1), "earlier");
    assertTrue(bind("core_area: x\n", Lead.class).isPresent());
  }

  @Test
  void listsAndMapsCanNotBeChanged() {
    All all =
        bind("name: x\nany: y\nlead: {core_area: z}\nwords: [a]\nanswers: {a: b}\n", All.class)
            .orElseThrow();
    assertThrows(UnsupportedOperationException.class, all.words()::clear);
    assertThrows(UnsupportedOperationException.class, all.answers()::clear);
  }

  @Test
  void aComponentOfAnotherTypeIsAMistakeOfOurs() {
    assertThrows(IllegalArgumentException.class, () -> bind("name: x\n", Unbindable.class));
  }

  private List<String> said() {
    return complaints.sorted().stream().map(c -> c.at() + ": " + c.what()).toList();
  }

  private <T extends Record> Optional<T> bind(String yaml, Class<T> type) {
    return Binder.bind(
        StrictYaml.readFields("f", yaml.getBytes(UTF_8), complaints).orElseThrow(),
        type,
        complaints);
  }
}
