package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Table;
import org.mainsgate.formula.ValueList;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.RulesetFile.ConfirmedEntry;
import org.mainsgate.ruleset.RulesetFile.ParameterEntry;
import org.mainsgate.ruleset.RulesetFile.TableEntry;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Node;
import org.mainsgate.source.Text;

/** Reads a table: every row has a key and a value in every column, and every row has a source. */
final class TableReader {
  static final Map<String, Table.RowMode> MODES =
      Map.of(
          "exact", Table.RowMode.EXACT,
          "at least", Table.RowMode.AT_LEAST,
          "at most", Table.RowMode.AT_MOST);
  static final String CONFIRMED = "confirmed";

  static final List<String> OWN =
      List.of("at", "is", "source", "edition", "clause", "standing", "note", CONFIRMED);

  private final Vocabulary vocabulary;
  private final Citations citations;
  private final Wording wording;
  private final Adjustment adjustment;
  private final Complaints complaints;

  TableReader(
      Vocabulary vocabulary,
      Citations citations,
      Wording wording,
      Adjustment adjustment,
      Complaints complaints) {
    this.vocabulary = vocabulary;
    this.citations = citations;
    this.wording = wording;
    this.adjustment = adjustment;
    this.complaints = complaints;
  }

  /** The table; its shape may be said by the parameter that it gives values to. */
  Optional<Rules.CitedTable> read(
      String name, TableEntry entry, Optional<ParameterEntry> parameter) {
    @Nullable Text keyText = parameter.map(ParameterEntry::key).orElse(entry.key());
    @Nullable Text mode = parameter.map(ParameterEntry::row).orElse(entry.row());
    Map<String, Text> columnTexts = parameter.map(ParameterEntry::columns).orElse(entry.columns());
    if (keyText == null || columnTexts.isEmpty()) {
      complaints.add(entry.at(), "`" + name + "` has no key or no columns", "`key` and `columns`");
      return Optional.empty();
    }
    List<Table.Column> columns = columns(columnTexts);
    Optional<Key> key = key(keyText, mode);
    if (key.isEmpty() || columns.size() < columnTexts.size()) {
      return Optional.empty();
    }
    Rows rows = new Rows(name, entry, key.get(), columns);
    entry.rows().forEach(rows::add);
    rows.demandEveryName();
    String title =
        parameter
            .map(found -> found.title().value())
            .orElseGet(() -> Wording.orEmpty(entry.title()));
    return rows.table(title.isEmpty() ? name : title);
  }

  private List<Table.Column> columns(Map<String, Text> texts) {
    List<Table.Column> columns = new ArrayList<>();
    texts.forEach(
        (column, text) ->
            wording
                .unit(text)
                .ifPresent(unit -> columns.add(new Table.Column(column, unit.dimension(), unit))));
    return columns;
  }

  /** A key: a unit for numbers, or an observation for its named values. */
  private record Key(Table.Key key, Optional<Unit> unit, Optional<ValueList> values) {}

  private Optional<Key> key(Text text, @Nullable Text mode) {
    Optional<Property> property = vocabulary.property(text.value());
    if (property.isPresent() && property.get() instanceof Property.Observation observation) {
      return Optional.of(
          new Key(
              new Table.NamedKey(observation.values()),
              Optional.empty(),
              Optional.of(observation.values())));
    }
    if (mode == null) {
      complaints.add(
          text,
          "it is not said which row a number takes",
          "`row: exact`, `row: at least` or `row: at most`");
      return Optional.empty();
    }
    Optional<Table.RowMode> found = wording.oneOf("row rule", mode, MODES);
    Optional<Unit> unit = wording.unit(text);
    return found.flatMap(
        rule ->
            unit.map(
                u ->
                    new Key(
                        new Table.NumberKey(u.dimension(), rule),
                        Optional.of(u),
                        Optional.empty())));
  }

  /** The rows of one table while they are being read. */
  private final class Rows {
    private final String name;
    private final TableEntry entry;
    private final Key key;
    private final List<Table.Column> columns;
    private final List<Table.Row> rows = new ArrayList<>();
    private final Set<Object> keys = new LinkedHashSet<>();
    private final Map<String, Citation> cited = new LinkedHashMap<>();
    private final Map<String, String> texts = new LinkedHashMap<>();

    Rows(String name, TableEntry entry, Key key, List<Table.Column> columns) {
      this.name = name;
      this.entry = entry;
      this.key = key;
      this.columns = columns;
    }

    void add(Fields row) {
      List<String> valid = new ArrayList<>(OWN);
      columns.forEach(column -> valid.add(column.name()));
      row.fields().forEach(field -> wording.oneOf("field", field.key(), valid));
      Optional<Text> keyText = text(row, key.unit().isPresent() ? "at" : "is");
      Map<String, ExactInterval> cells = cells(row, keyText.map(Text::value).orElse(""));
      if (keyText.isEmpty() || cells.size() < columns.size()) {
        if (keyText.isEmpty()) {
          complaints.add(
              row,
              "a row of `" + name + "` without a key",
              key.unit().isPresent() ? "`at`" : "`is`");
        }
        return;
      }
      String id = keyText.get().value();
      row(id, keyText.get(), cells).ifPresent(found -> put(found, row, keyText.get()));
    }

    private Optional<Table.Row> row(String id, Text text, Map<String, ExactInterval> cells) {
      if (key.unit().isPresent()) {
        return wording
            .point(text, key.unit().get().dimension())
            .flatMap(typed -> typed.nominal())
            .map(number -> adjustment.apply(Adjustment.key(name, id), number))
            .map(number -> Table.Row.at(id, number, cells));
      }
      return wording
          .oneOf("named value", text, key.values().orElseThrow().values())
          .map(value -> Table.Row.named(id, value, cells));
    }

    private void put(Table.Row row, Fields fields, Text at) {
      Rational number = row.number();
      if (!keys.add(number == null ? at.value() : number)) {
        complaints.add(
            at, "`" + at.value() + "` stands twice in `" + name + "`", "one row for one key");
        return;
      }
      citation(fields)
          .ifPresent(
              citation -> {
                rows.add(row);
                cited.put(row.id(), citation);
                texts.put(row.id(), printed(fields));
              });
    }

    private Map<String, ExactInterval> cells(Fields row, String id) {
      Map<String, ExactInterval> cells = new LinkedHashMap<>();
      for (Table.Column column : columns) {
        Optional<Text> text = text(row, column.name());
        if (text.isEmpty()) {
          complaints.add(
              row,
              "a hole in `" + name + "`: no value in column `" + column.name() + "`",
              "a value in " + column.unit().symbol());
        } else {
          wording
              .value(text.get(), column.dimension())
              .ifPresent(
                  value ->
                      cells.put(
                          column.name(),
                          adjustment.apply(Adjustment.cell(name, id, column.name()), value.si())));
        }
      }
      return cells;
    }

    private String printed(Fields row) {
      List<String> cells = new ArrayList<>();
      columns.forEach(
          column -> text(row, column.name()).ifPresent(text -> cells.add(text.value())));
      return String.join(", ", cells);
    }

    private Optional<Citation> citation(Fields row) {
      return citations.of(
          row.at(),
          text(row, "source").orElse(entry.source()),
          text(row, "edition").orElse(entry.edition()),
          text(row, "clause").orElse(entry.clause()),
          text(row, "standing").orElse(entry.standing()),
          text(row, "note").orElse(entry.note()),
          confirmed(row));
    }

    /** Who has read the row in the standard itself: its own word, else that of the table. */
    private @Nullable ConfirmedEntry confirmed(Fields row) {
      Optional<Node> own = row.get(CONFIRMED);
      if (own.isPresent() && own.get() instanceof Fields fields) {
        return Binder.bind(fields, ConfirmedEntry.class, complaints).orElse(null);
      }
      own.ifPresent(
          node -> complaints.add(node, "nobody's word", "`{by: ..., on: ..., edition: ...}`"));
      return entry.confirmed();
    }

    /** A table of named values says something of every one, or lists what it leaves out. */
    void demandEveryName() {
      if (key.values().isEmpty()) {
        return;
      }
      List<String> values = key.values().get().values();
      List<String> without = entry.without().stream().map(Text::value).toList();
      entry.without().forEach(text -> wording.oneOf("named value", text, values));
      for (String value : values) {
        if (!keys.contains(value) && !without.contains(value)) {
          complaints.add(
              entry.at(),
              "a hole in `" + name + "`: no row for `" + value + "`",
              "a row, or the value under `without`");
        }
      }
    }

    Optional<Rules.CitedTable> table(String title) {
      if (rows.isEmpty()) {
        complaints.add(entry.at(), "`" + name + "` has no rows", "at least one row");
        return Optional.empty();
      }
      return Optional.of(
          new Rules.CitedTable(
              new Table(name, title, key.key(), columns, rows), cited, texts, entry.at()));
    }
  }

  private static Optional<Text> text(Fields row, String name) {
    Optional<Node> node = row.get(name);
    return node.isPresent() && node.get() instanceof Text text
        ? Optional.of(text)
        : Optional.empty();
  }
}
