package org.mainsgate.ruleset;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.ruleset.RulesetFile.CitationEntry;
import org.mainsgate.ruleset.RulesetFile.ConfirmedEntry;
import org.mainsgate.ruleset.RulesetFile.LimitEntry;
import org.mainsgate.ruleset.RulesetFile.SourceEntry;
import org.mainsgate.source.CalendarDate;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;

/** The sources that rulesets have declared, and the citations made of them. */
final class Citations {
  private final Map<String, SourceEntry> sources = new LinkedHashMap<>();
  private final Complaints complaints;

  Citations(Complaints complaints) {
    this.complaints = complaints;
  }

  void declare(Map<String, SourceEntry> entries) {
    entries.forEach(
        (name, entry) -> {
          if (sources.putIfAbsent(name, entry) != null) {
            complaints.add(
                entry.title(), "the source `" + name + "` is declared twice", "one of them");
          }
        });
  }

  Optional<Standing> standing(Text text) {
    Optional<Standing> standing = Standing.of(text.value());
    if (standing.isEmpty()) {
      complaints.addUnknown(
          text.at(),
          "standing",
          text.value(),
          Arrays.stream(Standing.values()).map(Standing::words).toList());
    }
    return standing;
  }

  Optional<Citation> of(LimitEntry entry) {
    return of(
        entry.at(),
        entry.source(),
        entry.edition(),
        entry.clause(),
        entry.standing(),
        entry.note(),
        entry.confirmed());
  }

  Optional<Citation> of(CitationEntry entry) {
    return of(
        entry.at(),
        entry.of(),
        entry.edition(),
        entry.clause(),
        entry.standing(),
        entry.note(),
        null);
  }

  /** The citation of these words, the source's own edition where no other is named. */
  Optional<Citation> of(
      Position at,
      @Nullable Text source,
      @Nullable Text edition,
      @Nullable Text clause,
      @Nullable Text standing,
      @Nullable Text note,
      @Nullable ConfirmedEntry confirmed) {
    if (source == null || standing == null) {
      complaints.add(at, "a value without source or standing", "`source` and `standing`");
      return Optional.empty();
    }
    SourceEntry entry = sources.get(source.value());
    if (entry == null) {
      complaints.addUnknown(source.at(), "source", source.value(), sources.keySet());
      return Optional.empty();
    }
    String own = edition == null ? Wording.orEmpty(entry.edition()) : edition.value();
    return standing(standing)
        .map(
            found ->
                new Citation(
                    source.value(),
                    entry.title().value(),
                    own,
                    Wording.orEmpty(clause),
                    found,
                    Wording.orEmpty(note),
                    Optional.ofNullable(confirmed).map(this::confirmation)));
  }

  /** A person's word; complained of where it is nobody's, on no day, or about no edition. */
  Citation.Confirmation confirmation(ConfirmedEntry entry) {
    if (entry.by().value().isBlank() || entry.edition().value().isBlank()) {
      complaints.add(entry.by(), "confirmed without a name or an edition", "`by` and `edition`");
    }
    if (!CalendarDate.Check.isDate(entry.on().value())) {
      complaints.add(
          entry.on(),
          "`" + entry.on().value() + "` is not a calendar date",
          "year-month-day, such as `2026-11-25`");
    }
    return new Citation.Confirmation(
        entry.by().value().strip(), entry.on().value(), entry.edition().value().strip());
  }
}
