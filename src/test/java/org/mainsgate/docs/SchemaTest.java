package org.mainsgate.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/**
 * The schemas for editors, judged by a validator that is not ours: what our readers take they take
 * too, and the mistakes that people make they mark.
 */
class SchemaTest {
  @TestFactory
  Stream<DynamicTest> everyFileThatWeReadIsTaken() {
    return Stream.of(Sample.ofTheDemo(), Sample.ofTheRules(), examples())
        .flatMap(List::stream)
        .map(
            sample ->
                DynamicTest.dynamicTest(
                    sample.kind() + " " + sample.path(),
                    () -> assertEquals(List.of(), sample.marked())));
  }

  /** The examples of whole files on our pages, and a local rule of the tests. */
  private static List<Sample> examples() {
    Stream<Sample> pages =
        Example.all("yaml").stream()
            .filter(example -> kind(example) != null)
            .map(example -> new Sample(kind(example), example.page(), example.text()));
    Path overlay = Path.of("src/test/resources/overlays/our-workshop.yaml");
    return Stream.concat(pages, Stream.of(Sample.of("overlay", overlay))).toList();
  }

  private static String kind(Example example) {
    return switch (example.marker()) {
      case "bench.yaml" -> "bench";
      case "instrument.yaml" -> "instrument";
      case "visit", "overlay", "tests" -> example.marker();
      default -> null;
    };
  }

  /** Each property of a schema with words for a person, in itself or where it refers to. */
  @ParameterizedTest
  @ValueSource(
      strings = {"bench", "instrument", "visit", "rules", "overlay", "vocabulary", "tests"})
  void everyFieldIsExplained(String kind) {
    JsonNode schema =
        new ObjectMapper().readTree(Sample.read(Path.of("docs/schema", kind + ".schema.json")));
    List<String> silent = new ArrayList<>();
    walk(schema, schema.path("$defs"), kind, silent);
    assertEquals(List.of(), silent);
  }

  private static void walk(JsonNode node, JsonNode defined, String path, List<String> silent) {
    for (Map.Entry<String, JsonNode> field : node.path("properties").properties()) {
      String name = path + "." + field.getKey();
      if (!isExplained(field.getValue(), defined)) {
        silent.add(name);
      }
    }
    for (Map.Entry<String, JsonNode> inner : node.properties()) {
      walk(inner.getValue(), defined, path + "." + inner.getKey(), silent);
    }
    for (JsonNode item : node.isArray() ? node : List.<JsonNode>of()) {
      walk(item, defined, path, silent);
    }
  }

  private static boolean isExplained(JsonNode schema, JsonNode defined) {
    String ref = schema.path("$ref").asString("");
    return schema.has("description")
        || (!ref.isEmpty()
            && isExplained(defined.path(ref.substring("#/$defs/".length())), defined));
  }

  @ParameterizedTest(name = "{0}: {1} -> {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          bench      | bench: north-light            | bensch: north-light
          bench      | bench: north-light            | bench: north light
          bench      | format: 1                     | format: 2
          bench      | profile: gb                   | profile: [gb]
          bench      | plug_pattern: type_g          | plug_pattern: type_z
          bench      | supply_frequency: 50 Hz       | supply_frequency: 50
          bench      | supply_frequency: 50 Hz       | supply_frequency: 50 V
          bench      | from: 2026-01-12              | from: 12.1.2026
          bench      | from: 2026-01-12              | form: 2026-01-12
          bench      | kind: multimeter              | kind: multimetre
          bench      | accuracy: 2 % + 3 digits      | accuracy: 2 % + 3
          bench      | digit: 0.001 Ω                | digit: 0.001 V
          bench      | 'KC: {name'                   | 'Keeper of it: {name'
          instrument | tag: NL-01                    | tag: -NL-01
          instrument | uid: 5d0c6a1e                 | uid: 5D0C6A1E
          instrument | kind: exposed_part            | kind: exposed_parts
          instrument | rated_power: 45 VA            | rated_power: 45
          instrument | what: RC oscillator           | whta: RC oscillator
          visit      | date: 2026-                   | date: 20-26-
          visit      | cores: three                  | cores: 3
          visit      | cores: three                  | coers: three
          visit      | class: {is: I, shown_by       | class: {ist: I, shown_by
          visit      | lead_length: 2 m              | lead_length: '> 2 m'
          visit      | core_area: 0.5 mm²            | core_area: 0,5 mm²
          visit      | reason: probe_slipped         | reason: slipped
          visit      | value: 0.31 Ω                 | value: 0.31
          visit      | lead: 1                       | lead: several
          visit      | lead: 1                       | leads: 1
          """)
  void aMistakeIsMarkedAndComplainedOfAlike(String kind, String right, String wrong) {
    Sample sample = first(kind);
    Sample mistaken =
        sample.with(
            sample.text().replaceFirst(Pattern.quote(right), Matcher.quoteReplacement(wrong)));
    assertNotEquals(sample.text(), mistaken.text(), "nothing to change");
    assertFalse(mistaken.marked().isEmpty(), "the schema takes it");
    assertNotEquals("", mistaken.refused(), "our reader takes it");
  }

  private static Sample first(String kind) {
    return Sample.ofTheDemo().stream()
        .filter(sample -> sample.kind().equals(kind))
        .findFirst()
        .orElseThrow();
  }
}
