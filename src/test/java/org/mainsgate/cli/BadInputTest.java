package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.Golden;

/**
 * Every kind of input that can't be used, as the person at the bench meets it: exit code 3, the
 * complaint on the error stream as the golden file has it, no stack trace, nothing written.
 */
class BadInputTest {
  private static final String VISIT = "instruments/NL-01/visits/2026-11-25-AR-7f3a.draft.yaml";
  private static final String INSTRUMENT = "instruments/NL-01/instrument.yaml";
  private static final String READING = "earth_resistance: 0.13 Ω";

  @TempDir Path folder;

  private final Map<String, String> complaints = new LinkedHashMap<>();

  @Test
  void aRecordThatCantBeUnderstoodIsComplainedAbout() {
    reading("a-wrong-unit", "earth_resistance: 0.13 V");
    reading("a-bare-number", "earth_resistance: 0.13");
    reading("a-decimal-comma", "earth_resistance: 0,13 Ω");
    reading("an-unknown-field", "earth_resistence: 0.13 Ω");
    reading("a-duplicate-key", "earth_resistance: 0.13 Ω, earth_resistance: 0.11 Ω");
    reading("a-tag", "earth_resistance: !!float 0.13");
    reading("an-anchor", "earth_resistance: &a 0.13 Ω");
    reading("an-alias", "earth_resistance: *a");
    reading("a-merge-key", "<<: {earth_resistance: 0.13 Ω}");
    reading("not-a-number", "earth_resistance: NaN Ω");
    reading("an-exponent", "earth_resistance: 1e999 Ω");
    reading("a-meter-that-is-not-there", "earth_resistance: {value: 0.13 Ω, meter: low-ohn}");
    reading("several-at-once", "earth_resistance: 0,13 Ω, part_path: bondet, colour: red");
    reading("a-decimal-comma-in-the-long-form", "earth_resistance: {value: 0,13 Ω}");
    visit(
        "a-decimal-comma-on-its-own-line",
        text ->
            text.replace(
                "  case: {" + READING + ", part_path: bonded}",
                "  case:\n    earth_resistance: 0,13 Ω\n    part_path: bonded"));
    visit("two-documents", text -> text + "---\nformat: 1\n");
    visit("nested-too-deep", text -> text + "note: " + "[".repeat(40) + "]".repeat(40) + "\n");
    visit("an-empty-file", text -> "");
    visit("a-nul", text -> text + "note: a\0b\n");
    visit("a-bidi-control", text -> text + "note: earth \u202Etes\u202C fine\n");
    visit(
        "a-date-that-does-not-exist", text -> text.replace("date: 2026-11-25", "date: 2026-11-31"));
    visit("a-person-that-is-not-there", text -> text.replace("by: AR", "by: AX"));
    visit("a-part-that-is-not-there", text -> text.replace("  case: {", "  cace: {"));
    visit("a-list-of-what-is-not-there", text -> text.replace("[case]", "[case, handle]"));
    visit("a-file-of-five-megabytes", text -> text + "# padding\n".repeat(500_000));
    instrument("a-kind-that-is-not-there", text -> text.replace("kind: lead", "kind: leed"));
    instrument(
        "a-capacitor-without-a-designator",
        text -> text.replace("ht_capacitor, designator: C1", "ht_capacitor"));
    instrument(
        "two-selectors",
        text ->
            text.replace(
                "  mains-fuse: {kind: fuse}",
                "  one: {kind: selector}\n  two: {kind: selector}\n  mains-fuse: {kind: fuse}"));
    visit(
        "an-insulation-reading-from-a-multimeter",
        text ->
            text.replace(
                "insulation_resistance: \"> 199.9 MΩ\"",
                "insulation_resistance: {value: 19.0 MΩ, meter: pocket}"));
    visit(
        "an-over-range-display-without-its-range",
        text ->
            text.replace(
                "supply_resistance: {value: OL, range: 19.99 MΩ}", "supply_resistance: OL"));
    visit(
        "a-reading-taken-back-without-a-reason",
        text ->
            text.replace(READING, "earth_resistance: {id: first, value: 0.13 Ω}")
                + "withdrawn: [{entry: first}]\n");
    bench("an-unknown-profile", text -> text.replace("profile: gb", "profile: gbr"));
    bench("an-unknown-zone", text -> text.replace("Europe/London", "Europe/Londres"));
    badUtf8();
    Golden.check("cli/bad-record", complaints);
  }

  @Test
  void aRulesetThatCantBeUsedIsComplainedAbout() {
    ruleset("a-check-that-passes-on-no-evidence", "1 < 2", "");
    ruleset("a-check-that-fails-on-no-evidence", "2 < 1", "");
    ruleset("volts-plus-ohms", "rated_voltage + house_limit <= rated_voltage", "");
    ruleset("two-hundred-levels", "(".repeat(200) + "class is I" + ")".repeat(200), "");
    ruleset("a-circle-of-prerequisites", "class is I", "    requires: [house-rule]\n");
    ruleset("a-bare-limit", "rated_power <= 100 VA", "");
    Golden.check("cli/bad-ruleset", complaints);
  }

  /** A profile like `gb` with one more check, and a limit in ohms. */
  private void ruleset(String name, String requirement, String more) {
    String gb = read(Path.of("rulesets/2026.1/profiles/gb.yaml"));
    String text =
        gb.replace(
                "limits:\n",
                """
                limits:
                  house_limit: {value: 1 Ω, source: practice, standing: common practice}
                """)
            + """

            checks:
              house-rule:
                title: A rule of the house
                protects: from nothing
                stage: cold
            """
            + more
            + "    requirement: "
            + requirement
            + """

                consequence: fail
                source: {of: practice, standing: common practice}
            """;
    Path file = Path.of("target", "house.yaml");
    write(file, text);
    complaints.put(name, refused("rules", "check", file));
  }

  @Test
  void aPlaceWhereNothingCanBeReadIsComplainedAbout() throws IOException {
    complaints.put("no-such-folder", refused("check", folder.resolve("nowhere")));
    Path file = Files.writeString(folder.resolve("file"), "no folder");
    complaints.put("a-file-for-a-folder", refused("check", file));
    Path bench = bench(folder.resolve("a"));
    complaints.put("no-such-instrument", refused("check", bench, "NL-02"));
    Files.delete(bench.resolve(INSTRUMENT));
    complaints.put("a-missing-file", refused("check", bench));
    Path unreadable = bench(folder.resolve("b"));
    Files.delete(unreadable.resolve("bench.yaml"));
    Files.createDirectory(unreadable.resolve("bench.yaml"));
    complaints.put("a-folder-for-a-file", refused("check", unreadable));
    Path late = bench(folder.resolve("c"));
    complaints.put("a-visit-after-the-day", refused("check", late, "--on", "2026-11-24"));
    complaints.put("an-unknown-stage", refused("check", late, "--stage", "warm"));
    complaints.put("a-profile-that-is-not-there", refused("check", late, "--profile", "uk"));
    complaints.put(
        "a-profile-file-that-is-not-there", refused("check", late, "--profile", "no.yaml"));
    Golden.check("cli/bad-place", complaints);
  }

  @Test
  void aClosedVisitThatWasTouchedIsComplainedAbout() {
    closed("changed", bench -> edit(bench.resolve(closed("25")), t -> t.replace("0.13", "0.10")));
    closed("removed", bench -> delete(bench.resolve(closed("25"))));
    closed(
        "removed-with-its-sum",
        bench -> {
          delete(bench.resolve(closed("25")));
          delete(bench.resolve(closed("25") + ".sha256"));
        });
    closed("sum-removed", bench -> delete(bench.resolve(closed("25") + ".sha256")));
    closed(
        "reordered",
        bench -> {
          move(bench.resolve(closed("25")), bench.resolve(closed("27")));
          move(bench.resolve(closed("25") + ".sha256"), bench.resolve(closed("27") + ".sha256"));
        });
    Golden.check("cli/bad-closed", complaints);
  }

  @Test
  void aWordThatIsNoCommandIsWrongUsage() {
    assertEquals(2, Run.of("chekc").code());
    assertEquals(2, Run.of("check").code());
    assertEquals(2, Run.of("report", folder).code());
    assertEquals(2, Run.of("check", folder, "--on", "25.11.2026").code());
  }

  private static String closed(String day) {
    return "instruments/NL-01/visits/2026-11-" + day + "-AR-7f3a.yaml";
  }

  /** Two closed visits, then somebody's hand. */
  private void closed(String name, Consumer<Path> hand) {
    Path bench = bench(folder.resolve(name));
    assertEquals(0, Run.of("close", bench, "NL-01").code());
    String second = read(bench.resolve(closed("25")));
    String draft =
        second.substring(0, second.indexOf("closed:")).replace("2026-11-25", "2026-11-26");
    write(bench.resolve("instruments/NL-01/visits/2026-11-26-AR-1111.draft.yaml"), draft);
    assertEquals(0, Run.of("close", bench, "NL-01", "--on", "2026-11-26").code());
    hand.accept(bench);
    complaints.put(name, refused("check", bench, "--on", "2026-11-28"));
  }

  private void reading(String name, String text) {
    visit(name, visit -> visit.replace(READING, text));
  }

  private void visit(String name, UnaryOperator<String> change) {
    changed(name, VISIT, change);
  }

  private void instrument(String name, UnaryOperator<String> change) {
    changed(name, INSTRUMENT, change);
  }

  private void bench(String name, UnaryOperator<String> change) {
    changed(name, "bench.yaml", change);
  }

  private void changed(String name, String file, UnaryOperator<String> change) {
    Path bench = bench(folder.resolve(name));
    String before = read(bench.resolve(file));
    String after = change.apply(before);
    assertFalse(before.equals(after), name + " changes nothing");
    write(bench.resolve(file), after);
    complaints.put(name, refused("check", bench));
  }

  private void badUtf8() {
    Path bench = bench(folder.resolve("bad-utf-8"));
    try {
      byte[] bytes = Files.readAllBytes(bench.resolve(VISIT));
      byte[] more = Arrays.copyOf(bytes, bytes.length + 9);
      byte[] note = "note: \u00e9\n".getBytes(StandardCharsets.ISO_8859_1);
      System.arraycopy(note, 0, more, bytes.length, note.length);
      more[bytes.length + note.length] = '\n';
      Files.write(bench.resolve(VISIT), Arrays.copyOf(more, bytes.length + note.length));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    complaints.put("bad-utf-8", refused("check", bench));
  }

  private Path bench(Path where) {
    return Run.smallBench(where);
  }

  /** What stands on the error stream, after making sure of everything else. */
  private String refused(Object... arguments) {
    Map<String, String> before = Run.everything(folder);
    Run run = Run.of(arguments);
    assertEquals(3, run.code(), run.err());
    assertEquals(before, Run.everything(folder), "something was written");
    assertFalse(run.err().contains("\tat "), run.err());
    assertTrue(
        run.err().lines().allMatch(line -> line.codePointCount(0, line.length()) <= 80), run.err());
    return run.err()
        .replaceAll("\\s+`" + folder, " `FOLDER")
        .replaceAll("\\s+does not exist", " does not exist");
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void write(Path file, String text) {
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void edit(Path file, UnaryOperator<String> change) {
    write(file, change.apply(read(file)));
  }

  private static void delete(Path file) {
    try {
      Files.delete(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void move(Path from, Path to) {
    try {
      Files.move(from, to);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
