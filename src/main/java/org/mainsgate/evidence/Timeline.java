package org.mainsgate.evidence;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which visit came before which. Closed visits form a graph: each names those that its author knew
 * to be the latest. A draft comes after every closed visit. Two visits of people who did not know
 * of each other have no order.
 */
final class Timeline {
  private final List<Visit> visits;
  private final Map<String, Set<String>> before = new HashMap<>();

  Timeline(List<Visit> visits) {
    this.visits = List.copyOf(visits);
    Map<String, Visit> byHash = new HashMap<>();
    visits.forEach(visit -> visit.closing().ifPresent(end -> byHash.put(end.hash(), visit)));
    visits.forEach(visit -> before.put(visit.id(), ancestors(visit, byHash)));
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
        .orElseGet(() -> List.copyOf(byHash.values()));
  }

  /** Whether the first visit is known to have come before the second. */
  boolean isBefore(Visit first, Visit second) {
    return before.getOrDefault(second.id(), Set.of()).contains(first.id());
  }

  /** Whether no visit is known to have come after this one. */
  boolean isHead(Visit visit) {
    return visits.stream().noneMatch(other -> isBefore(visit, other));
  }

  /** The visits, in the order they were given. */
  List<Visit> visits() {
    return visits;
  }
}
