package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;

/** A statement in a checked formula. */
sealed interface TruthNode extends Node {
  Truth truth(Facts facts);

  /** Adds the grounds of this statement, every one, in the order of the text. */
  void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds);

  /** The values that an observation can still have. */
  static Set<String> candidates(Meaning.Observation observation, Facts facts) {
    Set<String> candidates = facts.named(observation.reference());
    List<String> values = observation.values().values();
    // An empty set would be in every list and in none: it would meet whatever is asked.
    if (candidates.isEmpty() || !values.containsAll(candidates)) {
      String name = observation.reference().text();
      throw new IllegalStateException(
          "values of " + name + " are not from its list: " + candidates);
    }
    return candidates;
  }

  private static List<String> inOrder(Meaning.Observation observation, Set<String> candidates) {
    return observation.values().values().stream().filter(candidates::contains).toList();
  }

  /** An addend as an explanation shows it. */
  record Addend(String label, NumberNode value, boolean subtracted) {
    Ground.Term term(Facts facts, Unit unit) {
      ExactInterval exact = value.exact(facts);
      Unit own =
          value
              .unit()
              .filter(found -> !subtracted || PrintUnit.hasNoOffset(found))
              .orElseGet(() -> PrintUnit.hasNoOffset(unit) ? unit : PrintUnit.of(unit.dimension()));
      return new Ground.Term(label, subtracted ? exact.negate() : exact, own);
    }
  }

  /** One side of a comparison with what an explanation shows of it. */
  record Side(String text, NumberNode value, List<Addend> addends) {
    List<Ground.Term> terms(Facts facts, Unit unit) {
      return addends.stream().map(addend -> addend.term(facts, unit)).toList();
    }
  }

  /**
   * A comparison: decided in doubles where they suffice, else in rationals.
   *
   * <p>Sound: the doubles enclose the rationals, so what holds for all of them holds for all
   * rationals; they can only fail to decide. Monotone for the same reason: the answer is always the
   * one that the rationals alone would give.
   */
  record Compared(Relation relation, Side left, Side right, Unit unit) implements TruthNode {
    @Override
    public List<Node> parts() {
      return List.of(left.value(), right.value());
    }

    @Override
    public Truth truth(Facts facts) {
      Truth filtered = relation.fast(left.value().fast(facts), right.value().fast(facts));
      return filtered == Truth.UNDECIDED
          ? relation.exact(left.value().exact(facts), right.value().exact(facts))
          : filtered;
    }

    @Override
    public void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      grounds.accept(
          new Ground.Comparison(
              items,
              left.text(),
              left.value().exact(facts),
              relation.symbol(),
              right.text(),
              right.value().exact(facts),
              truth(facts),
              unit,
              left.terms(facts, unit),
              right.terms(facts, unit)));
      openLists(left.value(), facts, items, grounds);
      openLists(right.value(), facts, items, grounds);
    }

    /** A sum over an open list is unknown; the reason is the list. */
    private static void openLists(
        Node part, Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      part.binds()
          .filter(binding -> !facts.items(binding.kind()).closed())
          .ifPresent(binding -> grounds.accept(new Ground.OpenList(items, binding.kind())));
      part.parts().forEach(below -> openLists(below, facts, items, grounds));
    }

    @Override
    public Sign sign(String limit) {
      Sign ofLeft = left.value().sign(limit);
      Sign ofRight = right.value().sign(limit);
      return relation.favoursLeft() ? ofLeft.join(ofRight.flip()) : ofLeft.flip().join(ofRight);
    }
  }

  /** That an observation is one of the wanted values, or is none of them. */
  record Chosen(Meaning.Observation observation, String text, boolean negated, List<String> wanted)
      implements TruthNode {
    @Override
    public List<Node> parts() {
      return List.of();
    }

    @Override
    public void tell(Survey.Builder survey) {
      survey.input(observation.reference());
    }

    @Override
    public Truth truth(Facts facts) {
      Set<String> candidates = candidates(observation, facts);
      Truth chosen =
          wanted.containsAll(candidates)
              ? Truth.MET
              : Collections.disjoint(candidates, wanted) ? Truth.NOT_MET : Truth.UNDECIDED;
      return negated ? chosen.not() : chosen;
    }

    @Override
    public void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      List<String> possible = inOrder(observation, candidates(observation, facts));
      grounds.accept(new Ground.Choice(items, text, possible, negated, wanted, truth(facts)));
    }

    @Override
    public Sign sign(String limit) {
      return Sign.ABSENT;
    }
  }

  /** That two observations over one list of values agree, or that they don't. */
  record Agreed(Meaning.Observation left, Meaning.Observation right, String text, boolean negated)
      implements TruthNode {
    @Override
    public List<Node> parts() {
      return List.of();
    }

    @Override
    public void tell(Survey.Builder survey) {
      survey.input(left.reference());
      survey.input(right.reference());
    }

    @Override
    public Truth truth(Facts facts) {
      Set<String> ofLeft = candidates(left, facts);
      Set<String> ofRight = candidates(right, facts);
      boolean one = ofLeft.size() == 1 && ofLeft.equals(ofRight);
      Truth agreed =
          one ? Truth.MET : Collections.disjoint(ofLeft, ofRight) ? Truth.NOT_MET : Truth.UNDECIDED;
      return negated ? agreed.not() : agreed;
    }

    @Override
    public void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      List<String> ofLeft = inOrder(left, candidates(left, facts));
      List<String> ofRight = inOrder(right, candidates(right, facts));
      grounds.accept(new Ground.Choice(items, text, ofLeft, negated, ofRight, truth(facts)));
    }

    @Override
    public Sign sign(String limit) {
      return Sign.ABSENT;
    }
  }

  /** Two statements joined by a word. */
  record Joined(Connective connective, TruthNode left, TruthNode right) implements TruthNode {
    @Override
    public List<Node> parts() {
      return List.of(left, right);
    }

    @Override
    public Truth truth(Facts facts) {
      Truth first = left.truth(facts);
      boolean settled = connective.settledBy(first);
      return connective.of(first, settled ? first : right.truth(facts));
    }

    @Override
    public void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      left.explain(facts, items, grounds);
      right.explain(facts, items, grounds);
    }

    @Override
    public Sign sign(String limit) {
      Sign first = left.sign(limit);
      return (connective == Connective.IMPLIES ? first.flip() : first).join(right.sign(limit));
    }
  }

  /** The opposite of a statement. */
  record Denied(TruthNode statement) implements TruthNode {
    @Override
    public List<Node> parts() {
      return List.of(statement);
    }

    @Override
    public Truth truth(Facts facts) {
      return statement.truth(facts).not();
    }

    @Override
    public void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      statement.explain(facts, items, grounds);
    }

    @Override
    public Sign sign(String limit) {
      return statement.sign(limit).flip();
    }
  }

  /** A statement of all things of a kind, or of any; an open list may have a thing that differs. */
  record Each(boolean all, Input.Binding binding, TruthNode body) implements TruthNode {
    @Override
    public List<Node> parts() {
      return List.of(body);
    }

    @Override
    public Optional<Input.Binding> binds() {
      return Optional.of(binding);
    }

    @Override
    public Truth truth(Facts facts) {
      Listing listing = facts.items(binding.kind());
      Connective connective = all ? Connective.AND : Connective.OR;
      Truth whole = listing.closed() ? Truth.of(all) : Truth.UNDECIDED;
      for (String item : listing.items()) {
        if (connective.settledBy(whole)) {
          break;
        }
        whole = connective.of(whole, body.truth(facts.with(binding.variable(), item)));
      }
      return whole;
    }

    @Override
    public void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      Listing listing = facts.items(binding.kind());
      for (String item : listing.items()) {
        Map<String, String> inside = new LinkedHashMap<>(items);
        inside.put(binding.variable(), item);
        Facts about = facts.with(binding.variable(), item);
        body.explain(about, Collections.unmodifiableMap(inside), grounds);
      }
      if (!listing.closed()) {
        grounds.accept(new Ground.OpenList(items, binding.kind()));
      }
    }

    @Override
    public void rows(Facts facts, Consumer<RowUse> rows) {
      for (String item : facts.items(binding.kind()).items()) {
        body.rows(facts.with(binding.variable(), item), rows);
      }
    }

    @Override
    public Sign sign(String limit) {
      return body.sign(limit);
    }
  }

  /** A named intermediate statement. */
  record Stepped(Meaning.TruthStep step) implements TruthNode {
    private TruthNode inner() {
      return step.value().node();
    }

    @Override
    public void tell(Survey.Builder survey) {
      survey.step(step.name(), step);
    }

    @Override
    public List<Node> parts() {
      return List.of(inner());
    }

    @Override
    public Optional<Survey> surveyed() {
      return Optional.of(step.value().survey());
    }

    @Override
    public Truth truth(Facts facts) {
      return inner().truth(facts);
    }

    @Override
    public void explain(Facts facts, Map<String, String> items, Consumer<Ground> grounds) {
      inner().explain(facts, items, grounds);
    }

    @Override
    public Sign sign(String limit) {
      return inner().sign(limit);
    }
  }

  /** All grounds of a statement. */
  static List<Ground> grounds(TruthNode statement, Facts facts) {
    List<Ground> grounds = new ArrayList<>();
    statement.explain(facts, Map.of(), grounds::add);
    return List.copyOf(grounds);
  }
}
