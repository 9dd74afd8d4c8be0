package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.mainsgate.ruleset.RulesetFile.ConfirmedEntry;
import org.mainsgate.source.Complaints;

/** Takes a person's word, in an overlay, that values from memory stand so in the standard. */
final class Confirming {
  private final OverlayFile file;
  private final RulesReader rules;
  private final Citations citations;
  private final Complaints complaints;
  private final List<Overlay.Confirmation> confirmations = new ArrayList<>();

  Confirming(OverlayFile file, RulesReader rules, Citations citations, Complaints complaints) {
    this.file = file;
    this.rules = rules;
    this.citations = citations;
    this.complaints = complaints;
  }

  /** What is confirmed, in the order of the file; no value is changed by it. */
  List<Overlay.Confirmation> read() {
    file.confirm().forEach(this::confirm);
    return confirmations;
  }

  private void confirm(String name, ConfirmedEntry entry) {
    RulesReader.Snapshot now = rules.snapshot();
    Citation.Confirmation word = citations.confirmation(entry);
    if (file.limits().containsKey(name)) {
      complaints.add(
          entry.by(),
          "`" + name + "` is given a value and confirmed in one overlay",
          "`confirmed` beside its value, or the value of the rules");
      return;
    }
    Limit limit = now.limits().get(name);
    if (limit != null && limit.citation().isUnconfirmed()) {
      rules.confirm(limit.citedFrom(limit.citation().confirmedBy(word)));
      confirmations.add(new Overlay.Confirmation(limit.title() + ", " + limit.text(), word));
      return;
    }
    for (Rules.CitedTable table : now.tables().values()) {
      List<String> rows = unconfirmed(table, name);
      if (!rows.isEmpty()) {
        rules.confirm(confirmed(table, rows, word));
        confirmations.add(new Overlay.Confirmation(words(table, rows), word));
        return;
      }
    }
    List<String> known = names(now);
    if (!known.contains(name)) {
      complaints.addUnknown(entry.at(), "limit or table", name, known);
    }
  }

  /** The rows of a table that a name means and that rest on memory: all of them, or one. */
  private static List<String> unconfirmed(Rules.CitedTable table, String name) {
    String own = table.table().name();
    return table.table().rows().stream()
        .map(row -> row.id())
        .filter(row -> table.citation(row).isUnconfirmed())
        .filter(row -> name.equals(own) || name.equals(Adjustment.key(own, row)))
        .toList();
  }

  private static Rules.CitedTable confirmed(
      Rules.CitedTable table, List<String> rows, Citation.Confirmation word) {
    Map<String, Citation> cited = new LinkedHashMap<>(table.citations());
    rows.forEach(row -> cited.put(row, table.citation(row).confirmedBy(word)));
    return new Rules.CitedTable(table.table(), cited, table.texts(), table.at());
  }

  private static String words(Rules.CitedTable table, List<String> rows) {
    return table.table().title() + ", " + String.join(", ", rows);
  }

  /** The names of limits, tables and rows. */
  private static List<String> names(RulesReader.Snapshot now) {
    Stream<String> tables =
        now.tables().values().stream()
            .map(Rules.CitedTable::table)
            .flatMap(
                table ->
                    Stream.concat(
                        Stream.of(table.name()),
                        table.rows().stream().map(row -> Adjustment.key(table.name(), row.id()))));
    return Stream.concat(now.limits().keySet().stream(), tables).toList();
  }
}
