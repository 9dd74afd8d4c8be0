package org.mainsgate.verdict;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Listing;

/**
 * Everything that is in force about one instrument: the things that exist, and what is known of
 * each.
 *
 * @param titles the title of each thing, by id; things with one of their kind carry the kind's name
 * @param lists for each kind that is listed, the things and whether a person closed the list
 * @param facts by thing, then by property
 * @param judged what people have decided, in force
 * @param lost by thing, then by property: what was recorded and does not count any more, in words
 * @param superseded by thing, then by property: what something newer stands for, without any work
 *     between them
 */
public record Evidence(
    Map<String, String> titles,
    Map<String, Listed> lists,
    Map<String, Map<String, Fact>> facts,
    List<Judged> judged,
    Map<String, Map<String, String>> lost,
    Map<String, Map<String, List<Fact>>> superseded) {

  /** Keeps the collections as they are. */
  public Evidence {
    titles = Map.copyOf(titles);
    lists = Map.copyOf(lists);
    facts = Map.copyOf(facts);
    judged = List.copyOf(judged);
    lost = Map.copyOf(lost);
    superseded = Map.copyOf(superseded);
  }

  /** Evidence of which nothing was lost on the way. */
  public Evidence(
      Map<String, String> titles,
      Map<String, Listed> lists,
      Map<String, Map<String, Fact>> facts,
      List<Judged> judged) {
    this(titles, lists, facts, judged, Map.of(), Map.of());
  }

  /** An instrument of which nothing is known. */
  public static final Evidence NONE = new Evidence(Map.of(), Map.of(), Map.of(), List.of());

  /**
   * A list of things of one kind.
   *
   * @param listing the things, and whether the list is closed
   * @param counted how many a person counted, if anybody did
   * @param said the entry that closes it, if one does
   */
  public record Listed(Listing listing, Optional<Integer> counted, List<Said> said) {

    /** A list that nobody has begun. */
    public static final Listed OPEN =
        new Listed(new Listing(List.of(), false), Optional.empty(), List.of());

    /** Keeps the entries as they are. */
    public Listed {
      said = List.copyOf(said);
    }
  }

  /** What is known of a property of a thing, if anything was recorded. */
  public Optional<Fact> fact(String thing, String property) {
    return Optional.ofNullable(facts.getOrDefault(thing, Map.of()).get(property));
  }

  /** The same with other facts. */
  public Evidence withFacts(Map<String, Map<String, Fact>> others) {
    return new Evidence(titles, lists, others, judged, lost, superseded);
  }

  /** The same with another fact in the place of one. */
  Evidence with(String thing, String property, Fact fact) {
    Map<String, Map<String, Fact>> others = new HashMap<>(facts);
    Map<String, Fact> of = new HashMap<>(facts.getOrDefault(thing, Map.of()));
    of.put(property, fact);
    others.put(thing, of);
    return withFacts(others);
  }

  /** What something newer stands for, without any work between them. */
  List<Fact> superseded(String thing, String property) {
    return superseded.getOrDefault(thing, Map.of()).getOrDefault(property, List.of());
  }

  /** What was recorded of a property and does not count any more, in words; empty if nothing. */
  public String lost(String thing, String property) {
    return lost.getOrDefault(thing, Map.of()).getOrDefault(property, "");
  }

  /** The list of a kind. */
  public Listed list(String kind) {
    return lists.getOrDefault(kind, Listed.OPEN);
  }

  /** The title of a thing, or its id. */
  public String title(String thing) {
    return titles.getOrDefault(thing, thing);
  }
}
