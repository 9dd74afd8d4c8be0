package org.mainsgate.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.Golden;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.source.Complaints;

/** What a person reads when a record can't be understood, to the letter. */
class RecordGoldenTest {
  @TempDir Path folders;

  private final Map<String, String> cases = new TreeMap<>();

  @Test
  void complaintsReadAsTheyDid() {
    numbers();
    means();
    names();
    shapes();
    visits();
    closedVisits();
    files();
    cases.forEach((name, text) -> assertFalse(text.isBlank(), name));
    Golden.check("record", cases);
  }

  private void complain(String name, Consumer<PaperBench> spoil) {
    PaperBench bench = new PaperBench(folders.resolve(name));
    spoil.accept(bench);
    cases.put(name, bench.complaints());
  }

  private void inDraft(String name, String from, String to) {
    complain(name, bench -> bench.change(PaperBench.DRAFT, from, to));
  }

  private void inBench(String name, String from, String to) {
    complain(name, bench -> bench.change("bench.yaml", from, to));
  }

  private void inInstrument(String name, String from, String to) {
    complain(name, bench -> bench.change(PaperBench.INSTRUMENT, from, to));
  }

  private void numbers() {
    inDraft("wrong-unit", "- 0.13 Ω", "- 0.13 V");
    inDraft("unknown-unit", "- 0.13 Ω", "- 0.13 Ohmz");
    inDraft("bare-number", "- 0.13 Ω", "- 0.13");
    inDraft("decimal-comma", "- 0.13 Ω", "- 0,13 Ω");
    inDraft("not-a-number", "- 0.13 Ω", "- NaN");
    inDraft("exponent", "- 0.13 Ω", "- 1e999 Ω");
    inDraft("marked-over-a-limit", "0.75 mm²", "'> 0.75 mm²'");
    inDraft("marked-over-range", "0.75 mm²", "OL");
    inDraft("list-of-nothing", "0.75 mm²", "[]");
    inDraft("length-in-an-area", "2.5 m", "2.5 mm²");
    inDraft("unit-nearly-right", "0.75 mm²", "0.75 mmm²");
  }

  private void means() {
    inDraft("marked-with-a-meter", "0.75 mm²", "{value: 0.75 mm², meter: pocket}");
    inDraft("unknown-meter", "meter: pocket", "meter: poket");
    inDraft("display-between-steps", "- 0.13 Ω", "- 0.1305 Ω");
    inDraft("display-beyond-range", "- 0.13 Ω", "- 2.5 Ω");
    inDraft("range-not-there", "meter: pocket", "meter: pocket, range: 5 Ω");
    inDraft("over-range-without-range", "{value: 0.2 Ω,", "{value: OL,");
    inDraft("nulled-somehow", "short reads 0.1 Ω", "nearly");
    inBench(
        "two-methods",
        "methods:\n",
        "methods:\n  again: {of: earth_resistance, meter: pocket, nulled: no}\n");
    inBench("function-of-no-meter", "          resistance:", "          resistence:");
    inBench("range-in-volts", "to: 1.999 Ω", "to: 1.999 V");
    inBench("accuracy-unreadable", "accuracy: 2 % + 3 digits}\n  ", "accuracy: good}\n  ");
    inBench("site-measured-without-date", ", on: 2026-11-20", "");
    inBench("method-of-nothing", "of: earth_resistance", "of: core_area");
    inBench("method-without-of", "{of: earth_resistance, ", "{");
    inBench("method-with-a-field-too-many", "test_current: 0.21 A", "test_curent: 0.21 A");
    inBench("method-that-says-what-passes", "test_current: 0.21 A", "unplugged: yes");
    inBench(
        "method-with-no-meter-of-the-bench",
        "earth_resistance, meter: low-ohm",
        "earth_resistance, meter: lowohm");
    inBench("method-range-in-volts", "range: 1.999 Ω, nulled", "range: 1.999 V, nulled");
    inBench("method-nulled-somehow", "nulled: yes", "nulled: nearly");
    inBench("method-in-two-words", "  earth: {of", "  earth pin: {of");
    inBench("method-without-fields", "methods:\n", "methods:\n  again: yes\n");
    inBench("range-with-steps-of-nothing", "digit: 0.001 Ω", "digit: 0 Ω");
    inBench("range-with-steps-above-its-end", "digit: 0.001 Ω", "digit: 2 Ω");
    inBench(
        "accuracy-in-another-unit", "accuracy: 2 % + 3 digits}\n  ", "accuracy: 2 % + 3 V}\n  ");
    inBench("meter-in-two-words", "  pocket:\n    title", "  pocket one:\n    title");
    inBench(
        "meter-with-two-histories-of-a-day",
        "      - from: 2026-01-12\n",
        "      - {from: 2026-01-12, calibrated: again}\n      - from: 2026-01-12\n");
    inDraft(
        "meter-that-does-not-measure-it",
        "left:\n",
        "left:\n  instrument: {insulation_resistance: {value: 20 MΩ, meter: pocket}}\n");
    inBench("site-date-that-is-none", "on: 2026-11-20", "on: 2026-11-31");
    inDraft("reading-range-in-volts", "meter: pocket,", "meter: pocket, range: 2 V,");
    inDraft("meter-left-blank", "meter: pocket,", "meter: ,");
    inDraft("nulled-in-a-list", "nulled: short reads 0.1 Ω", "nulled: [no]");
  }

  private void names() {
    inDraft("unknown-person", "by: AR\n", "by: RA\n");
    inDraft("unknown-thing", "  case:", "  chasis:");
    inDraft("unknown-part-worked-on", "on: mains-lead", "on: main-lead");
    inDraft("unknown-property", "cores: three", "coers: three");
    inDraft("unknown-value", "class: I", "class: IV");
    inDraft("unknown-value-near", "two_winding_transformer", "two winding transfomer");
    inDraft("unknown-attribute", "id: e1", "id: e1, throgh: mains-lead");
    inDraft("points-to-no-lead", "through: mains-lead", "through: case");
    inDraft("unknown-act", "act: replaced", "act: swapped");
    inDraft("unknown-check", "check: lead-sheath-age", "check: lead-sheet-age");
    inDraft("unknown-decision", "decision: accepted", "decision: refused");
    inDraft("unknown-reason", "reason: probe_slipped", "reason: probe_sliped");
    inDraft("withdrawn-without-reason", "reason: probe_slipped, ", "");
    inDraft("withdrawn-entry-not-there", "entry: e2", "entry: e9");
    inDraft("withdrawn-visit-not-there", "entry: e2", "entry: 2026-11-01-AR-9c1d/e2");
    inDraft("entry-twice", "id: e2", "id: e1");
    inDraft("entry-id-with-a-point", "id: e2", "id: e.2");
    inDraft("note-among-properties", "cores: three", "cores: three, note: x");
    inDraft("entry-that-cannot-be-read-is-withdrawn", "value: 0.2 Ω, id: e2", "value: 0,2, id: e2");
    inDraft("plate-in-a-visit", "class: I,", "class: I, rated_power: 45 VA,");
    inDraft("looked-at-something-else", "[front-panel, case]", "[front-panel, mains-lead]");
    inDraft("looked-somehow", "lead: 1", "lead: all");
    inDraft("property-of-another-thing", "sheath: sound,", "sheath: sound, part_path: bonded,");
    inDraft("misspelt-plate-in-a-visit", "class: I,", "class: I, rated_powr: 45 VA,");
    inDraft("reading-without-its-value", "{value: 0.2 Ω, id: e2,", "{id: e2,");
    inDraft("entry-id-left-blank", "id: e2", "id: ''");
    inDraft("entry-by-a-stranger", "id: e2", "id: e2, by: RA");
    inDraft("list-of-no-values", "[type_g, none]", "[]");
    inDraft("thing-without-fields", "{sheath: sound, plug: [type_g, none]}", "sound");
    inDraft("looked-at-nothing", "[front-panel, case]", "[]");
    inDraft("looked-twice-at-one", "[front-panel, case]", "[case, front-panel, case]");
    inDraft("looked-at-a-list-in-a-list", "[front-panel, case]", "[[front-panel, case]]");
    inDraft("looked-for-no-kind", "lead: 1}", "leads: 1}");
    inDraft("none-of-no-kind", "lead: 1}", "none: [lead, fuze]}");
    inDraft("every-of-what-was-not-named", "lead: 1}", "lead: 1}\n  every: {lead: {cores: three}}");
    inDraft("every-of-no-kind", "lead: 1}", "lead: 1}\n  every: {leads: {cores: three}}");
    inDraft("every-without-fields", "lead: 1}", "lead: 1}\n  every: {exposed_part: bonded}");
    inDraft("withdrawn-of-no-visit", "entry: e2", "entry: /e2");
    inInstrument("thing-in-two-words", "  case:", "  the case:");
    inInstrument("thing-named-instrument", "  case:", "  instrument:");
    inInstrument("kind-not-listed", "{kind: exposed_part}", "{kind: cover}");
    inBench("unknown-meter-kind", "kind: multimeter", "kind: multi-meter");
  }

  private void shapes() {
    inBench("unknown-field", "profile: gb", "profil: gb");
    inBench("unknown-zone", "Europe/London", "Europe/Londn");
    inBench("overlay-outside", "profile: gb", "profile: gb\noverlays: [../ours.yaml]");
    inBench("overlay-that-is-no-file", "profile: gb", "profile: gb\noverlays: [ours]");
    inBench("overlay-twice", "profile: gb", "profile: gb\noverlays: [o.yaml, o.yaml]");
    inBench("profile-without-its-ending", "profile: gb", "profile: rules/gb");
    inBench("profile-outside", "profile: gb", "profile: ../other/gb.yaml");
    inBench("unknown-format", "format: 1", "format: 2");
    inBench("initials-too-long", "  AR:", "  A.R:");
    inInstrument("uid-cut", "-2f60c1d7e8b4", "");
    inInstrument("photo-outside", "photos/front.jpg", "../../front.jpg");
    inInstrument("tag-of-another", "tag: NL-03", "tag: NL-04");
    inDraft("date-that-does-not-exist", "date: 2026-11-25", "date: 2026-02-30");
    complain(
        "several-at-once",
        bench -> {
          bench.change(PaperBench.DRAFT, "by: AR\n", "by: RA\nnots: x\n");
          bench.change(PaperBench.DRAFT, "- 0.13 Ω", "- 0,13 Ω");
          bench.change(PaperBench.DRAFT, "cores: three", "cores: thre");
          bench.change(PaperBench.DRAFT, "lead: 1", "lead: one");
          bench.change(PaperBench.INSTRUMENT, "tag: NL-03", "tag: NL-04");
        });
  }

  private void visits() {
    inDraft("date-not-that-of-the-name", "date: 2026-11-25", "date: 2026-11-24");
    inDraft("draft-that-says-closed", "note: on", "closed: {on: 2026-11-25}\nnote: on");
    complain(
        "draft-without-its-ending",
        bench -> bench.move(PaperBench.DRAFT, PaperBench.DRAFT.replace(".draft", "")));
    PaperBench bench = new PaperBench(folders.resolve("visit-after-the-day"));
    Complaints complaints = bench.instrument().complaints();
    bench
        .instrument()
        .record()
        .orElseThrow()
        .visits()
        .forEach(visit -> RecordReader.notAfter(visit, LocalDate.of(2026, 11, 24), complaints));
    cases.put("visit-after-the-day", complaints.renderAll());
  }

  private static final String FIRST = PaperBench.VISITS + PaperBench.DRAFT_ID + ".yaml";
  private static final String SECOND = PaperBench.VISITS + "2026-11-26-AR-0b1c.yaml";

  /** Two closed visits, the second of which knew the first. */
  private static void closeTwo(PaperBench bench) {
    bench.close(LocalDate.of(2026, 11, 25));
    bench.write(
        SECOND.replace(".yaml", ".draft.yaml"),
        "format: 1\ndate: 2026-11-26\nby: AR\nfound:\n  case: {earth_resistance: 0.1 Ω}\n");
    bench.close(LocalDate.of(2026, 11, 26));
  }

  private void closed(String name, Consumer<PaperBench> spoil) {
    complain(
        name,
        bench -> {
          closeTwo(bench);
          spoil.accept(bench);
        });
  }

  private void closedVisits() {
    closed("closed-changed", bench -> bench.change(FIRST, "- 0.13 Ω", "- 0.12 Ω"));
    closed("closed-removed", bench -> bench.delete(FIRST));
    closed(
        "closed-removed-with-its-sidecar",
        bench -> {
          bench.delete(FIRST);
          bench.delete(FIRST + ".sha256");
        });
    closed("closed-without-sidecar", bench -> bench.delete(SECOND + ".sha256"));
    closed("sidecar-unreadable", bench -> bench.write(SECOND + ".sha256", "0b1c\n"));
    closed(
        "closed-renamed",
        bench -> {
          String other = SECOND.replace("0b1c", "0b1d");
          bench.move(SECOND, other);
          bench.move(SECOND + ".sha256", other + ".sha256");
        });
    closed("closed-renamed-alone", bench -> bench.move(SECOND, SECOND.replace("0b1c", "0b1d")));
    closed("closed-reordered", RecordGoldenTest::predate);
    closed(
        "closed-copied",
        bench -> {
          String other = SECOND.replace("0b1c", "0b1d");
          bench.write(other, bench.text(SECOND));
          bench.write(other + ".sha256", bench.text(SECOND + ".sha256").replace("0b1c", "0b1d"));
        });
    closed(
        "withdrawn-of-a-visit-that-has-no-such-entry",
        bench -> bench.write(THIRD, "format: 1\ndate: 2026-11-27\nby: AR\n" + TAKEN_BACK));
    closed("closed-before-its-day", RecordGoldenTest::closeTooEarly);
    closed(
        "draft-of-a-closed-visit",
        bench -> bench.write(PaperBench.DRAFT, PaperBench.DRAFT_TEXT.replace("forty", "ten")));
  }

  /** The second visit put before the first, by somebody who also makes the sidecar fit. */
  private static void predate(PaperBench bench) {
    String other = SECOND.replace("2026-11-26", "2026-11-24");
    bench.change(SECOND, "date: 2026-11-26", "date: 2026-11-24");
    bench.move(SECOND, other);
    bench.delete(SECOND + ".sha256");
    String hash = StoredFile.sha256(bench.text(other).getBytes(UTF_8));
    bench.write(other + ".sha256", hash + "  2026-11-24-AR-0b1c.yaml\n");
  }

  private static final String THIRD = PaperBench.VISITS + "2026-11-27-AR-1c2d.draft.yaml";
  private static final String TAKEN_BACK =
      "withdrawn: [{entry: 2026-11-25-AR-7f3a/e11, reason: probe_slipped}]\n";

  /** The second visit closed the day before its own, by somebody who also makes the sidecar fit. */
  private static void closeTooEarly(PaperBench bench) {
    bench.change(SECOND, "on: 2026-11-26", "on: 2026-11-25");
    String hash = StoredFile.sha256(bench.text(SECOND).getBytes(UTF_8));
    bench.write(SECOND + ".sha256", hash + "  2026-11-26-AR-0b1c.yaml\n");
  }

  private void files() {
    complain("no-bench", bench -> bench.delete("bench.yaml"));
    complain("no-instrument-file", bench -> bench.delete(PaperBench.INSTRUMENT));
    complain(
        "visit-with-another-name", bench -> bench.write(PaperBench.VISITS + "second try.yaml", ""));
    complain("too-large", bench -> bench.write(PaperBench.DRAFT, "#".repeat((1 << 20) + 1)));
    complain(
        "instruments-is-no-folder",
        bench -> {
          bench.move("instruments", "elsewhere");
          bench.write("instruments", "");
        });
    complain(
        "link-that-leads-out",
        bench -> {
          bench.delete(PaperBench.DRAFT);
          bench.write("../outside.yaml", PaperBench.DRAFT_TEXT);
          link(bench.path(PaperBench.DRAFT), bench.path("../outside.yaml"));
        });
    complain(
        "folder-in-place-of-a-file",
        bench -> {
          bench.delete(PaperBench.DRAFT);
          bench.write(PaperBench.DRAFT + "/x", "");
        });
    complain("two-tags-alike", bench -> bench.write("instruments/nl-03/instrument.yaml", ""));
  }

  private static void link(Path link, Path target) {
    try {
      Files.createSymbolicLink(link, target.toAbsolutePath());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
