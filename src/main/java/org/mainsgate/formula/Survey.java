package org.mainsgate.formula;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a checked formula asks for, whatever the facts; its steps included. All in the order of the
 * text.
 *
 * @param lists the kinds of thing whose lists it runs over
 * @param steps the named steps and statements it uses, by name; each before those that it uses
 * @param free the variables bound outside that it uses, with their kinds
 * @param nodes the parts that one evaluation visits, each quantifier counted for one item
 * @param depth the levels of its tree
 * @param nesting how many quantifiers stand inside each other
 */
record Survey(
    Set<Input> inputs,
    Set<String> limits,
    Set<String> tables,
    Set<String> lists,
    Map<String, Meaning> steps,
    Map<String, String> free,
    int nodes,
    int depth,
    int nesting) {

  static Survey of(Node formula, Map<String, String> outer) {
    Builder builder = new Builder(outer);
    builder.walk(formula, 1);
    return new Survey(
        Collections.unmodifiableSet(builder.inputs),
        Collections.unmodifiableSet(builder.limits),
        Collections.unmodifiableSet(builder.tables),
        Collections.unmodifiableSet(builder.lists),
        Collections.unmodifiableMap(builder.steps),
        Collections.unmodifiableMap(builder.free),
        builder.nodes,
        builder.depth,
        builder.nesting);
  }

  /** The walk through a formula. */
  static final class Builder {
    private final Map<String, String> outer;
    private final Deque<Input.Binding> within = new ArrayDeque<>();
    private final Set<Input> inputs = new LinkedHashSet<>();
    private final Set<String> limits = new LinkedHashSet<>();
    private final Set<String> tables = new LinkedHashSet<>();
    private final Set<String> lists = new LinkedHashSet<>();
    private final Map<String, Meaning> steps = new LinkedHashMap<>();
    private final Map<String, String> free = new LinkedHashMap<>();
    private int nodes;
    private int depth;
    private int nesting;

    private Builder(Map<String, String> outer) {
      this.outer = outer;
    }

    private void walk(Node node, int level) {
      nodes++;
      depth = Math.max(depth, level);
      node.tell(this);
      if (node.surveyed().isPresent()) {
        merge(node.surveyed().get(), level);
        return;
      }
      node.binds().ifPresent(this::enter);
      node.parts().forEach(part -> walk(part, level + 1));
      node.binds().ifPresent(binding -> within.removeLast());
    }

    private void enter(Input.Binding binding) {
      lists.add(binding.kind());
      within.addLast(binding);
      nesting = Math.max(nesting, within.size());
    }

    private void merge(Survey step, int level) {
      nodes += step.nodes;
      depth = Math.max(depth, level + step.depth);
      nesting = Math.max(nesting, within.size() + step.nesting);
      limits.addAll(step.limits);
      tables.addAll(step.tables);
      lists.addAll(step.lists);
      step.steps.forEach(steps::putIfAbsent);
      step.free.forEach(this::use);
      for (Input input : step.inputs) {
        Stream<Input.Binding> around = Stream.concat(within.stream(), input.within().stream());
        inputs.add(new Input(input.reference(), around.toList()));
      }
    }

    void input(Reference reference) {
      inputs.add(new Input(reference, List.copyOf(within)));
      String variable = reference.variable();
      if (variable != null) {
        use(variable, outer.getOrDefault(variable, ""));
      }
    }

    void limit(String name) {
      limits.add(name);
    }

    void step(String name, Meaning step) {
      steps.putIfAbsent(name, step);
    }

    void table(String name) {
      tables.add(name);
    }

    private void use(String variable, String kind) {
      boolean bound = within.stream().anyMatch(binding -> binding.variable().equals(variable));
      if (!bound) {
        free.put(variable, kind);
      }
    }
  }
}
