package org.mainsgate.store;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import org.mainsgate.evidence.Visit;

/** The closed visits of an instrument, each with those that it knew when it was closed. */
final class VisitGraph {
  private static final Comparator<Visit> BY_DATE =
      Comparator.comparing(Visit::date).thenComparing(Visit::id);

  private VisitGraph() {}

  private static List<String> after(Visit visit) {
    return visit.closing().map(Visit.Closing::after).orElse(List.of());
  }

  private static String hash(Visit visit) {
    return visit.closing().map(Visit.Closing::hash).orElse("");
  }

  /** The hashes that no visit names. */
  static List<String> heads(List<Visit> closed) {
    Set<String> named = new HashSet<>();
    closed.forEach(visit -> named.addAll(after(visit)));
    return closed.stream()
        .map(VisitGraph::hash)
        .filter(hash -> !named.contains(hash))
        .sorted()
        .toList();
  }

  /**
   * The visits, each after those that it names; where that leaves a choice, by date and id. Hashes
   * that belong to none of them are passed over. No ring can be: a hash is made after what it
   * names.
   */
  static List<Visit> inOrder(List<Visit> closed) {
    Map<String, List<Visit>> followers = new HashMap<>();
    Map<String, Integer> waiting = new HashMap<>();
    Set<String> known = new HashSet<>(closed.stream().map(VisitGraph::hash).toList());
    PriorityQueue<Visit> ready = new PriorityQueue<>(BY_DATE);
    for (Visit visit : closed) {
      List<String> named = after(visit).stream().filter(known::contains).distinct().toList();
      named.forEach(hash -> followers.computeIfAbsent(hash, h -> new ArrayList<>()).add(visit));
      waiting.put(visit.id(), named.size());
      if (named.isEmpty()) {
        ready.add(visit);
      }
    }
    List<Visit> order = new ArrayList<>();
    while (!ready.isEmpty()) {
      Visit next = ready.remove();
      order.add(next);
      for (Visit follower : followers.getOrDefault(hash(next), List.of())) {
        if (waiting.merge(follower.id(), -1, Integer::sum) == 0) {
          ready.add(follower);
        }
      }
    }
    return order;
  }
}
