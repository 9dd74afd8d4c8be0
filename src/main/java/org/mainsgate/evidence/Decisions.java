package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Judged;

/** What people have decided, as far as it still stands on what they saw. */
final class Decisions {
  private final Rules rules;
  private final Bench bench;
  private final Instrument instrument;
  private final Timeline timeline;
  private final Voiding voiding;

  Decisions(Rules rules, Bench bench, Instrument instrument, Timeline timeline, Voiding voiding) {
    this.rules = rules;
    this.bench = bench;
    this.instrument = instrument;
    this.timeline = timeline;
    this.voiding = voiding;
  }

  /** The decisions that stand. */
  List<Judged> inForce() {
    return all().filter(this::stands).map(made -> judged(made.found(), made.visit())).toList();
  }

  /** The decisions that do not stand any more: whoever made one must not believe that it counts. */
  List<InForce.SetAside> fallen(UnaryOperator<String> titles) {
    return all()
        .filter(made -> !stands(made))
        .map(
            made ->
                new InForce.SetAside(
                    made.visit().id() + "/" + made.found().id(),
                    titles.apply(made.found().thing()),
                    "decision on: " + made.check().title(),
                    "accepted",
                    "what it rests on was worked on, recorded anew or taken back since"))
        .toList();
  }

  private record Made(Visit.Judgement found, Visit visit, Check check) {}

  private Stream<Made> all() {
    return timeline.visits().stream()
        .flatMap(
            visit ->
                visit.judged().stream()
                    .filter(found -> rules.checks().containsKey(found.check()))
                    .map(found -> made(found, visit)));
  }

  private Made made(Visit.Judgement found, Visit visit) {
    return new Made(found, visit, Objects.requireNonNull(rules.checks().get(found.check())));
  }

  /**
   * A judgement stands on the evidence that it saw: neither worked on, nor recorded anew or taken
   * back in a visit that is not known to have come before it. What it rests on need not be of the
   * thing itself: a fuse is judged for what the selector is set to.
   */
  private boolean stands(Made made) {
    Visit visit = made.visit();
    Check check = made.check();
    Moment moment = new Moment(visit, true);
    Set<String> names = Names.of(check);
    Predicate<String> concerned = thing -> concerns(thing, made.found().thing(), check);
    boolean worked =
        names.stream().anyMatch(name -> voiding.ofAny(concerned, name, moment).isPresent());
    return !worked
        && bench.site().stream().noneMatch(entry -> isLater(entry, visit, names))
        && timeline.visits().stream()
            .filter(other -> !other.equals(visit) && !timeline.isBefore(other, visit))
            .noneMatch(other -> says(other, concerned, names));
  }

  /** Whether the bench itself was measured after the visit. */
  private static boolean isLater(Entry site, Visit visit, Set<String> names) {
    return names.contains(site.property())
        && site.on().filter(day -> day.isAfter(visit.date())).isPresent();
  }

  /** Another thing of the same list has a decision of its own, unless the check asks about all. */
  private boolean concerns(String thing, String judged, Check check) {
    String kind = instrument.kindOf(thing);
    boolean sibling = check.over().filter(kind::equals).isPresent() && !thing.equals(judged);
    return !sibling || Names.asksAboutAll(check, kind);
  }

  private boolean says(Visit visit, Predicate<String> concerned, Set<String> names) {
    List<Entry> entries = new ArrayList<>(visit.found());
    entries.addAll(visit.left());
    visit.withdrawn().forEach(withdrawal -> entries.addAll(takenBack(withdrawal)));
    return entries.stream()
        .anyMatch(entry -> names.contains(entry.property()) && concerned.test(entry.thing()));
  }

  private List<Entry> takenBack(Visit.Withdrawal withdrawal) {
    return timeline.visits().stream()
        .filter(visit -> visit.id().equals(withdrawal.visit()))
        .flatMap(visit -> Stream.concat(visit.found().stream(), visit.left().stream()))
        .filter(entry -> entry.id().equals(withdrawal.entry()))
        .toList();
  }

  private Judged judged(Visit.Judgement found, Visit visit) {
    Bench.Person person = bench.people().get(found.by());
    return new Judged(
        visit.id() + "/" + found.id(),
        found.check(),
        found.thing(),
        person == null ? found.by() : person.name(),
        person == null ? "" : person.competence(),
        found.because(),
        found.restriction(),
        visit.date());
  }
}
