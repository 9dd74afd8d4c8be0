package org.mainsgate.evidence;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which visit came before which, whatever the order of files and of what stands in them. Closed
 * visits form a graph: each names those that its author knew to be the latest. A draft comes after
 * every closed visit that is not of a later date. Two visits of people who did not know of each
 * other have no order.
 */
final class Timeline {
  private static final Comparator<Visit.Looked> LISTS =
      Comparator.comparing(Visit.Looked::kind).thenComparing(Visit.Looked::id);
  private static final Comparator<Visit.Work> WORK =
      Comparator.comparing(Visit.Work::on)
          .thenComparing(Visit.Work::act)
          .thenComparing(Visit.Work::note);
  private static final Comparator<Visit.Withdrawal> WITHDRAWN =
      Comparator.comparing(Visit.Withdrawal::visit)
          .thenComparing(Visit.Withdrawal::entry)
          .thenComparing(Visit.Withdrawal::reason)
          .thenComparing(Visit.Withdrawal::note);

  private final List<Visit> visits;
  private final Map<String, Set<String>> before = new HashMap<>();

  Timeline(List<Visit> visits) {
    List<Visit> all = new ArrayList<>(visits.stream().map(Timeline::ordered).toList());
    Map<String, Visit> byHash = new HashMap<>();
    all.forEach(visit -> visit.closing().ifPresent(end -> byHash.put(end.hash(), visit)));
    all.forEach(visit -> before.put(visit.id(), ancestors(visit, byHash)));
    all.sort(
        Comparator.comparing(Visit::date)
            .thenComparing(visit -> before.getOrDefault(visit.id(), Set.of()).size())
            .thenComparing(Visit::id));
    this.visits = List.copyOf(all);
  }

  /** The same visit, with all that stands in it in an order of its own. */
  private static Visit ordered(Visit visit) {
    return new Visit(
        visit.id(),
        visit.date(),
        visit.by(),
        sorted(visit.found(), Entries.ORDER),
        sorted(visit.foundLists(), LISTS),
        sorted(visit.work(), WORK),
        sorted(visit.left(), Entries.ORDER),
        sorted(visit.leftLists(), LISTS),
        sorted(visit.judged(), Comparator.comparing(Visit.Judgement::id)),
        sorted(visit.withdrawn(), WITHDRAWN),
        visit.note(),
        visit.closing(),
        visit.at());
  }

  private static <T> List<T> sorted(List<T> items, Comparator<T> order) {
    return items.stream().sorted(order).toList();
  }

  private Set<String> ancestors(Visit visit, Map<String, Visit> byHash) {
    Set<String> found = new HashSet<>();
    Deque<Visit> open = new ArrayDeque<>(parents(visit, byHash));
    while (!open.isEmpty()) {
      Visit next = open.removeFirst();
      if (found.add(next.id())) {
        open.addAll(parents(next, byHash));
      }
    }
    return found;
  }

  private List<Visit> parents(Visit visit, Map<String, Visit> byHash) {
    return visit
        .closing()
        .map(end -> end.after().stream().filter(byHash::containsKey).map(byHash::get).toList())
        .orElseGet(
            () ->
                byHash.values().stream()
                    .filter(closed -> !closed.date().isAfter(visit.date()))
                    .toList());
  }

  /** Whether the first visit is known to have come before the second. */
  boolean isBefore(Visit first, Visit second) {
    return before.getOrDefault(second.id(), Set.of()).contains(first.id());
  }

  /** Whether no visit is known to have come after this one. */
  boolean isHead(Visit visit) {
    return visits.stream().noneMatch(other -> isBefore(visit, other));
  }

  /** The visits by date; on one day each after those that it knew. */
  List<Visit> visits() {
    return visits;
  }
}
