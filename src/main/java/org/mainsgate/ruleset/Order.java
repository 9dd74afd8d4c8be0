package org.mainsgate.ruleset;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.mainsgate.source.Complaints;

/** The order that prerequisites give to checks: none waits for itself. */
final class Order {
  private final Map<String, Check> checks;
  private final Complaints complaints;
  private final Set<String> done = new HashSet<>();
  private final Deque<String> path = new ArrayDeque<>();

  Order(Map<String, Check> checks, Complaints complaints) {
    this.checks = checks;
    this.complaints = complaints;
  }

  void verify() {
    checks.keySet().forEach(this::walk);
  }

  private void walk(String id) {
    Check check = checks.get(id);
    if (check == null || !done.add(id)) {
      return;
    }
    path.addLast(id);
    for (String next : check.requires()) {
      if (path.contains(next)) {
        complaints.add(
            check.at(),
            "prerequisites go in a circle: " + circle(next),
            "an order in which each check can come after what it rests on");
      } else {
        walk(next);
      }
    }
    path.removeLast();
  }

  private String circle(String from) {
    StringBuilder text = new StringBuilder();
    boolean inside = false;
    for (String id : path) {
      inside = inside || id.equals(from);
      if (inside) {
        text.append('`').append(id).append("` → ");
      }
    }
    return text.append('`').append(from).append('`').toString();
  }
}
