package org.mainsgate.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.mainsgate.ruleset.Rules;

/**
 * Pages in Markdown for a person at the bench: one for each check, and one that lists them.
 *
 * <p>They say less than {@link RulesScreen} does: no tests, and formulas only beside their words.
 */
public final class CheckPages {
  private static final String INDEX = "README.md";

  private final CheckCards cards;
  private final Map<String, Rules> profiles;

  /**
   * Pages of these rules.
   *
   * @param profiles the rules by the profile's name, at least one; all of one vocabulary
   */
  public CheckPages(Map<String, Rules> profiles) {
    this.profiles = Collections.unmodifiableMap(new LinkedHashMap<>(profiles));
    this.cards = new CheckCards(profiles, List.of());
  }

  /** The text of every page by the name of its file. */
  public Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    files.put(INDEX, index());
    cards.ids().forEach(id -> files.put(id + ".md", page(cards.of(id))));
    return files;
  }

  private String index() {
    Page page = new Page();
    page.head(1, "The checks");
    page.text(
        "What the rules look at, one page for each check, in the order in which they are printed. "
            + "Edition "
            + profiles.values().iterator().next().edition()
            + "; profiles "
            + String.join(", ", profiles.keySet())
            + ". These pages are made from the rules by `rules pages` and are not edited.");
    cards
        .byStage()
        .forEach(
            (stage, checks) -> {
              page.head(2, capital(stage.title()));
              page.text(stage.says());
              List<List<String>> rows = new ArrayList<>();
              checks.forEach(
                  check ->
                      rows.add(
                          List.of(
                              link(check.id(), check.title()),
                              cards.over(check),
                              check.protects())));
              page.table(List.of("check", "judged on", "protects"), rows);
            });
    return page.toString();
  }

  private static String page(CheckCard card) {
    Page page = new Page();
    page.head(1, card.title());
    page.text("Protects **" + card.protects() + "**.");
    page.text(
        "`"
            + card.id()
            + "`, in the "
            + String.join(" and the ", card.stages())
            + ", judged on "
            + card.over()
            + "."
            + (card.onlyUnder().isEmpty()
                ? ""
                : " Only under " + String.join(", ", card.onlyUnder()) + "."));
    asked(page, card);
    asks(page, card.asks());
    limits(page, card);
    toDo(page, card);
    takesAway(page, card);
    page.head(2, "Sources");
    page.text("The rule itself: " + card.source() + ".");
    page.sources();
    page.text("[All checks](" + INDEX + ")");
    return page.toString();
  }

  private static void asked(Page page, CheckCard card) {
    page.head(2, "What must hold");
    page.text(
        card.applies().isNone()
            ? "It always applies."
            : "It applies where " + card.applies().words() + ".");
    page.text("Then this must hold: " + card.requirement().words() + ".");
    page.code(card.requirement().text());
    List<CheckCard.Step> steps = inRequirement(card);
    page.items(
        steps.stream().map(step -> "‘" + step.title() + "’ is " + step.is().words()).toList());
    page.text("If it does not: **" + card.consequence() + "**.");
  }

  /** The steps that the requirement and the condition use, by themselves or through others. */
  private static List<CheckCard.Step> inRequirement(CheckCard card) {
    StringBuilder used = new StringBuilder(card.applies().text() + " " + card.requirement().text());
    List<CheckCard.Step> steps = new ArrayList<>();
    boolean more = true;
    while (more) {
      more = false;
      for (CheckCard.Step step : card.steps()) {
        if (!steps.contains(step) && used.toString().matches(".*\\b" + step.name() + "\\b.*")) {
          steps.add(step);
          used.append(' ').append(step.is().text());
          more = true;
        }
      }
    }
    return steps;
  }

  /** What needs words has a part of its own; the rest is a list. */
  private static void asks(Page page, List<CheckCard.Ask> asks) {
    page.head(2, "How to find out");
    List<String> plain = new ArrayList<>();
    for (CheckCard.Ask ask : asks) {
      if (ask.method().isEmpty() && ask.caution().isEmpty()) {
        plain.add("**" + ask.title() + "**, " + written(ask));
      } else {
        page.head(3, capital(ask.title()));
        page.text(capital(written(ask)));
        page.text(ask.method());
        page.text(ask.caution().isEmpty() ? "" : "**Caution:** " + ask.caution());
      }
    }
    if (plain.size() < asks.size() && !plain.isEmpty()) {
      page.head(3, "And");
    }
    page.items(plain);
  }

  private static String written(CheckCard.Ask ask) {
    String place = ask.ofThings() ? " of: " : " with: ";
    return "`" + ask.name() + "`" + place + ask.of() + "; " + ask.takes() + ".";
  }

  private static void limits(Page page, CheckCard card) {
    if (card.limits().isEmpty() && card.tables().isEmpty()) {
      return;
    }
    page.head(2, "Limits");
    List<List<String>> rows = new ArrayList<>();
    for (CheckCard.Limits limit : card.limits()) {
      for (CheckCard.Value value : limit.values()) {
        rows.add(
            List.of(
                limit.title(),
                value.profiles(),
                value.value(),
                value.cited().standing(),
                page.source(value.cited())));
      }
    }
    if (!rows.isEmpty()) {
      page.table(List.of("limit", "profile", "value", "standing", "source"), rows);
    }
    card.tables().forEach(table -> table(page, table));
  }

  private static void table(Page page, CheckCard.Tables table) {
    page.head(3, capital(table.title()));
    List<String> head = new ArrayList<>(List.of("profile", table.key()));
    head.addAll(table.columns());
    head.addAll(List.of("standing", "source"));
    List<List<String>> rows = new ArrayList<>();
    for (CheckCard.Rows group : table.rows()) {
      for (CheckCard.Row row : group.rows()) {
        List<String> cells = new ArrayList<>(List.of(group.profiles(), row.key()));
        cells.addAll(row.cells());
        cells.addAll(List.of(row.cited().standing(), page.source(row.cited())));
        rows.add(cells);
      }
    }
    page.table(head, rows);
  }

  private static void toDo(Page page, CheckCard card) {
    if (card.remedies().isEmpty() && card.caution().isEmpty()) {
      return;
    }
    page.head(2, "What to do where it does not hold");
    if (card.remedies().size() > 1) {
      page.text("The first of these that fits:");
    }
    page.numbered(
        card.remedies().stream()
            .map(
                remedy ->
                    (remedy.when().isNone()
                            ? (card.remedies().size() > 1 ? "*Otherwise:* " : "")
                            : "*Where " + remedy.when().words() + ":* ")
                        + remedy.says())
            .toList());
    if (!card.caution().isEmpty()) {
      page.text("**Caution:** " + card.caution());
    }
  }

  private static void takesAway(Page page, CheckCard card) {
    List<String> items = new ArrayList<>();
    if (!card.requires().isEmpty()) {
      items.add(
          "a check that comes first has not passed: "
              + card.requires().stream()
                  .map(other -> link(other.id(), other.title()))
                  .collect(Collectors.joining(", ")));
    }
    card.provided().forEach(condition -> items.add(condition.says()));
    card.plausible().forEach(condition -> items.add("not believed: " + condition.says()));
    card.voidedBy().forEach(work -> items.add("work since: " + work));
    if (!items.isEmpty()) {
      page.head(2, "What may take a pass away");
      page.items(items);
    }
  }

  private static String link(String id, String title) {
    return "[" + title + "](" + id + ".md)";
  }

  private static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** A page as it grows; each part is set off by a blank line. */
  private static final class Page {
    private final StringBuilder text = new StringBuilder();
    private final List<String> sources = new ArrayList<>();

    /** The number of a source, with its note. */
    String source(CheckCard.Cited cited) {
      String source =
          cited.note().isEmpty() ? cited.source() : cited.source() + "; " + cited.note();
      if (!sources.contains(source)) {
        sources.add(source);
      }
      return "[" + (sources.indexOf(source) + 1) + "]";
    }

    /** All sources by their numbers. */
    void sources() {
      numbered(sources);
    }

    void head(int level, String title) {
      part("#".repeat(level) + " " + title);
    }

    void text(String paragraph) {
      part(paragraph);
    }

    void code(String line) {
      part("```\n" + line + "\n```");
    }

    void items(List<String> items) {
      if (!items.isEmpty()) {
        part(items.stream().map(item -> "- " + item).collect(Collectors.joining("\n")));
      }
    }

    void numbered(List<String> items) {
      if (!items.isEmpty()) {
        part(items.stream().map(item -> "1. " + item).collect(Collectors.joining("\n")));
      }
    }

    void table(List<String> head, List<List<String>> rows) {
      List<String> lines = new ArrayList<>();
      lines.add(row(head));
      lines.add("|" + "---|".repeat(head.size()));
      rows.forEach(row -> lines.add(row(row)));
      part(String.join("\n", lines));
    }

    private static String row(List<String> cells) {
      return cells.stream()
          .map(cell -> cell.replace("|", "\\|"))
          .collect(Collectors.joining(" | ", "| ", " |"));
    }

    private void part(String part) {
      if (part.isBlank()) {
        return;
      }
      if (text.length() > 0) {
        text.append("\n");
      }
      text.append(part.strip()).append('\n');
    }

    @Override
    public String toString() {
      return text.toString();
    }
  }
}
