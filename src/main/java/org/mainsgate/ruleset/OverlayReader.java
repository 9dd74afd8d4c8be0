package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.quantity.Accuracy;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.OverlayFile.AmendEntry;
import org.mainsgate.ruleset.OverlayFile.WiderEntry;
import org.mainsgate.ruleset.RulesetFile.CheckEntry;
import org.mainsgate.ruleset.RulesetFile.LimitEntry;
import org.mainsgate.ruleset.RulesetFile.RangeEntry;
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
    file.meterKinds().forEach(this::widen);
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    rules.lay(file);
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    List<Overlay.Relaxation> relaxations =
        new Tightening(file, before, rules.snapshot(), complaints).verify();
    return Optional.of(
        new Overlay(
            file.overlay().value(), file.title().value(), file.edition().value(), relaxations));
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

  private void widen(String name, WiderEntry entry) {
    MeterKind kind = rules.meterKinds().get(name);
    if (kind == null) {
      complaints.addUnknown(
          entry.standing().at(), "kind of meter", name, rules.meterKinds().keySet());
      return;
    }
    Map<String, List<MeterRange>> functions = new LinkedHashMap<>(kind.functions());
    entry
        .functions()
        .forEach(
            (function, ranges) -> {
              List<MeterRange> own = kind.functions().getOrDefault(function, List.of());
              if (own.size() != ranges.size()) {
                complaints.add(
                    entry.standing(),
                    "`" + function + "` of `" + name + "` has " + own.size() + " ranges",
                    "the same ranges, each with its accuracy or a wider one");
                return;
              }
              List<MeterRange> wider = new ArrayList<>();
              for (int i = 0; i < own.size(); i++) {
                wider(own.get(i), ranges.get(i)).ifPresent(wider::add);
              }
              functions.put(function, wider);
            });
    citations
        .standing(entry.standing())
        .ifPresent(
            standing ->
                rules
                    .meterKinds()
                    .put(name, new MeterKind(name, kind.title(), standing, functions)));
  }

  /** The same range with an accuracy that is nowhere better: the limits of error are a line. */
  private Optional<MeterRange> wider(MeterRange own, RangeEntry entry) {
    boolean same = is(entry.to(), own.to(), own) && is(entry.digit(), own.digit(), own);
    Optional<Accuracy> accuracy = wording.accuracy(entry.accuracy());
    if (!same || accuracy.isEmpty()) {
      return Optional.empty();
    }
    Optional<Unit> fixed = accuracy.get().absoluteUnit();
    if (fixed.isPresent() && !fixed.get().dimension().equals(own.unit().dimension())) {
      complaints.add(
          entry.accuracy(),
          "a fixed part of another kind than the range",
          "one " + own.unit().dimension().describe());
      return Optional.empty();
    }
    MeterRange wider = new MeterRange(own.to(), own.digit(), accuracy.get(), own.unit());
    if (isWider(wider, own, own.unit().offset()) && isWider(wider, own, own.to())) {
      return Optional.of(wider);
    }
    complaints.add(
        entry.accuracy(),
        "better than the default, at zero or at the end of the range",
        "at least `" + own.accuracy().describe() + "`");
    return Optional.empty();
  }

  private static boolean isWider(MeterRange wider, MeterRange own, Rational reading) {
    return wider.halfWidth(reading).compareTo(own.halfWidth(reading)) >= 0;
  }

  private boolean is(Text text, Rational value, MeterRange range) {
    Optional<Typed> typed = wording.point(text, range.unit().dimension());
    boolean same = typed.flatMap(Typed::nominal).map(value::equals).orElse(false);
    if (typed.isPresent() && !same) {
      complaints.add(
          text,
          "`" + text.value() + "` is another range than the default",
          "the same range, with its accuracy or a wider one");
    }
    return same;
  }
}
