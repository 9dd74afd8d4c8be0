package org.mainsgate.ruleset;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.mainsgate.Golden;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.source.Complaints;

/** Overlays that must be accepted, and overlays that must be refused, each with its complaint. */
class OverlayTest {
  private static final String HEAD =
      """
      format: 1
      overlay: our-workshop
      title: Rules of our workshop
      edition: own
      language: 1
      for: "2026.1"
      """;
  private static final String CHECK =
      """
      checks:
        lead-short:
          title: Lead no longer than we like
          protects: from leads that lie in the way
          stage: cold
          over: lead
          requirement: lead_length <= our_length
          consequence: hold
          judge: a person may
          source: {of: practice, standing: common practice}
      """;
  private static final String OUR_LENGTH = limit("our_length", "2.5 m");

  /** The common rules, with a limit under the head that is only from memory. */
  private static final String MEMORY =
      """

      checks:
        own:
          title: A check of our own
          protects: from nothing yet
          stage: cold
          over: lead
          requirement: lead_length <= remembered
          consequence: fail
          source: {of: practice, standing: common practice}
      """;

  private final Map<String, String> refused = new LinkedHashMap<>();

  // ── accepted ───────────────────────────────────────────────────────────────────────────────

  @Test
  void whatOnlyTightensIsAcceptedOnEveryProfile() {
    Map<String, String> accepted = new LinkedHashMap<>();
    accepted.put("nothing", "");
    accepted.put("a lower limit", "limits:\n" + limit("detachable_lead_base", "0.09 Ω"));
    accepted.put("a limit in another unit", "limits:\n" + limit("detachable_lead_base", "90 mΩ"));
    accepted.put("a higher limit", "limits:\n" + limit("earth_test_current", "10 A"));
    accepted.put("a limit as it is", "limits:\n" + limit("short_lead", "2 m"));
    accepted.put("a conjunct", amend("lead-cores", "requirement: sheath is sound"));
    accepted.put(
        "a conjunct over a step and a limit of its own",
        "limits:\n"
            + limit("our_base", "0.05 Ω")
            + amend(
                "earth-continuity", "requirement: earth_resistance <= our_base + lead_allowance"));
    accepted.put("hold to fail", amend("earth-fixing", "consequence: fail"));
    accepted.put(
        "a conjunct where a person may judge no more",
        amend("earth-fixing", "consequence: fail\n    requirement: chassis_tie is none"));
    accepted.put("a prerequisite", amend("plug-fuse", "requires: [lead-current, lead-sheath]"));
    accepted.put(
        "a demand on the evidence",
        amend(
            "lead-cores",
            "provided:\n      - {that: sheath is sound, otherwise: look at the sheath first}"));
    accepted.put("a caution", amend("lead-cores", "caution: Two of us have been bitten."));
    accepted.put("a new check", "limits:\n" + OUR_LENGTH + CHECK);
    accepted.put(
        "a prerequisite of its own",
        "limits:\n" + OUR_LENGTH + amend("plug-fuse", "requires: [lead-short]") + CHECK);
    accepted.forEach(
        (name, text) -> {
          assertEquals("", Rulebook.overlayComplaints("gb", HEAD + text), name);
          assertEquals("", Rulebook.overlayComplaints("eu", HEAD + text), name);
        });
  }

  @Test
  void overlaysLieOnEachOtherInTheirOrder() {
    String first = HEAD + "limits:\n" + limit("short_lead", "1.5 m");
    String second =
        HEAD.replace("our-workshop", "our-school") + "limits:\n" + limit("short_lead", "1 m");
    assertEquals("1 m", limitOf(Rulebook.under("gb", first, second), "short_lead").text());
    assertTrue(
        Rulebook.overlayComplaints("gb", second, first).contains("`short_lead` is loosened"));
    List<Overlay> overlays = Rulebook.under("gb", first, second).overlays();
    assertEquals(
        List.of("our-workshop", "our-school"), overlays.stream().map(Overlay::name).toList());
  }

  @Test
  void theIdentityTellsOverlaysTheirBytesAndTheirOrder() {
    String one = HEAD + amend("lead-cores", "caution: One.");
    String two = HEAD.replace("our-workshop", "b") + amend("lead-cores", "caution: Two.");
    String plain = Rulebook.gb().identity();
    String laid = Rulebook.under("gb", one).identity();
    assertNotEquals(plain, laid);
    assertNotEquals(laid, Rulebook.under("gb", one + "\n").identity());
    assertNotEquals(
        Rulebook.under("gb", one, two).identity(), Rulebook.under("gb", two, one).identity());
    assertEquals(laid, Rulebook.under("gb", one).identity());
  }

  @Test
  void whatIsAddedStandsInTheCheck() {
    Rules rules =
        Rulebook.under(
            "gb",
            HEAD
                + amend(
                    "earth-fixing",
                    "consequence: fail\n    requires: [chassis-free]\n    caution: Ask first."));
    Check check = Optional.ofNullable(rules.checks().get("earth-fixing")).orElseThrow();
    assertEquals(List.of("earth-fixing-present", "chassis-free"), check.requires());
    assertEquals(Check.Consequence.FAIL, check.consequence());
    assertEquals("Ask first.", check.caution());
    assertFalse(check.judgeable(), "a fail is never released by judgement");
  }

  @Test
  void whatIsRelaxedByNameIsAcceptedAndKept() {
    String text =
        HEAD
            + "limits:\n"
            + limit("short_lead", "3 m")
            + amend("lead-sheath", "consequence: hold")
            + relaxes("short_lead")
            + relaxes("lead-sheath").replace("relaxes:\n", "");
    Rules rules = Rulebook.under("gb", text);
    assertEquals("3 m", limitOf(rules, "short_lead").text());
    assertEquals(
        List.of(
            new Overlay.Relaxation(
                "longest lead that counts as short: 3 m instead of 2 m",
                "we say so",
                "the restorer"),
            new Overlay.Relaxation(
                "Sheath and insulation (lead-sheath)", "we say so", "the restorer")),
        rules.relaxations());
  }

  @Test
  void aNewValueKeepsItsTitleAndBringsItsOwnSource() {
    Limit limit =
        limitOf(
            Rulebook.under("gb", HEAD + "limits:\n" + limit("short_lead", "1.5 m")), "short_lead");
    assertEquals("longest lead that counts as short", limit.title());
    assertEquals("Custom of the trade", limit.citation().title());
  }

  @Test
  void aValueFromMemoryIsConfirmedWithoutACopyOfTheProfile() {
    Rules rules =
        Rulebook.under(
            "au-nz", HEAD + confirm("insulation_least") + confirms("lead_rating[0.75 mm²]"));
    Citation.Confirmation word =
        new Citation.Confirmation("the visiting electrician", "2026-11-25", "2022");
    assertEquals(Optional.of(word), limitOf(rules, "insulation_least").citation().confirmed());
    assertFalse(limitOf(rules, "insulation_least").citation().isUnconfirmed());
    assertTrue(limitOf(rules, "insulation_unearthed").citation().isUnconfirmed(), "not this one");
    assertEquals(
        new Overlay.Confirmation("least insulation from the supply to earthed metal, 1 MΩ", word),
        rules.confirmations().get(0));
    assertEquals(
        new Overlay.Confirmation("current that a lead may carry, 0.75 mm²", word),
        rules.confirmations().get(1));
    Rules.CitedTable table = Optional.ofNullable(rules.tables().get("lead_rating")).orElseThrow();
    assertFalse(table.citation("0.75 mm²").isUnconfirmed());
    assertTrue(table.citation("2.5 mm²").isUnconfirmed(), "not this row");
    assertEquals(List.of(), rules.relaxations(), "it relaxes nothing");
  }

  @Test
  void aWholeTableIsConfirmedByItsName() {
    Rules rules = Rulebook.under("au-nz", HEAD + confirm("lead_rating"));
    Rules.CitedTable table = Optional.ofNullable(rules.tables().get("lead_rating")).orElseThrow();
    assertTrue(table.citations().values().stream().noneMatch(Citation::isUnconfirmed));
    assertEquals(
        List.of("current that a lead may carry, 0.75 mm², 2.5 mm²"),
        rules.confirmations().stream().map(Overlay.Confirmation::what).toList());
  }

  @Test
  void whatIsNotFromMemoryUnderAProfileIsLeftAsItIs() {
    Rules rules = Rulebook.under("gb", HEAD + confirm("insulation_least"));
    assertEquals(List.of(), rules.confirmations());
    assertEquals(Optional.empty(), limitOf(rules, "insulation_least").citation().confirmed());
  }

  private static String confirm(String name) {
    return "confirm:\n" + confirms(name);
  }

  private static String confirms(String name) {
    return "  " + name + ": {by: the visiting electrician, on: 2026-11-25, edition: \"2022\"}\n";
  }

  private static Limit limitOf(Rules rules, String name) {
    return Optional.ofNullable(rules.limits().get(name)).orElseThrow();
  }

  // ── refused ────────────────────────────────────────────────────────────────────────────────

  @Test
  void whatLoosensOrCannotBeShownToTightenIsRefusedWithItsPlace() {
    limits();
    amendments();
    additions();
    meters();
    relaxations();
    confirmations();
    heads();
    refused.forEach(
        (name, text) -> assertTrue(text.matches("(?s)own\\.yaml:[0-9]+:[0-9]+: .+"), name));
    Golden.check("overlay", refused);
  }

  private void limits() {
    refuse("limit-raised", "limits:\n" + limit("short_lead", "3 m"));
    refuse("limit-lowered", "limits:\n" + limit("earth_test_current", "10 mA"));
    refuse("limit-in-another-unit", "limits:\n" + limit("short_lead", "2 kg"));
    refuse("limit-without-a-source", "limits:\n  short_lead: {value: 1 m}\n");
    refuse(
        "limit-from-memory",
        "limits:\n" + limit("short_lead", "1 m").replace("common practice", "from memory"));
    refuse("limit-misspelt", "limits:\n" + limit("short_leed", "1 m"));
    refuse("limit-that-means-something-else", "limits:\n" + limit("core_area", "1 mm²"));
    // The vocabulary does not say that a length is never below zero.
    refuse("limit-behind-an-unknown-factor", "limits:\n" + limit("plausible_share", "0.95"));
    // Zero times the unknown is zero: what is behind a factor of zero may become known.
    refuse("limit-to-zero", "limits:\n" + limit("detachable_lead_base", "0 Ω"));
    refuse(
        "limit-in-both-directions",
        "limits:\n"
            + limit("short_lead", "1 m")
            + amend("lead-cores", "requirement: lead_length >= short_lead"));
    refuse(
        "limit-in-applies",
        "limits:\n"
            + limit("short_lead", "1 m")
            + CHECK
                .replace(
                    "    requirement", "    applies: lead_length <= short_lead\n    requirement")
                .replace("our_length", "short_lead"));
    refuse(
        "limit-in-a-table-key",
        "limits:\n"
            + limit("short_lead", "1 m")
            + amend(
                "earth-continuity",
                "requirement: earth_resistance <= earth_base(short_lead).limit"));
    refuse(
        "eu",
        "limit-where-a-person-may-judge",
        "limits:\n" + limit("stepped_core_area", "1.0 mm²"));
  }

  private void amendments() {
    refuse("check-unknown", amend("lead-core", "consequence: fail"));
    refuse("fail-to-hold", amend("lead-sheath", "consequence: hold"));
    refuse("consequence-unknown", amend("lead-sheath", "consequence: warn"));
    refuse(
        "conjunct-where-a-person-may-judge",
        amend("earth-fixing", "requirement: chassis_tie is none"));
    refuse("conjunct-that-does-not-parse", amend("lead-cores", "requirement: sheath is is sound"));
    refuse("conjunct-of-another-thing", amend("lead-cores", "requirement: part_path is bonded"));
    refuse("applies", amend("lead-cores", "applies: class is I"));
    refuse("none", amend("lead-current", "none: hold"));
    refuse("judge", amend("lead-cores", "judge: a person may"));
    refuse("remedy", amend("lead-cores", "remedy: [{says: Never mind.}]"));
    refuse("plausible", amend("lead-cores", "plausible: [{that: cores is three, otherwise: no}]"));
    refuse("field-misspelt", amend("lead-cores", "cuation: Mind."));
    refuse("prerequisite-unknown", amend("lead-cores", "requires: [lead-sheat]"));
    refuse("prerequisite-of-itself", amend("lead-cores", "requires: [lead-cores]"));
    refuse("circle", amend("earth-fixing-present", "requires: [earth-fixing]"));
    refuse(
        "circle-through-a-new-check",
        "limits:\n"
            + OUR_LENGTH
            + amend("lead-cores", "requires: [lead-short]")
            + CHECK.replace("    over: lead\n", "    over: lead\n    requires: [lead-cores]\n"));
  }

  private void additions() {
    refuse(
        "check-of-the-rules", "limits:\n" + OUR_LENGTH + CHECK.replace("lead-short", "lead-cores"));
    refuse(
        "check-without-a-source",
        "limits:\n" + OUR_LENGTH + CHECK.replaceAll(" *source: .of.*\n", ""));
    refuse("table", "tables:\n  earth_base: {source: practice}\n");
    refuse("steps", "steps:\n  rated_current: {title: x, is: rated_power / rated_voltage}\n");
    refuse("depends", "depends: []\n");
    refuse(
        "two-limits", "limits:\n" + limit("short_lead", "3 m") + limit("plausible_share", "0.5"));
  }

  /** A bench says itself how good its meters are; a wider default could end a hold. */
  private void meters() {
    refuse("meter-kinds", "meter_kinds:\n  low_ohm_tester: {title: x}\n");
  }

  private void relaxations() {
    refuse("relaxed-for-nothing", "limits:\n" + limit("short_lead", "1 m") + relaxes("short_lead"));
    refuse(
        "relaxed-without-a-reason",
        "limits:\n"
            + limit("short_lead", "3 m")
            + relaxes("short_lead").replace("we say so", "\" \""));
    refuse(
        "relaxed-by-nobody",
        "limits:\n"
            + limit("short_lead", "3 m")
            + relaxes("short_lead").replaceAll(", by: .*}", "}"));
    refuse(
        "relaxed-something-else",
        "limits:\n" + limit("short_lead", "3 m") + relaxes("plausible_share"));
  }

  private void confirmations() {
    refuse("confirmed-and-moved", "limits:\n" + limit("short_lead", "1 m") + confirm("short_lead"));
    complain("confirmed-with-a-slip", "au-nz", HEAD + confirm("insulation_lest"));
    complain("confirmed-no-row", "au-nz", HEAD + confirm("lead_rating[0.7 mm²]"));
    complain(
        "confirmed-on-no-day", "au-nz", HEAD + confirm("insulation_least").replace("-25", "-31"));
    complain(
        "confirmed-by-nobody",
        "au-nz",
        HEAD + confirm("insulation_least").replace("the visiting electrician", "\" \""));
  }

  private void heads() {
    complain("another-edition", "gb", HEAD.replace("2026.1", "2025.9"));
    complain("another-language", "gb", HEAD.replace("language: 1", "language: 2"));
    complain("name-with-a-space", "gb", HEAD.replace("our-workshop", "our workshop"));
    complain("edition-of-two-words", "gb", HEAD.replace("edition: own", "edition: our own"));
    complain("head-incomplete", "gb", HEAD.replace("for: \"2026.1\"\n", ""));
    refused.put(
        "two-of-one-name", Rulebook.overlayComplaints("gb", HEAD, HEAD).replace("own-1.", "own."));
  }

  @Test
  void aFailThatWouldRestOnMemoryIsRefused() {
    String profile =
        Rulebook.text("profiles/gb.yaml")
                .replace(
                    "limits:\n",
                    "limits:\n"
                        + limit("remembered", "2 m").replace("common practice", "from memory"))
            + MEMORY;
    assertEquals(
        "", onProfile(profile, HEAD + amend("lead-cores", "requirement: sheath is sound")));
    String conjunct = amend("lead-cores", "requirement: lead_length <= remembered");
    assertTrue(onProfile(profile, HEAD + conjunct).contains("would rest on a value from memory"));
    // The same limit from a better source would end a hold.
    assertTrue(
        onProfile(profile, HEAD + "limits:\n" + limit("remembered", "1 m"))
            .contains("comes from memory in one place"));
    assertEquals("", onProfile(profile, HEAD + conjunct + relaxes("lead-cores")));
  }

  private static String onProfile(String profile, String overlay) {
    Complaints complaints = new Complaints();
    new Shelf()
        .open(
            Shelf.Choice.file("profile.yaml", profile.getBytes(UTF_8))
                .under(Map.of("own.yaml", overlay.getBytes(UTF_8))),
            complaints);
    return complaints.renderAll();
  }

  private void refuse(String name, String text) {
    refuse("gb", name, text);
  }

  private void refuse(String profile, String name, String text) {
    complain(name, profile, HEAD + text);
  }

  private void complain(String name, String profile, String text) {
    refused.put(name, Rulebook.overlayComplaints(profile, text));
  }

  private static String limit(String name, String value) {
    return "  " + name + ": {value: " + value + ", source: practice, standing: common practice}\n";
  }

  private static String amend(String check, String line) {
    return "amend:\n  " + check + ":\n    " + line + "\n";
  }

  private static String relaxes(String what) {
    return "relaxes:\n  - {what: " + what + ", because: we say so, by: the restorer}\n";
  }
}
