package org.mainsgate.laws;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Node;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Engine;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;

/**
 * The record of an instrument on paper: class I, a fixed lead of 3 m and 1.0 mm², one exposed part,
 * nothing wrong with it. Tests change it.
 *
 * <p>Its first visit, called {@code a}, is closed; others may follow.
 */
public final class Notebook {
  public static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  private static final Fields SOUND =
      fields(
          """
          bench:
            format: 1
            bench: paper
            title: A bench on paper
            zone: Etc/UTC
            profile: gb
            site:
              supply_voltage: 230 V +10/-6 %
              supply_frequency: 50 Hz
              socket_voltage: {value: 236.0 ± 2.0 V, on: 2026-11-20}
              socket_proven: {is: earth_and_polarity, on: 2026-11-20}
              plug_pattern: type_g
            people:
              AR: {name: the restorer, competence: none}
              KO: {name: the other one, competence: a licence}
            meters:
              low-ohm:
                title: low-ohm tester
                kind: low_ohm_tester
                history:
                  - from: 2026-01-01
                    functions:
                      resistance:
                        - {to: 19.99 Ω, digit: 0.01 Ω, accuracy: 2 % + 3 digits}
              tester: {title: insulation tester, kind: insulation_tester, history: [{from: 2026-01-01}]}
              pocket: {title: multimeter, kind: multimeter, history: [{from: 2026-01-01}]}
              bridge: {title: capacitance meter, kind: capacitance_meter, history: [{from: 2026-01-01}]}
            methods:
              insulation:
                {of: insulation_resistance, meter: tester, test_voltage: 500 V, joined: line_and_neutral, switched: "on", lifted: nothing}
              part-insulation:
                {of: part_insulation, meter: tester, test_voltage: 500 V, joined: line_and_neutral, switched: "on", lifted: nothing}
              primary: {of: primary_resistance, meter: pocket}
              off: {of: switch_off_resistance, meter: pocket}
              to-chassis: {of: supply_resistance, meter: pocket, joined: line_and_neutral, switched: "on"}
              to-part: {of: part_resistance, meter: pocket, joined: line_and_neutral, switched: "on"}
              chassis-capacitance:
                {of: supply_capacitance, meter: bridge, joined: line_and_neutral, switched: "on", test_frequency: 1 kHz}
              part-capacitance:
                {of: part_capacitance, meter: bridge, joined: line_and_neutral, switched: "on", test_frequency: 1 kHz}
              volts: {of: residual_voltage, meter: pocket}
              volts-later: {of: residual_later, meter: pocket}
              rail: {of: ht_rail_resistance, meter: pocket}
              earth:
                {of: earth_resistance, meter: low-ohm, nulled: yes, test_current: 0.2 A, measured_from: plug_pin}
              lead:
                {of: lead_earth_resistance, meter: low-ohm, nulled: yes, test_current: 0.2 A}
          instrument:
            format: 1
            tag: PB-1
            uid: 00000000-0000-4000-8000-000000000001
            what: RC oscillator
            plate: {rated_voltage: 240 V, rated_power: 48 VA, rated_frequency: 50 to 60 Hz}
            things:
              mains-lead: {kind: lead}
              case: {kind: exposed_part}
              mains-fuse: {kind: fuse}
              reservoir: {kind: ht_capacitor, designator: C1a}
          visit:
            format: 1
            date: 2026-11-25
            by: AR
            closed: {on: 2026-11-25, after: []}
            found:
              instrument:
                class: I
                supply_arrangement: {is: two_winding_transformer, basis: traced}
                chassis_tie: none
                earth_fixing: own_locked
                nothing_connected: yes
                unplugged: yes
                meters_proved: yes
                switch: both_poles
                primary_resistance: 62.0 Ω
                switch_off_resistance: {value: OL, range: 19.99 MΩ}
                supply_resistance: {value: OL, range: 19.99 MΩ}
                supply_capacitance: 0.62 nF
                secondary_voltage: 250 V
                ht_rail_resistance: 48 kΩ
                insulation_resistance: "> 199.9 MΩ"
              cover: {closed_up: yes}
              selector: {set_voltage: 240 V, fixing: secure}
              mains-fuse: {fuse_rating: 500 mA, fuse_body: cartridge, fuse_pole: line}
              reservoir: {residual_voltage: 0.2 V, residual_later: 0.4 V, ht_state: new, working_voltage: 450 V}
              mains-lead:
                attachment: fixed
                cores: three
                core_area: 1.0 mm²
                lead_length: 3 m
                sheath: sound
                anchorage: grips
                cores_buzzed: right
                plug: type_g
                plug_state: sound
                plug_fuse: 3 A
                strands: all_held
                when_moved: steady
              case:
                part_path: bonded
                earth_resistance: 0.08 Ω
              looked:
                lead: 1
                exposed_part: [case]
                ht_capacitor: 1
                fuse: 1
                none: [hazard, outlet, reachable_voltage, mains_capacitor, touch_capacitor, small_capacitor, modification]
          """);

  /** A later visit as text. */
  private record Sitting(String id, Optional<String> hash, String text) {}

  private final Rules rules;
  private final Fields record;
  private final List<Sitting> later;
  private final LocalDate on;

  private Notebook(Rules rules, Fields record, List<Sitting> later, LocalDate on) {
    this.rules = rules;
    this.record = record;
    this.later = List.copyOf(later);
    this.on = on;
  }

  public static Notebook under(Rules rules) {
    return new Notebook(rules, SOUND, List.of(), DAY);
  }

  public static Notebook gb() {
    return under(Rulebook.gb());
  }

  public static Notebook eu() {
    return under(Rulebook.eu());
  }

  /** With these fields put over {@code bench}, {@code instrument} or {@code visit}. */
  public Notebook with(String yaml) {
    return new Notebook(rules, record.overlaid(fields(yaml)), later, on);
  }

  /** With these fields put over what was found. */
  public Notebook found(String inside) {
    return with("visit: {found: {" + inside + "}}");
  }

  /** With this work in the first visit, and this left. */
  public Notebook worked(String work, String left) {
    return with("visit: {work: [" + work + "], left: {" + left + "}}");
  }

  /** Without the fields at these paths. */
  public Notebook without(String... paths) {
    Fields less = record;
    for (String path : paths) {
      less =
          less.without(List.of(path.split("/")))
              .orElseThrow(() -> new IllegalArgumentException("nothing at " + path));
    }
    return new Notebook(rules, less, later, on);
  }

  /** Without what was found at this path. */
  public Notebook unfound(String path) {
    return without("visit/found/" + path);
  }

  /** Asked about on another day. */
  public Notebook on(String day) {
    return new Notebook(rules, record, later, LocalDate.parse(day));
  }

  /**
   * With one more closed visit, and asked about on its day.
   *
   * @param name a letter from b to f
   * @param after the names of the visits that it knew
   */
  public Notebook then(String name, String day, String after, String body) {
    List<String> known = after.isEmpty() ? List.of() : List.of(after.split(","));
    String hashes = String.join(", ", known.stream().map(Notebook::hash).toList());
    String closed = "closed: {on: " + day + ", after: [" + hashes + "]}\n";
    return more(name, day, Optional.of(hash(name)), closed + body);
  }

  /** With a draft at the end, and asked about on its day. */
  public Notebook draft(String name, String day, String body) {
    return more(name, day, Optional.empty(), body);
  }

  private Notebook more(String name, String day, Optional<String> hash, String body) {
    String head = "format: 1\ndate: " + day + "\nby: AR\n";
    List<Sitting> all = new ArrayList<>(later);
    all.add(new Sitting(id(name, day), hash, head + body));
    return new Notebook(rules, record, all, LocalDate.parse(day));
  }

  /** The id of a visit. */
  public static String id(String name, String day) {
    return day + "-AR-" + name.repeat(4);
  }

  private static String hash(String name) {
    return name.repeat(64);
  }

  public InstrumentRecord record() {
    RecordReader reader = RecordReader.of(rules);
    Bench bench = read(part("bench"), reader::bench);
    Instrument instrument = read(part("instrument"), (f, c) -> reader.instrument(f, bench, c));
    List<Visit> visits = new ArrayList<>();
    visits.add(
        read(
            part("visit"),
            (f, c) ->
                reader.visit(
                    f, id("a", DAY.toString()), Optional.of(hash("a")), bench, instrument, c)));
    for (Sitting sitting : later) {
      visits.add(
          read(
              fields(sitting.text()),
              (f, c) -> reader.visit(f, sitting.id(), sitting.hash(), bench, instrument, c)));
    }
    InstrumentRecord whole = new InstrumentRecord(bench, instrument, visits);
    Complaints complaints = new Complaints();
    whole.check(complaints);
    none(complaints);
    return whole;
  }

  /** What is complained of in the bench, the instrument and the first visit; empty if nothing. */
  public String complaints() {
    Complaints complaints = new Complaints();
    RecordReader reader = RecordReader.of(rules);
    Optional<Bench> bench = reader.bench(part("bench"), complaints);
    Optional<Instrument> instrument =
        bench.flatMap(b -> reader.instrument(part("instrument"), b, complaints));
    instrument.ifPresent(
        i ->
            reader.visit(
                part("visit"),
                id("a", DAY.toString()),
                Optional.of(hash("a")),
                bench.orElseThrow(),
                i,
                complaints));
    return complaints.renderAll();
  }

  public InForce.Result inForce() {
    return InForce.of(rules, record(), on);
  }

  public Evidence evidence() {
    return inForce().evidence();
  }

  public Optional<Fact> fact(String thing, String property) {
    return evidence().fact(thing, property);
  }

  /** Why an entry does not count, such as {@code found.case.earth_resistance} of a visit. */
  public List<String> setAside(String entry) {
    return inForce().setAside().stream()
        .filter(found -> found.entry().endsWith("/" + entry))
        .map(InForce.SetAside::why)
        .toList();
  }

  public Assessment assess() {
    return new Engine(rules).assess(rules.firstStage(), evidence());
  }

  /** The finding of a check on a thing. */
  public Finding finding(String check, String thing) {
    return assess().findings().stream()
        .filter(found -> found.check().id().equals(check) && found.thing().equals(thing))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no finding of " + check + " on " + thing));
  }

  public Outcome outcome(String check, String thing) {
    return finding(check, thing).outcome();
  }

  public List<Reason> reasons(String check, String thing) {
    return finding(check, thing).holds().stream().map(Finding.Hold::reason).toList();
  }

  private Fields part(String name) {
    Node node = record.get(name).orElseThrow();
    return (Fields) node;
  }

  private static Fields fields(String yaml) {
    Complaints complaints = new Complaints();
    Optional<Fields> fields = StrictYaml.readFields("paper.yaml", yaml.getBytes(UTF_8), complaints);
    none(complaints);
    return fields.orElseThrow();
  }

  private static <T> T read(Fields fields, BiFunction<Fields, Complaints, Optional<T>> as) {
    Complaints complaints = new Complaints();
    Optional<T> read = as.apply(fields, complaints);
    none(complaints);
    return read.orElseThrow();
  }

  private static void none(Complaints complaints) {
    if (!complaints.isEmpty()) {
      throw new AssertionError(complaints.renderAll());
    }
  }
}
