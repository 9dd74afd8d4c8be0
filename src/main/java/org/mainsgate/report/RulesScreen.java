package org.mainsgate.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.source.Visible;

/** Rules for a person at a terminal of 80 columns: a list of checks, or all about one of them. */
public final class RulesScreen {
  private static final int INDENT = 2;

  private final CheckCards cards;

  /**
   * A screen for these rules.
   *
   * @param profiles the rules by the profile's name, at least one; all of one vocabulary
   * @param tests what the rules' own tests expect
   */
  public RulesScreen(Map<String, Rules> profiles, List<CheckTest> tests) {
    this.cards = new CheckCards(profiles, tests);
  }

  /** The ids of all checks, in the order of the rules. */
  public Set<String> checks() {
    return cards.ids();
  }

  /** Every check on a line, by stage. */
  public String list() {
    Lines lines = new Lines();
    int widest = checks().stream().mapToInt(Visible::width).max().orElse(0) + INDENT;
    cards
        .byStage()
        .forEach(
            (stage, checks) -> {
              lines.add(0, stage.title() + " (" + stage.id() + ")");
              checks.forEach(check -> lines.add(INDENT, padded(check.id(), widest), check.title()));
              lines.blank();
            });
    return lines.toString();
  }

  /** Everything about one check, and a blank line. */
  public String check(String id) {
    CheckCard card = cards.of(id);
    Lines lines = new Lines();
    lines.add(0, card.id() + "  ", card.title());
    lines.add(INDENT, "protects ", card.protects());
    lines.add(INDENT, "stage: ", String.join(", ", card.stages()));
    lines.add(INDENT, "judged on: ", card.over());
    if (!card.onlyUnder().isEmpty()) {
      lines.add(INDENT, "only under: ", String.join(", ", card.onlyUnder()));
    }
    lines.add(INDENT, "source: ", card.source());
    lines.blank().add(0, "applies");
    if (card.applies().isNone()) {
      lines.add(INDENT, "always");
    } else {
      formula(lines, card.applies());
    }
    lines.blank().add(0, "must hold");
    formula(lines, card.requirement());
    lines.add(INDENT, "if not: ", card.consequence());
    steps(lines, card.steps());
    requires(lines, card.requires());
    limits(lines, card);
    asks(lines, card.asks());
    whens(lines, "hold in place of a pass, unless it is certain how it was taken", card.provided());
    whens(lines, "hold in place of a pass, where a reading can't be true", card.plausible());
    whens(lines, "remarks", card.remarks());
    whens(lines, "to do where it is not met: the first that fits", card.remedies());
    if (!card.caution().isEmpty()) {
      lines.blank().add(0, "caution: ", card.caution());
    }
    bullets(lines, "work that takes the evidence away", card.voidedBy());
    tests(lines, card.tests());
    return lines.blank().toString();
  }

  private static void formula(Lines lines, CheckCard.Formula formula) {
    lines.add(INDENT, formula.words());
    lines.add(2 * INDENT, formula.text());
  }

  private static void steps(Lines lines, List<CheckCard.Step> steps) {
    if (steps.isEmpty()) {
      return;
    }
    lines.blank().add(0, "where");
    for (CheckCard.Step step : steps) {
      lines.add(INDENT, "‘" + step.title() + "’ is " + step.is().words());
      lines.add(2 * INDENT, step.name() + " = ", step.is().text());
    }
  }

  private static void requires(Lines lines, List<CheckCard.Link> requires) {
    if (!requires.isEmpty()) {
      lines.blank().add(0, "passes only after");
      requires.forEach(link -> lines.add(INDENT, link.id() + "  ", link.title()));
    }
  }

  private static void limits(Lines lines, CheckCard card) {
    if (card.limits().isEmpty() && card.tables().isEmpty()) {
      return;
    }
    lines.blank().add(0, "limits, by profile");
    for (CheckCard.Limits limit : card.limits()) {
      lines.add(INDENT, limit.name() + ": ", limit.title());
      int widest = widest(limit.values().stream().map(CheckCard.Value::profiles).toList());
      int values = widest(limit.values().stream().map(CheckCard.Value::value).toList());
      for (CheckCard.Value value : limit.values()) {
        lines.add(
            2 * INDENT,
            padded(value.profiles(), widest) + padded(value.value(), values),
            SideBySide.sentence(value.cited()));
      }
    }
    card.tables().forEach(table -> table(lines, table));
  }

  private static void table(Lines lines, CheckCard.Tables table) {
    lines.add(INDENT, table.name() + ": ", table.title());
    for (CheckCard.Rows rows : table.rows()) {
      lines.add(2 * INDENT, rows.profiles());
      List<List<String>> grid = new ArrayList<>();
      grid.add(cells(table.key(), table.columns()));
      rows.rows().forEach(row -> grid.add(cells(row.key(), row.cells())));
      List<Integer> widths = widths(grid);
      lines.add(3 * INDENT, row(grid.get(0), widths).stripTrailing());
      for (int i = 0; i < rows.rows().size(); i++) {
        CheckCard.Row row = rows.rows().get(i);
        boolean same = i > 0 && rows.rows().get(i - 1).cited().equals(row.cited());
        lines.add(
            3 * INDENT,
            row(grid.get(i + 1), widths),
            same ? "″" : SideBySide.sentence(row.cited()));
      }
    }
  }

  private static List<String> cells(String key, List<String> others) {
    List<String> cells = new ArrayList<>(List.of(key));
    cells.addAll(others);
    return cells;
  }

  private static List<Integer> widths(List<List<String>> grid) {
    List<Integer> widths = new ArrayList<>();
    for (int column = 0; column < grid.get(0).size(); column++) {
      int at = column;
      widths.add(widest(grid.stream().map(row -> at < row.size() ? row.get(at) : "").toList()));
    }
    return widths;
  }

  private static String row(List<String> cells, List<Integer> widths) {
    StringBuilder row = new StringBuilder();
    for (int i = 0; i < Math.min(cells.size(), widths.size()); i++) {
      row.append(padded(cells.get(i), widths.get(i)));
    }
    return row.toString();
  }

  private static void asks(Lines lines, List<CheckCard.Ask> asks) {
    lines.blank().add(0, "what to find out");
    for (CheckCard.Ask ask : asks) {
      lines.add(INDENT, ask.name() + ": ", ask.title() + " (" + ask.of() + ")");
      lines.add(2 * INDENT, ask.takes().replace("`", ""));
      if (!ask.method().isEmpty()) {
        lines.add(2 * INDENT, "method: ", ask.method());
      }
      if (!ask.caution().isEmpty()) {
        lines.add(2 * INDENT, "caution: ", ask.caution());
      }
    }
  }

  private static void whens(Lines lines, String head, List<CheckCard.When> whens) {
    if (whens.isEmpty()) {
      return;
    }
    lines.blank().add(0, head);
    for (CheckCard.When when : whens) {
      lines.add(INDENT, "- ", when.says());
      if (!when.when().isNone()) {
        lines.add(2 * INDENT, "[" + when.when().text() + "]");
      }
    }
  }

  private static void bullets(Lines lines, String head, List<String> items) {
    if (!items.isEmpty()) {
      lines.blank().add(0, head);
      items.forEach(item -> lines.add(INDENT, "- ", item));
    }
  }

  private static void tests(Lines lines, List<CheckCard.Tests> tests) {
    if (tests.isEmpty()) {
      return;
    }
    lines.blank().add(0, "its tests");
    for (CheckCard.Tests outcome : tests) {
      lines.add(INDENT, outcome.outcome());
      outcome.names().forEach(name -> lines.add(2 * INDENT, "- ", name));
    }
  }

  private static int widest(List<String> texts) {
    return texts.stream().mapToInt(Visible::width).max().orElse(0) + INDENT;
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(Math.max(0, width - Visible.width(text)));
  }
}
