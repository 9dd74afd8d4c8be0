package org.mainsgate.evidence;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Shapes;
import org.mainsgate.source.Text;

/** The reader of {@code instrument.yaml}. */
final class InstrumentReader {
  static final String INSTRUMENT = "instrument";

  /** The word that closes a list in a visit, so that no thing can have it for an id. */
  static final String LOOKED = "looked";

  /** The word under which a visit says something of every thing of a kind. */
  static final String EVERY = "every";

  private static final Pattern DESIGNATOR = Pattern.compile("[\\p{L}0-9][\\p{L}0-9./-]{0,15}");
  private static final List<String> PICTURES = List.of(".jpg", ".jpeg", ".png");

  private final Dictionary dictionary;
  private final Bench bench;
  private final Complaints complaints;

  InstrumentReader(Dictionary dictionary, Bench bench, Complaints complaints) {
    this.dictionary = dictionary;
    this.bench = bench;
    this.complaints = complaints;
  }

  /** Reads the file; what comes back along with complaints is good for further complaints only. */
  Optional<Instrument> read(Fields file) {
    Optional<InstrumentFile> bound = Binder.bind(file, InstrumentFile.class, complaints);
    if (bound.isEmpty()) {
      return Optional.empty();
    }
    InstrumentFile instrument = bound.get();
    Shapes.check(instrument, file, complaints);
    if (file.get("things").orElse(file) instanceof Fields things && things != file) {
      things.fields().forEach(field -> id(field.key()));
    }
    return Optional.of(
        new Instrument(
            instrument.tag().value(),
            instrument.uid().value(),
            instrument.what().value(),
            Words.orEmpty(instrument.maker()),
            Words.orEmpty(instrument.model()),
            Words.orEmpty(instrument.serial()),
            Words.orEmpty(instrument.made()),
            Stream.of(photo(instrument.photo()), photo(instrument.platePhoto()))
                .flatMap(Optional::stream)
                .distinct()
                .toList(),
            things(instrument.things()),
            plate(instrument.plate())));
  }

  private void id(Text key) {
    Words.key(key, Words.NAME, Wording.NAME, complaints);
    Optional<Kind> kind = dictionary.vocabulary().kind(key.value());
    boolean taken =
        kind.filter(k -> !k.isListed()).isPresent()
            || key.value().equals(LOOKED)
            || key.value().equals(EVERY);
    if (taken) {
      complaints.add(
          key,
          Words.quoted(key) + " can't be the id of a thing: it has a meaning of its own",
          "another id");
    }
  }

  private Optional<String> photo(@Nullable Text text) {
    if (text == null || text.value().isEmpty()) {
      return Optional.empty();
    }
    String path = text.value();
    String small = path.toLowerCase(Locale.ROOT);
    if (!Words.isInside(path) || PICTURES.stream().noneMatch(small::endsWith)) {
      complaints.add(
          text,
          Words.quoted(text) + " is no picture in the instrument's folder",
          "a path such as `photos/front.jpg`, ending in `.jpg`, `.jpeg` or `.png`");
    }
    return Optional.of(path);
  }

  private Map<String, Instrument.Thing> things(Map<String, InstrumentFile.ThingEntry> entries) {
    List<String> kinds = dictionary.vocabulary().listedKinds().stream().map(Kind::name).toList();
    Map<String, Instrument.Thing> things = new TreeMap<>();
    Set<String> taken = new HashSet<>();
    entries.forEach(
        (id, entry) -> {
          if (!existsOnce(entry.kind())) {
            Words.known(entry.kind(), "kind of thing", kinds, complaints);
          }
          things.put(id, new Instrument.Thing(id, entry.kind().value(), title(id, entry, taken)));
        });
    return things;
  }

  /** Complains where a thing is listed of which there is one without being listed. */
  private boolean existsOnce(Text kind) {
    boolean once =
        dictionary.vocabulary().kind(kind.value()).filter(k -> !k.isListed()).isPresent();
    if (once) {
      complaints.add(
          kind,
          "there is one " + Words.quoted(kind) + ", and it is not listed",
          "what is found of it under "
              + Words.quoted(kind)
              + " in a visit; of two that are set together, both as one");
    }
    return once;
  }

  /** What a thing is called on screens and pages: by its designator, where its kind has one. */
  private String title(String id, InstrumentFile.ThingEntry entry, Set<String> taken) {
    Text title = entry.title();
    Text designator = entry.designator();
    boolean designated =
        dictionary.vocabulary().kind(entry.kind().value()).map(Kind::designated).orElse(false);
    if (designated && designator == null) {
      complaints.add(
          entry.kind(),
          "a " + Words.quoted(entry.kind()) + " without a designator",
          "`designator: C12`, as in the diagram; where there is none, a name of your own");
    }
    if (designator == null) {
      return title == null ? id : title.value();
    }
    designator(designator, designated, entry.kind(), taken);
    return title == null ? designator.value() : designator.value() + ", " + title.value();
  }

  private void designator(Text text, boolean wanted, Text kind, Set<String> taken) {
    if (!wanted) {
      complaints.add(
          text, "a " + Words.quoted(kind) + " has no designator", "`title`, if you like");
    } else if (!DESIGNATOR.matcher(text.value()).matches()) {
      complaints.add(
          text,
          Words.quoted(text) + " can't be a designator",
          "1 to 16 letters, digits, `-`, `.` and `/`, such as `C12`");
    } else if (!taken.add(kind.value() + " " + text.value().toUpperCase(Locale.ROOT))) {
      complaints.add(text, "a second " + Words.quoted(text), "a designator of its own");
    }
  }

  private List<Entry> plate(@Nullable Fields plate) {
    return plate == null
        ? List.of()
        : new Entries(
                dictionary, bench, Map.of(), Property.Home.INSTRUMENT, Optional.empty(), complaints)
            .of(INSTRUMENT, INSTRUMENT, "plate", plate);
  }
}
