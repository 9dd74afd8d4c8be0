package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.formula.NumberFormula;
import org.mainsgate.formula.Table;
import org.mainsgate.report.CheckCard.Cited;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Citation;
import org.mainsgate.ruleset.Limit;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;

/**
 * The limits and tables of one check under several profiles side by side; profiles that agree stand
 * together.
 *
 * @param check the check
 * @param rules rules that have it
 * @param profiles all rules, by the profile's name
 */
record SideBySide(Check check, Rules rules, Map<String, Rules> profiles) {

  /** Every value that the check compares with. */
  List<CheckCard.Limits> limits() {
    Set<String> names = new LinkedHashSet<>();
    check.statements().forEach(statement -> names.addAll(statement.limits()));
    shown().forEach(shown -> names.addAll(shown.limits()));
    List<CheckCard.Limits> limits = new ArrayList<>();
    for (String name : names) {
      Map<CheckCard.Value, List<String>> groups =
          grouped(
              found ->
                  Optional.ofNullable(found.limits().get(name))
                      .map(
                          limit -> new CheckCard.Value("", limit.text(), cited(limit.citation()))));
      limits.add(
          new CheckCard.Limits(
              name,
              titleOfLimit(name),
              groups.entrySet().stream()
                  .map(e -> new CheckCard.Value(join(e), e.getKey().value(), e.getKey().cited()))
                  .toList()));
    }
    return limits;
  }

  private Stream<NumberFormula> shown() {
    return check.notes().stream().flatMap(note -> note.shows().stream());
  }

  private String titleOfLimit(String name) {
    Limit limit = rules.limits().get(name);
    return limit == null ? name : limit.title();
  }

  /** Every table that the check looks up. */
  List<CheckCard.Tables> tables() {
    Set<String> names = new LinkedHashSet<>();
    check.statements().forEach(statement -> names.addAll(statement.tables()));
    shown().forEach(shown -> names.addAll(shown.tables()));
    List<CheckCard.Tables> tables = new ArrayList<>();
    for (String name : names) {
      Rules.CitedTable one = rules.tables().get(name);
      if (one != null) {
        Map<List<CheckCard.Row>, List<String>> groups =
            grouped(found -> Optional.ofNullable(found.tables().get(name)).map(this::rows));
        tables.add(
            new CheckCard.Tables(
                name,
                one.table().title(),
                key(one.table().key()),
                one.table().columns().stream()
                    .map(column -> column.name().replace('_', ' '))
                    .toList(),
                groups.entrySet().stream()
                    .map(e -> new CheckCard.Rows(join(e), e.getKey()))
                    .toList()));
      }
    }
    return tables;
  }

  private List<CheckCard.Row> rows(Rules.CitedTable cited) {
    List<CheckCard.Row> rows = new ArrayList<>();
    for (Table.Row row : cited.table().rows()) {
      String cells = cited.texts().getOrDefault(row.id(), "");
      rows.add(
          new CheckCard.Row(
              keyOf(cited.table(), row),
              List.of(cells.split(", ", -1)),
              cited(cited.citation(row.id()))));
    }
    return rows;
  }

  private String keyOf(Table table, Table.Row row) {
    if (table.key() instanceof Table.NamedKey named) {
      return rules.vocabulary().properties().values().stream()
          .filter(p -> p instanceof Property.Observation o && o.values().equals(named.values()))
          .map(p -> ((Property.Observation) p).title(row.id()))
          .findFirst()
          .orElse(row.id());
    }
    return row.id();
  }

  private <T> Map<T, List<String>> grouped(Function<Rules, Optional<T>> of) {
    Map<T, List<String>> groups = new LinkedHashMap<>();
    profiles.forEach(
        (name, found) ->
            of.apply(found)
                .ifPresent(
                    value -> groups.computeIfAbsent(value, v -> new ArrayList<>()).add(name)));
    return groups;
  }

  private String join(Map.Entry<?, List<String>> group) {
    List<String> names = group.getValue();
    return names.size() == profiles.size() && names.size() > 1 ? "all" : String.join(", ", names);
  }

  private static String key(Table.Key key) {
    if (key instanceof Table.NumberKey number) {
      return switch (number.mode()) {
        case EXACT -> "exactly";
        case AT_LEAST -> "up to";
        case AT_MOST -> "from";
      };
    }
    return "where it is";
  }

  /** Where a value comes from, and how well it is known. */
  static Cited cited(Citation citation) {
    String edition = citation.edition().equals("none") ? "" : "edition " + citation.edition();
    String source =
        Stream.of(citation.title(), edition, citation.clause())
            .filter(part -> !part.isEmpty())
            .collect(Collectors.joining(", "));
    return new Cited(source, standing(citation), citation.note());
  }

  private static String standing(Citation citation) {
    if (citation.isUnconfirmed()) {
      return citation.standing().words() + ": holds until confirmed";
    }
    return citation.standing().words()
        + citation
            .confirmed()
            .map(by -> ", confirmed by " + by.by() + " on " + by.on() + " in " + by.edition())
            .orElse("");
  }

  /** A citation on one line. */
  static String sentence(Cited cited) {
    return Stream.of(cited.source(), cited.standing(), cited.note())
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("; "));
  }
}
