package org.mainsgate.verdict;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.mainsgate.Golden;
import org.mainsgate.formula.Ground;
import org.mainsgate.laws.Notebook;
import org.mainsgate.quantity.Print;

/** What findings say, to the letter: why they hold, what would settle it, what they rest on. */
class FindingGoldenTest {
  private static final Set<String> SOUND =
      Notebook.gb().assess().findings().stream()
          .map(FindingGoldenTest::text)
          .collect(Collectors.toSet());

  private final Map<String, String> cases = new TreeMap<>();

  @Test
  void findingsReadAsTheyDid() {
    readings();
    gaps();
    lists();
    decisions();
    laterVisits();
    Golden.check("finding", cases);
  }

  private void readings() {
    found("too-near", "case: {earth_resistance: 0.13 Ω}");
    found("below-zero", "case: {earth_resistance: -0.05 Ω}");
    found("implausible", "case: {earth_resistance: 0.01 Ω}");
    found("fails", "case: {earth_resistance: 0.46 Ω}");
    found("disagreeing", "case: {earth_resistance: [0.01 Ω, 0.09 Ω]}");
    found("not-as-asked", "case: {earth_resistance: {value: 0.08 Ω, test_current: 19 mA}}");
    found(
        "meter-too-coarse",
        "case: {earth_resistance: {value: 0.1 Ω, meter: pocket, nulled: yes, test_current: 0.2 A, measured_from: plug_pin}}");
    found("insulation-too-near", "instrument: {insulation_resistance: 1.0 MΩ}");
    found("insulation-fails", "instrument: {insulation_resistance: 0.2 MΩ}");
    found("length-from-to", "mains-lead: {lead_length: 2 to 12 m, core_area: 0.75 mm²}");
    found("charged", "reservoir: {residual_voltage: 62 V}");
    found("lead-of-no-row", "mains-lead: {core_area: 0.6 mm²}");
  }

  private void gaps() {
    Notebook gb = Notebook.gb();
    show("not-recorded", gb.unfound("mains-lead/sheath"));
    show("not-measured", gb.unfound("case/earth_resistance"));
    show("class-not-recorded", gb.unfound("instrument/class"));
    show("prerequisite", gb.unfound("instrument/earth_fixing"));
    show("plug-not-out", gb.unfound("instrument/unplugged"));
    found("class-unknown", "instrument: {class: unknown}");
    found("one-of-two", "mains-lead: {cores: [two, three]}");
    found("arrangement-open", "instrument: {supply_arrangement: {is: unknown, basis: traced}}");
    found("double-insulated", "instrument: {class: {is: II, shown_by: mark}}");
  }

  private void lists() {
    Notebook gb = Notebook.gb();
    show("list-open", gb.unfound("looked/lead"));
    found("counted-more", "looked: {lead: 2}");
    found("counted-none", "looked: {exposed_part: none}");
    show(
        "none-listed",
        gb.unfound("case")
            .unfound("looked/exposed_part")
            .without("instrument/things/case")
            .found("looked: {exposed_part: none}"));
  }

  private void decisions() {
    judged("accepted", Notebook.gb().found("mains-lead: {sheath: hardened}"), "lead-sheath-age");
    judged("accepted-without-effect", Notebook.gb(), "lead-sheath");
    found("for-a-person", "instrument: {earth_fixing: shared}");
    found("floating", "case: {part_path: floating}");
    show(
        "voided-by-work",
        Notebook.gb().worked("{act: replaced, on: mains-lead}", "mains-lead: {sheath: sound}"));
  }

  private void judged(String name, Notebook book, String check) {
    String decision = ", item: mains-lead, decision: accepted, by: KO, because: seen}]}";
    show(name, book.with("visit: {judged: [{check: " + check + decision));
  }

  private void laterVisits() {
    Notebook worse = Notebook.gb().found("mains-lead: {sheath: damaged}");
    show(
        "better-without-work",
        worse.then("b", "2026-11-26", "a", "found: {mains-lead: {sheath: sound}}\n"));
    show(
        "branches",
        Notebook.gb()
            .then("b", "2026-11-26", "a", "found: {mains-lead: {sheath: damaged}}\n")
            .then("c", "2026-11-26", "a", "found: {mains-lead: {sheath: sound}}\n"));
    show(
        "taken-back",
        Notebook.gb()
            .with("visit: {found: {case: {earth_resistance: {value: 0.08 Ω, id: e1}}}}")
            .then(
                "b",
                "2026-11-26",
                "a",
                "withdrawn: [{entry: "
                    + Notebook.id("a", "2026-11-25")
                    + "/e1, reason: probe_slipped}]\n"));
  }

  private void found(String name, String inside) {
    show(name, Notebook.gb().found(inside));
  }

  /** The first findings of the first stage that are others than before anything was changed. */
  private void show(String name, Notebook book) {
    Assessment assessment = book.assess();
    String findings =
        assessment.findings().stream()
            .map(FindingGoldenTest::text)
            .filter(text -> !SOUND.contains(text))
            .limit(6)
            .collect(Collectors.joining());
    cases.put(name, assessment.verdict().word() + "\n" + findings);
  }

  private static String text(Finding finding) {
    StringBuilder text = new StringBuilder();
    line(
        text,
        "",
        finding.check().id() + ", " + finding.thingTitle() + ": " + finding.outcome().word());
    line(text, "  because: ", finding.because());
    finding.deciding().ifPresent(found -> line(text, "  decided by: ", comparison(found)));
    finding.holds().forEach(hold -> line(text, "  " + hold.reason().words() + ": ", hold.text()));
    finding.settles().forEach(settles -> line(text, "  settles: ", settles));
    finding.notes().forEach(note -> line(text, "  note: ", note.says()));
    finding
        .judged()
        .ifPresent(judged -> line(text, "  judged: ", judged.by() + ", " + judged.because()));
    return text.toString();
  }

  private static String comparison(Ground.Comparison found) {
    return Print.quantity(found.left(), found.unit())
        + " "
        + found.operator()
        + " "
        + Print.quantity(found.right(), found.unit());
  }

  private static void line(StringBuilder text, String head, String words) {
    if (!words.isEmpty()) {
      text.append(head).append(words).append('\n');
    }
  }
}
