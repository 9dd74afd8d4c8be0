package org.mainsgate.formula;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;
import org.mainsgate.quantity.Unit;

/**
 * A cell of a table. The rows are always chosen in rationals: a key of 1.0 mm² must find the row
 * 1.0 mm², which doubles rounded outward would miss by their last digit.
 */
record Cell(Table table, Table.Column column, Key key) implements NumberNode {
  /** What the table is asked with. */
  sealed interface Key permits ByNumber, ByName {}

  record ByNumber(NumberNode number, Table.RowMode mode) implements Key {}

  record ByName(Meaning.Observation observation) implements Key {}

  @Override
  public List<Node> parts() {
    return key instanceof ByNumber by ? List.of(by.number()) : List.of();
  }

  @Override
  public void tell(Survey.Builder survey) {
    survey.table(table.name());
    if (key instanceof ByName by) {
      survey.input(by.observation().reference());
    }
  }

  @Override
  public Dimension dimension() {
    return column.dimension();
  }

  @Override
  public Interval fast(Facts facts) {
    return exact(facts).outward();
  }

  @Override
  public ExactInterval exact(Facts facts) {
    return touched(facts).cell(column.name());
  }

  private Table.Touched touched(Facts facts) {
    if (key instanceof ByNumber by) {
      return table.touched(by.mode(), by.number().exact(facts));
    }
    Meaning.Observation observation = ((ByName) key).observation();
    Set<String> candidates = TruthNode.candidates(observation, facts);
    return table.touched(candidates);
  }

  @Override
  public Signs signs() {
    return table.signs(column.name()).orUnknown();
  }

  @Override
  public Sign sign(String limit) {
    return key instanceof ByNumber by ? by.number().sign(limit).unclear() : Sign.ABSENT;
  }

  @Override
  public void rows(Facts facts, Consumer<RowUse> rows) {
    NumberNode.super.rows(facts, rows);
    touched(facts).rows().forEach(row -> rows.accept(new RowUse(table.name(), row.id())));
  }

  @Override
  public Optional<Unit> unit() {
    return Optional.of(column.unit());
  }
}
