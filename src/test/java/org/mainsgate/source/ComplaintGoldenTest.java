package org.mainsgate.source;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.mainsgate.Golden;

/** What a person reads when a file can't be understood, to the letter. */
class ComplaintGoldenTest {

  private final Map<String, String> cases = new LinkedHashMap<>();

  record Meter(@Name Text id, Text kind, @CalendarDate @Nullable Text calibrated) {}

  record Bench(
      Text format,
      @Nullable Text profile,
      @Nullable @CalendarDate Text measuredOn,
      @Size(min = 1, message = "no meter is listed|at least one meter") List<@Valid Meter> meters,
      List<@Name Text> people,
      Map<String, Text> defaults) {}

  @Test
  void complaintsReadAsTheyDid() {
    structure();
    syntax();
    hiddenCharacters();
    fields();
    constraints();
    Golden.check("source", cases);
  }

  private void structure() {
    yaml("duplicate-key", "format: 1\nsupply: 230 V\nprofile: gb\nsupply: 240 V\n");
    yaml("tag", "format: !!int 1\nmeters: !list []\nprofile: ! gb\n");
    yaml("anchor-and-alias", "a: &volts 230 V\nb: *volts\nc: [*volts, x]\n");
    yaml("merge-key", "a:\n  <<: {b: 1}\n  '<<': allowed in quotes\n");
    yaml("two-documents", "a: 1\n---\nb: 2\n");
    yaml("directive", "%YAML 1.2\n---\na: 1\n");
    yaml("complex-key", "? a\n: b\n[c, d]: e\n: f\n");
    yaml("deep-nesting", "[".repeat(40) + "]".repeat(40) + "\n");
    yaml("empty-file", "");
    yaml("only-a-comment", "# nothing yet\n");
    yaml("too-long", "#".repeat(StrictYaml.MOST_BYTES + 1));
    yaml("all-at-once", "a: !x 1\nb: &y 2\na: 3\nc: 'open\n");
    yaml("many", "a: 1\n".repeat(150));
  }

  private void syntax() {
    yaml("second-colon", "note: read at 12:30: fine\n");
    yaml("tab-indent", "a:\n\tb: 1\n");
    yaml("unclosed-quote", "a: 'it\nb: 1\n");
    yaml("unclosed-list", "a: [1, 2\nb: 3\n");
    yaml("unclosed-fields", "a: {b: 1\nc: 3\n");
    yaml("bad-indent", "a: 1\n  b: 2\n");
    yaml("less-indent", "a:\n    b: 1\n  c: 2\n");
    yaml("no-colon", "format: 1\nprofile gb\nzone: x\n");
    yaml("reserved-sign", "a: @home\nb: 1\n");
    yaml("percent-first", "a: %5\n");
    yaml("escape", "a: \"C:\\qa\"\n");
    yaml("block-sign", "a: |x\n  b\n");
    yaml("bare-star", "a: * b\n");
    yaml("too-far-left", "a:\n  b: [1,\n  2]\n  c: 'x\n\ty'\n");
    yaml("comment-without-space", "a: 'b'#c\nd: [e]#f\n");
    yaml("bare-hyphen", "a: [-, b]\n");
    yaml("empty-block", "a: |\n   \n # not text\nb: 1\n");
    yaml("list-in-value", "a: - b\n");
    yaml("percent-at-start", "a: 1\n...\nb: 2\n");
  }

  private void hiddenCharacters() {
    yaml("nul", "a: 1\u0000\nb: 2\n");
    yaml("bidi", "note: pass \u202Eliaf\u202C\nb: 2\n");
    yaml("bidi-escape", "note: \"pass \\u202Eliaf\"\n");
    yaml("byte-order-mark-inside", "a: 1\n\uFEFFb: 2\n");
    yaml("lone-carriage-return", "a: 1\rb: 2\n");
    bytes("bad-utf-8", "note: 5 \u00B5F\nb: 2 \u00B5F\n".getBytes(ISO_8859_1));
    bytes("bad-utf-8-many", "\u00FF".repeat(30).getBytes(ISO_8859_1));
    yaml("wide-line", "note: " + "漢字".repeat(60) + "\u0007" + " tail".repeat(30) + "\n");
    yaml("long-line", "note: " + "word ".repeat(60) + ": x\n");
    yaml("tab-in-line", "note: \t'x'\ty\n");
  }

  private void fields() {
    bound(
        "unknown-field",
        "format: 1\nprofil: gb\nmeters: [{id: m1, kind: multimeter, colour: red}]\n");
    bound("missing-field", "profile: gb\nmeters:\n  - id: m1\n    kind:\n");
    bound("misspelt-field", "fromat: 1\nmeters: [{id: m1, kind: multimeter}]\n");
    bound(
        "wrong-kind",
        "format: [1]\nprofile: {a: b}\nmeters: m1\npeople: [[KO], ]\ndefaults:\n  cover:\n  lead: []\n");
    bound("not-fields", "- a\n- b\n");
  }

  private void constraints() {
    bound(
        "constraint",
        """
        format: 1
        measured_on: 2026-02-30
        meters:
          - {id: m 1, kind: x, calibrated: yesterday}
          - {id: m2, kind: x, calibrated: 2026-13-01}
        people: [KO, -x]
        """);
    bound("constraint-on-list", "format: 1\n");
  }

  private void yaml(String name, String text) {
    bytes(name, text.getBytes(UTF_8));
  }

  private void bytes(String name, byte[] bytes) {
    Complaints complaints = new Complaints();
    StrictYaml.read(name + ".yaml", bytes, complaints);
    put(name, complaints);
  }

  private void bound(String name, String text) {
    Complaints complaints = new Complaints();
    StrictYaml.readFields(name + ".yaml", text.getBytes(UTF_8), complaints)
        .ifPresent(
            fields ->
                Binder.bind(fields, Bench.class, complaints)
                    .ifPresent(bench -> Shapes.check(bench, fields, complaints)));
    put(name, complaints);
  }

  private void put(String name, Complaints complaints) {
    if (cases.put(name, complaints.renderAll()) != null) {
      throw new IllegalArgumentException("two cases named " + name);
    }
  }
}
