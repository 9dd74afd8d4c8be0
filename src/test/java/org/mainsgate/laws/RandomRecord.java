package org.mainsgate.laws;

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
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.Value;
import org.mainsgate.evidence.Visit;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.source.Position;

/**
 * Records of several people and visits, in an order or without one, with work, judgements and
 * entries taken back.
 */
final class RandomRecord {
  /** The day that is asked about: the last day on which a visit can be. */
  static final LocalDate ON = LocalDate.of(2026, 11, 30);

  private static final Position AT = new Position("paper.yaml", 1, 1);

  private final Rules rules;
  private final Random random;
  private final boolean tame;
  private final double sound;
  private final Map<String, Instrument.Thing> things = new HashMap<>();
  private int entries;

  private RandomRecord(Rules rules, Random random, boolean tame) {
    this.rules = rules;
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
  static InstrumentRecord of(Rules rules, Random random, boolean tame) {
    return new RandomRecord(rules, random, tame).record();
  }

  private InstrumentRecord record() {
    InstrumentRecord paper = Notebook.under(rules).record();
    add("mains-lead", "lead");
    if (random.nextInt(6) == 0) {
      add("spare", "lead");
    }
    add("case", "exposed_part");
    if (random.nextInt(3) == 0) {
      add("panel", "exposed_part");
    }
    Instrument instrument = with(paper.instrument(), things);
    List<Visit> visits = new ArrayList<>(List.of(visit(List.of(), true)));
    int more = random.nextInt(tame ? 2 : 4);
    for (int i = 0; i < more; i++) {
      visits.add(visit(visits, false));
    }
    return new InstrumentRecord(paper.bench(), instrument, visits);
  }

  private void add(String id, String kind) {
    things.put(id, new Instrument.Thing(id, kind, id));
  }

  private static Instrument with(Instrument i, Map<String, Instrument.Thing> things) {
    return new Instrument(
        i.tag(),
        i.uid(),
        i.what(),
        i.maker(),
        i.model(),
        i.serial(),
        i.made(),
        i.photo(),
        things,
        i.plate());
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
    for (String kind : List.of("lead", "exposed_part")) {
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
    for (Check check : rules.checks().values()) {
      if (check.judgeable() && random.nextInt(4) == 0) {
        String thing = check.over().isPresent() ? "mains-lead" : "instrument";
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
    all.addAll(entries("instrument", "instrument", share));
    return all;
  }

  private List<Entry> entries(String thing, String kind, double share) {
    List<Entry> all = new ArrayList<>();
    for (Property property : rules.vocabulary().of(kind)) {
      boolean here = property.heading().home() == Property.Home.VISIT;
      int count = random.nextInt(tame ? 40 : 8) == 0 ? 2 : 1;
      for (int i = 0; here && i < count; i++) {
        if (random.nextDouble() < share) {
          all.add(entry(thing, property));
        }
      }
    }
    return all;
  }

  private Entry entry(String thing, Property property) {
    entries++;
    Map<String, Value> with = new HashMap<>();
    for (Property other : rules.vocabulary().of(property.name())) {
      if (!(other instanceof Property.Pointer) && random.nextInt(30) > 0) {
        with.put(other.name(), value(other));
      }
    }
    boolean measured = property instanceof Property.Quantity q && q.function().isPresent();
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
        Optional.empty(),
        "",
        AT);
  }

  private Value value(Property property) {
    boolean isSound = random.nextDouble() < sound;
    if (property instanceof Property.Observation observation) {
      Set<String> names = new HashSet<>();
      names.add(isSound ? Pools.soundName(observation) : Pools.name(observation, random));
      if (!isSound && random.nextInt(4) == 0) {
        names.add(Pools.soundName(observation));
      }
      return new Value.Names(names, "as written");
    }
    Property.Quantity quantity = (Property.Quantity) property;
    String number = isSound ? Pools.soundNumber(quantity) : Pools.number(quantity, random);
    String shown = number.equals("0.1585") ? "0.16" : number;
    return new Value.Amount((Typed) Typed.parse(shown + " " + quantity.unit().symbol()));
  }

  /** The record without any entry of a property, wherever it stands. */
  static InstrumentRecord without(InstrumentRecord record, String property) {
    List<Visit> visits =
        record.visits().stream()
            .map(visit -> Laws.changed(visit, e -> without(e, property), e -> without(e, property)))
            .toList();
    var b = record.bench();
    var bench =
        new org.mainsgate.evidence.Bench(
            b.name(),
            b.title(),
            b.zone(),
            b.profile(),
            b.people(),
            b.meters(),
            b.methods(),
            without(b.site(), property));
    Instrument i = record.instrument();
    Instrument instrument =
        new Instrument(
            i.tag(),
            i.uid(),
            i.what(),
            i.maker(),
            i.model(),
            i.serial(),
            i.made(),
            i.photo(),
            i.things(),
            without(i.plate(), property));
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
    return new InstrumentRecord(record.bench(), with(record.instrument(), less), visits);
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
