package org.mainsgate.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;

/** A small bench of an invented boatyard, written into a folder and spoilt at will. */
public final class PaperBench {
  public static final String TAG = "NL-03";
  public static final String INSTRUMENT = "instruments/NL-03/instrument.yaml";
  public static final String VISITS = "instruments/NL-03/visits/";
  public static final String DRAFT_ID = "2026-11-25-AR-7f3a";
  public static final String DRAFT = VISITS + DRAFT_ID + ".draft.yaml";

  public static final String BENCH_TEXT =
      """
      format: 1
      bench: north-light
      title: North Light, a repair bench above a boatyard
      zone: Europe/London
      profile: gb
      site:
        supply_voltage: 230 V +10/-6 %
        supply_frequency: 50 Hz
        plug_pattern: type_g
        socket_voltage: {value: 238 V, meter: pocket, on: 2026-11-20}
      people:
        AR: {name: the restorer, competence: "thirty years of valve instruments, no formal licence"}
      meters:
        low-ohm:
          title: low-ohm tester, Fallowmere LT-2
          serial: "0412"
          kind: low_ohm_tester
          history:
            - from: 2026-01-12
              calibrated: own 0.1 Ω resistor, reads 0.100 Ω
              due: 2027-01-12
              functions:
                resistance:
                  - {to: 1.999 Ω, digit: 0.001 Ω, accuracy: 2 % + 3 digits}
                  - {to: 19.99 Ω, digit: 0.01 Ω, accuracy: 2 % + 3 digits}
        pocket:
          title: pocket meter, Fallowmere P1
          kind: multimeter
      methods:
        earth: {of: earth_resistance, meter: low-ohm, range: 1.999 Ω, nulled: yes, test_current: 0.21 A, measured_from: plug_pin}
      """;

  public static final String INSTRUMENT_TEXT =
      """
      format: 1
      tag: NL-03
      uid: 0b9f3c52-8d1e-4a76-9a55-2f60c1d7e8b4
      what: RC oscillator
      maker: Harrowgate Instrument Works
      model: RO-2
      serial: "1187"
      made: about 1958
      photo: photos/front.jpg
      plate: {rated_voltage: 240 V, rated_power: 45 VA, rated_frequency: 50 Hz}
      things:
        mains-lead: {kind: lead, title: fixed lead}
        front-panel: {kind: exposed_part, title: front panel}
        case: {kind: exposed_part}
      """;

  public static final String DRAFT_TEXT =
      """
      format: 1
      date: 2026-11-25
      by: AR
      note: on the bench after forty years
      found:
        instrument: {class: I, supply_arrangement: {is: two_winding_transformer, basis: traced}, chassis_tie: none, unplugged: yes}
        mains-lead: {cores: three, core_area: 0.75 mm², lead_length: 2.5 m}
        front-panel:
          earth_resistance:
            - {value: 0.132 Ω, id: e1, through: mains-lead}
            - 0.13 Ω
        case:
          earth_resistance: {value: 0.2 Ω, id: e2, meter: pocket, nulled: short reads 0.1 Ω}
        looked: {exposed_part: [front-panel, case], lead: 1}
      work:
        - {act: replaced, on: mains-lead, note: old rubber lead condemned}
      left:
        mains-lead: {sheath: sound, plug: [type_g, none]}
      judged:
        - {check: lead-sheath-age, item: front-panel, decision: accepted, by: AR, because: seen, restriction: only here}
      withdrawn:
        - {entry: e2, reason: probe_slipped, note: off the bare spot}
      """;

  private static final Rules RULES = rules();

  private final Path folder;

  PaperBench(Path folder) {
    this.folder = folder;
    write("bench.yaml", BENCH_TEXT);
    write(INSTRUMENT, INSTRUMENT_TEXT);
    write(DRAFT, DRAFT_TEXT);
  }

  private static Rules rules() {
    Complaints complaints = new Complaints();
    Optional<Rules> rules = new Shelf().open(Shelf.Choice.named("gb"), complaints);
    if (!complaints.isEmpty()) {
      throw new IllegalStateException(complaints.renderAll());
    }
    return rules.orElseThrow();
  }

  public static RecordReader reader() {
    return RecordReader.of(RULES);
  }

  public static Rules ruleset() {
    return RULES;
  }

  Path folder() {
    return folder;
  }

  Path path(String path) {
    return folder.resolve(path);
  }

  void write(String path, String text) {
    try {
      Files.createDirectories(path(path).getParent());
      Files.writeString(path(path), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  String text(String path) {
    try {
      return Files.readString(path(path), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Puts other words in a file; the old ones must stand there. */
  void change(String path, String from, String to) {
    String text = text(path);
    if (!text.contains(from)) {
      throw new IllegalArgumentException("`" + from + "` does not stand in " + path);
    }
    write(path, text.replace(from, to));
  }

  void delete(String path) {
    try {
      Files.delete(path(path));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void move(String from, String to) {
    try {
      Files.move(path(from), path(to));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  BenchFolder open() {
    Complaints complaints = new Complaints();
    Optional<BenchFolder> bench = BenchFolder.open(folder, complaints);
    return bench.orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  Bench bench() {
    Complaints complaints = new Complaints();
    Optional<Bench> bench = open().bench(reader(), complaints);
    return bench.orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  StoredInstrument instrument() {
    return open().instrument(TAG, bench(), reader());
  }

  /** Everything that there is to complain of, as the caller of the store would print it. */
  String complaints() {
    Complaints complaints = new Complaints();
    Optional<BenchFolder> opened = BenchFolder.open(folder, complaints);
    Optional<Bench> bench = opened.flatMap(b -> b.bench(reader(), complaints));
    StringBuilder all = new StringBuilder(complaints.renderAll());
    if (bench.isPresent()) {
      BenchFolder found = opened.orElseThrow();
      found.wanted(List.of()).stream()
          .map(tag -> found.instrument(tag, bench.get(), reader()))
          .map(instrument -> instrument.complaints().renderAll())
          .forEach(all::append);
    }
    return all.toString().replace(folder.toString(), "FOLDER");
  }

  /** What is complained of when the only draft is closed. */
  String closingRefused(LocalDate on) {
    Complaints complaints = new Complaints();
    try {
      Optional<Closed> closed =
          open().close(TAG, Optional.empty(), on, bench(), reader(), complaints);
      if (closed.isPresent()) {
        throw new AssertionError("it was closed");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return complaints.renderAll();
  }

  /** The names in the folder of the visits. */
  List<String> visits() {
    try (Stream<Path> files = Files.list(path(VISITS))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Closes the only draft, which must work. */
  Closed close(LocalDate on) {
    Complaints complaints = new Complaints();
    try {
      return open()
          .close(TAG, Optional.empty(), on, bench(), reader(), complaints)
          .orElseThrow(() -> new AssertionError(complaints.renderAll()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
