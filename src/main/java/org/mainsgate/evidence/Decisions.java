package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Judged;

/** What people have decided, as far as it still stands on what they saw. */
final class Decisions {
  private final Rules rules;
  private final Bench bench;
  private final Timeline timeline;
  private final Voiding voiding;

  Decisions(Rules rules, Bench bench, Timeline timeline, Voiding voiding) {
    this.rules = rules;
    this.bench = bench;
    this.timeline = timeline;
    this.voiding = voiding;
  }

  /** The decisions that stand. */
  List<Judged> inForce() {
    List<Judged> judged = new ArrayList<>();
    for (Visit visit : timeline.visits()) {
      for (Visit.Judgement found : visit.judged()) {
        Check check = rules.checks().get(found.check());
        if (check != null && stands(found, visit, check)) {
          judged.add(judged(found, visit));
        }
      }
    }
    return judged;
  }

  /**
   * A judgement stands on the evidence that it saw: neither worked on, nor recorded anew or taken
   * back in a visit that is not known to have come before it.
   */
  private boolean stands(Visit.Judgement found, Visit visit, Check check) {
    Moment moment = new Moment(visit, true);
    Set<String> names = Names.of(check);
    boolean worked =
        names.stream().anyMatch(name -> voiding.of(found.thing(), name, moment).isPresent());
    return !worked
        && timeline.visits().stream()
            .filter(other -> !other.equals(visit) && !timeline.isBefore(other, visit))
            .noneMatch(other -> says(other, found.thing(), names));
  }

  private boolean says(Visit visit, String thing, Set<String> names) {
    List<Entry> entries = new ArrayList<>(visit.found());
    entries.addAll(visit.left());
    visit.withdrawn().forEach(withdrawal -> entries.addAll(takenBack(withdrawal)));
    return entries.stream()
        .filter(entry -> entry.thing().equals(thing) || entry.thing().equals("instrument"))
        .anyMatch(entry -> names.contains(entry.property()));
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
