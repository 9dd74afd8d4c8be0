package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Listing;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Said;

/**
 * A record turned into what is in force on a day.
 *
 * <p>An entry counts unless it was withdrawn, or work has voided it, or a visit of a later date
 * that knew of it says something newer. All that count, count together: two readings of one day are
 * both believed, and the worse decides.
 */
public final class InForce {
  private final Rules rules;
  private final Bench bench;
  private final Instrument instrument;
  private final LocalDate on;
  private final Timeline timeline;
  private final Voiding voiding;
  private final Testimony testimony;
  private final Decisions decisions;
  private final List<SetAside> setAside = new ArrayList<>();
  private final Map<String, Map<String, String>> lost = new HashMap<>();
  private final Map<String, Map<String, List<Fact>>> superseded = new HashMap<>();
  private final Map<String, Map<String, Fact>> momentary = new HashMap<>();

  private InForce(Rules rules, InstrumentRecord record, LocalDate on) {
    this.rules = rules;
    this.bench = record.bench();
    this.instrument = record.instrument();
    this.on = on;
    this.timeline = new Timeline(record.visits());
    this.voiding = new Voiding(rules.vocabulary(), rules.dependencies(), instrument, timeline);
    this.testimony = new Testimony(rules, bench, on);
    this.decisions = new Decisions(rules, bench, instrument, timeline, voiding);
  }

  /**
   * What is in force, and what is not.
   *
   * @param evidence what is in force
   * @param setAside what was recorded and does not count
   */
  public record Result(Evidence evidence, List<SetAside> setAside) {

    /** Keeps the list as it is. */
    public Result {
      setAside = List.copyOf(setAside);
    }
  }

  /**
   * An entry that does not count.
   *
   * @param entry its id, {@code VISIT/ENTRY}
   * @param thing the thing's title
   * @param title the property's title
   * @param text what was written
   * @param why why it does not count
   */
  public record SetAside(String entry, String thing, String title, String text, String why) {}

  /** What is in force on a day. */
  public static Result of(Rules rules, InstrumentRecord record, LocalDate on) {
    return new InForce(rules, record, on).result();
  }

  private Result result() {
    Map<String, Map<String, Fact>> all = new HashMap<>();
    lasting(all, bench.site(), "bench");
    lasting(all, instrument.plate(), instrument.tag());
    byProperty()
        .values()
        .forEach(
            entries -> inForce(entries).ifPresent(fact -> put(all, entries.get(0).entry(), fact)));
    Evidence evidence = new Evidence(titles(), lists(), all, decisions.inForce(), lost, superseded);
    setAside.addAll(decisions.fallen(this::title));
    return new Result(evidence, setAside);
  }

  /** What stands in the files of the bench and the instrument, and no visit changes. */
  private void lasting(Map<String, Map<String, Fact>> all, List<Entry> entries, String file) {
    Map<String, List<Entry>> byName = new LinkedHashMap<>();
    entries.forEach(
        entry -> byName.computeIfAbsent(entry.property(), name -> new ArrayList<>()).add(entry));
    for (List<Entry> same : byName.values()) {
      List<Fact> facts =
          same.stream().map(entry -> testimony.single(entry, file, on, "", Map.of())).toList();
      testimony.together(facts).ifPresent(fact -> put(all, same.get(0), fact));
    }
  }

  private static void put(Map<String, Map<String, Fact>> all, Entry entry, Fact fact) {
    all.computeIfAbsent(entry.thing(), thing -> new HashMap<>()).put(entry.property(), fact);
  }

  /** An entry of a visit, and when it was written. */
  private record Dated(Entry entry, Moment moment) {
    Visit visit() {
      return moment.visit();
    }

    String id() {
      return visit().id() + "/" + entry.id();
    }
  }

  private Map<String, List<Dated>> byProperty() {
    Map<String, List<Dated>> entries = new LinkedHashMap<>();
    for (Visit visit : timeline.visits()) {
      visit.found().forEach(entry -> add(entries, new Dated(entry, new Moment(visit, false))));
      visit.left().forEach(entry -> add(entries, new Dated(entry, new Moment(visit, true))));
    }
    return entries;
  }

  private static void add(Map<String, List<Dated>> entries, Dated dated) {
    String key = dated.entry().thing() + " " + dated.entry().property();
    entries.computeIfAbsent(key, found -> new ArrayList<>()).add(dated);
  }

  /** The hull of all entries of one property of one thing that count. */
  private Optional<Fact> inForce(List<Dated> entries) {
    List<Dated> standing = new ArrayList<>();
    for (Dated dated : entries) {
      Optional<String> why = whyNot(dated);
      Optional<Dated> newer =
          entries.stream().filter(other -> supersedes(other, dated)).findFirst();
      if (why.isPresent()) {
        setAside(dated, why.get());
      } else if (newer.isPresent()) {
        setAside(dated, "superseded on " + newer.get().visit().date());
        remember(dated);
      } else {
        standing.add(dated);
      }
    }
    return testimony.together(standing.stream().map(this::fact).toList());
  }

  private Fact fact(Dated dated) {
    Visit visit = dated.visit();
    return testimony.single(dated.entry(), visit.id(), visit.date(), visit.by(), momentary(dated));
  }

  private void remember(Dated dated) {
    superseded
        .computeIfAbsent(dated.entry().thing(), thing -> new HashMap<>())
        .computeIfAbsent(dated.entry().property(), name -> new ArrayList<>())
        .add(fact(dated));
  }

  private Optional<String> whyNot(Dated dated) {
    Optional<String> withdrawn = withdrawn(dated);
    if (withdrawn.isPresent()) {
      return withdrawn;
    }
    Entry entry = dated.entry();
    Optional<Visit.Work> work = voiding.of(entry.thing(), entry.property(), dated.moment());
    if (work.isPresent()) {
      return Optional.of("void since work on " + title(work.get().on()));
    }
    if (property(entry).isMomentary() && !isNow(dated.visit())) {
      return Optional.of("true for that visit only");
    }
    return Optional.empty();
  }

  private boolean supersedes(Dated later, Dated earlier) {
    return timeline.isBefore(earlier.visit(), later.visit())
        && later.visit().date().isAfter(earlier.visit().date())
        && withdrawn(later).isEmpty();
  }

  private Optional<String> withdrawn(Dated dated) {
    for (Visit visit : timeline.visits()) {
      for (Visit.Withdrawal found : visit.withdrawn()) {
        if (found.visit().equals(dated.visit().id()) && found.entry().equals(dated.entry().id())) {
          String reason =
              rules.vocabulary().withdrawalReasons().getOrDefault(found.reason(), found.reason());
          return Optional.of("withdrawn: " + reason);
        }
      }
    }
    return Optional.empty();
  }

  private void setAside(Dated dated, String why) {
    Entry entry = dated.entry();
    String text = testimony.text(entry);
    lost.computeIfAbsent(entry.thing(), thing -> new HashMap<>())
        .merge(entry.property(), text + " (" + why + ")", (a, b) -> a + ", " + b);
    setAside.add(
        new SetAside(
            dated.id(), title(entry.thing()), property(entry).title(), testimony.text(entry), why));
  }

  private Property property(Entry entry) {
    return rules.vocabulary().property(entry.property()).orElseThrow();
  }

  /** Whether what is true for an hour can still be true: the latest visit, on its own day. */
  private boolean isNow(Visit visit) {
    return visit.date().equals(on) && timeline.isHead(visit);
  }

  /**
   * What is true at a moment only, and so stands with each reading of it. What is said of one thing
   * of many stands with the readings of that thing alone.
   */
  private Map<String, Fact> momentary(Dated dated) {
    String thing = dated.entry().thing();
    String key = dated.visit().id() + " " + dated.moment().afterWork() + " " + thing;
    return momentary.computeIfAbsent(key, found -> momentary(dated.moment(), thing));
  }

  private Map<String, Fact> momentary(Moment moment, String thing) {
    Visit visit = moment.visit();
    Map<String, List<Fact>> found = new HashMap<>();
    for (Entry entry : momentaryOf(visit.found(), thing)) {
      boolean gone =
          moment.afterWork()
              && (voiding.within(visit, entry.thing(), entry.property())
                  || saysAgain(visit.left(), entry));
      if (!gone) {
        momentary(found, entry, new Moment(visit, false));
      }
    }
    if (moment.afterWork()) {
      momentaryOf(visit.left(), thing).forEach(entry -> momentary(found, entry, moment));
    }
    Map<String, Fact> together = new HashMap<>();
    found.forEach(
        (name, facts) -> testimony.together(facts).ifPresent(fact -> together.put(name, fact)));
    return together;
  }

  private List<Entry> momentaryOf(List<Entry> entries, String thing) {
    return entries.stream()
        .filter(entry -> property(entry).isMomentary())
        .filter(
            entry -> entry.thing().equals(thing) || !instrument.things().containsKey(entry.thing()))
        .toList();
  }

  private static boolean saysAgain(List<Entry> left, Entry entry) {
    return left.stream()
        .anyMatch(
            other ->
                other.thing().equals(entry.thing()) && other.property().equals(entry.property()));
  }

  private void momentary(Map<String, List<Fact>> found, Entry entry, Moment moment) {
    Visit visit = moment.visit();
    if (withdrawn(new Dated(entry, moment)).isEmpty()) {
      found
          .computeIfAbsent(entry.property(), name -> new ArrayList<>())
          .add(testimony.single(entry, visit.id(), visit.date(), visit.by(), Map.of()));
    }
  }

  private Map<String, String> titles() {
    Map<String, String> titles = new HashMap<>();
    rules.vocabulary().kinds().values().stream()
        .filter(kind -> !kind.isListed())
        .forEach(kind -> titles.put(kind.name(), kind.title()));
    instrument.things().values().forEach(thing -> titles.put(thing.id(), thing.title()));
    return titles;
  }

  private String title(String thing) {
    return titles().getOrDefault(thing, thing);
  }

  private Map<String, Evidence.Listed> lists() {
    Map<String, Evidence.Listed> lists = new HashMap<>();
    for (Kind kind : rules.vocabulary().listedKinds()) {
      lists.put(kind.name(), list(kind.name()));
    }
    return lists;
  }

  /**
   * The things of a kind that are still there, and whether every word in force says that these are
   * all.
   */
  private Evidence.Listed list(String kind) {
    List<String> items =
        instrument.things().values().stream()
            .filter(thing -> thing.kind().equals(kind) && !isGone(thing.id()))
            .map(Instrument.Thing::id)
            .toList();
    List<Looked> words = looked(kind);
    boolean closed =
        !words.isEmpty() && words.stream().allMatch(word -> agrees(word.looked(), items));
    Optional<Integer> counted = words.stream().map(word -> word.looked().count()).reduce(Math::max);
    List<Said> said = words.stream().map(Looked::said).toList();
    return new Evidence.Listed(new Listing(items, closed), counted, said);
  }

  private boolean isGone(String thing) {
    return timeline.visits().stream()
        .flatMap(visit -> visit.work().stream())
        .anyMatch(work -> work.on().equals(thing) && rules.vocabulary().ends(work.act()));
  }

  private static boolean agrees(Visit.Looked looked, List<String> items) {
    return looked.count() == items.size()
        && looked.things().map(things -> things.equals(new HashSet<>(items))).orElse(true);
  }

  private record Looked(Visit.Looked looked, Moment moment) {
    Said said() {
      Visit visit = moment.visit();
      return new Said(
          visit.id() + "/" + looked.id(),
          visit.date(),
          visit.by(),
          "counted " + looked.count(),
          Optional.empty(),
          "",
          Optional.empty(),
          Optional.empty());
    }
  }

  private List<Looked> looked(String kind) {
    List<Looked> all = new ArrayList<>();
    for (Visit visit : timeline.visits()) {
      visit.foundLists().forEach(word -> all.add(new Looked(word, new Moment(visit, false))));
      visit.leftLists().forEach(word -> all.add(new Looked(word, new Moment(visit, true))));
    }
    all.removeIf(word -> !word.looked().kind().equals(kind));
    List<Looked> counting =
        all.stream()
            .filter(word -> voiding.of("instrument", kind, word.moment()).isEmpty())
            .toList();
    return counting.stream()
        .filter(word -> counting.stream().noneMatch(other -> isNewer(other, word)))
        .toList();
  }

  /** A person who looks again, in a later visit or after the work, looks at all of it. */
  private boolean isNewer(Looked later, Looked earlier) {
    Visit first = earlier.moment().visit();
    Visit second = later.moment().visit();
    return timeline.isBefore(first, second)
        || (first.equals(second) && later.moment().afterWork() && !earlier.moment().afterWork());
  }
}
