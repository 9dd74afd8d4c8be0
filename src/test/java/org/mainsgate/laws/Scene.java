package org.mainsgate.laws;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.Varying;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;

/**
 * What the second opinion sees of one check on one thing.
 *
 * @param check the check whose steps count; empty inside a step of all checks
 * @param over the kind of thing that the check runs over; empty for the instrument
 * @param things the things that the variables stand for
 * @param seen what was looked at
 */
record Scene(
    RuleText rules,
    Vocabulary words,
    Evidence evidence,
    String check,
    String over,
    Map<String, String> things,
    Seen seen) {
  private static final String ITEM = "item";
  private static final String NOTHING = "nothing at all";

  /** What was looked at so far. */
  static final class Seen {
    private boolean complete = true;
    private boolean guess;

    /** Whether all of it was recorded, and nothing contradicts. */
    boolean isInOrder() {
      return complete;
    }

    /** Whether a value from memory was among it. */
    boolean isGuess() {
      return guess;
    }
  }

  static Scene of(RuleText rules, Vocabulary words, Evidence evidence, String id, String thing) {
    String over = RuleText.text(rules.check(id), "over");
    Map<String, String> things = over.isEmpty() ? Map.of() : Map.of(ITEM, thing);
    return new Scene(rules, words, evidence, id, over, things, new Seen());
  }

  /** The same, where nothing has been looked at. */
  Scene afresh() {
    return new Scene(rules, words, evidence, check, over, things, new Seen());
  }

  Scene with(String variable, String thing) {
    Map<String, String> more = new HashMap<>(things);
    more.put(variable, thing);
    return new Scene(rules, words, evidence, check, over, more, seen);
  }

  /** Where there is no thing to speak of: only the values of the rules are looked at. */
  Scene ofNothing() {
    return with(NOTHING, NOTHING);
  }

  boolean isOfNothing() {
    return things.containsKey(NOTHING);
  }

  /** A step with the scene that it is played in. */
  record Step(Phrase phrase, Scene scene) {}

  Optional<Step> step(List<String> path) {
    if (path.size() > 1) {
      return Optional.empty();
    }
    String name = path.get(0);
    Optional<Step> own =
        check.isEmpty()
            ? Optional.empty()
            : rules.step(check, name).map(phrase -> new Step(phrase, this));
    Scene ofAll = new Scene(rules, words, evidence, "", "", things, seen);
    return own.or(() -> rules.step(name).map(phrase -> new Step(phrase, ofAll)));
  }

  Optional<Fraction> limit(List<String> path) {
    return path.size() > 1 ? Optional.empty() : rules.limit(path.get(0));
  }

  Listing list(String kind) {
    return evidence.list(kind).listing();
  }

  void lookAtLimit(List<String> path) {
    lookAtRow(rules.isGuess(path.get(0)));
  }

  void lookAtRow(boolean isGuess) {
    seen.guess = seen.guess || isGuess;
  }

  void lookAt(List<String> path) {
    if (isOfNothing()) {
      return;
    }
    Found found = found(path);
    boolean known = !found.facts().isEmpty() && found.facts().stream().allMatch(Fact::recorded);
    boolean contradicted = found.facts().stream().anyMatch(f -> f.disagrees() || isImpossible(f));
    seen.complete = seen.complete && known && found.certain() && !contradicted;
  }

  private static boolean isImpossible(Fact fact) {
    return fact instanceof Fact.Amount amount && amount.impossible();
  }

  /**
   * The facts at the end of a path, of which one is true; none if nothing is known.
   *
   * @param certain whether it is recorded which of them is meant
   */
  private record Found(Property property, List<Fact> facts, boolean certain) {}

  private Found found(List<String> path) {
    boolean bound = things.containsKey(path.get(0));
    List<String> names = bound ? path.subList(1, path.size()) : path;
    Property property = words.property(names.get(0)).orElseThrow();
    String owner = bound ? things.getOrDefault(path.get(0), "") : owner(property);
    Found found =
        new Found(
            property, evidence.fact(owner, property.name()).map(List::of).orElse(List.of()), true);
    for (String name : names.subList(1, names.size())) {
      found =
          found.property() instanceof Property.Pointer to
              ? behind(to, found, name)
              : with(found, name);
    }
    return found;
  }

  private String owner(Property property) {
    if (!over.isEmpty() && property.isOf(over)) {
      return things.getOrDefault(ITEM, "");
    }
    return property.heading().of().stream()
        .filter(kind -> words.kind(kind).filter(k -> !k.isListed()).map(Kind::name).isPresent())
        .findFirst()
        .orElseThrow();
  }

  private Found with(Found found, String name) {
    List<Fact> with = new ArrayList<>();
    for (Fact fact : found.facts()) {
      Optional.ofNullable(fact.with().get(name)).ifPresent(with::add);
    }
    boolean all = with.size() == found.facts().size();
    return new Found(words.property(name).orElseThrow(), all ? with : List.of(), found.certain());
  }

  private Found behind(Property.Pointer to, Found pointers, String name) {
    Set<String> possible = new HashSet<>();
    boolean complete = true;
    boolean certain = pointers.certain();
    for (Fact fact : pointers.facts()) {
      possible.addAll(((Fact.Pointer) fact).things());
      complete = complete && ((Fact.Pointer) fact).complete();
      certain = certain && fact.recorded();
    }
    if (pointers.facts().isEmpty()) {
      possible.addAll(list(to.to()).items());
      complete = list(to.to()).closed();
      certain = possible.size() == 1;
    }
    List<Fact> facts = new ArrayList<>();
    possible.forEach(thing -> evidence.fact(thing, name).ifPresent(facts::add));
    boolean all = complete && facts.size() == possible.size();
    return new Found(words.property(name).orElseThrow(), all ? facts : List.of(), certain);
  }

  private Property last(List<String> path) {
    return words.property(path.get(path.size() - 1)).orElseThrow();
  }

  Ends number(List<String> path) {
    Property.Quantity last = (Property.Quantity) last(path);
    return found(path).facts().stream()
        .map(fact -> Ends.of(((Fact.Amount) fact).range().exact()))
        .reduce(Ends::hull)
        .orElseGet(() -> Ends.of(RandomEvidence.possible(last)));
  }

  Ends varying(List<String> path, String end) {
    return found(path).facts().stream()
        .map(fact -> ((Fact.Varying) fact).range())
        .map(range -> Ends.of(pick(range, end)))
        .reduce(Ends::hull)
        .orElse(Ends.UNKNOWN);
  }

  private static org.mainsgate.quantity.ExactInterval pick(Varying range, String end) {
    return switch (end) {
      case "highest" -> range.highest();
      case "lowest" -> range.lowest();
      default -> range.nominal();
    };
  }

  /** Every value that an observation has in its list. */
  Set<String> values(List<String> path) {
    return Set.copyOf(((Property.Observation) last(path)).values().values());
  }

  Set<String> names(List<String> path) {
    Set<String> names = new HashSet<>();
    List<Fact> facts = found(path).facts();
    facts.forEach(fact -> names.addAll(((Fact.Named) fact).candidates()));
    return facts.isEmpty() ? values(path) : names;
  }
}
