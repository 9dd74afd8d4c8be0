package org.mainsgate.evidence;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneRulesProvider;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Nature;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.NearestName;
import org.mainsgate.source.Node;
import org.mainsgate.source.Shapes;
import org.mainsgate.source.Text;

/** The reader of {@code bench.yaml}. */
final class BenchReader {
  private static final String BENCH = "bench";
  private static final Pattern INITIALS = Pattern.compile(Wording.INITIALS_ARE);
  private static final Pattern PROFILE_NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,31}");

  private final Dictionary dictionary;
  private final Complaints complaints;

  BenchReader(Dictionary dictionary, Complaints complaints) {
    this.dictionary = dictionary;
    this.complaints = complaints;
  }

  /** Reads the file; what comes back along with complaints is good for further complaints only. */
  Optional<Bench> read(Fields file) {
    Optional<BenchFile> bound = Binder.bind(file, BenchFile.class, complaints);
    if (bound.isEmpty()) {
      return Optional.empty();
    }
    BenchFile bench = bound.get();
    Shapes.check(bench, file, complaints);
    keys(file, "people", INITIALS, Wording.INITIALS);
    keys(file, "meters", Words.NAME, Wording.NAME);
    ZoneId zone = zone(bench.zone());
    profile(bench.profile());
    overlays(bench.overlays());
    Bench withMeters =
        new Bench(
            bench.bench().value(),
            bench.title().value(),
            zone,
            bench.profile().value(),
            people(bench.people()),
            meters(bench.meters(), functions(file)),
            Map.of(),
            List.of());
    Bench withMethods = with(withMeters, methods(bench.methods(), withMeters), List.of());
    return Optional.of(with(withMethods, withMethods.methods(), site(bench.site(), withMethods)));
  }

  private static Bench with(Bench bench, Map<String, Bench.Method> methods, List<Entry> site) {
    return new Bench(
        bench.name(),
        bench.title(),
        bench.zone(),
        bench.profile(),
        bench.people(),
        bench.meters(),
        methods,
        site);
  }

  private void keys(Fields file, String field, Pattern shape, String wording) {
    if (file.get(field).orElse(file) instanceof Fields map && map != file) {
      map.fields().forEach(f -> Words.key(f.key(), shape, wording, complaints));
    }
  }

  private ZoneId zone(Text text) {
    Set<String> zones = ZoneRulesProvider.getAvailableZoneIds();
    if (zones.contains(text.value())) {
      return ZoneId.of(text.value());
    }
    complaints.add(
        text.at(),
        "unknown time zone " + Words.quoted(text),
        "an IANA zone such as `Europe/London`",
        NearestName.of(text.value(), zones.stream().sorted().toList()).orElse(""));
    return ZoneOffset.UTC;
  }

  private void profile(Text text) {
    boolean path = text.value().endsWith(".yaml") && Words.isInside(text.value());
    if (!path && !PROFILE_NAME.matcher(text.value()).matches()) {
      complaints.add(
          text,
          Words.quoted(text) + " names no profile",
          "a name such as `gb`, or a path inside the bench's folder that ends in `.yaml`");
    }
  }

  private void overlays(List<Text> paths) {
    Set<String> seen = new HashSet<>();
    for (Text path : paths) {
      if (!path.value().endsWith(".yaml") || !Words.isInside(path.value())) {
        complaints.add(
            path,
            Words.quoted(path) + " names no overlay",
            "a path inside the bench's folder that ends in `.yaml`");
      } else if (!seen.add(path.value())) {
        complaints.add(path, Words.quoted(path) + " stands twice", "each overlay once");
      }
    }
  }

  private static Map<String, Bench.Person> people(Map<String, BenchFile.PersonEntry> entries) {
    Map<String, Bench.Person> people = new TreeMap<>();
    entries.forEach(
        (initials, entry) ->
            people.put(
                initials,
                new Bench.Person(initials, entry.name().value(), entry.competence().value())));
    return people;
  }

  private Map<String, Bench.Meter> meters(
      Map<String, BenchFile.MeterEntry> entries, Map<String, Text> functions) {
    Ranges ranges = new Ranges(dictionary.vocabulary(), dictionary.meterKinds(), complaints);
    functions.values().forEach(key -> Words.known(key, "function", ranges.functions(), complaints));
    Map<String, Bench.Meter> meters = new TreeMap<>();
    entries.forEach((name, entry) -> meters.put(name, meter(name, entry, ranges)));
    return meters;
  }

  /** The keys of all `functions`, by their places, since a map by name has lost them. */
  private static Map<String, Text> functions(Fields file) {
    Map<String, Text> keys = new TreeMap<>();
    Words.walk(file.get("meters"))
        .flatMap(meter -> Words.walk(Words.inner(meter, "history")))
        .flatMap(data -> Words.inner(data, "functions").stream())
        .filter(Fields.class::isInstance)
        .flatMap(node -> ((Fields) node).fields().stream())
        .forEach(field -> keys.put(field.key().at().toString(), field.key()));
    return keys;
  }

  private Bench.Meter meter(String name, BenchFile.MeterEntry entry, Ranges ranges) {
    List<String> kinds = dictionary.meterKinds().keySet().stream().sorted().toList();
    Words.known(entry.kind(), "meter kind", kinds, complaints);
    List<Bench.MeterData> history = new ArrayList<>();
    Set<String> days = new HashSet<>();
    for (BenchFile.MeterDataEntry data : entry.history()) {
      data(data, ranges).ifPresent(history::add);
      if (!days.add(data.from().value())) {
        complaints.add(
            data.from(), "a second set of data from " + Words.quoted(data.from()), "one set a day");
      }
    }
    history.sort(Comparator.comparing(Bench.MeterData::from));
    return new Bench.Meter(
        name, entry.title().value(), Words.orEmpty(entry.serial()), entry.kind().value(), history);
  }

  private Optional<Bench.MeterData> data(BenchFile.MeterDataEntry entry, Ranges ranges) {
    Map<String, List<MeterRange>> functions = new TreeMap<>();
    entry
        .functions()
        .forEach(
            (name, list) -> {
              Optional<Unit> unit = ranges.unit(name);
              unit.ifPresent(u -> functions.put(name, ranges.read(u, list)));
            });
    Optional<LocalDate> from = Words.date(entry.from());
    return from.map(
        day ->
            new Bench.MeterData(
                day, Words.orEmpty(entry.calibrated()), Words.date(entry.due()), functions));
  }

  private Map<String, Bench.Method> methods(@Nullable Fields file, Bench bench) {
    Map<String, Bench.Method> methods = new TreeMap<>();
    if (file != null) {
      for (Fields.Field field : file.fields()) {
        Words.key(field.key(), Words.NAME, Wording.NAME, complaints);
        Words.fields(field.value(), field.key().value(), complaints)
            .flatMap(fields -> method(field.key().value(), fields, bench))
            .ifPresent(method -> methods.put(method.name(), method));
      }
    }
    return methods;
  }

  private Optional<Bench.Method> method(String name, Fields fields, Bench bench) {
    Optional<Property.Quantity> measured = measured(fields);
    if (measured.isEmpty()) {
      return Optional.empty();
    }
    Property.Quantity quantity = measured.get();
    Map<String, Text> said = new TreeMap<>();
    Map<String, Value> with = new TreeMap<>();
    Values values = new Values(Map.of(), complaints);
    for (Fields.Field field : fields.fields()) {
      String key = field.key().value();
      Optional<Property> attribute = dictionary.vocabulary().with(quantity.name(), key);
      Optional<Dictionary.Refused> refused = dictionary.refusedInMethod(quantity.name(), key);
      if (refused.isPresent()) {
        complaints.add(field.key(), refused.get().what(), refused.get().right());
      } else if (attribute.isPresent()) {
        values.read(attribute.get(), field.value()).ifPresent(value -> with.put(key, value));
      } else if (METHOD_KEYS.contains(key)) {
        Words.text(field.value(), key, complaints).ifPresent(text -> said.put(key, text));
      } else {
        List<String> valid = new ArrayList<>(METHOD_KEYS);
        valid.addAll(dictionary.with(quantity.name()));
        complaints.addUnknown(field.key().at(), "field", key, valid);
      }
    }
    check(quantity, said, bench);
    return Optional.of(
        new Bench.Method(
            name,
            quantity.name(),
            value(said, "meter"),
            value(said, "range"),
            value(said, "nulled"),
            with));
  }

  static final List<String> METHOD_KEYS = List.of("of", "meter", "range", "nulled");

  private static Optional<String> value(Map<String, Text> said, String key) {
    return Optional.ofNullable(said.get(key)).map(Text::value);
  }

  private Optional<Property.Quantity> measured(Fields fields) {
    Optional<Node> of = fields.get("of");
    if (of.isEmpty()) {
      complaints.add(fields.at(), "missing `of`", "the quantity that the method measures");
    }
    List<String> measured =
        dictionary.vocabulary().properties().values().stream()
            .filter(p -> p instanceof Property.Quantity q && q.nature() == Nature.MEASURED)
            .map(Property::name)
            .toList();
    return of.flatMap(node -> Words.text(node, "of", complaints))
        .filter(text -> Words.known(text, "measured quantity", measured, complaints))
        .flatMap(text -> dictionary.vocabulary().property(text.value()))
        .map(Property.Quantity.class::cast);
  }

  private void check(Property.Quantity quantity, Map<String, Text> said, Bench bench) {
    Text meter = said.get("meter");
    if (meter != null) {
      Words.known(meter, "meter", bench.meters().keySet(), complaints);
    }
    Text range = said.get("range");
    if (range != null) {
      Numbers.stated(range, quantity.unit(), complaints);
    }
    Text nulled = said.get("nulled");
    if (nulled != null) {
      Measuring.checkNulled(nulled, quantity, complaints);
    }
  }

  private List<Entry> site(@Nullable Fields site, Bench bench) {
    return site == null
        ? List.of()
        : new Entries(
                dictionary, bench, Map.of(), Property.Home.BENCH, Optional.empty(), complaints)
            .of(BENCH, BENCH, "site", site);
  }
}
