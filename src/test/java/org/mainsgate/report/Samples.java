package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.imageio.ImageIO;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.Value;
import org.mainsgate.evidence.Visit;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.Range;
import org.mainsgate.quantity.Accuracy;
import org.mainsgate.quantity.Display;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Nulling;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.verdict.Engine;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Judged;
import org.mainsgate.verdict.Said;

/**
 * Dossiers of instruments that do not exist, judged by the real rules.
 *
 * <p>Names of makers and people are invented.
 */
final class Samples {

  static final LocalDate ON = LocalDate.of(2026, 11, 25);
  static final Rules RULES = rules("gb");

  private static final String VISIT = "2026-11-25-AR-7f3a";
  private static final String HASH = "5b3f".repeat(16);
  private static final Unit OHM = unit("Ω");
  private static final MeterRange RANGE =
      new MeterRange(
          Rational.of("19.99"),
          Rational.of("0.01"),
          Accuracy.of(Rational.of(2), Rational.of(3)),
          OHM);

  private static final InForce.SetAside SLIPPED =
      new InForce.SetAside(
          "2026-11-24-AR-11aa/e1",
          "front panel",
          "resistance of the earth path",
          "0.43 Ω",
          "withdrawn: the probe slipped");

  private Samples() {}

  private static Rules rules(String profile) {
    Complaints complaints = new Complaints();
    Optional<Rules> rules = new Shelf().open(Shelf.Choice.named(profile), complaints);
    assertEquals("", complaints.renderAll());
    return named(rules.orElseThrow());
  }

  /** The same rules under an identity that no edit of a ruleset changes. */
  private static Rules named(Rules rules) {
    return new Rules(
        rules.profile(),
        rules.title(),
        rules.edition(),
        "0123456789abcdef".repeat(4),
        rules.vocabulary(),
        rules.stages(),
        ofLeadAndEarth(rules.checks()),
        rules.limits(),
        rules.tables(),
        rules.dependencies(),
        rules.meterKinds(),
        rules.overlays(),
        rules.order());
  }

  /** The checks of two families, so that a page does not grow with every new family. */
  private static Map<String, Check> ofLeadAndEarth(Map<String, Check> all) {
    Set<String> others =
        Set.of(
            "class-accepted",
            "class-two-shown",
            "chassis-free",
            "class-three-supply",
            "live-metal");
    Set<String> later = Set.of("earth-closed-up", "part-double-insulated");
    Map<String, Check> checks = new LinkedHashMap<>(all);
    checks
        .values()
        .removeIf(
            check ->
                later.contains(check.id())
                    || !(others.contains(check.id())
                        || check.at().file().endsWith("/lead.yaml")
                        || check.at().file().endsWith("/earth.yaml")
                        || check.at().file().contains("/profiles/")));
    return checks;
  }

  static Setting setting() {
    return setting(RULES);
  }

  private static Setting setting(Rules rules) {
    return new Setting(bench(), rules, false, rules.firstStage(), ON);
  }

  /** A reading that is too near, a judged sheath, a reading taken back, work, and a photo. */
  static Dossier near() {
    Known known = new Known();
    known.standard();
    known.number("front-panel", "earth_resistance", "0.13 Ω", known.measured());
    known.number("case-screw", "earth_resistance", "0.05 Ω", known.measured());
    known.named("mains-lead", "sheath", "hardened");
    known.judged.add(
        new Judged(
            VISIT + "/j1",
            "lead-sheath-age",
            "mains-lead",
            "A. Rowe",
            "thirty years of valve instruments, no formal licence",
            "rubber is firm, no cracks when bent sharply <over its whole length> & both ends",
            "until the next yearly check, indoors only",
            ON));
    return dossier(known, List.of(first(), second()), List.of(photo(), photo()));
  }

  /** Two cores, metal that can be touched: a fail. */
  static Dossier unearthed() {
    Known known = new Known();
    known.standard();
    known.named("instrument", "class", "0");
    known.named("mains-lead", "cores", "two");
    known.named("mains-lead", "plug", "two_pin_old");
    return dossier(known, List.of(first()), List.of());
  }

  /** Everything recorded and met. */
  static Dossier sound() {
    return dossier(soundly(), List.of(first()), List.of());
  }

  /** The same under another profile. */
  static Dossier soundUnder(String profile) {
    return dossier(rules(profile), soundly(), List.of(first()), List.of());
  }

  private static Known soundly() {
    Known known = new Known();
    known.standard();
    known.number("front-panel", "earth_resistance", "0.08 Ω", known.measured());
    known.number("case-screw", "earth_resistance", "0.07 Ω", known.measured());
    return known;
  }

  /** Nothing recorded. */
  static Dossier blank() {
    return new Dossier(
        setting(),
        instrument(),
        List.of(),
        new Engine(RULES).assess(RULES.firstStage(), Evidence.NONE),
        List.of(),
        List.of(),
        List.of());
  }

  private static Dossier dossier(Known known, List<Visit> visits, List<Picture> photos) {
    return dossier(RULES, known, visits, photos);
  }

  private static Dossier dossier(
      Rules rules, Known known, List<Visit> visits, List<Picture> photos) {
    return new Dossier(
        setting(rules),
        instrument(),
        visits,
        new Engine(rules).assess(rules.firstStage(), known.evidence()),
        visits.size() > 1 ? List.of(SLIPPED) : List.of(),
        List.of(HASH),
        photos);
  }

  static Instrument instrument() {
    Map<String, Instrument.Thing> things = new LinkedHashMap<>();
    things.put("mains-lead", new Instrument.Thing("mains-lead", "lead", "fixed lead"));
    things.put("front-panel", new Instrument.Thing("front-panel", "exposed_part", "front panel"));
    things.put(
        "case-screw", new Instrument.Thing("case-screw", "exposed_part", "screw of the case"));
    return new Instrument(
        "NL-03",
        "0b9f6d0e-3c55-4d26-8f0a-5a4c1f2b7d10",
        "RC oscillator",
        "Harrowgate Instrument Works",
        "RO-2",
        "1187",
        "about 1958",
        List.of("photos/front.jpg", "photos/plate.jpg"),
        things,
        List.of(
            entry("plate.rated_voltage", "instrument", "rated_voltage", amount("240 V")),
            entry("plate.rated_power", "instrument", "rated_power", amount("45 VA"))));
  }

  private static Bench bench() {
    Bench.Meter meter =
        new Bench.Meter(
            "low-ohm",
            "low-ohm tester, Fallowmere LT-2",
            "0412",
            "low_ohm_tester",
            List.of(
                new Bench.MeterData(
                    LocalDate.of(2026, 1, 12),
                    "own 0.1 Ω resistor, reads 0.10 Ω",
                    Optional.of(LocalDate.of(2027, 1, 12)),
                    Map.of("resistance", List.of(RANGE)))));
    return new Bench(
        "north-light",
        "North Light, a repair bench above a boatyard",
        ZoneId.of("Europe/London"),
        "gb",
        Map.of(
            "AR",
            new Bench.Person(
                "AR", "A. Rowe", "thirty years of valve instruments, no formal licence")),
        Map.of("low-ohm", meter),
        Map.of(),
        List.of());
  }

  private static Visit first() {
    return visit(
        "2026-11-24-AR-11aa",
        List.of(
            metered("e1", "front-panel", "earth_resistance", "0.43 Ω"),
            entry("e2", "instrument", "class", named("I")),
            entry("e3", "mains-lead", "sheath", named("hardened"))),
        List.of(),
        List.of(),
        "");
  }

  private static Visit second() {
    return visit(
        VISIT,
        List.of(
            metered("e1", "front-panel", "earth_resistance", "0.13 Ω"),
            metered("e2", "case-screw", "earth_resistance", "0.05 Ω")),
        List.of(
            new Visit.Work("refitted", "cover", "new lock washers under its four screws", at())),
        List.of(
            new Visit.Withdrawal(
                "2026-11-24-AR-11aa", "e1", "probe_slipped", "paint under the tip", at())),
        "Dry room, 19 °C.");
  }

  private static Visit visit(
      String id,
      List<Entry> found,
      List<Visit.Work> work,
      List<Visit.Withdrawal> withdrawn,
      String note) {
    return new Visit(
        id,
        LocalDate.parse(id.substring(0, 10)),
        "AR",
        found,
        List.of(new Visit.Looked("l1", "exposed_part", 2, Optional.empty(), at())),
        work,
        List.of(),
        List.of(),
        List.of(),
        withdrawn,
        note,
        Optional.of(new Visit.Closing(LocalDate.parse(id.substring(0, 10)), List.of(), HASH)),
        at());
  }

  private static Entry metered(String id, String thing, String property, String typed) {
    return entry(id, thing, property, amount(typed), Optional.of("low-ohm"));
  }

  private static Entry entry(String id, String thing, String property, Value value) {
    return entry(id, thing, property, value, Optional.empty());
  }

  private static Entry entry(
      String id, String thing, String property, Value value, Optional<String> meter) {
    return new Entry(
        id,
        thing,
        property,
        value,
        Map.of(),
        meter,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        "",
        at());
  }

  private static Position at() {
    return new Position("visit.yaml", 1, 1);
  }

  private static Value amount(String typed) {
    return new Value.Amount(typed(typed));
  }

  private static Value named(String name) {
    return new Value.Names(Set.of(name), name);
  }

  private static Typed typed(String text) {
    return (Typed) Typed.parse(text);
  }

  private static Unit unit(String symbol) {
    return Units.find(symbol).orElseThrow();
  }

  static byte[] png() {
    BufferedImage image = new BufferedImage(800, 600, BufferedImage.TYPE_INT_ARGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setPaint(new GradientPaint(0, 0, Color.GRAY, 800, 600, Color.LIGHT_GRAY));
    graphics.fillRect(40, 60, 720, 480);
    graphics.setColor(Color.DARK_GRAY);
    graphics.fillOval(300, 160, 240, 240);
    graphics.dispose();
    try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      ImageIO.write(image, "png", out);
      return out.toByteArray();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private static Picture photo() {
    return Picture.of(png()).orElseThrow();
  }

  /** Evidence as it grows. */
  private static final class Known {
    private final Map<String, Map<String, Fact>> facts = new HashMap<>();
    private final List<Judged> judged = new ArrayList<>();

    void standard() {
      named("bench", "plug_pattern", "type_g");
      number("instrument", "rated_voltage", "240 V", Map.of());
      number("instrument", "rated_power", "45 VA", Map.of());
      named("instrument", "class", "I");
      put(
          "instrument",
          "supply_arrangement",
          name(
              "supply_arrangement",
              "two_winding_transformer",
              Map.of("basis", name("basis", "both", Map.of()))));
      named("instrument", "chassis_tie", "none");
      named("instrument", "earth_fixing", "own_locked");
      number("mains-lead", "core_area", "1.0 mm²", Map.of());
      number("mains-lead", "lead_length", "3 m", Map.of());
      number("mains-lead", "plug_fuse", "3 A", Map.of());
      named("mains-lead", "attachment", "fixed");
      named("mains-lead", "cores", "three");
      named("mains-lead", "sheath", "sound");
      named("mains-lead", "plug", "type_g");
      named("mains-lead", "plug_state", "sound");
      named("mains-lead", "strands", "all_held");
      named("mains-lead", "when_moved", "steady");
      named("front-panel", "part_path", "bonded");
      named("case-screw", "part_path", "bonded");
    }

    Map<String, Fact> measured() {
      return Map.of(
          "test_current", amount("test_current", "0.21 A", Map.of()),
          "measured_from", name("measured_from", "plug_pin", Map.of()),
          "meters_proved", name("meters_proved", "yes", Map.of()),
          "nothing_connected", name("nothing_connected", "yes", Map.of()),
          "unplugged", name("unplugged", "yes", Map.of()));
    }

    void named(String thing, String property, String value) {
      put(thing, property, name(property, value, Map.of()));
    }

    void number(String thing, String property, String typed, Map<String, Fact> with) {
      put(thing, property, amount(property, typed, with));
    }

    private void put(String thing, String property, Fact fact) {
      facts.computeIfAbsent(thing, unused -> new HashMap<>()).put(property, fact);
    }

    private static Fact name(String property, String value, Map<String, Fact> with) {
      Property.Observation observation =
          (Property.Observation) RULES.vocabulary().property(property).orElseThrow();
      Said said =
          said(
              property,
              observation.title(value),
              Optional.empty(),
              "",
              Optional.empty(),
              Optional.empty());
      return new Fact.Named(Set.of(value), true, false, List.of(said), with);
    }

    private static Fact amount(String property, String text, Map<String, Fact> with) {
      Typed typed = typed(text);
      boolean meter = typed.unit().equals(Optional.of(OHM));
      Display display = new Display(RANGE, new Nulling.Nulled());
      Said said =
          said(
              property,
              text,
              typed.unit(),
              meter ? "low-ohm tester, ±(2 % + 3 digits), test leads nulled" : "",
              typed.nominal(),
              meter ? Optional.of(display) : Optional.empty());
      Range range = Range.of(meter ? display.read(typed) : typed.bounds());
      return new Fact.Amount(range, true, false, false, List.of(said), with);
    }

    private static Said said(
        String property,
        String text,
        Optional<Unit> unit,
        String how,
        Optional<Rational> shown,
        Optional<Display> display) {
      return new Said(VISIT + "/found." + property, ON, "AR", text, unit, how, shown, display);
    }

    Evidence evidence() {
      return new Evidence(
          Map.of(
              "instrument", "instrument",
              "bench", "bench",
              "mains-lead", "fixed lead",
              "front-panel", "front panel",
              "case-screw", "screw of the case"),
          Map.of("lead", closed("mains-lead"), "exposed_part", closed("front-panel", "case-screw")),
          facts,
          judged);
    }

    private static Evidence.Listed closed(String... things) {
      return new Evidence.Listed(
          new Listing(List.of(things), true), Optional.of(things.length), List.of());
    }
  }
}
