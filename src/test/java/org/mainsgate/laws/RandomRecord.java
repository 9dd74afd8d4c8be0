package org.mainsgate.laws;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.Value;
import org.mainsgate.evidence.Visit;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Position;

/**
 * Records of several people and visits, in an order or without one, with work, judgements and
 * entries taken back.
 */
final class RandomRecord {
  /** The day that is asked about: the last day on which a visit can be. */
  static final LocalDate ON = LocalDate.of(2026, 11, 30);

  private static final Position AT = new Position("paper.yaml", 1, 1);

  private final Slice slice;
  private final Random random;
  private final boolean tame;
  private final double sound;
  private final Sound guide;
  private final Map<String, Instrument.Thing> things = new HashMap<>();
  private int entries;

  private RandomRecord(Slice slice, Random random, boolean tame) {
    this.slice = slice;
    this.guide = Sound.of(slice);
    this.random = random;
    this.tame = tame;
    this.sound =
        tame ? Pools.of(List.of(1.0, 0.98), random) : Pools.of(List.of(1.0, 0.9, 0.6), random);
  }

  /**
   * A random record.
   *
   * @param tame with little work and few contradictions, so that much of it passes
   */
  static InstrumentRecord of(Slice slice, Random random, boolean tame) {
    return new RandomRecord(slice, random, tame).record();
  }

  private InstrumentRecord record() {
    InstrumentRecord paper = Notebook.under(slice.rules()).record();
    for (String kind : slice.lists()) {
      add(kind + "-1", kind);
      if (random.nextInt(5) == 0) {
        add(kind + "-2", kind);
      }
    }
    Instrument instrument = with(paper.instrument(), things, plate());
    List<Visit> visits = new ArrayList<>(List.of(visit(List.of(), true)));
    int more = random.nextInt(tame ? 2 : 4);
    for (int i = 0; i < more; i++) {
      visits.add(visit(visits, false));
    }
    return new InstrumentRecord(bench(paper.bench(), site()), instrument, visits);
  }

  private static Bench bench(Bench b, List<Entry> site) {
    return new Bench(
        b.name(), b.title(), b.zone(), b.profile(), b.people(), b.meters(), b.methods(), site);
  }

  private List<Entry> plate() {
    return elsewhere("instrument", Property.Home.INSTRUMENT);
  }

  private List<Entry> site() {
    return elsewhere("bench", Property.Home.BENCH);
  }

  /** What stands in the files that are no visits. */
  private List<Entry> elsewhere(String thing, Property.Home home) {
    return slice.of(thing).stream()
        .filter(property -> property.heading().home() == home)
        .map(property -> entry(thing, property, Optional.of(ON.minusDays(5))))
        .toList();
  }

  private void add(String id, String kind) {
    things.put(id, new Instrument.Thing(id, kind, id));
  }

  private static Instrument with(
      Instrument i, Map<String, Instrument.Thing> things, List<Entry> plate) {
    return new Instrument(
        i.tag(),
        i.uid(),
        i.what(),
        i.maker(),
        i.model(),
        i.serial(),
        i.made(),
        i.photos(),
        things,
        plate);
  }

  private Visit visit(List<Visit> before, boolean whole) {
    List<String> after = new ArrayList<>();
    LocalDate date = ON.minusDays(random.nextInt(4));
    for (Visit visit : before) {
      if (tame || random.nextInt(3) > 0) {
        after.add(visit.closing().orElseThrow().hash());
        date = date.isBefore(visit.date()) ? visit.date() : date;
      }
    }
    if (whole && tame) {
      date = ON;
    }
    String hash = Integer.toHexString(before.size() + 1).repeat(64);
    List<Visit.Work> work = work(whole);
    return new Visit(
        date + "-AR-" + hash.substring(0, 4),
        date,
        random.nextBoolean() ? "AR" : "KO",
        entries(whole ? 1 : tame ? 0.05 : 0.3),
        lists(whole),
        work,
        entries(work.isEmpty() ? 0 : 0.4),
        lists(false),
        judged(),
        withdrawn(before),
        "",
        Optional.of(new Visit.Closing(date, after, hash)),
        AT);
  }

  private List<Visit.Work> work(boolean first) {
    List<Visit.Work> work = new ArrayList<>();
    List<String> on = new ArrayList<>(things.keySet());
    Collections.sort(on);
    on.addAll(List.of("inside", "cover", "instrument"));
    int count = first || tame ? 0 : random.nextInt(3);
    for (int i = 0; i < count; i++) {
      String act = Pools.of(List.of("repaired", "repaired", "powered", "removed"), random);
      work.add(new Visit.Work(act, Pools.of(on, random), "", AT));
    }
    return work;
  }

  private List<Visit.Looked> lists(boolean whole) {
    List<Visit.Looked> looked = new ArrayList<>();
    for (String kind : slice.lists()) {
      if (whole || random.nextInt(8) == 0) {
        Set<String> ids = new HashSet<>();
        things.values().stream()
            .filter(thing -> thing.kind().equals(kind))
            .forEach(thing -> ids.add(thing.id()));
        Optional<Set<String>> named = random.nextBoolean() ? Optional.of(ids) : Optional.empty();
        looked.add(new Visit.Looked("looked." + kind, kind, ids.size(), named, AT));
      }
    }
    return looked;
  }

  private List<Visit.Judgement> judged() {
    List<Visit.Judgement> judged = new ArrayList<>();
    for (Check check : slice.rules().checks().values()) {
      if (check.judgeable() && random.nextInt(4) == 0) {
        String thing = check.over().map(kind -> kind + "-1").orElse("instrument");
        judged.add(new Visit.Judgement("j." + check.id(), check.id(), thing, "KO", "seen", "", AT));
      }
    }
    return judged;
  }

  private List<Visit.Withdrawal> withdrawn(List<Visit> before) {
    List<Visit.Withdrawal> withdrawn = new ArrayList<>();
    for (Visit visit : before) {
      for (Entry entry : visit.found()) {
        if (!tame && random.nextInt(20) == 0) {
          withdrawn.add(new Visit.Withdrawal(visit.id(), entry.id(), "misread", "", AT));
        }
      }
    }
    return withdrawn;
  }

  /** What is said of the things, with this share of the properties. */
  private List<Entry> entries(double share) {
    List<Entry> all = new ArrayList<>();
    List<String> ids = new ArrayList<>(things.keySet());
    Collections.sort(ids);
    for (String id : ids) {
      Instrument.Thing thing = things.get(id);
      if (thing != null) {
        all.addAll(entries(id, thing.kind(), share));
      }
    }
    slice.rules().vocabulary().kinds().values().stream()
        .filter(kind -> !kind.isListed() && !kind.name().equals("bench"))
        .forEach(kind -> all.addAll(entries(kind.name(), kind.name(), share)));
    return all;
  }

  private List<Entry> entries(String thing, String kind, double share) {
    List<Entry> all = new ArrayList<>();
    for (Property property : slice.of(kind)) {
      boolean here = property.heading().home() == Property.Home.VISIT;
      int count = random.nextInt(tame ? 40 : 8) == 0 ? 2 : 1;
      for (int i = 0; here && i < count; i++) {
        if (random.nextDouble() < share) {
          all.add(entry(thing, property, Optional.empty()));
        }
      }
    }
    return all;
  }

  private Entry entry(String thing, Property property, Optional<LocalDate> on) {
    entries++;
    Map<String, Value> with = new HashMap<>();
    for (Property other : slice.rules().vocabulary().of(property.name())) {
      boolean written = !(other instanceof Property.Pointer) && !isComputed(other);
      if (written && random.nextInt(30) > 0) {
        with.put(other.name(), value(other));
      }
    }
    boolean measured =
        property instanceof Property.Quantity q
            && q.function().filter("resistance"::equals).isPresent();
    return new Entry(
        "e" + entries,
        thing,
        property.name(),
        value(property),
        with,
        measured ? Optional.of("low-ohm") : Optional.empty(),
        Optional.empty(),
        measured ? Optional.of(random.nextInt(8) == 0 ? "no" : "yes") : Optional.empty(),
        Optional.empty(),
        on,
        "",
        AT);
  }

  /** Nobody writes down what is computed from the entry that it stands with. */
  private static boolean isComputed(Property property) {
    return property.name().equals("age");
  }

  private Value value(Property property) {
    boolean isSound = random.nextDouble() < sound;
    if (property instanceof Property.Observation observation) {
      Set<String> names = new HashSet<>();
      names.add(isSound ? guide.name(observation) : Pools.name(observation, random));
      if (!isSound && random.nextInt(4) == 0) {
        names.add(guide.name(observation));
      }
      return new Value.Names(names, "as written");
    }
    Property.Quantity quantity = (Property.Quantity) property;
    Rational number = isSound ? guide.number(quantity) : Pools.number(slice, quantity, random);
    return new Value.Amount((Typed) Typed.parse(typed(quantity, number)));
  }

  /** To three places; a reading with limits of error of its own, which any meter has. */
  private static String typed(Property.Quantity property, Rational si) {
    Rational in = si.minus(property.unit().offset()).dividedBy(property.unit().factor());
    BigDecimal number = Fraction.of(in).decimal(new MathContext(3));
    String unit = " " + property.unit().symbol();
    boolean measured = property.function().isPresent();
    String error = measured ? " ± " + number.movePointLeft(3).abs().toPlainString() + unit : unit;
    return number.toPlainString() + error;
  }

  /** The record without any entry of a property, wherever it stands. */
  static InstrumentRecord without(InstrumentRecord record, String property) {
    List<Visit> visits =
        record.visits().stream()
            .map(visit -> Laws.changed(visit, e -> without(e, property), e -> without(e, property)))
            .toList();
    Bench bench = bench(record.bench(), without(record.bench().site(), property));
    Instrument i = record.instrument();
    Instrument instrument = with(i, i.things(), without(i.plate(), property));
    return new InstrumentRecord(bench, instrument, visits);
  }

  private static List<Entry> without(List<Entry> entries, String property) {
    List<Entry> less = new ArrayList<>();
    for (Entry e : entries) {
      if (!e.property().equals(property)) {
        Map<String, Value> with = new HashMap<>(e.with());
        with.remove(property);
        less.add(
            new Entry(
                e.id(),
                e.thing(),
                e.property(),
                e.value(),
                with,
                e.meter(),
                e.range(),
                e.nulled(),
                e.by(),
                e.on(),
                e.note(),
                e.at()));
      }
    }
    return less;
  }

  /** The record as if a thing had never been listed. */
  static InstrumentRecord withoutThing(InstrumentRecord record, String thing) {
    Map<String, Instrument.Thing> less = new HashMap<>(record.instrument().things());
    less.remove(thing);
    List<Visit> visits =
        record.visits().stream()
            .map(visit -> Laws.changed(visit, e -> notOf(e, thing), e -> notOf(e, thing)))
            .toList();
    return new InstrumentRecord(
        record.bench(), with(record.instrument(), less, record.instrument().plate()), visits);
  }

  private static List<Entry> notOf(List<Entry> entries, String thing) {
    return entries.stream().filter(entry -> !entry.thing().equals(thing)).toList();
  }

  /** The same record, its visits and all that stands in them in another order. */
  static InstrumentRecord shuffled(InstrumentRecord record, Random random) {
    List<Visit> visits = record.visits().stream().map(visit -> shuffled(visit, random)).toList();
    return new InstrumentRecord(record.bench(), record.instrument(), order(visits, random));
  }

  private static Visit shuffled(Visit v, Random random) {
    return new Visit(
        v.id(),
        v.date(),
        v.by(),
        order(v.found(), random),
        order(v.foundLists(), random),
        order(v.work(), random),
        order(v.left(), random),
        order(v.leftLists(), random),
        order(v.judged(), random),
        order(v.withdrawn(), random),
        v.note(),
        v.closing(),
        v.at());
  }

  private static <T> List<T> order(List<T> items, Random random) {
    List<T> order = new ArrayList<>(items);
    Collections.shuffle(order, random);
    return order;
  }
}
