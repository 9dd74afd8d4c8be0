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
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.Shapes;
import org.mainsgate.source.Text;

/** The reader of the file of a visit. */
final class VisitReader {
  static final String NONE = "none";
  private static final Pattern COUNT = Pattern.compile("[0-9]{1,3}");

  private final Dictionary dictionary;
  private final Bench bench;
  private final Complaints complaints;
  private final Map<String, String> kindOf = new TreeMap<>();

  VisitReader(Dictionary dictionary, Bench bench, Instrument instrument, Complaints complaints) {
    this.dictionary = dictionary;
    this.bench = bench;
    this.complaints = complaints;
    for (Kind kind : dictionary.vocabulary().kinds().values()) {
      if (kind.once() == Kind.Once.INSTRUMENT) {
        kindOf.put(kind.name(), kind.name());
      }
    }
    instrument.things().values().forEach(thing -> kindOf.put(thing.id(), thing.kind()));
  }

  /** Reads the file; what comes back along with complaints is good for nothing. */
  Optional<Visit> read(Fields file, String id, Optional<String> hash) {
    Optional<VisitFile> bound = Binder.bind(file, VisitFile.class, complaints);
    bound.ifPresent(visit -> Shapes.check(visit, file, complaints));
    Optional<LocalDate> date =
        file.get("date").filter(Text.class::isInstance).flatMap(d -> Words.date((Text) d));
    Entries entries = new Entries(dictionary, bench, kindOf, Property.Home.VISIT, date, complaints);
    int before = complaints.count();
    // Also where the rest of the file can't be read: a person should see all complaints at once.
    Half found = half("found", file, entries);
    Half left = half("left", file, entries);
    boolean allRead = complaints.count() == before;
    if (bound.isEmpty() || date.isEmpty()) {
      return Optional.empty();
    }
    VisitFile visit = bound.get();
    heading(visit, id);
    Visit.Closing closing = closing(visit, date.get(), hash, file);
    return Optional.of(
        new Visit(
            id,
            date.get(),
            visit.by().value(),
            found.entries(),
            found.lists(),
            work(visit.work()),
            left.entries(),
            left.lists(),
            judged(visit.judged()),
            withdrawn(
                visit.withdrawn(), id, allRead ? Optional.of(entries.ids()) : Optional.empty()),
            Words.orEmpty(visit.note()),
            Optional.ofNullable(closing),
            visit.date().at()));
  }

  private record Half(List<Entry> entries, List<Visit.Looked> lists) {}

  private Half half(String section, Fields file, Entries reader) {
    List<Entry> entries = new ArrayList<>();
    List<Visit.Looked> lists = new ArrayList<>();
    if (file.get(section).orElse(file) instanceof Fields things && things != file) {
      for (Fields.Field field : things.fields()) {
        if (isBlank(field.value()) && isHeading(field.key())) {
          // A heading below which everything is still commented out.
          continue;
        }
        Optional<Fields> said = Words.fields(field.value(), field.key().value(), complaints);
        if (said.isPresent() && field.key().value().equals(InstrumentReader.LOOKED)) {
          lists.addAll(looked(section, said.get()));
        } else if (said.isPresent()
            && !field.key().value().equals(InstrumentReader.EVERY)
            && thing(field.key())) {
          String thing = field.key().value();
          String kind = kindOf.getOrDefault(thing, "");
          entries.addAll(reader.of(thing, kind, section + "." + thing, said.get()));
        }
      }
    }
    if (file.get(section).orElse(file) instanceof Fields things) {
      things
          .get(InstrumentReader.EVERY)
          .filter(node -> !isBlank(node))
          .flatMap(node -> Words.fields(node, InstrumentReader.EVERY, complaints))
          .ifPresent(said -> entries.addAll(every(section, said, lists, reader)));
    }
    List<Entry> all = reader.spread(entries);
    all.sort(Entries.ORDER);
    lists.sort(Comparator.comparing(Visit.Looked::kind));
    return new Half(all, lists);
  }

  /**
   * What is said once of every thing of a kind: of those that the same half of the visit names as
   * all there are, and of no others.
   */
  private List<Entry> every(String section, Fields said, List<Visit.Looked> lists, Entries reader) {
    List<String> kinds = dictionary.vocabulary().listedKinds().stream().map(Kind::name).toList();
    List<Entry> entries = new ArrayList<>();
    for (Fields.Field field : said.fields()) {
      String kind = field.key().value();
      if (isBlank(field.value()) && kinds.contains(kind)) {
        continue;
      }
      Optional<Fields> each = Words.fields(field.value(), kind, complaints);
      if (each.isEmpty() || !Words.known(field.key(), "kind of thing", kinds, complaints)) {
        continue;
      }
      Optional<Set<String>> named =
          lists.stream()
              .filter(list -> list.kind().equals(kind))
              .flatMap(list -> list.things().stream())
              .findFirst();
      if (named.isEmpty()) {
        complaints.add(
            field.key(),
            "nobody has said here which these are",
            "`looked: {" + kind + ": [ids]}` in `" + section + "` too");
      }
      named
          .orElse(Set.of())
          .forEach(
              thing ->
                  entries.addAll(
                      reader.of(
                          thing,
                          kind,
                          section + "." + InstrumentReader.EVERY + "." + kind + "." + thing,
                          each.get())));
    }
    return entries;
  }

  private static boolean isBlank(Node node) {
    return node instanceof Text text && text.isBlank();
  }

  private boolean isHeading(Text key) {
    return key.value().equals(InstrumentReader.LOOKED)
        || key.value().equals(InstrumentReader.EVERY)
        || kindOf.containsKey(key.value());
  }

  private boolean thing(Text text) {
    return Words.known(text, "thing", kindOf.keySet(), complaints);
  }

  private void person(Text text) {
    Words.known(text, "person", bench.people().keySet(), complaints);
  }

  private void heading(VisitFile visit, String id) {
    String date = visit.date().value();
    String by = visit.by().value();
    person(visit.by());
    if (!id.startsWith(date + "-")) {
      complaints.add(
          visit.date(),
          Words.quoted(date) + " is not the date in the name of the file",
          nameOf(id, "the date of the visit, as in " + Words.quoted(date + "-" + by + "-7f3a")));
    } else if (!id.startsWith(date + "-" + by + "-")) {
      complaints.add(
          visit.by(),
          Words.quoted(by) + " is not who the name of the file says",
          nameOf(id, "who wrote it, as in " + Words.quoted(date + "-" + by + "-7f3a")));
    }
  }

  private static String nameOf(String id, String part) {
    return "a file named after " + part + ", not " + Words.quoted(id);
  }

  private List<Visit.Looked> looked(String section, Fields lists) {
    List<String> kinds = dictionary.vocabulary().listedKinds().stream().map(Kind::name).toList();
    List<Visit.Looked> looked = new ArrayList<>();
    for (Fields.Field field : lists.fields()) {
      String kind = field.key().value();
      if (kind.equals(NONE)) {
        looked.addAll(none(section, field.value(), kinds));
      } else if (Words.known(field.key(), "kind of thing", kinds, complaints)) {
        String id = section + "." + InstrumentReader.LOOKED + "." + kind;
        (field.value() instanceof Items items
                ? named(id, kind, items)
                : counted(id, kind, field.value()))
            .ifPresent(looked::add);
      }
    }
    return looked;
  }

  /** Kinds of thing for which a person has looked, and of which there is none. */
  private List<Visit.Looked> none(String section, Node node, List<String> kinds) {
    List<Visit.Looked> looked = new ArrayList<>();
    String id = section + "." + InstrumentReader.LOOKED + "." + NONE;
    for (Node one : node instanceof Items items ? items.items() : List.of(node)) {
      Optional<Text> text = Words.text(one, NONE, complaints);
      if (text.isPresent() && Words.known(text.get(), "kind of thing", kinds, complaints)) {
        looked.add(new Visit.Looked(id, text.get().value(), 0, Optional.empty(), one.at()));
      }
    }
    return looked;
  }

  private Optional<Visit.Looked> named(String id, String kind, Items items) {
    List<String> valid =
        kindOf.keySet().stream().filter(thing -> kind.equals(kindOf.get(thing))).toList();
    Set<String> things = new TreeSet<>();
    for (Node item : items.items()) {
      Optional<Text> text = Words.text(item, kind, complaints);
      if (text.isPresent()
          && Words.known(text.get(), kind, valid, complaints)
          && !things.add(text.get().value())) {
        complaints.add(text.get(), Words.quoted(text.get()) + " stands here twice", "it once");
      }
    }
    if (items.items().isEmpty()) {
      complaints.add(items, "an empty list", "`none`, if you looked and there is none");
    }
    return Optional.of(new Visit.Looked(id, kind, things.size(), Optional.of(things), items.at()));
  }

  private Optional<Visit.Looked> counted(String id, String kind, Node node) {
    if (node instanceof Text text
        && (text.value().equals("none") || COUNT.matcher(text.value()).matches())) {
      int count = text.value().equals("none") ? 0 : Integer.parseInt(text.value());
      return Optional.of(new Visit.Looked(id, kind, count, Optional.empty(), node.at()));
    }
    complaints.add(
        node, "this closes no list", "ids as in `[front, case]`, how many you counted, or `none`");
    return Optional.empty();
  }

  private List<Visit.Work> work(List<VisitFile.WorkEntry> entries) {
    List<Visit.Work> work = new ArrayList<>();
    for (VisitFile.WorkEntry entry : entries) {
      Words.known(entry.act(), "act", dictionary.vocabulary().acts().keySet(), complaints);
      thing(entry.on());
      work.add(
          new Visit.Work(
              entry.act().value(), entry.on().value(), Words.orEmpty(entry.note()), entry.at()));
    }
    return work;
  }

  private List<Visit.Judgement> judged(List<VisitFile.JudgementEntry> entries) {
    Map<String, Integer> numbers = new HashMap<>();
    List<Visit.Judgement> judged = new ArrayList<>();
    for (VisitFile.JudgementEntry entry : entries) {
      Words.known(entry.check(), "check", dictionary.checks(), complaints);
      thing(entry.item());
      person(entry.by());
      String id = "judged." + entry.item().value() + "." + entry.check().value();
      int number = numbers.merge(id, 1, Integer::sum);
      judged.add(
          new Visit.Judgement(
              number == 1 ? id : id + "." + number,
              entry.check().value(),
              entry.item().value(),
              entry.by().value(),
              entry.because().value(),
              Words.orEmpty(entry.restriction()),
              entry.at()));
    }
    judged.sort(Comparator.comparing(Visit.Judgement::id));
    return judged;
  }

  /**
   * Reads what is taken back.
   *
   * @param ids those that people gave to entries of the file; empty where not all could be read
   */
  private List<Visit.Withdrawal> withdrawn(
      List<VisitFile.WithdrawalEntry> entries, String id, Optional<Set<String>> ids) {
    Set<String> reasons = dictionary.vocabulary().withdrawalReasons().keySet();
    List<Visit.Withdrawal> withdrawn = new ArrayList<>();
    for (VisitFile.WithdrawalEntry entry : entries) {
      Words.known(entry.reason(), "reason", reasons, complaints);
      String typed = entry.entry().value();
      int slash = typed.indexOf('/');
      if (slash < 0) {
        ids.ifPresent(known -> Words.known(entry.entry(), "entry with an id", known, complaints));
      }
      withdrawn.add(
          new Visit.Withdrawal(
              slash < 0 ? id : typed.substring(0, slash),
              typed.substring(slash + 1),
              entry.reason().value(),
              Words.orEmpty(entry.note()),
              entry.entry().at()));
    }
    withdrawn.sort(
        Comparator.comparing(Visit.Withdrawal::visit).thenComparing(Visit.Withdrawal::entry));
    return withdrawn;
  }

  private Visit.@Nullable Closing closing(
      VisitFile visit, LocalDate date, Optional<String> hash, Fields file) {
    VisitFile.ClosingEntry closed = visit.closed();
    if (closed == null || hash.isEmpty()) {
      closedAgainstItsName(closed != null, hash.isPresent(), file);
      return null;
    }
    Optional<LocalDate> on = Words.date(closed.on());
    if (on.isEmpty()) {
      return null;
    }
    if (on.get().isBefore(date)) {
      complaints.add(
          closed.on(),
          "closed before its own date " + Words.quoted(visit.date()),
          "that date or a later one");
    }
    List<String> after = closed.after().stream().map(Text::value).sorted().toList();
    return new Visit.Closing(on.get(), after, hash.get());
  }

  private void closedAgainstItsName(boolean closed, boolean named, Fields file) {
    Node place = file.get("closed").orElse(file);
    if (closed) {
      complaints.add(
          place,
          "a draft that says it is closed",
          "a draft without `closed`, which is written when it is closed");
    } else if (named) {
      complaints.add(place, "a visit that is not closed", "a file that ends in `.draft.yaml`");
    }
  }
}
