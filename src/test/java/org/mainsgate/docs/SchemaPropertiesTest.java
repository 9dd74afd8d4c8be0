package org.mainsgate.docs;

import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/** Nothing that our readers take is marked in an editor, whatever a person does to a file. */
class SchemaPropertiesTest {
  private static final List<String> WORDS =
      List.of(
          "yes",
          "no",
          "7",
          "0",
          "0412",
          "none",
          "unknown",
          "0.13 Ω",
          "230 V ± 10 %",
          "> 200 MΩ",
          "OL",
          "2 to 3 m",
          "18 AWG",
          "1e3",
          "true",
          "12:30",
          "2026-11-25",
          "I",
          "front-panel",
          "gb",
          "published",
          "hold",
          "1",
          "x.yaml",
          "1 µF");

  private static final List<Sample> SAMPLES = samples();
  private static int refused;
  private static int marked;

  private static List<Sample> samples() {
    List<Sample> samples = new ArrayList<>(Sample.ofTheDemo());
    Sample profile = Sample.of("rules", Path.of("rulesets/2026.1/profiles/gb.yaml"));
    Sample overlay = Sample.of("overlay", Path.of("src/test/resources/overlays/our-workshop.yaml"));
    for (int i = 0; i < 4; i++) {
      samples.add(profile);
      samples.add(overlay);
      samples.add(samples.get(0));
    }
    return samples;
  }

  @BeforeContainer
  static void count() {
    refused = 0;
    marked = 0;
  }

  @Property(tries = 400)
  void whatAnEditorMarksOurReaderRefusesToo(@ForAll Random random) {
    Sample sample = SAMPLES.get(random.nextInt(SAMPLES.size()));
    Object tree = tree(fields(sample));
    change(tree, random);
    Sample changed = sample.with(written(tree, ""));
    List<String> marks = changed.marked();
    String complaints = changed.refused();
    refused += complaints.isEmpty() ? 0 : 1;
    marked += marks.isEmpty() ? 0 : 1;
    if (!marks.isEmpty()) {
      assertNotEquals("", complaints, () -> marks + "\n" + changed.text());
    }
  }

  /** A schema that takes everything would hold to the property above. */
  @AfterContainer
  static void mostOfWhatIsRefusedIsMarked() {
    assertTrue(marked * 2 > refused, () -> marked + " marked, " + refused + " refused");
  }

  private static Fields fields(Sample sample) {
    return StrictYaml.readFields(
            "sample.yaml", sample.text().getBytes(StandardCharsets.UTF_8), new Complaints())
        .orElseThrow();
  }

  /** Maps, lists and strings that can be changed. */
  private static Object tree(Node node) {
    if (node instanceof Fields fields) {
      Map<String, Object> map = new LinkedHashMap<>();
      fields.fields().forEach(field -> map.put(field.key().value(), tree(field.value())));
      return map;
    }
    if (node instanceof Items items) {
      List<Object> list = new ArrayList<>();
      items.items().forEach(item -> list.add(tree(item)));
      return list;
    }
    return ((Text) node).value();
  }

  /** Takes a field away, names it otherwise, or writes something else in it. */
  private static void change(Object tree, Random random) {
    List<Map<String, Object>> maps = new ArrayList<>();
    collect(tree, maps);
    maps.removeIf(Map::isEmpty);
    Map<String, Object> map = maps.get(random.nextInt(maps.size()));
    List<String> keys = List.copyOf(map.keySet());
    String key = keys.get(random.nextInt(keys.size()));
    switch (random.nextInt(4)) {
      case 0 -> map.remove(key);
      case 1 -> rename(map, key, key + "s");
      case 2 -> {
        List<String> others = new ArrayList<>();
        maps.forEach(other -> others.addAll(other.keySet()));
        rename(map, key, others.get(random.nextInt(others.size())));
      }
      default -> map.put(key, WORDS.get(random.nextInt(WORDS.size())));
    }
  }

  private static void rename(Map<String, Object> map, String key, String name) {
    Map<String, Object> renamed = new LinkedHashMap<>();
    map.forEach((k, value) -> renamed.putIfAbsent(k.equals(key) ? name : k, value));
    map.clear();
    map.putAll(renamed);
  }

  private static void collect(Object tree, List<Map<String, Object>> maps) {
    if (tree instanceof Map<?, ?> map) {
      @SuppressWarnings("unchecked")
      Map<String, Object> fields = (Map<String, Object>) map;
      maps.add(fields);
      map.values().forEach(value -> collect(value, maps));
    } else if (tree instanceof List<?> list) {
      list.forEach(item -> collect(item, maps));
    }
  }

  /** The tree as YAML: plain where that is plain text, so that an editor sees its numbers. */
  private static String written(Object tree, String indent) {
    if (tree instanceof Map<?, ?> map) {
      StringBuilder text = new StringBuilder();
      map.forEach(
          (key, value) ->
              text.append(indent)
                  .append(scalar(String.valueOf(key)))
                  .append(':')
                  .append(under(value, indent)));
      return text.toString();
    }
    if (tree instanceof List<?> list) {
      StringBuilder text = new StringBuilder();
      list.forEach(item -> text.append(indent).append('-').append(under(item, indent)));
      return text.toString();
    }
    return scalar(String.valueOf(tree)) + "\n";
  }

  private static String under(Object value, String indent) {
    if (value instanceof Map<?, ?> map && map.isEmpty()) {
      return " {}\n";
    }
    if (value instanceof List<?> list && list.isEmpty()) {
      return " []\n";
    }
    boolean scalar = value instanceof String;
    return scalar ? " " + written(value, indent) : "\n" + written(value, indent + "  ");
  }

  private static String scalar(String text) {
    boolean plain = text.matches("[A-Za-z0-9](?:[A-Za-z0-9 ._-]*[A-Za-z0-9._-])?");
    return plain
        ? text
        : "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n") + "\"";
  }
}
