package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;

/**
 * A table with one key and columns of numbers.
 *
 * @param title in trade terms
 * @param rows at least one, each with a key of the right sort, none twice; kept in the order of
 *     their keys
 */
public record Table(String name, String title, Key key, List<Column> columns, List<Row> rows) {
  /** What a row is found by. */
  public sealed interface Key permits NumberKey, NamedKey {}

  /** A number, in SI units. */
  public record NumberKey(Dimension dimension, RowMode mode) implements Key {}

  /** A named value. */
  public record NamedKey(ValueList values) implements Key {}

  /** Which row belongs to a number. */
  public enum RowMode {
    /** The row of this very number. */
    EXACT,
    /** The smallest row that is at least the number. */
    AT_LEAST,
    /** The greatest row that is at most the number. */
    AT_MOST
  }

  /** A column of numbers of one dimension; the unit is for print. */
  public record Column(String name, Dimension dimension, Unit unit) {}

  /**
   * A row with a number or a named value for its key, exactly one of them.
   *
   * @param cells by column name, in SI units; what is absent is unknown
   */
  public record Row(
      String id,
      @Nullable Rational number,
      @Nullable String named,
      Map<String, ExactInterval> cells) {
    /** A row with one key. */
    public Row {
      cells = Map.copyOf(cells);
      if ((number == null) == (named == null)) {
        throw new IllegalArgumentException("row " + id + " needs one key");
      }
    }

    /** The row of a number in SI units. */
    public static Row at(String id, Rational number, Map<String, ExactInterval> cells) {
      return new Row(id, number, null, cells);
    }

    /** The row of a named value. */
    public static Row named(String id, String value, Map<String, ExactInterval> cells) {
      return new Row(id, null, value, cells);
    }

    ExactInterval cell(String column) {
      return cells.getOrDefault(column, ExactInterval.UNBOUNDED);
    }

    private Rational key() {
      return Objects.requireNonNull(number);
    }
  }

  /** The rows that a lookup touches, and whether it may also fall outside the table. */
  record Touched(List<Row> rows, boolean outside) {
    /** The hull of a column over the rows; unbounded if the lookup may fall outside. */
    ExactInterval cell(String column) {
      if (outside) {
        return ExactInterval.UNBOUNDED;
      }
      return rows.stream()
          .map(row -> row.cell(column))
          .reduce(ExactInterval::hull)
          .orElse(ExactInterval.UNBOUNDED);
    }
  }

  /** A table whose rows fit its key. */
  public Table {
    columns = List.copyOf(columns);
    boolean numbers = key instanceof NumberKey;
    if (rows.isEmpty() || rows.stream().anyMatch(row -> (row.number() != null) != numbers)) {
      throw new IllegalArgumentException("rows of " + name + " do not fit its key");
    }
    Set<Object> keys = new HashSet<>();
    if (!rows.stream().allMatch(row -> keys.add(numbers ? row.key() : name(row)))) {
      throw new IllegalArgumentException("a key of " + name + " stands twice");
    }
    List<Row> sorted = new ArrayList<>(rows);
    if (numbers) {
      sorted.sort(Comparator.comparing(Row::key));
    }
    rows = List.copyOf(sorted);
  }

  private static String name(Row row) {
    return Objects.requireNonNull(row.named());
  }

  Optional<Column> column(String wanted) {
    return columns.stream().filter(column -> column.name().equals(wanted)).findFirst();
  }

  /** The rows of the named values that are still possible. */
  Touched touched(Set<String> values) {
    List<Row> found = rows.stream().filter(row -> values.contains(name(row))).toList();
    return new Touched(found, found.size() < values.size());
  }

  /**
   * The rows that some number of the interval belongs to. With keys 1, 2, 4:
   *
   * <pre>
   *   AT_LEAST  ───────]1────]2──────────]4  outside
   *   AT_MOST   outside  [1────[2──────────[4──────
   * </pre>
   *
   * <p>A key belongs to its own row in every mode, so 1.0 mm² finds the row 1.0 mm².
   */
  Touched touched(RowMode mode, ExactInterval number) {
    return switch (mode) {
      case EXACT -> exact(number);
      case AT_LEAST -> atLeast(number);
      case AT_MOST -> atMost(number);
    };
  }

  /** Between two rows there is none: only a point can be on a row with certainty. */
  private Touched exact(ExactInterval number) {
    List<Row> found = rows.stream().filter(row -> number.contains(row.key())).toList();
    return new Touched(found, found.isEmpty() || !number.isPoint());
  }

  private Touched atLeast(ExactInterval number) {
    List<Row> found = new ArrayList<>();
    Rational lo = number.lo();
    Rational hi = number.hi();
    @Nullable Rational before = null;
    for (Row row : rows) {
      boolean reaches = lo == null || lo.compareTo(row.key()) <= 0;
      boolean starts = before == null || hi == null || before.compareTo(hi) < 0;
      if (reaches && starts) {
        found.add(row);
      }
      before = row.key();
    }
    return new Touched(found, hi == null || hi.compareTo(last().key()) > 0);
  }

  private Touched atMost(ExactInterval number) {
    List<Row> found = new ArrayList<>();
    Rational lo = number.lo();
    Rational hi = number.hi();
    for (int i = 0; i < rows.size(); i++) {
      boolean reaches = hi == null || rows.get(i).key().compareTo(hi) <= 0;
      boolean last = i == rows.size() - 1;
      if (reaches && (last || lo == null || lo.compareTo(rows.get(i + 1).key()) < 0)) {
        found.add(rows.get(i));
      }
    }
    return new Touched(found, lo == null || lo.compareTo(rows.get(0).key()) < 0);
  }

  private Row last() {
    return rows.get(rows.size() - 1);
  }

  /** The signs of a column's cells. */
  Signs signs(String column) {
    return rows.stream().map(row -> Signs.of(row.cell(column))).reduce(Signs::or).orElse(Signs.ANY);
  }
}
