package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.mainsgate.formula.Sign;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.OverlayFile.AmendEntry;
import org.mainsgate.ruleset.OverlayFile.RelaxEntry;
import org.mainsgate.ruleset.RulesetFile.LimitEntry;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/**
 * The law of overlays: no finding is better than without it, unless a person says so by name.
 *
 * <p>Which way a limit is tight follows from the signs of all formulas that an outcome rests on, as
 * they were and as they are amended. Two ways round the signs are closed too:
 *
 * <ul>
 *   <li>a fail that comes to rest on a value from memory would be a hold, and a hold for a value
 *       from memory would be gone if the overlay had it from elsewhere;
 *   <li>a judgement releases what is not met, but not what is undecided: where a person may judge,
 *       a tighter requirement could turn the second into the first.
 * </ul>
 */
final class Tightening {
  private final OverlayFile file;
  private final RulesReader.Snapshot before;
  private final RulesReader.Snapshot after;
  private final Complaints complaints;
  private final List<Overlay.Relaxation> relaxations = new ArrayList<>();
  private final Set<String> relaxed = new HashSet<>();

  Tightening(
      OverlayFile file,
      RulesReader.Snapshot before,
      RulesReader.Snapshot after,
      Complaints complaints) {
    this.file = file;
    this.before = before;
    this.after = after;
    this.complaints = complaints;
  }

  /** What is relaxed by name; everything else that is not strict is complained of. */
  List<Overlay.Relaxation> verify() {
    file.limits().forEach(this::limit);
    file.amend().forEach(this::amendment);
    for (RelaxEntry entry : file.relaxes()) {
      if (!relaxed.contains(entry.what().value())) {
        complaints.add(
            entry.what(),
            "nothing in this overlay relaxes `" + entry.what().value() + "`",
            "the name of a limit or check that it does relax");
      }
    }
    return relaxations;
  }

  private void limit(String name, LimitEntry entry) {
    Limit now = after.limits().get(name);
    Limit old = before.limits().get(name);
    if (now == null) {
      throw new IllegalStateException("no limit " + name);
    }
    if (old == null) {
      demandUse(name, entry);
    } else {
      objection(old, now)
          .ifPresent(
              found ->
                  unlessRelaxed(
                      name,
                      entry.value(),
                      now.title() + ": " + now.text() + " instead of " + old.text(),
                      found));
    }
  }

  /** A name that nothing uses is a limit of the rules, misspelt. */
  private void demandUse(String name, LimitEntry entry) {
    boolean used =
        after.checks().values().stream()
            .flatMap(Tightening::decisive)
            .anyMatch(formula -> formula.limits().contains(name));
    if (!used) {
      complaints.addUnknown(entry.at(), "limit", name, before.limits().keySet());
    }
  }

  private record Objection(String what, String right) {}

  private Optional<Objection> objection(Limit old, Limit now) {
    String name = "`" + now.name() + "`";
    if (old.citation().isUnconfirmed() != now.citation().isUnconfirmed()) {
      return Optional.of(
          new Objection(
              name + " comes from memory in one place and not in the other",
              old.citation().isUnconfirmed()
                  ? "`confirm` with its name, where the value was read in the standard"
                  : "a value of the same standing"));
    }
    Rational from = point(old);
    Rational to = point(now);
    int moved = to.compareTo(from);
    if (moved == 0) {
      return Optional.empty();
    }
    Optional<Sign> effect = effect(now.name());
    if (effect.isEmpty() || from.signum() != to.signum()) {
      String why =
          effect.isEmpty() ? "" : ": zero and the numbers on its two sides act differently";
      return Optional.of(
          new Objection(
              name + " is locked, since its direction cannot be shown" + why,
              "`" + old.text() + "` as in the rules; a requirement of its own may ask for more"));
    }
    boolean raises = effect.get() == Sign.RAISES;
    if (raises == (moved > 0)) {
      return Optional.of(
          new Objection(
              name + " is loosened",
              "at " + (raises ? "most" : "least") + " `" + old.text() + "`"));
    }
    return after.checks().values().stream()
        .filter(check -> check.judgeable() && check.requirement().limits().contains(now.name()))
        .findFirst()
        .map(Tightening::judgeable);
  }

  private static Rational point(Limit limit) {
    Rational value = limit.value().lo();
    if (value == null) {
      throw new IllegalStateException("no number for " + limit.name());
    }
    return value;
  }

  private static Objection judgeable(Check check) {
    return new Objection(
        "a person may judge `" + check.id() + "`, and could then release what is undecided now",
        "`consequence: fail` under `amend: " + check.id() + "`");
  }

  /** What raising a limit does to outcomes; empty where that can't be shown. */
  private Optional<Sign> effect(String name) {
    Sign sign = Sign.ABSENT;
    for (Check check : both()) {
      boolean locks = locking(check).anyMatch(formula -> formula.limits().contains(name));
      Sign here =
          decisive(check).map(formula -> formula.sign(name)).reduce(Sign.ABSENT, Sign::join);
      sign = sign.join(locks ? Sign.MIXED : here);
    }
    return Optional.of(sign).filter(found -> found == Sign.RAISES || found == Sign.LOWERS);
  }

  private List<Check> both() {
    return Stream.of(before, after).flatMap(rules -> rules.checks().values().stream()).toList();
  }

  /** The formulas that an outcome is better with, the more easily they are met. */
  private static Stream<TruthFormula> decisive(Check check) {
    return Stream.concat(
        Stream.of(check.requirement()),
        Stream.concat(check.provided().stream(), check.plausible().stream())
            .map(Check.Condition::that));
  }

  /** The formulas of which neither answer is the strict one. */
  private static Stream<TruthFormula> locking(Check check) {
    return Stream.concat(
        check.applies().stream(),
        check.remedies().stream().flatMap(remedy -> remedy.when().stream()));
  }

  private void amendment(String id, AmendEntry entry) {
    Check old = before.checks().get(id);
    Check now = after.checks().get(id);
    if (old == null || now == null) {
      throw new IllegalStateException("no check " + id);
    }
    Text consequence = entry.consequence();
    if (consequence != null
        && old.consequence() == Check.Consequence.FAIL
        && now.consequence() == Check.Consequence.HOLD) {
      String what = "`" + id + "` is loosened from fail to hold";
      unlessRelaxed(id, consequence, what(now), new Objection(what, "`fail`, or nothing"));
    }
    Text requirement = entry.requirement();
    if (requirement != null && now.judgeable()) {
      unlessRelaxed(id, requirement, what(now), judgeable(now));
    } else if (requirement != null
        && restsOnMemory(now.requirement())
        && !restsOnMemory(old.requirement())) {
      unlessRelaxed(
          id,
          requirement,
          what(now),
          new Objection(
              "`"
                  + id
                  + "` would rest on a value from memory, and where it fails now it would hold",
              "values that are confirmed"));
    }
  }

  private static String what(Check check) {
    return check.title() + " (" + check.id() + ")";
  }

  private boolean restsOnMemory(TruthFormula formula) {
    Map<String, Limit> limits = after.limits();
    Map<String, Rules.CitedTable> tables = after.tables();
    return formula.limits().stream()
            .flatMap(name -> Stream.ofNullable(limits.get(name)))
            .anyMatch(limit -> limit.citation().isUnconfirmed())
        || formula.tables().stream()
            .flatMap(name -> Stream.ofNullable(tables.get(name)))
            .flatMap(table -> table.citations().values().stream())
            .anyMatch(Citation::isUnconfirmed);
  }

  /** A person's word lets it be; without one it is refused where it stands. */
  private void unlessRelaxed(String name, Text at, String what, Objection objection) {
    Optional<RelaxEntry> word =
        file.relaxes().stream().filter(entry -> entry.what().value().equals(name)).findFirst();
    if (word.isEmpty()) {
      complaints.add(
          at,
          objection.what(),
          objection.right() + "; or `relaxes` with its name, a reason and who says so");
      return;
    }
    if (relaxed.add(name)) {
      relaxations.add(
          new Overlay.Relaxation(
              what, word.get().because().value().strip(), word.get().by().value().strip()));
    }
  }
}
