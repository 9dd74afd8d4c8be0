package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.ValueList;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.Property.Heading;
import org.mainsgate.ruleset.Property.Home;
import org.mainsgate.ruleset.Property.Tier;
import org.mainsgate.ruleset.RulesetFile.KindEntry;
import org.mainsgate.ruleset.RulesetFile.ObservationEntry;
import org.mainsgate.ruleset.RulesetFile.PointerEntry;
import org.mainsgate.ruleset.RulesetFile.QuantityEntry;
import org.mainsgate.ruleset.RulesetFile.VocabularyFile;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.Text;

/** Reads a vocabulary: every name is declared once, and every name that is used is declared. */
final class VocabularyReader {
  static final Map<String, Kind.Once> ONCE =
      Map.of("instrument", Kind.Once.INSTRUMENT, "bench", Kind.Once.BENCH);
  static final Map<String, Home> HOMES =
      Map.of("bench", Home.BENCH, "instrument", Home.INSTRUMENT, "visit", Home.VISIT);
  static final Map<String, Tier> TIERS =
      Map.of("gate", Tier.GATE, "if present", Tier.IF_PRESENT, "note", Tier.NOTE);
  static final Map<String, Nature> NATURES =
      Map.of("measured", Nature.MEASURED, "marked", Nature.MARKED, "varies", Nature.VARIES);

  static final Map<String, Property.Worst> WORST =
      Map.of("highest", Property.Worst.HIGHEST, "lowest", Property.Worst.LOWEST);

  /** How long it takes where a file does not say, in seconds; common practice. */
  private static final int TO_LOOK = 5;

  private static final int TO_READ = 8;
  private static final int TO_MEASURE = 20;

  private final VocabularyFile file;
  private final Complaints complaints;
  private final Wording wording;
  private final Map<String, Kind> kinds = new LinkedHashMap<>();
  private final Map<String, Property> properties = new LinkedHashMap<>();

  VocabularyReader(VocabularyFile file, Complaints complaints) {
    this.file = file;
    this.complaints = complaints;
    this.wording = new Wording(complaints);
  }

  Vocabulary read() {
    file.kinds().forEach((name, entry) -> kinds.put(name, kind(name, entry)));
    file.quantities().forEach(this::quantity);
    file.observations().forEach(this::observation);
    file.references().forEach(this::pointer);
    Map<String, Vocabulary.Act> acts = new LinkedHashMap<>();
    file.acts()
        .forEach(
            (name, entry) ->
                acts.put(
                    name,
                    new Vocabulary.Act(name, entry.title().value(), wording.yes(entry.ends()))));
    Map<String, String> reasons = new LinkedHashMap<>();
    file.withdrawalReasons().forEach((name, words) -> reasons.put(name, words.value()));
    return new Vocabulary(kinds, properties, acts, reasons);
  }

  private Kind kind(String name, KindEntry entry) {
    Kind.Once once =
        entry.one() == null
            ? Kind.Once.LISTED
            : wording.oneOf("place", entry.one(), ONCE).orElse(Kind.Once.INSTRUMENT);
    String title = entry.title().value();
    String plural = entry.plural() == null ? title : entry.plural().value();
    return new Kind(
        name,
        title,
        plural,
        once,
        wording.yes(entry.designator()),
        wording.seconds(entry.seconds(), TO_LOOK));
  }

  private void quantity(String name, QuantityEntry entry) {
    List<Unit> units = new ArrayList<>();
    entry.units().forEach(text -> wording.unit(text).ifPresent(units::add));
    Optional<Nature> nature = wording.oneOf("nature", entry.nature(), NATURES);
    if (units.isEmpty() || nature.isEmpty()) {
      return;
    }
    Optional<Rational> least = point(entry.least(), units.get(0));
    if (nature.get() == Nature.MEASURED && entry.function() == null) {
      complaints.add(
          entry.at(),
          "`" + name + "` is measured, but by no function of a meter",
          "`function: resistance` or another");
    }
    Optional<String> function = Optional.ofNullable(entry.function()).map(Text::value);
    Heading heading =
        new Heading(
            name,
            entry.title().value(),
            owners(entry.of()),
            home(entry.file()),
            tier(entry.tier()),
            wording.yes(entry.momentary()),
            Wording.orEmpty(entry.method()),
            Wording.orEmpty(entry.caution()),
            wording.seconds(
                entry.seconds(), nature.get() == Nature.MEASURED ? TO_MEASURE : TO_READ));
    Property.Quantity quantity =
        new Property.Quantity(
            heading,
            nature.get(),
            units,
            function,
            least,
            worst(entry),
            point(entry.leads(), units.get(0)),
            derived(entry));
    new Sense(quantity, entry).demand();
    declare(name, entry.of(), quantity);
  }

  /** What the parts of a quantity ask of each other. */
  private final class Sense {
    private final Property.Quantity quantity;
    private final QuantityEntry entry;
    private final boolean ofThings;
    private final boolean ofEntries;

    Sense(Property.Quantity quantity, QuantityEntry entry) {
      this.quantity = quantity;
      this.entry = entry;
      List<String> owners = quantity.heading().of();
      this.ofThings = owners.stream().anyMatch(kinds::containsKey);
      this.ofEntries = !kinds.keySet().containsAll(owners);
    }

    void demand() {
      boolean measured = quantity.nature() == Nature.MEASURED;
      if (quantity.worst().isPresent() && (ofEntries || !measured)) {
        refuse(" has no worst of several", "`nature: measured`, of a kind of thing");
      }
      boolean inVisits = quantity.heading().home() == Home.VISIT;
      if (quantity.isMomentary() && (ofEntries || !inVisits)) {
        refuse(" can't be momentary", "a thing under `of`, and entries in a visit");
      }
      if (measured && ofEntries) {
        refuse(
            " is measured, but said with another entry, where no meter is named",
            "a kind of thing under `of`");
      }
      if (quantity.derived() && (ofThings || !isTime())) {
        refuse(
            " can't be an age",
            "`nature: marked`, `units: [d]`, no function, and `of` properties, not things");
      }
    }

    private boolean isTime() {
      return quantity.nature() == Nature.MARKED
          && quantity.function().isEmpty()
          && quantity.unit().dimension().equals(Dimension.TIME);
    }

    private void refuse(String what, String right) {
      complaints.add(entry.at(), "`" + quantity.name() + "`" + what, right);
    }
  }

  private Optional<Rational> point(@Nullable Text text, Unit unit) {
    return Optional.ofNullable(text)
        .flatMap(found -> wording.point(found, unit.dimension()))
        .flatMap(Typed::nominal);
  }

  private Optional<Property.Worst> worst(QuantityEntry entry) {
    return Optional.ofNullable(entry.worst()).flatMap(text -> wording.oneOf("end", text, WORST));
  }

  private boolean derived(QuantityEntry entry) {
    return Optional.ofNullable(entry.derived())
        .flatMap(text -> wording.oneOf("derived quantity", text, List.of(Vocabulary.AGE)))
        .isPresent();
  }

  private void observation(String name, ObservationEntry entry) {
    Map<String, String> titles = values(entry.values());
    if (titles.isEmpty()) {
      return;
    }
    String list = entry.values() instanceof Text shared ? shared.value() : name;
    Heading heading =
        new Heading(
            name,
            entry.title().value(),
            owners(entry.of()),
            home(entry.file()),
            tier(entry.tier()),
            wording.yes(entry.momentary()),
            Wording.orEmpty(entry.method()),
            Wording.orEmpty(entry.caution()),
            wording.seconds(entry.seconds(), TO_LOOK));
    ValueList values = new ValueList(list, List.copyOf(titles.keySet()));
    declare(name, entry.of(), new Property.Observation(heading, values, titles));
  }

  private void pointer(String name, PointerEntry entry) {
    wording.oneOf("kind of thing", entry.to(), kinds.keySet());
    Heading heading =
        new Heading(
            name,
            entry.title().value(),
            owners(entry.of()),
            Home.VISIT,
            Tier.GATE,
            false,
            "",
            "",
            0);
    declare(name, entry.of(), new Property.Pointer(heading, entry.to().value()));
  }

  private void declare(String name, Node at, Property property) {
    if (kinds.containsKey(name) || properties.putIfAbsent(name, property) != null) {
      complaints.add(at, "`" + name + "` is declared twice", "one meaning for one name");
    }
  }

  private Home home(@Nullable Text text) {
    return text == null ? Home.VISIT : wording.oneOf("file", text, HOMES).orElse(Home.VISIT);
  }

  private Tier tier(Text text) {
    return wording.oneOf("tier", text, TIERS).orElse(Tier.GATE);
  }

  /** One owner, or a list of them: a kind of thing, or a property that this is said with. */
  private List<String> owners(Node node) {
    List<String> owners = new ArrayList<>();
    if (node instanceof Items items) {
      items.items().forEach(item -> owner(item, owners));
    } else {
      owner(node, owners);
    }
    return owners;
  }

  private void owner(Node node, List<String> owners) {
    List<String> valid = new ArrayList<>(kinds.keySet());
    valid.addAll(file.quantities().keySet());
    valid.addAll(file.observations().keySet());
    if (node instanceof Text text) {
      wording.oneOf("kind of thing or property", text, valid).ifPresent(owners::add);
    } else {
      complaints.add(node, "not a name", "the name of a kind of thing or of a property");
    }
  }

  /** The named values and their titles: a map of them, or the name of a shared list. */
  private Map<String, String> values(Node node) {
    Map<String, String> titles = new LinkedHashMap<>();
    if (node instanceof Text shared) {
      wording
          .oneOf("value list", shared, file.valueLists())
          .ifPresent(list -> list.forEach((name, title) -> titles.put(name, title.value())));
    } else if (node instanceof Fields fields) {
      fields.fields().forEach(field -> titles.put(field.key().value(), field.value().toString()));
    } else {
      complaints.add(
          node, "not a list of named values", "`name: title` for each, or a shared list");
    }
    return titles;
  }
}
