package org.mainsgate.laws;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** The text of an edition's common files and of one profile, as another reader takes it. */
final class RuleText {
  private final Map<String, Map<?, ?>> checks = new LinkedHashMap<>();
  private final Map<String, Map<?, ?>> limits = new LinkedHashMap<>();
  private final Map<String, Map<?, ?>> tables = new LinkedHashMap<>();
  private final Map<String, Map<?, ?>> shapes = new LinkedHashMap<>();
  private final Map<String, String> steps = new LinkedHashMap<>();
  private final Map<String, List<Row>> rows = new LinkedHashMap<>();
  private final Map<String, Phrase> phrases = new LinkedHashMap<>();

  /** The common files of the newest edition, with a profile. */
  RuleText(String profile) {
    Map<?, ?> editions = yaml(Rulebook.editions());
    Map<?, ?> newest = at(at(editions, "editions"), text(editions, "newest"));
    list(newest, "common").forEach(file -> read(yaml(Rulebook.text(String.valueOf(file)))));
    read(yaml(profile));
  }

  private static Map<?, ?> yaml(String text) {
    Object read = new Yaml(new SafeConstructor(new LoaderOptions())).load(text);
    return (Map<?, ?>) read;
  }

  static Map<?, ?> at(Map<?, ?> map, String key) {
    return map.get(key) instanceof Map<?, ?> inner ? inner : Map.of();
  }

  static List<?> list(Map<?, ?> map, String key) {
    return map.get(key) instanceof List<?> items ? items : List.of();
  }

  static String text(Map<?, ?> map, String key) {
    Object value = map.get(key);
    return value == null ? "" : String.valueOf(value);
  }

  private void read(Map<?, ?> all) {
    keep(all, "limits", limits);
    keep(all, "parameters", shapes);
    keep(all, "tables", tables);
    keep(all, "checks", checks);
    for (String part : List.of("steps", "statements")) {
      at(all, part)
          .forEach((name, v) -> steps.put(String.valueOf(name), text((Map<?, ?>) v, "is")));
    }
  }

  private static void keep(Map<?, ?> all, String part, Map<String, Map<?, ?>> into) {
    at(all, part).forEach((name, v) -> into.put(String.valueOf(name), (Map<?, ?>) v));
  }

  static Fraction parsed(String text) {
    return Fraction.of(
        Rational.parse(text).orElseGet(() -> ((Typed) Typed.parse(text)).nominal().orElseThrow()));
  }

  Map<?, ?> check(String id) {
    return Optional.<Map<?, ?>>ofNullable(checks.get(id))
        .orElseThrow(() -> new IllegalArgumentException("no check " + id));
  }

  /** A formula, read once. */
  Phrase phrase(String formula) {
    return phrases.computeIfAbsent(formula, text -> new PhraseReader(text).phrase());
  }

  /** A named part of the formulas of all checks. */
  Optional<Phrase> step(String name) {
    return Optional.ofNullable(steps.get(name)).map(this::phrase);
  }

  /** A named part of the formulas of one check. */
  Optional<Phrase> step(String check, String name) {
    String own = text(at(at(check(check), "steps"), name), "is");
    return own.isEmpty() ? Optional.empty() : Optional.of(phrase(own));
  }

  Optional<Fraction> limit(String name) {
    return Optional.<Map<?, ?>>ofNullable(limits.get(name))
        .map(limit -> parsed(text(limit, "value")));
  }

  /** Whether a limit is from memory, and nobody has confirmed it. */
  boolean isGuess(String limit) {
    return isGuess(Optional.<Map<?, ?>>ofNullable(limits.get(limit)).orElse(Map.of()), "");
  }

  private static boolean isGuess(Map<?, ?> entry, String otherwise) {
    String own = text(entry, "standing");
    String standing = own.isEmpty() ? otherwise : own;
    return standing.equals("from memory") && text(entry, "confirmed").isEmpty();
  }

  /**
   * A row of a table.
   *
   * @param number its key, where that is a number
   * @param named its key, where that is a named value
   * @param guess whether it is from memory
   */
  record Row(Optional<Fraction> number, String named, Map<?, ?> cells, boolean guess) {
    Fraction at() {
      return number.orElseThrow();
    }

    Ends cell(String column) {
      String text = text(cells, column);
      return text.isEmpty() ? Ends.UNKNOWN : Ends.of(parsed(text));
    }
  }

  /** The rows of a table, in the order of their numbers. */
  List<Row> rows(String table) {
    return rows.computeIfAbsent(table, this::readRows);
  }

  private List<Row> readRows(String table) {
    Map<?, ?> entry = Optional.<Map<?, ?>>ofNullable(tables.get(table)).orElse(Map.of());
    List<Row> read = new ArrayList<>();
    for (Object row : list(entry, "rows")) {
      Map<?, ?> cells = (Map<?, ?>) row;
      Optional<Fraction> number =
          Optional.of(text(cells, "at")).filter(at -> !at.isEmpty()).map(RuleText::parsed);
      boolean guess = text(entry, "confirmed").isEmpty() && isGuess(cells, text(entry, "standing"));
      read.add(new Row(number, text(cells, "is"), cells, guess));
    }
    if (read.stream().allMatch(row -> row.number().isPresent())) {
      read.sort(Comparator.comparing(Row::at));
    }
    return List.copyOf(read);
  }

  boolean isTable(String name) {
    return tables.containsKey(name);
  }

  /** {@code exact}, {@code at least} or {@code at most}. */
  String rowRule(String table) {
    String own = text(Optional.<Map<?, ?>>ofNullable(tables.get(table)).orElse(Map.of()), "row");
    return own.isEmpty()
        ? text(Optional.<Map<?, ?>>ofNullable(shapes.get(table)).orElse(Map.of()), "row")
        : own;
  }
}
