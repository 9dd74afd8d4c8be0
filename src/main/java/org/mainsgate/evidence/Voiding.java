package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.mainsgate.ruleset.Dependency;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;

/**
 * What work has voided. The ruleset's table says what rests on the thing that was worked on; the
 * person's memory does not.
 *
 * <p>Work voids all that is not known to have been recorded after it: also what somebody else
 * recorded in a visit that has no order with it.
 */
final class Voiding {
  private final Vocabulary vocabulary;
  private final Timeline timeline;
  private final List<Cut> cuts = new ArrayList<>();

  Voiding(
      Vocabulary vocabulary,
      List<Dependency> dependencies,
      Instrument instrument,
      Timeline timeline) {
    this.vocabulary = vocabulary;
    this.timeline = timeline;
    for (Visit visit : timeline.visits()) {
      for (Visit.Work work : visit.work()) {
        String kind = instrument.kindOf(work.on());
        dependencies.stream()
            .filter(found -> found.on().equals(kind))
            .filter(found -> found.does().isEmpty() || found.does().contains(work.act()))
            .forEach(found -> cuts.add(new Cut(visit, work, kind, found)));
      }
    }
  }

  private record Cut(Visit visit, Visit.Work work, String kind, Dependency dependency) {}

  /** The work that has voided a property of a thing recorded at a moment, if any has. */
  Optional<Visit.Work> of(String thing, String property, Moment moment) {
    return ofAny(thing::equals, property, moment);
  }

  /** The same of any of these things. */
  Optional<Visit.Work> ofAny(Predicate<String> things, String property, Moment moment) {
    return cuts.stream()
        .filter(cut -> reaches(cut, things, property))
        .filter(cut -> !isAfter(moment, cut.visit()))
        .map(Cut::work)
        .findFirst();
  }

  /** The same, for the work of one visit alone. */
  boolean within(Visit visit, String thing, String property) {
    return cuts.stream()
        .anyMatch(cut -> cut.visit().equals(visit) && reaches(cut, thing::equals, property));
  }

  private boolean isAfter(Moment moment, Visit work) {
    return timeline.isBefore(work, moment.visit())
        || (moment.afterWork() && moment.visit().equals(work));
  }

  private boolean reaches(Cut cut, Predicate<String> things, String name) {
    if (!cut.dependency().voids().contains(name)) {
      return false;
    }
    boolean own =
        vocabulary.property(name).map((Property found) -> found.isOf(cut.kind())).orElse(false);
    return !own || things.test(cut.work().on());
  }
}
