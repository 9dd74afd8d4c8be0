package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.ruleset.OverlayFile.AmendEntry;
import org.mainsgate.ruleset.RulesetFile.CheckEntry;
import org.mainsgate.ruleset.RulesetFile.LimitEntry;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/** Lays one overlay over rules that are whole, and complains of all that it may not do. */
final class OverlayReader {
  private final OverlayFile file;
  private final RulesReader rules;
  private final Citations citations;
  private final Wording wording;
  private final Complaints complaints;

  OverlayReader(
      OverlayFile file,
      RulesReader rules,
      Citations citations,
      Wording wording,
      Complaints complaints) {
    this.file = file;
    this.rules = rules;
    this.citations = citations;
    this.wording = wording;
    this.complaints = complaints;
  }

  /** The overlay, laid; empty after a complaint. */
  Optional<Overlay> read() {
    RulesReader.Snapshot before = rules.snapshot();
    citations.declare(file.sources());
    file.limits().forEach((name, entry) -> newName(name, entry, before));
    file.amend().forEach((id, entry) -> amended(id, entry, before));
    file.checks().forEach((id, entry) -> newCheck(id, entry, before));
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    List<Overlay.Confirmation> confirmations =
        new Confirming(file, rules, citations, complaints).read();
    rules.lay(file);
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    List<Overlay.Relaxation> relaxations =
        new Tightening(file, before, rules.snapshot(), complaints).verify();
    return Optional.of(
        new Overlay(
            file.overlay().value(),
            file.title().value(),
            file.edition().value(),
            relaxations,
            confirmations));
  }

  private void newName(String name, LimitEntry entry, RulesReader.Snapshot before) {
    if (!before.limits().containsKey(name) && rules.means(name)) {
      complaints.add(
          entry.value(),
          "`" + name + "` already means something else, and is no limit",
          OverlayFile.MAY);
    }
  }

  private void amended(String id, AmendEntry entry, RulesReader.Snapshot before) {
    if (!before.checks().containsKey(id)) {
      complaints.addUnknown(entry.at(), "check", id, before.checks().keySet());
    }
    Set<String> ids = new LinkedHashSet<>(before.checks().keySet());
    ids.addAll(file.checks().keySet());
    for (Text text : entry.requires()) {
      boolean known = wording.oneOf("check", text, ids).isPresent();
      if (known && waitsFor(text.value(), id, before, new LinkedHashSet<>())) {
        complaints.add(
            text,
            "`" + text.value() + "` itself waits for `" + id + "`",
            "a check that does not rest on this one");
      }
    }
  }

  /** Whether a check waits for another, directly or through others. */
  private boolean waitsFor(String id, String other, RulesReader.Snapshot before, Set<String> seen) {
    return id.equals(other)
        || (seen.add(id)
            && requires(id, before).stream().anyMatch(next -> waitsFor(next, other, before, seen)));
  }

  private List<String> requires(String id, RulesReader.Snapshot before) {
    List<String> all = new ArrayList<>();
    Optional.ofNullable(before.checks().get(id)).ifPresent(check -> all.addAll(check.requires()));
    Optional.ofNullable(file.checks().get(id))
        .ifPresent(check -> check.requires().forEach(text -> all.add(text.value())));
    file.amendment(id).ifPresent(more -> more.requires().forEach(text -> all.add(text.value())));
    return all;
  }

  private void newCheck(String id, CheckEntry entry, RulesReader.Snapshot before) {
    if (before.checks().containsKey(id)) {
      complaints.add(
          entry.at(),
          "`" + id + "` is a check of the rules already",
          "another name for a check of its own, or `amend: " + id + "`");
    }
  }
}
