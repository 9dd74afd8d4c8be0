package org.mainsgate.laws;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.mainsgate.formula.Input;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;

/**
 * One check, with those that come before it and a few others: as much of the rules as one example
 * needs. However many checks the rules have, an example stays as small as this.
 *
 * @param rules the rules with these checks alone; the stage of the first one is their first
 * @param focus the check that it is about
 * @param names what these checks ask for, by the names of properties
 * @param lists the kinds of thing whose lists they run over or point to
 */
record Slice(Rules rules, Check focus, Set<String> names, Set<String> lists) {
  private static final int OTHERS = 8;
  private static final Map<String, Slice> ALONE = new HashMap<>();

  /** A check with what comes before it. */
  static Slice of(Rules rules, String check) {
    return ALONE.computeIfAbsent(
        rules.identity() + check, key -> cut(rules, check, closed(rules, List.of(check))));
  }

  /** A random check with what comes before it and a few others of its stage. */
  static Slice random(Rules rules, Random random) {
    List<String> all = List.copyOf(rules.checks().keySet());
    String focus = Pools.of(all, random);
    List<String> some = new ArrayList<>(List.of(focus));
    for (int i = random.nextInt(OTHERS); i > 0; i--) {
      some.add(Pools.of(all, random));
    }
    return cut(rules, focus, closed(rules, some));
  }

  /** The checks with all that come before them, of both rules if they differ there. */
  static Set<String> closed(Rules rules, Collection<String> checks) {
    Set<String> closed = new LinkedHashSet<>();
    Deque<String> open = new ArrayDeque<>(checks);
    while (!open.isEmpty()) {
      String next = open.removeFirst();
      Check check = rules.checks().get(next);
      if (check != null && closed.add(next)) {
        open.addAll(check.requires());
      }
    }
    return closed;
  }

  /** The same rules with these checks alone. */
  static Slice cut(Rules rules, String focus, Set<String> ids) {
    Map<String, Check> checks = new LinkedHashMap<>();
    rules
        .checks()
        .forEach(
            (id, check) -> {
              if (ids.contains(id)) {
                checks.put(id, check);
              }
            });
    Map<String, Stage> stages = new LinkedHashMap<>();
    rules.stages().values().stream()
        .filter(stage -> rules.checksOf(stage).stream().anyMatch(c -> c.id().equals(focus)))
        .findFirst()
        .ifPresent(stage -> stages.put(stage.id(), stage));
    rules.stages().forEach(stages::putIfAbsent);
    Rules less = Laws.with(rules, stages, checks);
    Check check = java.util.Objects.requireNonNull(checks.get(focus));
    return new Slice(less, check, names(less), lists(less));
  }

  /** Every formula of a check that its outcome rests on, or that it prints. */
  static List<TruthFormula> formulas(Check check) {
    List<TruthFormula> all = new ArrayList<>();
    check.applies().ifPresent(all::add);
    all.add(check.requirement());
    check.provided().forEach(condition -> all.add(condition.that()));
    check.plausible().forEach(condition -> all.add(condition.that()));
    check.notes().forEach(note -> all.add(note.when()));
    return all;
  }

  private static Set<String> names(Rules rules) {
    Set<String> names = new TreeSet<>();
    for (Check check : rules.checks().values()) {
      for (TruthFormula formula : formulas(check)) {
        formula.inputs().stream()
            .map(Input::reference)
            .forEach(reference -> names.addAll(reference.path()));
      }
    }
    return names;
  }

  private static Set<String> lists(Rules rules) {
    Set<String> lists = new TreeSet<>();
    for (Check check : rules.checks().values()) {
      check.over().ifPresent(lists::add);
      formulas(check).forEach(formula -> lists.addAll(formula.lists()));
    }
    for (String name : names(rules)) {
      Property property = rules.vocabulary().property(name).orElseThrow();
      if (property instanceof Property.Pointer pointer) {
        lists.add(pointer.to());
      }
    }
    return lists;
  }

  /** Whether these checks ask for a property. */
  boolean asks(Property property) {
    return names.contains(property.name());
  }

  /** Whether an entry that these checks ask for points to a thing of this kind. */
  boolean pointsTo(String kind) {
    return names.stream()
        .map(name -> rules.vocabulary().property(name).orElseThrow())
        .anyMatch(property -> property instanceof Property.Pointer to && to.to().equals(kind));
  }

  /** The properties of a thing or an entry that these checks ask for. */
  List<Property> of(String owner) {
    return rules.vocabulary().of(owner).stream().filter(this::asks).toList();
  }
}
