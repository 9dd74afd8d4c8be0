package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.NearestName;

/**
 * The whole record of one instrument.
 *
 * @param bench the bench it stands on
 * @param instrument what it is
 * @param visits the closed visits, each after those that it knew, then the drafts
 */
public record InstrumentRecord(Bench bench, Instrument instrument, List<Visit> visits) {

  /** Keeps the visits as they are. */
  public InstrumentRecord {
    visits = List.copyOf(visits);
  }

  /** Complains of words in one visit about another that is not there. */
  public void check(Complaints complaints) {
    List<Visit> earlier = new ArrayList<>();
    for (Visit visit : visits) {
      for (Visit.Withdrawal withdrawal : visit.withdrawn()) {
        if (!withdrawal.visit().equals(visit.id())) {
          check(withdrawal, earlier, complaints);
        }
      }
      earlier.add(visit);
    }
  }

  private static void check(
      Visit.Withdrawal withdrawal, List<Visit> earlier, Complaints complaints) {
    Optional<Visit> visit =
        earlier.stream().filter(v -> v.id().equals(withdrawal.visit())).findFirst();
    if (visit.isEmpty()) {
      List<String> ids = earlier.stream().map(Visit::id).toList();
      complaints.add(
          withdrawal.at(),
          "no earlier visit " + Words.quoted(withdrawal.visit()),
          "a visit of this instrument",
          NearestName.of(withdrawal.visit(), ids).orElse(""));
      return;
    }
    List<String> given =
        Stream.concat(visit.get().found().stream(), visit.get().left().stream())
            .map(Entry::id)
            .filter(id -> id.indexOf('.') < 0)
            .sorted()
            .toList();
    if (!given.contains(withdrawal.entry())) {
      complaints.addUnknown(
          withdrawal.at(),
          "entry with an id in " + Words.quoted(withdrawal.visit()),
          withdrawal.entry(),
          given);
    }
  }
}
