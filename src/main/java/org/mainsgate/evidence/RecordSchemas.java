package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.mainsgate.formula.Nature;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.TypedPattern;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.RecordSchema;
import org.mainsgate.source.Schema;

/**
 * The schemas of the record's files, from the vocabulary and the shapes of the files.
 *
 * <p>They refuse nothing that {@link RecordReader} takes. What only another file can say, such as
 * the names of people and meters, they leave open.
 */
public final class RecordSchemas {
  private static final Schema NAME = Schema.pattern("^" + Words.NAME.pattern() + "$");
  private static final Schema INITIALS = Schema.pattern("^" + Wording.INITIALS_ARE + "$");
  private static final Schema YAML_PATH = Schema.pattern("\\.yaml$");

  /**
   * What stands before the name of a property, or of a field of an entry, in definitions; with
   * hyphens, which no property has, so that none of these is ever a property.
   */
  private static final String VALUE = "value-of-";

  private static final String LONG = "in-full-";
  private static final String ENTRY = "entry-";

  private final Dictionary dictionary;
  private final Vocabulary vocabulary;
  private final Collection<String> profiles;
  private final boolean whole;
  private final RecordSchema words;

  /**
   * Schemas in these words.
   *
   * @param checks the names of the checks that an editor offers
   * @param profiles the names of the program's profiles
   * @param whole whether what has to be there is demanded; not of the pieces of a test's record
   */
  public RecordSchemas(
      Vocabulary vocabulary,
      Map<String, MeterKind> meterKinds,
      Collection<String> checks,
      Collection<String> profiles,
      boolean whole) {
    this.dictionary = new Dictionary(vocabulary, Map.copyOf(meterKinds), List.copyOf(checks));
    this.vocabulary = vocabulary;
    this.profiles = List.copyOf(profiles);
    this.whole = whole;
    this.words = new RecordSchema(Map.of(), whole);
  }

  /** Of {@code bench.yaml}. */
  public Schema bench() {
    Map<String, Schema> told = new LinkedHashMap<>();
    told.put("profile", Schema.either(List.of(Schema.words(profiles), YAML_PATH)));
    told.put("overlays", YAML_PATH);
    told.put("people.*", INITIALS);
    told.put("meters.*", NAME);
    told.put(
        "meters.kind", Schema.words(dictionary.meterKinds().keySet().stream().sorted().toList()));
    told.put("functions", ranges());
    told.put("site", properties(Property.Home.BENCH, kinds(Kind.Once.BENCH)));
    told.put("methods", Schema.named(NAME, method()));
    return new RecordSchema(told, whole).of("bench", BenchFile.class);
  }

  /** Of {@code instrument.yaml}. */
  public Schema instrument() {
    Map<String, Schema> told = new LinkedHashMap<>();
    told.put("plate", properties(Property.Home.INSTRUMENT, kinds(Kind.Once.INSTRUMENT)));
    told.put("things.*", NAME.with("not", Schema.words(reserved())));
    told.put("things.kind", Schema.words(listed().map(Kind::name).toList()));
    return new RecordSchema(told, whole).of("instrument", InstrumentFile.class);
  }

  /** Of the file of a visit. */
  public Schema visit() {
    Map<String, Schema> told = new LinkedHashMap<>();
    told.put("found", half());
    told.put("left", half());
    told.put("work.act", Schema.words(vocabulary.acts().keySet()));
    told.put("judged.check", Schema.offering(dictionary.checks()));
    told.put("judged.by", INITIALS);
    told.put("withdrawn.reason", Schema.words(vocabulary.withdrawalReasons().keySet()));
    return new RecordSchema(told, whole).of("visit", VisitFile.class);
  }

  /** What the three use together: a schema for each property, and for each value of one. */
  public Map<String, Schema> defined() {
    Map<String, Schema> defined = new LinkedHashMap<>();
    for (Property property : vocabulary.properties().values()) {
      if (isWritten(property)) {
        shape(property, defined);
        defined.put(VALUE + property.name(), value(property));
        if (vocabulary.isSaidOfThings(property)) {
          defined.put(LONG + property.name(), longForm(property));
          defined.put(property.name(), entries(property));
        }
      }
    }
    for (Property property : vocabulary.properties().values()) {
      for (String key : Entries.ownKeys(property, property.heading().home())) {
        defined.computeIfAbsent(ENTRY + key, k -> words.described("entry." + key, own(key)));
      }
    }
    return defined;
  }

  private static boolean isWritten(Property property) {
    return !(property instanceof Property.Quantity quantity && quantity.derived());
  }

  /** What quantities of one dimension share. */
  private static void shape(Property property, Map<String, Schema> defined) {
    if (property instanceof Property.Quantity quantity) {
      Dimension dimension = quantity.unit().dimension();
      defined.put(
          shapeOf(quantity),
          Schema.strictly(TypedPattern.of(dimension, quantity.nature() == Nature.MEASURED))
              .marking("one " + dimension.describe() + " with its unit, and a point for decimals"));
      defined.put(
          rangeOf(quantity),
          Schema.strictly(TypedPattern.stated(dimension))
              .marking("one " + dimension.describe() + " with its unit"));
    }
  }

  private static String shapeOf(Property.Quantity quantity) {
    return (quantity.nature() == Nature.MEASURED ? "measured-" : "marked-") + kindOf(quantity);
  }

  private static String rangeOf(Property.Quantity quantity) {
    return "range-of-" + kindOf(quantity);
  }

  /** The dimension, in letters that may stand in a reference. */
  private static String kindOf(Property.Quantity quantity) {
    return quantity.unit().dimension().describe().replaceAll("[^A-Za-z0-9]+", "-");
  }

  private Stream<Kind> listed() {
    return vocabulary.kinds().values().stream().filter(Kind::isListed);
  }

  private List<Kind> kinds(Kind.Once once) {
    return vocabulary.kinds().values().stream().filter(kind -> kind.once() == once).toList();
  }

  private List<String> reserved() {
    List<String> reserved =
        new ArrayList<>(
            vocabulary.kinds().values().stream()
                .filter(kind -> !kind.isListed())
                .map(Kind::name)
                .toList());
    reserved.add(InstrumentReader.LOOKED);
    reserved.add(InstrumentReader.EVERY);
    return reserved;
  }

  /** What can be said of things of these kinds in a kind of file. */
  private Schema properties(Property.Home home, List<Kind> kinds) {
    Map<String, Schema> fields = new LinkedHashMap<>();
    for (Property property : vocabulary.properties().values()) {
      if (isWritten(property)
          && property.heading().home() == home
          && kinds.stream().anyMatch(kind -> property.isOf(kind.name()))) {
        fields.put(property.name(), Schema.defined(property.name()));
      }
    }
    return Schema.fields(fields, List.of());
  }

  /** What was found, or how it was left. */
  private Schema half() {
    Map<String, Schema> fields = new LinkedHashMap<>();
    for (Kind kind : kinds(Kind.Once.INSTRUMENT)) {
      fields.put(
          kind.name(),
          properties(Property.Home.VISIT, List.of(kind))
              .saying("What is said of: " + kind.title()));
    }
    fields.put(InstrumentReader.LOOKED, looked());
    fields.put(InstrumentReader.EVERY, every());
    return Schema.fields(fields, List.of())
        .with("additionalProperties", properties(Property.Home.VISIT, listed().toList()));
  }

  private Schema looked() {
    Schema closed =
        Schema.either(
            List.of(
                Schema.words(List.of("none")),
                Schema.pattern("^(?:none|[0-9]{1,3})$")
                    .with("type", List.of("integer", "string"))
                    .with("minimum", 0)
                    .with("maximum", 999),
                Schema.list(NAME).with("minItems", 1)));
    Map<String, Schema> fields = new LinkedHashMap<>();
    listed()
        .forEach(
            kind ->
                fields.put(
                    kind.name(),
                    closed.saying(
                        "All "
                            + kind.plural()
                            + ": their ids, how many were counted, or `none` where you looked and"
                            + " there is none.")));
    Schema kind = Schema.words(listed().map(Kind::name).toList());
    fields.put(
        VisitReader.NONE,
        Schema.either(List.of(kind, Schema.list(kind)))
            .saying("Kinds of thing of which there is none: you looked for them."));
    return Schema.fields(fields, List.of())
        .saying("Lists that are closed: you looked, and these are all there are.");
  }

  private Schema every() {
    Map<String, Schema> fields = new LinkedHashMap<>();
    listed()
        .forEach(
            kind ->
                fields.put(
                    kind.name(),
                    properties(Property.Home.VISIT, List.of(kind))
                        .saying("What is said of every one of the " + kind.plural() + ".")));
    return Schema.fields(fields, List.of())
        .saying("What is said once of every thing of a kind whose ids stand under `looked`.");
  }

  private Schema method() {
    Map<String, Schema> fields = new LinkedHashMap<>();
    List<Property.Quantity> measured =
        vocabulary.properties().values().stream()
            .filter(RecordSchemas::isMeasured)
            .map(Property.Quantity.class::cast)
            .toList();
    fields.put("of", Schema.words(measured.stream().map(Property::name).toList()));
    for (String key : BenchReader.METHOD_KEYS) {
      fields.putIfAbsent(key, own(key));
    }
    measured.forEach(
        quantity ->
            dictionary
                .with(quantity.name())
                .forEach(name -> fields.putIfAbsent(name, Schema.defined(VALUE + name))));
    fields.replaceAll((key, schema) -> words.described("methods." + key, schema));
    return Schema.fields(fields, whole ? List.of("of") : List.of());
  }

  private static boolean isMeasured(Property property) {
    return property instanceof Property.Quantity quantity && quantity.nature() == Nature.MEASURED;
  }

  /** A plain value of a property, with all that helps to find it out. */
  private Schema value(Property property) {
    if (property instanceof Property.Quantity quantity) {
      return Schema.defined(shapeOf(quantity)).saying(sentence(property));
    }
    if (property instanceof Property.Observation observation) {
      List<String> single = new ArrayList<>(observation.values().values());
      single.add(Values.UNKNOWN);
      return Schema.either(
              List.of(
                  Schema.words(single.stream().distinct().toList()),
                  Schema.list(Schema.words(observation.values().values())).with("minItems", 1)))
          .saying(sentence(property));
    }
    return NAME.saying(sentence(property));
  }

  /**
   * All that may stand under a property of a thing: a value, one with its circumstances, several.
   */
  private Schema entries(Property property) {
    Schema value = Schema.defined(VALUE + property.name());
    Schema longForm = Schema.defined(LONG + property.name());
    List<Schema> single =
        isMeasured(property) && property.heading().home() != Property.Home.VISIT
            ? List.of(longForm)
            : List.of(value, longForm);
    List<Schema> all = new ArrayList<>(single);
    all.add(Schema.list(Schema.either(single)).with("minItems", 1));
    return Schema.either(all).saying(sentence(property));
  }

  private Schema longForm(Property property) {
    Map<String, Schema> fields = new LinkedHashMap<>();
    for (String key : Entries.ownKeys(property, property.heading().home())) {
      fields.put(key, Schema.defined(ENTRY + key));
    }
    fields.put(Entries.mainKey(property), Schema.defined(VALUE + property.name()));
    if (property instanceof Property.Quantity quantity && fields.containsKey("range")) {
      fields.put("range", words.described("entry.range", Schema.defined(rangeOf(quantity))));
    }
    dictionary
        .with(property.name())
        .forEach(name -> fields.put(name, Schema.defined(VALUE + name)));
    List<String> required = new ArrayList<>();
    if (whole) {
      required.add(Entries.mainKey(property));
      if (isMeasured(property) && property.heading().home() != Property.Home.VISIT) {
        required.add("on");
      }
    }
    return Schema.fields(fields, required);
  }

  /** What a field of an entry or a method takes that is not in the vocabulary. */
  private static Schema own(String key) {
    return switch (key) {
      case "id" -> Schema.pattern("^" + Entries.ID.pattern() + "$");
      case "by" -> INITIALS;
      case "on" -> Schema.DATE;
      case "range" -> Schema.strictly(TypedPattern.stated());
      case "nulled" ->
          Schema.either(
              List.of(
                  Schema.words(List.of("yes", "no")), Schema.strictly("^short reads [0-9−-].*$")));
      case "worst_of" -> Schema.either(List.of(NAME, Schema.list(NAME)));
      default -> Schema.TEXT;
    };
  }

  /** Title, values, method and caution in one text. */
  private static String sentence(Property property) {
    StringBuilder text = new StringBuilder(capital(property.title())).append('.');
    if (property instanceof Property.Observation observation) {
      List<String> values =
          observation.values().values().stream()
              .map(value -> "`" + value + "`: " + observation.title(value))
              .toList();
      text.append(' ').append(String.join("; ", values)).append('.');
    } else if (property instanceof Property.Quantity quantity) {
      text.append(" In ").append(quantity.unit().symbol()).append(", for example.");
    }
    add(text, "", property.heading().method());
    add(text, "Caution: ", property.heading().caution());
    return text.toString();
  }

  private static void add(StringBuilder text, String lead, String words) {
    if (!words.isEmpty()) {
      text.append(' ').append(lead).append(words);
    }
  }

  private static String capital(String text) {
    return text.substring(0, text.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT)
        + text.substring(text.offsetByCodePoints(0, 1));
  }

  /** The ranges of a meter by function. */
  private Schema ranges() {
    Ranges ranges = new Ranges(vocabulary, dictionary.meterKinds(), new Complaints());
    Map<String, Schema> fields = new LinkedHashMap<>();
    for (String function : ranges.functions()) {
      ranges
          .unit(function)
          .ifPresent(
              unit ->
                  fields.put(
                      function,
                      Schema.list(range(unit)).saying("Its ranges for " + function + ".")));
    }
    return Schema.fields(fields, List.of());
  }

  private Schema range(Unit unit) {
    Schema stated = Schema.strictly(TypedPattern.stated(unit.dimension()));
    Map<String, Schema> told = new LinkedHashMap<>();
    told.put("range.to", stated);
    told.put("range.digit", stated);
    told.put("range.accuracy", Schema.strictly(TypedPattern.accuracy(unit.dimension())));
    return new RecordSchema(told, whole).of("range", BenchFile.RangeEntry.class);
  }
}
