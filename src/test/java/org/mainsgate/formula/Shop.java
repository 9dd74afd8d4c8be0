package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.SourceText;
import org.mainsgate.source.Text;

/**
 * A scope with a little of everything: the names of a repair shop and plain ones for properties.
 */
public final class Shop implements Scope {
  static final ValueList COLOURS = new ValueList("colour", List.of("red", "green", "blue"));
  static final ValueList CLASSES = new ValueList("class", List.of("0", "0I", "I", "II", "III"));
  static final ValueList PLUGS = new ValueList("plug", List.of("type_g", "type_f", "other"));
  static final Unit PLAIN = new Unit("1", Dimension.NONE, Rational.ONE, Rational.ZERO);

  private static final Map<String, ValueList> OBSERVATIONS =
      Map.of(
          "k",
          COLOURS,
          "n",
          COLOURS,
          "m_colour",
          COLOURS,
          "class",
          CLASSES,
          "plug",
          PLUGS,
          "plug_pattern",
          PLUGS,
          "red",
          COLOURS);

  private final Map<String, Meaning> meanings = new LinkedHashMap<>();
  private final Map<String, Table> tables = new LinkedHashMap<>();
  private final Map<String, String> variables;

  private Shop(Map<String, String> variables) {
    this.variables = variables;
    for (String plain : List.of("a", "b", "c", "d")) {
      quantity(plain, "1", ExactInterval.UNBOUNDED);
    }
    for (String positive : List.of("e", "f")) {
      quantity(positive, "1", ExactInterval.atLeast(Rational.ZERO));
    }
    quantity("earth_resistance", "Ω", ExactInterval.atLeast(Rational.ZERO));
    quantity("earth_resistance.test_current", "A", ExactInterval.atLeast(Rational.ZERO));
    quantity("core_area", "mm²", ExactInterval.atLeast(Rational.ZERO));
    quantity("lead_length", "m", ExactInterval.atLeast(Rational.ZERO));
    quantity("voltage", "V", ExactInterval.UNBOUNDED);
    quantity("ambient", "°C", ExactInterval.atLeast(Rational.ZERO));
    varies("v", "1");
    varies("supply", "V");
    limit("low", "1", "1");
    limit("high", "2", "1");
    limit("debt", "-2", "1");
    limit("base", "0.1", "Ω");
    limit("rise", "5", "K");
    limit("hot", "40", "°C");
    limit("share", "1", "1");
    OBSERVATIONS.forEach(
        (name, values) -> meanings.put(name, new Meaning.Observation(Reference.of(name), values)));
    meanings.remove("red");
    table(steps("steps", Table.RowMode.AT_LEAST));
    table(steps("stairs", Table.RowMode.AT_MOST));
    table(steps("marks", Table.RowMode.EXACT));
    table(colours());
    table(flex());
    step("twice", "two of a", "a + a");
    step("copper", "copper of the lead", "flex(core_area).plain * lead_length");
    truthStep("warm", "warm enough", "a >= low");
  }

  public static Shop open() {
    return new Shop(Map.of());
  }

  /** A shop whose formulas are about one item. */
  static Shop over(String variable, String kind) {
    return new Shop(Map.of(variable, kind));
  }

  Shop with(String name, Meaning meaning) {
    meanings.put(name, meaning);
    return this;
  }

  Shop withObservation(String name, ValueList values) {
    return with(name, new Meaning.Observation(Reference.of(name), values));
  }

  Shop limit(String name, String value, String unit) {
    Unit found = unit(unit);
    ExactInterval si = ExactInterval.point(found.toSi(Rational.of(value)));
    meanings.put(name, new Meaning.Limit(name, si, found));
    return this;
  }

  /** Gives a plain limit another value. */
  Shop limit(String name, Rational value) {
    meanings.put(name, new Meaning.Limit(name, ExactInterval.point(value), PLAIN));
    return this;
  }

  Shop step(String name, String title, String formula) {
    meanings.put(name, new Meaning.Step(name, title, number(formula)));
    return this;
  }

  private void truthStep(String name, String title, String formula) {
    meanings.put(name, new Meaning.TruthStep(name, title, truth(formula)));
  }

  private void quantity(String name, String unit, ExactInterval possible) {
    Unit found = unit(unit);
    Reference reference = Reference.of(name.split("\\."));
    meanings.put(
        name, new Meaning.Quantity(reference, found.dimension(), Nature.MEASURED, possible, found));
  }

  private void varies(String name, String unit) {
    Unit found = unit(unit);
    meanings.put(
        name,
        new Meaning.Quantity(
            Reference.of(name), found.dimension(), Nature.VARIES, ExactInterval.UNBOUNDED, found));
  }

  private void table(Table table) {
    tables.put(table.name(), table);
  }

  private static Table steps(String name, Table.RowMode mode) {
    List<Table.Row> rows = new ArrayList<>();
    for (int key : new int[] {2, 0, 1}) {
      ExactInterval cell = ExactInterval.point(Rational.of(10L * key * key));
      rows.add(Table.Row.at("r" + key, Rational.of(key), Map.of("value", cell)));
    }
    Table.Column column = new Table.Column("value", Dimension.NONE, PLAIN);
    return new Table(
        name, "steps", new Table.NumberKey(Dimension.NONE, mode), List.of(column), rows);
  }

  private static Table colours() {
    List<Table.Row> rows =
        List.of(
            Table.Row.named("r", "red", Map.of("value", ExactInterval.point(Rational.ONE))),
            Table.Row.named("g", "green", Map.of("value", ExactInterval.point(Rational.of(3)))));
    Table.Column column = new Table.Column("value", Dimension.NONE, PLAIN);
    return new Table("colours", "colours", new Table.NamedKey(COLOURS), List.of(column), rows);
  }

  /** IEC 60228 class 5, two of its rows, as in the project's tables. */
  private static Table flex() {
    Unit area = unit("mm²");
    Unit perLength = unit("Ω/km");
    List<Table.Row> rows = new ArrayList<>();
    Map.of("0.75", "26.0", "1.0", "19.5")
        .forEach(
            (key, cell) -> {
              ExactInterval value = ExactInterval.point(perLength.toSi(Rational.of(cell)));
              rows.add(Table.Row.at(key, area.toSi(Rational.of(key)), Map.of("plain", value)));
            });
    Table.Column column = new Table.Column("plain", perLength.dimension(), perLength);
    Table.Key key = new Table.NumberKey(Dimension.AREA, Table.RowMode.AT_LEAST);
    return new Table("flex", "resistance of flexible cores", key, List.of(column), rows);
  }

  private static Unit unit(String symbol) {
    return symbol.equals("1") ? PLAIN : Units.find(symbol).orElseThrow();
  }

  static List<String> valuesOf(Reference reference) {
    String name = reference.path().get(reference.path().size() - 1);
    return OBSERVATIONS.getOrDefault(name, COLOURS).values();
  }

  public static Text text(String formula) {
    return Text.whole(new SourceText("formula", formula));
  }

  static Formula parsed(String formula) {
    Complaints complaints = new Complaints();
    return Formula.parse(text(formula), complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  TruthFormula truth(String formula) {
    Complaints complaints = new Complaints();
    return parsed(formula)
        .asTruth(this, complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  NumberFormula number(String formula) {
    Complaints complaints = new Complaints();
    return parsed(formula)
        .asNumber(this, null, complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  static Truth decide(String formula, Facts facts) {
    return open().truth(formula).evaluate(facts);
  }

  @Override
  public Optional<Meaning> meaning(List<String> path, Map<String, String> bound) {
    if (!bound.containsKey(path.get(0)) || path.size() != 2) {
      return Optional.ofNullable(meanings.get(String.join(".", path)));
    }
    Reference reference = new Reference(path.get(0), path.subList(1, 2));
    return switch (path.get(1)) {
      case "m" ->
          Optional.of(
              new Meaning.Quantity(
                  reference, Dimension.NONE, Nature.MEASURED, ExactInterval.UNBOUNDED, PLAIN));
      case "m_colour" -> Optional.of(new Meaning.Observation(reference, COLOURS));
      default -> Optional.empty();
    };
  }

  @Override
  public Optional<Table> table(String name) {
    return Optional.ofNullable(tables.get(name));
  }

  @Override
  public boolean isKind(String name) {
    return name.equals("part") || name.equals("lead");
  }

  @Override
  public Collection<String> names() {
    List<String> names = new ArrayList<>(meanings.keySet());
    names.addAll(tables.keySet());
    names.addAll(List.of("part", "lead", "m"));
    return names;
  }

  @Override
  public Map<String, String> variables() {
    return variables;
  }
}
