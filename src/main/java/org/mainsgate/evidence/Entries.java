package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Nature;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Property.Home;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;

/**
 * The reader of what is said of things in one file: the walk over things, properties and entries.
 */
final class Entries {
  static final Pattern ID = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,31}");
  static final Comparator<Entry> ORDER =
      Comparator.comparing(Entry::thing).thenComparing(Entry::property).thenComparing(Entry::id);

  private static final String WORST_OF = "worst_of";

  private final Dictionary dictionary;
  private final Bench bench;
  private final Map<String, String> kindOf;
  private final Measuring measuring;
  private final Values values;
  private final Home home;
  private final Optional<LocalDate> date;
  private final Complaints complaints;
  private final Map<String, Position> ids = new HashMap<>();

  /**
   * A reader of one file.
   *
   * @param kindOf the kind of each thing that can be pointed to, by id
   * @param home the kind of file
   * @param date the date of the file's entries, where it has one
   */
  Entries(
      Dictionary dictionary,
      Bench bench,
      Map<String, String> kindOf,
      Home home,
      Optional<LocalDate> date,
      Complaints complaints) {
    this.dictionary = dictionary;
    this.bench = bench;
    this.kindOf = kindOf;
    this.measuring = new Measuring(bench, dictionary.meterKinds(), complaints);
    this.values = new Values(kindOf, complaints);
    this.home = home;
    this.date = date;
    this.complaints = complaints;
  }

  /**
   * Reads what is said of one thing.
   *
   * @param prefix what the ids of its entries start with
   */
  List<Entry> of(String thing, String kind, String prefix, Fields said) {
    List<Entry> entries = new ArrayList<>();
    for (Fields.Field field : said.fields()) {
      property(kind, field.key())
          .ifPresent(property -> entries.addAll(all(thing, property, prefix, field.value())));
    }
    entries.sort(ORDER);
    return entries;
  }

  private Optional<Property> property(String kind, Text key) {
    Optional<Property> found =
        dictionary.vocabulary().property(key.value()).filter(p -> p.isOf(kind));
    if (found.isPresent() && found.get().heading().home() != home) {
      complaints.add(
          key,
          Words.quoted(key) + " is not written in this file",
          placeOf(found.get().heading().home()));
      return Optional.empty();
    }
    if (found.isEmpty()) {
      List<String> valid =
          dictionary.vocabulary().of(kind).stream()
              .filter(p -> p.heading().home() == home)
              .map(Property::name)
              .toList();
      Words.unknown(key, "property of " + kind, valid, complaints);
    }
    return found;
  }

  private static String placeOf(Home home) {
    return switch (home) {
      case BENCH -> "it under `site` of the bench's file";
      case INSTRUMENT -> "it under `plate` of the instrument's file";
      case VISIT -> "it under `found` or `left` of a visit";
    };
  }

  private List<Entry> all(String thing, Property property, String prefix, Node node) {
    List<Entry> entries = new ArrayList<>();
    String id = prefix + "." + property.name();
    int number = 0;
    for (Node one : each(property, node)) {
      number++;
      one(thing, property, number == 1 ? id : id + "." + number, one).ifPresent(entries::add);
    }
    return entries;
  }

  /** A list is several entries, but a list of named values is one entry with several candidates. */
  private List<Node> each(Property property, Node node) {
    if (!(node instanceof Items items)) {
      return List.of(node);
    }
    boolean candidates =
        property instanceof Property.Observation
            && items.items().stream().allMatch(Text.class::isInstance);
    if (!candidates && items.items().isEmpty()) {
      complaints.add(items, "an empty list", "a value, or no entry at all");
    }
    return candidates ? List.of(node) : items.items();
  }

  private Optional<Entry> one(String thing, Property property, String id, Node node) {
    return node instanceof Fields fields
        ? longForm(thing, property, id, fields)
        : entry(thing, property, id, Optional.of(node), Map.of(), node.at());
  }

  private Optional<Entry> longForm(String thing, Property property, String id, Fields fields) {
    Map<String, Node> written = new TreeMap<>();
    List<String> own = ownKeys(property, home);
    List<String> with = dictionary.with(property.name());
    for (Fields.Field field : fields.fields()) {
      String key = field.key().value();
      if (own.contains(key) || with.contains(key)) {
        written.put(key, field.value());
      } else {
        unknownKey(property, field.key(), own, with);
      }
    }
    Optional<Node> main = Optional.ofNullable(written.get(mainKey(property)));
    if (main.isEmpty()) {
      String key = Words.quoted(mainKey(property));
      complaints.add(fields.at(), "missing " + key, key + " with what was found");
    }
    return entry(thing, property, id, main, written, fields.at());
  }

  static String mainKey(Property property) {
    return property instanceof Property.Quantity ? "value" : "is";
  }

  /** The fields of an entry itself, in a kind of file, beside what is recorded with it. */
  static List<String> ownKeys(Property property, Home home) {
    List<String> keys = new ArrayList<>(List.of(mainKey(property), "id", "note", "by"));
    if (home != Home.VISIT) {
      keys.add("on");
    }
    if (isMeasured(property)) {
      keys.addAll(Measuring.KEYS);
    }
    if (worst(property).isPresent()) {
      keys.add(WORST_OF);
    }
    return keys;
  }

  private void unknownKey(Property property, Text key, List<String> own, List<String> with) {
    Optional<Dictionary.Refused> refused = dictionary.refusedWith(property.name(), key.value());
    if (refused.isPresent()) {
      complaints.add(key, refused.get().what(), refused.get().right());
      return;
    }
    if (key.value().equals(WORST_OF)) {
      complaints.add(
          key,
          Words.quoted(property.name()) + " has no worst of several",
          "an entry of each thing");
      return;
    }
    if (Measuring.KEYS.contains(key.value())) {
      complaints.add(
          key,
          Words.quoted(key) + " has no place here",
          Words.quoted(property.name()) + " without it: it is not measured");
      return;
    }
    List<String> valid = new ArrayList<>(own);
    valid.addAll(with);
    Words.unknown(key, "field", valid, complaints);
  }

  private static boolean isMeasured(Property property) {
    return property instanceof Property.Quantity quantity && quantity.nature() == Nature.MEASURED;
  }

  private Optional<Entry> entry(
      String thing,
      Property property,
      String defaultId,
      Optional<Node> main,
      Map<String, Node> written,
      Position at) {
    int before = complaints.count();
    if (property instanceof Property.Quantity quantity && quantity.derived()) {
      complaints.add(at, Words.quoted(property.name()) + " is computed from the date", "no entry");
    }
    Optional<Value> value = main.flatMap(node -> values.read(property, node));
    String id = id(written.get("id"), defaultId, at);
    Optional<String> by = by(written);
    Optional<LocalDate> on = on(property, written, at);
    Map<String, Value> with = with(property, written);
    Measuring.Means means = Measuring.Means.NONE;
    if (property instanceof Property.Quantity quantity
        && isMeasured(property)
        && main.isPresent()) {
      means = measuring.read(quantity, main.get(), value, written, on.or(() -> date));
    }
    Map<String, Value> all = new TreeMap<>(means.with());
    all.putAll(with);
    String note = text(written, "note").map(Text::value).orElse("");
    if (complaints.count() > before || value.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Entry(
            id,
            thing,
            property.name(),
            value.get(),
            all,
            means.meter(),
            means.range(),
            means.nulled(),
            by,
            on,
            worstOf(thing, property, written),
            Optional.empty(),
            note,
            at));
  }

  private static Optional<Property.Worst> worst(Property property) {
    return property instanceof Property.Quantity quantity ? quantity.worst() : Optional.empty();
  }

  /** The other things of its kind for which a reading speaks, since it was the worst of all. */
  private Set<String> worstOf(String thing, Property property, Map<String, Node> written) {
    Node node = written.get(WORST_OF);
    if (node == null || worst(property).isEmpty()) {
      return Set.of();
    }
    String kind = kindOf.getOrDefault(thing, "");
    List<String> valid =
        kindOf.keySet().stream()
            .filter(other -> kind.equals(kindOf.get(other)) && !other.equals(thing))
            .toList();
    Set<String> others = new TreeSet<>();
    for (Node one : node instanceof Items items ? items.items() : List.of(node)) {
      Optional<Text> text = Words.text(one, WORST_OF, complaints);
      if (text.isPresent()
          && Words.known(text.get(), "other thing of its kind", valid, complaints)
          && !others.add(text.get().value())) {
        complaints.add(text.get(), Words.quoted(text.get()) + " stands here twice", "it once");
      }
    }
    return others;
  }

  /** The entries, and each of those that speak for other things once for each of them. */
  List<Entry> spread(List<Entry> entries) {
    List<Entry> all = new ArrayList<>(entries);
    for (Entry entry : entries) {
      dictionary
          .vocabulary()
          .property(entry.property())
          .flatMap(Entries::worst)
          .ifPresent(
              worst -> entry.worstOf().forEach(other -> all.add(entry.boundOn(other, worst))));
    }
    return all;
  }

  private Optional<Text> text(Map<String, Node> written, String key) {
    return Optional.ofNullable(written.get(key)).flatMap(n -> Words.text(n, key, complaints));
  }

  private String id(@Nullable Node node, String defaultId, Position at) {
    if (node == null) {
      return defaultId;
    }
    Optional<Text> text = Words.text(node, "id", complaints);
    if (text.isEmpty()) {
      return defaultId;
    }
    String id = text.get().value();
    if (!ID.matcher(id).matches()) {
      complaints.add(
          text.get(),
          Words.quoted(id) + " can't be the id of an entry",
          "1 to 32 letters, digits, `_` and `-`, such as `e1`");
    } else if (ids.putIfAbsent(id, at) != null) {
      complaints.add(text.get(), "a second entry " + Words.quoted(id), "an id of its own");
    }
    return id;
  }

  private Optional<String> by(Map<String, Node> written) {
    Optional<Text> by = text(written, "by");
    by.ifPresent(text -> Words.known(text, "person", bench.people().keySet(), complaints));
    return by.map(Text::value);
  }

  private Optional<LocalDate> on(Property property, Map<String, Node> written, Position at) {
    if (home == Home.VISIT) {
      return Optional.empty();
    }
    Optional<Text> text = text(written, "on");
    Optional<LocalDate> on = text.flatMap(t -> Words.date(t));
    if (text.isPresent() && on.isEmpty()) {
      complaints.add(
          text.get(),
          Words.quoted(text.get()) + " is not a date of the calendar",
          "year-month-day, such as `2026-11-25`");
    } else if (text.isEmpty() && isMeasured(property)) {
      complaints.add(
          at, "a measurement without its date", "fields such as `{value: 238 V, on: 2026-11-20}`");
    }
    return on;
  }

  private Map<String, Value> with(Property property, Map<String, Node> written) {
    Map<String, Value> with = new TreeMap<>();
    written.forEach(
        (name, node) ->
            dictionary
                .vocabulary()
                .with(property.name(), name)
                .flatMap(of -> values.read(of, node))
                .ifPresent(value -> with.put(name, value)));
    return with;
  }

  /** The ids that people gave to entries of the file. */
  Set<String> ids() {
    return new TreeSet<>(ids.keySet());
  }
}
