package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.mainsgate.verdict.BothRegions.sound;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Standing;

/**
 * Sound records that must not be held for ever, traps W1 to W7: they pass, or a step that a person
 * can take settles them. The custom of the trade, without a source unless one is named.
 */
class TrapsOfEndlessHoldsTest {
  private static final String EARTH = "earth-continuity";

  private static BothRegions earth(String reading) {
    return sound().found("case: {earth_resistance: " + reading + "}");
  }

  private static BothRegions tap(String socket, String set) {
    return sound()
        .but(book -> book.with("bench: {site: {socket_voltage: {value: " + socket + "}}}"))
        .found("selector: {set_voltage: " + set + "}, reservoir: {working_voltage: 500 V}");
  }

  // W1: a tap that is judged by a range of which all happens.

  /** British supply regulations, published: 216.2 to 253.0 V; the heaters see one of these. */
  @Test
  void theUsualTapsPassOnTheVoltageThatWasMeasured() {
    tap("230.0 ± 2.0 V", "230 V").passes();
    tap("240.0 ± 2.0 V", "230 V").passes();
    tap("240.0 ± 2.0 V", "240 V").passes();
    tap("230.0 ± 2.0 V", "240 V").passes();
    tap("230.0 ± 2.0 V", "220 V").passes();
  }

  @Test
  void aTapThatIsTooLowIsSettledByTheNextOneOrByAPerson() {
    BothRegions low = tap("251.0 ± 1.0 V", "220 V");
    low.holds("selector-tap", "instrument", Reason.PERSON_MUST_JUDGE);
    low.says("selector-tap", "instrument", "Set the selector to the next higher tap");
    tap("251.0 ± 1.0 V", "240 V").passes();
    judged(low, "selector-tap", "instrument").passes();
  }

  @Test
  void oneReadingAtTheSocketSettlesTheTap() {
    BothRegions unread = sound().but(book -> book.without("bench/site/socket_voltage"));
    unread.holds("selector-tap", "instrument", Reason.NOT_RECORDED);
    unread
        .but(
            book ->
                book.with(
                    "bench: {site: {socket_voltage: {value: 236.0 ± 2.0 V, on: 2026-11-20}}}"))
        .passes();
  }

  @Test
  void lowHeatersAreARemarkAndNoHold() {
    tap("216.5 ± 0.2 V", "245 V")
        .passes()
        .says("selector-tap", "instrument", "heaters will run low on this supply");
  }

  // W2: a good reading of a poor meter.

  /** Computed: 0.07 Ω ± 30 % reaches below 0.052 Ω, which is the copper of 3 m of 1.0 mm². */
  @Test
  void aGoodReadingOfAPoorMeterIsPlausible() {
    earth("0.07 ± 0.021 Ω").passes();
    earth("0.05 ± 0.015 Ω").passes();
  }

  @Test
  void onlyAReadingThatIsImpossibleAsAWholeIsImplausible() {
    earth("0.02 ± 0.02 Ω").holds(EARTH, "case", Reason.IMPLAUSIBLE);
  }

  /** Computed: class 5 copper may be 13 to 16 % above 1/58 /A, and healthy lead often is not. */
  @Test
  void copperBetterThanTheTablesGreatestIsNoReasonToDoubt() {
    earth("0.0517 ± 0.001 Ω").passes();
  }

  @Test
  void implausibilityNeverSoftensAFail() {
    Notebook book =
        Notebook.eu()
            .found(
                "mains-lead: {core_area: 0.5 mm², lead_length: 20 m}, case: {earth_resistance: 0.53 ± 0.01 Ω}");
    assertEquals(Outcome.FAIL, book.outcome(EARTH, "case"));
  }

  // W3 and W4: below zero, and test leads that nobody nulled.

  @Test
  void aNulledMeterMayShowALittleBelowZero() {
    earth("-0.01 Ω").found("mains-lead: {lead_length: 0.1 m}").passes();
    earth("-0.5 Ω").holds(EARTH, "case", Reason.IMPLAUSIBLE);
  }

  @Test
  void aReadingWithTheTestLeadsInItPassesButCannotFail() {
    earth("{value: 0.12 Ω, nulled: no}").passes();
    Notebook over = Notebook.gb().found("case: {earth_resistance: {value: 0.46 Ω, nulled: no}}");
    assertEquals(List.of(Reason.TOO_NEAR), over.reasons(EARTH, "case"));
    earth("{value: 0.40 Ω, nulled: short reads 0.32 Ω}").passes();
  }

  @Test
  void nullingTheLeadsSettlesWhatTheyLeftOpen() {
    for (Notebook book : earth("{value: 0.46 Ω, nulled: no}").books()) {
      assertEquals(Outcome.HOLD, book.outcome(EARTH, "case"));
    }
    earth("{value: 0.12 Ω, nulled: yes}").passes();
    earth("{value: 0.46 Ω, nulled: yes}").fails(EARTH, "case");
  }

  // W5: a value from memory that would let bad insulation be a hold.

  @Test
  void insulationThatIsNoneFailsUnderAnyRules() {
    for (Rules rules : Rulebook.all()) {
      for (String bad : List.of("0.05 MΩ", "0.25 MΩ")) {
        Notebook book =
            Notebook.under(rules).found("instrument: {insulation_resistance: " + bad + "}");
        assertEquals(Outcome.FAIL, book.outcome("insulation-floor", "instrument"));
        assertEquals(Verdict.FAIL, book.assess().verdict(), rules.profile());
      }
    }
  }

  @Test
  void theInsulationLimitsOfBothRegionsRestOnWhatWasSeen() {
    for (Rules rules : List.of(Rulebook.gb(), Rulebook.eu())) {
      for (String limit : List.of("insulation_least", "insulation_unearthed")) {
        assertEquals(
            Standing.PUBLISHED,
            Objects.requireNonNull(rules.limits().get(limit)).citation().standing());
      }
    }
    sound().found("instrument: {insulation_resistance: 0.80 MΩ}").fails("insulation", "instrument");
  }

  // W6: who releases a hold, and which nobody may.

  private static BothRegions judged(BothRegions held, String check, String thing) {
    return held.but(
        book ->
            book.with(
                "visit: {judged: [{check: "
                    + check
                    + ", item: "
                    + thing
                    + ", decision: accepted, by: KO, because: seen and tried}]}"));
  }

  @Test
  void aCompetentPersonReleasesAHoldByNameAndReason() {
    BothRegions knot = sound().found("mains-lead: {anchorage: knot}");
    knot.holds("anchorage-modern", "mains-lead", Reason.PERSON_MUST_JUDGE);
    judged(knot, "anchorage-modern", "mains-lead").passes();
    BothRegions rubber = sound().found("mains-lead: {sheath: hardened}");
    rubber.holds("lead-sheath-age", "mains-lead", Reason.PERSON_MUST_JUDGE);
    judged(rubber, "lead-sheath-age", "mains-lead").passes();
  }

  /** Earth, insulation, a live chassis and stored charge are nobody's to accept. */
  @Test
  void noJudgementReleasesAHoldThatMeasurementHasToSettle() {
    Set<String> measured =
        Set.of(
            "earth_resistance",
            "lead_earth_resistance",
            "insulation_resistance",
            "part_insulation",
            "primary_resistance",
            "supply_resistance",
            "supply_capacitance",
            "part_resistance",
            "part_capacitance",
            "supply_arrangement",
            "chassis_tie",
            "residual_voltage",
            "residual_later",
            "ht_rail_resistance");
    int seen = 0;
    for (Rules rules : Rulebook.all()) {
      for (Check check : rules.checks().values()) {
        boolean rests =
            check.requirement().inputs().stream()
                .flatMap(in -> in.reference().path().stream())
                .anyMatch(measured::contains);
        if (rests) {
          seen++;
          assertFalse(check.judgeable(), check.id());
        }
      }
    }
    assertTrue(seen > 50, "seen " + seen);
  }

  @Test
  void aJudgementReplacesNoReading() {
    BothRegions unread =
        judged(sound().unfound("selector/set_voltage"), "selector-tap", "instrument");
    unread.holds("selector-tap", "instrument", Reason.NOT_RECORDED);
  }

  // W7: thirty per cent for every meter.

  @Test
  void onlyAMeterOfWhichNothingIsKnownGetsThirtyPerCent() {
    for (MeterKind kind : Rulebook.gb().meterKinds().values()) {
      assertEquals(Standing.COMMON_PRACTICE, kind.standing(), kind.name());
      for (List<MeterRange> ranges : kind.functions().values()) {
        for (MeterRange range : ranges) {
          boolean wide =
              range.halfWidth(range.to()).compareTo(range.to().times(Rational.of("0.29"))) > 0;
          boolean unknown = Set.of(MeterKind.UNKNOWN, "iec_61557_tester").contains(kind.name());
          assertEquals(unknown, wide, kind.name() + " " + range);
        }
      }
    }
  }

  /** Computed: 3 % + 3 digits of 0.12 Ω is 0.0336 Ω, and 0.1585 Ω is allowed. */
  @Test
  void aGoodReadingPassesByTheKindOfItsMeterAlone() {
    Notebook kind =
        Notebook.gb()
            .without("bench/meters/low-ohm/history")
            .with("bench: {meters: {low-ohm: {history: [{from: 2026-01-01}]}}}")
            .found("case: {earth_resistance: 0.12 Ω}");
    assertEquals(Verdict.PASS, kind.assess().verdict());
    Notebook unknown = kind.with("bench: {meters: {low-ohm: {kind: unknown}}}");
    assertEquals(List.of(Reason.TOO_NEAR), unknown.reasons(EARTH, "case"));
  }
}
