package org.mainsgate.ruleset;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.mainsgate.Golden;
import org.mainsgate.laws.Rulebook;

/** What the author of a ruleset reads when it can't be used, to the letter. */
class BadRulesetsTest {
  private static final String GB = Rulebook.text("profiles/gb.yaml");

  private final Map<String, String> cases = new LinkedHashMap<>();

  @Test
  void complaintsAboutRulesetsReadAsTheyDid() {
    formulas();
    values();
    tables();
    checks();
    files();
    Golden.check("ruleset", cases);
  }

  @Test
  void everyOneOfThemIsRefusedWithItsPlace() {
    formulas();
    values();
    tables();
    checks();
    files();
    cases.forEach(
        (name, text) -> assertTrue(text.matches("(?s)own\\.yaml:[0-9]+:[0-9]+: .+"), name));
  }

  @Test
  void theProfileThatTheyStartFromIsRefusedForNothing() {
    assertEquals("", Rulebook.complaints(GB));
    assertEquals("", Rulebook.complaints(with(entry("cores is three", ""))));
  }

  private void formulas() {
    formula("volts-plus-metres", "rated_voltage + short_lead <= rated_voltage");
    formula("volts-plus-ohms", "rated_voltage + lead_earth_resistance <= rated_voltage");
    formula("two-hundred-levels", "(".repeat(200) + "cores is three" + ")".repeat(200));
    formula("number-with-a-unit", "lead_length <= 3 m");
    formula("unknown-name-with-the-nearest", "lead_lenght <= short_lead");
    formula("unknown-value-with-the-nearest", "cores is tree");
    formula("unknown-table", "rated_current <= lead_ratings(core_area).long");
    formula("unknown-column", "rated_current <= lead_rating(core_area).longer");
    formula("a-thing-of-another-list", "earth_resistance <= detachable_lead_base");
    formula("what-varies-by-itself", "supply_voltage >= rated_voltage");
    formula("several-at-once", "lead_lenght <= 3 m and cores is tree");
  }

  private void values() {
    changed("limit-missing", limit("copper_share", "value: 1"), "");
    changed("limit-misspelt", "  copper_share:\n", "  coper_share:\n");
    changed("limit-without-a-number", "    value: 20 mA\n", "    value: small\n");
    changed("limit-in-another-unit", "    value: 20 mA\n", "    value: 20 mV\n");
    changed("limit-with-a-decimal-comma", "    value: 0.1 Ω\n", "    value: 0,1 Ω\n");
    changed(
        "limit-without-its-source",
        limit("copper_share", "value: 1"),
        "  copper_share: {value: 1}\n");
    String first = "    value: 20 mA\n    source: iet-cop\n";
    changed("unknown-source", first, first.replace("iet-cop", "iet-copp"));
    changed(
        "unknown-standing",
        first + "    standing: published\n",
        first + "    standing: publishd\n");
  }

  /** A limit of the profile as it stands there. */
  private static String limit(String name, String value) {
    int start = GB.indexOf("  " + name + ":\n    " + value);
    int end = GB.indexOf("\n  ", GB.indexOf("    note:", start)) + 1;
    return GB.substring(start, end);
  }

  private void tables() {
    changed("table-missing", "  earth_base:\n", "  earth_bases:\n");
    changed(
        "table-with-a-hole",
        "- {at: 0.75 mm², short: 0 A, long: 6 A,",
        "- {at: 0.75 mm², short: 0 A,");
    changed(
        "table-with-a-row-twice",
        "- {at: 0.75 mm², short: 0 A, long: 6 A,",
        "- {at: 1.0 mm², short: 0 A, long: 6 A,");
    changed(
        "table-without-a-key",
        "- {at: 0.75 mm², short: 0 A, long: 6 A,",
        "- {short: 0 A, long: 6 A,");
    changed(
        "table-without-a-named-value",
        "tables:\n",
        """
        tables:
          amps:
            title: Amperes of a connector
            key: connector
            columns: {current: A}
            source: practice
            standing: common practice
            without: [other, exposed_pins]
            rows:
              - {is: c5, current: 2.5 A}
        """);
  }

  private void checks() {
    String plain = entry("cores is three", "");
    String first = entry("cores is three", "requires: [second]");
    String second = entry("cores is three", "requires: [own]").replace("own:", "second:");
    added("circle", first + second.replace("[own]", "[third]") + second.replace("second", "third"));
    added("circle-of-one", entry("cores is three", "requires: [own]"));
    added("unknown-check", entry("cores is three", "requires: [lead-core]"));
    added("judge-on-a-fail", entry("cores is three", "judge: a person may"));
    added("unknown-consequence", plain.replace("consequence: fail", "consequence: warn"));
    added("unknown-stage", plain.replace("stage: cold", "stage: lead"));
    added("unknown-list", plain.replace("over: lead", "over: leads"));
    added("check-of-the-common-rules-again", plain.replace("own:", "lead-cores:"));
    added("check-without-a-source", plain.replaceAll(" *source: .*\n", ""));
    added(
        "step-with-a-taken-name",
        entry("cores is three", "steps: {class: {title: x, is: rated_current}}"));
  }

  private void files() {
    changed("another-language", "language: 1\n", "language: 2\n");
    changed("another-edition", "edition: \"2026.1\"\n", "edition: \"2025.9\"\n");
    changed("unknown-field", "title: Great", "titel: Great");
  }

  /** A check of its own, with one more line. */
  private static String entry(String requirement, String more) {
    String check =
        """
          own:
            title: A check of our own
            protects: from nothing yet
            stage: cold
            over: lead
            requirement: "REQUIREMENT"
            consequence: fail
            source: {of: practice, standing: common practice}
        """
            .replace("REQUIREMENT", requirement);
    return more.isEmpty() ? check : check + "    " + more + "\n";
  }

  private void formula(String name, String requirement) {
    added(name, entry(requirement, ""));
  }

  private void added(String name, String checks) {
    put(name, with(checks));
  }

  private static String with(String checks) {
    return GB + "\nchecks:\n" + checks;
  }

  private void changed(String name, String from, String to) {
    put(name, Rulebook.changed(GB, from, to));
  }

  private void put(String name, String text) {
    cases.put(name, Rulebook.complaints(text));
  }
}
