package org.mainsgate.evidence;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
            photo(instrument.photo()),
            things(instrument.things()),
            plate(instrument.plate())));
  }

  private void id(Text key) {
    Words.key(key, Words.NAME, Wording.NAME, complaints);
    Optional<Kind> kind = dictionary.vocabulary().kind(key.value());
    boolean taken = kind.filter(k -> !k.isListed()).isPresent() || key.value().equals(LOOKED);
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
    entries.forEach(
        (id, entry) -> {
          Words.known(entry.kind(), "kind of thing", kinds, complaints);
          Text title = entry.title();
          String name = title == null ? id : title.value();
          things.put(id, new Instrument.Thing(id, entry.kind().value(), name));
        });
    return things;
  }

  private List<Entry> plate(@Nullable Fields plate) {
    return plate == null
        ? List.of()
        : new Entries(
                dictionary, bench, Map.of(), Property.Home.INSTRUMENT, Optional.empty(), complaints)
            .of(INSTRUMENT, INSTRUMENT, "plate", plate);
  }
}
