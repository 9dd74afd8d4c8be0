package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.Dependency;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;
import org.mainsgate.verdict.Said;

/** Which entries count, and how those that count are taken together. */
class InForceTest {
  private static final String EARTH = "earth_resistance";
  private static final String NEW_LEAD = "{act: replaced, on: mains-lead}";
  private static final String FOUND_EARTH = "found.case.earth_resistance";

  /** The same instrument with a front panel that is bonded too. */
  private static Notebook twoParts() {
    return Notebook.gb()
        .with("instrument: {things: {panel: {kind: exposed_part}}}")
        .found(
            "panel: {part_path: bonded, earth_resistance: 0.09 Ω}, looked: {exposed_part: [case, panel]}");
  }

  private static String range(Notebook book, String thing, String property) {
    Fact.Amount amount = (Fact.Amount) book.fact(thing, property).orElseThrow();
    return amount.range().exact().toString();
  }

  private static List<String> said(Notebook book, String thing, String property) {
    return book.fact(thing, property).orElseThrow().said().stream().map(Said::text).toList();
  }

  private static Set<String> named(Fact fact) {
    return ((Fact.Named) fact).candidates();
  }

  // Work.

  @Test
  void workOnTheLeadVoidsTheEarthOfEveryPart() {
    Notebook book = twoParts().worked(NEW_LEAD, "");
    assertEquals(Optional.empty(), book.fact("case", EARTH));
    assertEquals(Optional.empty(), book.fact("panel", EARTH));
    assertEquals(List.of("void since work on mains-lead"), book.setAside(FOUND_EARTH));
    assertEquals("0.08 Ω (void since work on mains-lead)", book.evidence().lost("case", EARTH));
  }

  @Test
  void workVoidsEverythingThatTheTableSaysAndNothingElse() {
    for (Dependency dependency : Rulebook.gb().dependencies()) {
      String act = dependency.does().isEmpty() ? "repaired" : dependency.does().get(0);
      String thing = thing(dependency.on());
      Set<String> voids = voids(dependency.on(), act);
      Notebook book = Notebook.gb();
      if (Rulebook.gb().vocabulary().kind(thing).map(Kind::isListed).orElse(false)) {
        String name =
            Rulebook.gb().vocabulary().kind(thing).orElseThrow().designated()
                ? ", designator: X1"
                : "";
        book = book.with("instrument: {things: {" + thing + ": {kind: " + thing + name + "}}}");
      }
      Evidence after = book.worked("{act: " + act + ", on: " + thing + "}", "").evidence();
      for (Entry entry : Notebook.gb().record().visits().get(0).found()) {
        boolean there = after.fact(entry.thing(), entry.property()).isPresent();
        boolean ofOthers =
            Rulebook.gb()
                    .vocabulary()
                    .property(entry.property())
                    .orElseThrow()
                    .isOf(dependency.on())
                && !entry.thing().equals(thing);
        assertEquals(
            !voids.contains(entry.property()) || ofOthers,
            there,
            act + " " + thing + ": " + entry.property());
      }
    }
  }

  private static String thing(String kind) {
    return switch (kind) {
      case "lead" -> "mains-lead";
      case "exposed_part" -> "case";
      case "fuse" -> "mains-fuse";
      case "ht_capacitor" -> "reservoir";
      default -> kind;
    };
  }

  private static Set<String> voids(String kind, String act) {
    return Rulebook.gb().dependencies().stream()
        .filter(found -> found.on().equals(kind))
        .filter(found -> found.does().isEmpty() || found.does().contains(act))
        .flatMap(found -> found.voids().stream())
        .collect(Collectors.toSet());
  }

  @Test
  void workOnOnePartLeavesTheOthersAsTheyAre() {
    Notebook book = twoParts().worked("{act: repaired, on: panel}", "");
    assertEquals(Optional.empty(), book.fact("panel", "part_path"));
    assertTrue(book.fact("case", "part_path").isPresent());
    assertTrue(book.fact("case", EARTH).isPresent());
  }

  @Test
  void howItWasLeftSurvivesTheWorkOfItsVisit() {
    Notebook book =
        Notebook.gb()
            .worked(NEW_LEAD, "case: {earth_resistance: 0.05 Ω}, mains-lead: {cores: two}");
    assertEquals(List.of("0.05 Ω"), said(book, "case", EARTH));
    assertEquals(Set.of("two"), named(book.fact("mains-lead", "cores").orElseThrow()));
  }

  @Test
  void workOfALaterVisitVoidsWhatAnEarlierOneLeft() {
    Notebook book =
        Notebook.gb()
            .worked(NEW_LEAD, "case: {earth_resistance: 0.05 Ω}")
            .then("b", "2026-12-01", "a", "work: [{act: refitted, on: cover}]\n");
    assertEquals(Optional.empty(), book.fact("case", EARTH));
    assertEquals(List.of("void since work on cover"), book.setAside("left.case.earth_resistance"));
  }

  @Test
  void whatALaterVisitFindsIsNotVoidedByEarlierWork() {
    Notebook book =
        Notebook.gb()
            .worked(NEW_LEAD, "")
            .then("b", "2026-12-01", "a", "found: {case: {earth_resistance: 0.05 Ω}}\n");
    assertEquals(List.of("0.05 Ω"), said(book, "case", EARTH));
  }

  @Test
  void whatAVisitFindsBeforeItsOwnWorkIsVoid() {
    Notebook book =
        Notebook.gb()
            .then(
                "b",
                "2026-12-01",
                "a",
                "found: {case: {earth_resistance: 0.05 Ω}}\nwork: [" + NEW_LEAD + "]\n");
    assertEquals(Optional.empty(), book.fact("case", EARTH));
  }

  // Several entries of one thing.

  @Test
  void aLaterDateSupersedes() {
    Notebook book =
        Notebook.gb().then("b", "2026-12-01", "a", "found: {case: {earth_resistance: 0.05 Ω}}\n");
    assertEquals(List.of("0.05 Ω"), said(book, "case", EARTH));
    assertEquals(List.of("superseded on 2026-12-01"), book.setAside(FOUND_EARTH));
  }

  @Test
  void aLaterDateSupersedesAlsoWithAWorseReading() {
    Notebook book =
        Notebook.gb().then("b", "2026-12-01", "a", "found: {case: {earth_resistance: 0.50 Ω}}\n");
    assertEquals(Outcome.FAIL, book.outcome("earth-continuity", "case"));
  }

  /** 0.08 less 0.0316, and 0.10 with 0.032 more: the hull of both. */
  @Test
  void twoReadingsOfOneVisitCountTogetherAndTheWorseDecides() {
    Notebook book = Notebook.gb().found("case: {earth_resistance: [0.08 Ω, 0.10 Ω]}");
    assertEquals("[0.0484, 0.132]", range(book, "case", EARTH));
    assertEquals(Outcome.PASS, book.outcome("earth-continuity", "case"));
    Notebook worse = Notebook.gb().found("case: {earth_resistance: [0.11 Ω, 0.14 Ω]}");
    assertEquals(List.of(Reason.TOO_NEAR), worse.reasons("earth-continuity", "case"));
  }

  /** Trap A8: measure until it passes. */
  @Test
  void measuringAgainOnTheSameDayDoesNotReplace() {
    Notebook book =
        Notebook.gb()
            .found("case: {earth_resistance: 0.46 Ω}")
            .then("b", "2026-11-25", "a", "found: {case: {earth_resistance: 0.11 Ω}}\n");
    assertEquals(List.of("0.46 Ω", "0.11 Ω"), said(book, "case", EARTH));
    assertTrue(book.fact("case", EARTH).orElseThrow().disagrees());
    assertEquals(Outcome.HOLD, book.outcome("earth-continuity", "case"));
    assertTrue(book.reasons("earth-continuity", "case").contains(Reason.DISAGREE));
  }

  @Test
  void readingsThatExcludeEachOtherDisagree() {
    Notebook book = Notebook.gb().found("case: {earth_resistance: [0.01 Ω, 0.09 Ω]}");
    assertTrue(book.fact("case", EARTH).orElseThrow().disagrees());
    assertEquals(List.of(Reason.DISAGREE), book.reasons("earth-continuity", "case"));
  }

  @Test
  void readingsThatDisagreeAboveTheLimitStillFail() {
    Notebook book = Notebook.gb().found("case: {earth_resistance: [0.46 Ω, 0.90 Ω]}");
    assertEquals(Outcome.FAIL, book.outcome("earth-continuity", "case"));
  }

  /** The three overlap by pairs, but no value is in all of them. */
  @Test
  void threeReadingsDisagreeWhereNoValueIsInAllOfThem() {
    Notebook book = Notebook.gb().found("case: {earth_resistance: [0.02 Ω, 0.06 Ω, 0.10 Ω]}");
    assertTrue(book.fact("case", EARTH).orElseThrow().disagrees());
  }

  @Test
  void observationsThatExcludeEachOtherDisagree() {
    Notebook book =
        Notebook.gb().then("b", "2026-11-25", "a", "found: {mains-lead: {sheath: damaged}}\n");
    assertEquals(List.of(Reason.DISAGREE), book.reasons("lead-sheath", "mains-lead").subList(0, 1));
    assertEquals(
        Set.of("sound", "damaged"), named(book.fact("mains-lead", "sheath").orElseThrow()));
  }

  @Test
  void observationsThatAgreeInPartCountTogether() {
    Notebook book =
        Notebook.gb()
            .then("b", "2026-11-25", "a", "found: {mains-lead: {sheath: [sound, hardened]}}\n");
    Fact fact = book.fact("mains-lead", "sheath").orElseThrow();
    assertFalse(fact.disagrees());
    assertEquals(Set.of("sound", "hardened"), named(fact));
  }

  // Withdrawing.

  private static final String TAKEN_BACK =
      """
      found: {case: {earth_resistance: {value: 0.05 Ω, id: e9}}}
      withdrawn: [{entry: e9, reason: wrong_thing}]
      """;

  @Test
  void aWithdrawnReadingIsSetAsideWithItsReason() {
    Notebook book =
        Notebook.gb()
            .found("case: {earth_resistance: [{value: 0.46 Ω, id: e1}, 0.08 Ω]}")
            .with("visit: {withdrawn: [{entry: e1, reason: probe_slipped}]}");
    assertEquals(List.of("0.08 Ω"), said(book, "case", EARTH));
    assertEquals(List.of("withdrawn: the probe slipped"), book.setAside("e1"));
  }

  @Test
  void aLaterVisitCanWithdraw() {
    String withdrawn =
        "withdrawn: [{entry: "
            + Notebook.id("a", "2026-11-25")
            + "/e1, reason: lead_not_nulled}]\n";
    Notebook book =
        Notebook.gb()
            .found("case: {earth_resistance: {value: 0.46 Ω, id: e1}}")
            .then("b", "2026-12-01", "a", withdrawn);
    assertEquals(Optional.empty(), book.fact("case", EARTH));
    assertEquals(List.of("withdrawn: the test lead was not nulled"), book.setAside("e1"));
  }

  @Test
  void aWithdrawnNewerReadingLetsTheOlderCountAgain() {
    Notebook book = Notebook.gb().then("b", "2026-12-01", "a", TAKEN_BACK);
    assertEquals(List.of("0.08 Ω"), said(book, "case", EARTH));
  }

  @Test
  void withdrawingDoesNotBringBackWhatWorkHasVoided() {
    Notebook book = Notebook.gb().worked(NEW_LEAD, "").then("b", "2026-12-01", "a", TAKEN_BACK);
    assertEquals(Optional.empty(), book.fact("case", EARTH));
  }

  // People who did not know of each other.

  @Test
  void visitsWithoutAnOrderCountTogetherWhateverTheirDates() {
    Notebook book =
        Notebook.gb()
            .then("b", "2026-12-01", "a", "found: {case: {earth_resistance: 0.05 Ω}}\n")
            .then("c", "2026-12-05", "a", "found: {case: {earth_resistance: 0.07 Ω}}\n");
    assertEquals(List.of("0.05 Ω", "0.07 Ω"), said(book, "case", EARTH));
  }

  @Test
  void aVisitThatKnewOfBothSupersedesBoth() {
    Notebook book =
        Notebook.gb()
            .then("b", "2026-12-01", "a", "found: {case: {earth_resistance: 0.05 Ω}}\n")
            .then("c", "2026-12-05", "a", "found: {case: {earth_resistance: 0.07 Ω}}\n")
            .then("d", "2026-12-06", "b,c", "found: {case: {earth_resistance: 0.06 Ω}}\n");
    assertEquals(List.of("0.06 Ω"), said(book, "case", EARTH));
  }

  @Test
  void workVoidsWhatSomebodyElseRecordedWithoutAnOrder() {
    Notebook book =
        Notebook.gb()
            .then("b", "2026-12-01", "a", "work: [" + NEW_LEAD + "]\n")
            .then("c", "2026-12-05", "a", "found: {case: {earth_resistance: 0.07 Ω}}\n");
    assertEquals(Optional.empty(), book.fact("case", EARTH));
  }

  @Test
  void twoPeoplesWorkVoidsWhatEitherLeft() {
    String work = "work: [" + NEW_LEAD + "]\nleft: {case: {earth_resistance: 0.05 Ω}}\n";
    Notebook book =
        Notebook.gb().then("b", "2026-12-01", "a", work).then("c", "2026-12-05", "a", work);
    assertEquals(Optional.empty(), book.fact("case", EARTH));
  }

  @Test
  void aDraftComesAfterEveryClosedVisit() {
    Notebook book =
        Notebook.gb()
            .then("b", "2026-12-01", "a", "work: [" + NEW_LEAD + "]\n")
            .draft("c", "2026-12-05", "found: {case: {earth_resistance: 0.07 Ω}}\n");
    assertEquals(List.of("0.07 Ω"), said(book, "case", EARTH));
  }

  // What is true for an hour.

  private static Optional<Fact> unplugged(Notebook book) {
    return book.fact("case", EARTH)
        .flatMap(fact -> Optional.ofNullable(fact.with().get("unplugged")));
  }

  @Test
  void aReadingCarriesTheMomentaryWordsOfItsOwnVisit() {
    assertEquals(Set.of("yes"), named(unplugged(Notebook.gb()).orElseThrow()));
  }

  @Test
  void aReadingKeepsThemOnLaterDays() {
    Notebook book = Notebook.gb().then("b", "2026-12-01", "a", "note: nothing done\n");
    assertEquals(Outcome.PASS, book.outcome("earth-continuity", "case"));
  }

  @Test
  void theMomentaryWordsOfALaterVisitSayNothingOfAnEarlierReading() {
    Notebook book =
        Notebook.gb()
            .unfound("instrument/unplugged")
            .then("b", "2026-12-01", "a", "found: {instrument: {unplugged: yes}}\n");
    assertEquals(Optional.empty(), unplugged(book));
    assertEquals(List.of(Reason.NOT_RECORDED), book.reasons("earth-continuity", "case"));
  }

  /** Trap A10: a green tick on "unplugged" from another day. */
  @Test
  void momentaryWordsNeverOutliveTheirVisit() {
    assertTrue(Notebook.gb().fact("instrument", "unplugged").isPresent());
    Notebook nextDay = Notebook.gb().on("2026-11-26");
    assertEquals(Optional.empty(), nextDay.fact("instrument", "unplugged"));
    assertEquals(
        List.of("true for that visit only"), nextDay.setAside("found.instrument.unplugged"));
    Notebook nextVisit = Notebook.gb().then("b", "2026-11-25", "a", "note: the same day\n");
    assertEquals(Optional.empty(), nextVisit.fact("instrument", "unplugged"));
  }

  @Test
  void powerVoidsTheMomentaryWordsForWhatIsMeasuredAfterIt() {
    Notebook book =
        Notebook.gb().worked("{act: powered, on: instrument}", "case: {earth_resistance: 0.05 Ω}");
    assertEquals(Optional.empty(), unplugged(book));
    assertEquals(Optional.empty(), book.fact("instrument", "unplugged"));
  }

  @Test
  void saidAgainAfterThePowerTheyHoldAgain() {
    Notebook book =
        Notebook.gb()
            .unfound("case/earth_resistance")
            .worked(
                "{act: powered, on: instrument}",
                "instrument: {unplugged: no}, case: {earth_resistance: 0.05 Ω}");
    assertEquals(Set.of("no"), named(unplugged(book).orElseThrow()));
  }

  @Test
  void otherWorkLeavesTheMomentaryWords() {
    Notebook book = Notebook.gb().worked(NEW_LEAD, "case: {earth_resistance: 0.05 Ω}");
    assertEquals(Set.of("yes"), named(unplugged(book).orElseThrow()));
  }

  @Test
  void aWithdrawnMomentaryWordGoesWithNoReading() {
    Notebook book =
        Notebook.gb()
            .found("instrument: {unplugged: {is: yes, id: u1}}")
            .with("visit: {withdrawn: [{entry: u1, reason: misread}]}");
    assertEquals(Optional.empty(), unplugged(book));
  }

  @Test
  void whatStandsWithOneOfTwoReadingsOnlyIsNotKnownOfBoth() {
    Notebook book =
        Notebook.gb().then("b", "2026-11-25", "a", "found: {case: {earth_resistance: 0.08 Ω}}\n");
    assertEquals(Optional.empty(), unplugged(book));
  }

  // Lists.

  private static boolean closed(Notebook book, String kind) {
    return book.evidence().list(kind).listing().closed();
  }

  @Test
  void aListIsClosedByNamesByACountOrByNone() {
    assertTrue(closed(Notebook.gb(), "exposed_part"), "by names");
    assertTrue(closed(Notebook.gb(), "lead"), "by a count");
    assertTrue(
        closed(
            Notebook.gb()
                .without("instrument/things/case", "visit/found/case")
                .found("looked: {exposed_part: none}"),
            "exposed_part"),
        "by none");
  }

  @Test
  void aListThatNobodyClosedIsOpen() {
    Notebook book = Notebook.gb().unfound("looked/exposed_part");
    assertFalse(closed(book, "exposed_part"));
    assertEquals(List.of(Reason.LIST_OPEN), book.reasons("earth-continuity", "exposed_part"));
    assertEquals(Outcome.PASS, book.outcome("earth-continuity", "case"), "the part itself passes");
  }

  @Test
  void aListWithFewerThingsThanCountedIsOpen() {
    Notebook book = Notebook.gb().found("looked: {exposed_part: 4}");
    assertFalse(closed(book, "exposed_part"));
    assertEquals(Optional.of(4), book.evidence().list("exposed_part").counted());
  }

  @Test
  void aFifthPartOpensAListThatWasClosedOnFour() {
    String four =
        "instrument: {things: {p2: {kind: exposed_part}, p3: {kind: exposed_part}, p4: {kind: exposed_part}}}";
    Notebook book = Notebook.gb().with(four).found("looked: {exposed_part: [case, p2, p3, p4]}");
    assertTrue(closed(book, "exposed_part"));
    Notebook five = book.with("instrument: {things: {handle: {kind: exposed_part}}}");
    assertFalse(closed(five, "exposed_part"));
    assertTrue(
        closed(
            five.then("b", "2026-12-01", "a", "found: {looked: {exposed_part: 5}}\n"),
            "exposed_part"),
        "closed again by a later word");
  }

  @Test
  void otherNamesThanTheListedDoNotCloseAList() {
    Notebook book = twoParts().found("looked: {exposed_part: [case]}");
    assertFalse(closed(book, "exposed_part"));
  }

  @Test
  void aThingThatWasRemovedIsOnNoList() {
    Notebook book =
        twoParts()
            .then(
                "b",
                "2026-12-01",
                "a",
                "work: [{act: removed, on: panel}]\nleft: {looked: {exposed_part: [case]}}\n");
    assertEquals(List.of("case"), book.evidence().list("exposed_part").listing().items());
    assertTrue(closed(book, "exposed_part"));
  }

  @Test
  void aRemovedThingLeavesTheOldWordOnItsListWrong() {
    Notebook book = twoParts().then("b", "2026-12-01", "a", "work: [{act: removed, on: panel}]\n");
    assertFalse(closed(book, "exposed_part"));
  }

  @Test
  void workOnTheWholeInstrumentOpensItsLists() {
    Notebook book = Notebook.gb().worked("{act: repaired, on: instrument}", "");
    assertFalse(closed(book, "exposed_part"));
    assertFalse(closed(book, "lead"));
  }

  @Test
  void twoPeopleWhoCountDifferentlyDoNotCloseAList() {
    Notebook book =
        Notebook.gb()
            .then("b", "2026-12-01", "a", "found: {looked: {exposed_part: 1}}\n")
            .then("c", "2026-12-05", "a", "found: {looked: {exposed_part: 2}}\n");
    assertFalse(closed(book, "exposed_part"));
  }

  // Judgement.

  private static final String JUDGED =
      "judged: [{check: earth-fixing, item: instrument, decision: accepted, by: KO, because: tight}]";

  private static Notebook shared() {
    return Notebook.gb()
        .found("instrument: {earth_fixing: shared}")
        .with("visit: {" + JUDGED + "}");
  }

  @Test
  void aJudgementReleasesAHold() {
    assertEquals(Outcome.PASS, shared().outcome("earth-fixing", "instrument"));
    assertEquals(
        "a licence",
        shared().finding("earth-fixing", "instrument").judged().orElseThrow().competence());
  }

  @Test
  void workVoidsAJudgement() {
    Notebook book =
        shared()
            .then(
                "b",
                "2026-12-01",
                "a",
                "work: [{act: repaired, on: inside}]\nleft: {instrument: {class: I, earth_fixing: shared}}\n");
    assertEquals(List.of(), book.evidence().judged());
    assertEquals(List.of(Reason.PERSON_MUST_JUDGE), book.reasons("earth-fixing", "instrument"));
  }

  @Test
  void newerEvidenceVoidsAJudgement() {
    Notebook book =
        shared().then("b", "2026-12-01", "a", "found: {instrument: {earth_fixing: soldered}}\n");
    assertEquals(List.of(), book.evidence().judged());
    assertEquals(Outcome.HOLD, book.outcome("earth-fixing", "instrument"));
  }

  @Test
  void newerEvidenceOfSomethingElseLeavesAJudgement() {
    Notebook book = shared().then("b", "2026-12-01", "a", "found: {mains-lead: {sheath: sound}}\n");
    assertEquals(Outcome.PASS, book.outcome("earth-fixing", "instrument"));
  }

  private static Notebook accepted(Notebook book, String check, String item) {
    return book.with(
        "visit: {judged: [{check: "
            + check
            + ", item: "
            + item
            + ", decision: accepted, by: KO, because: seen}]}");
  }

  private static Notebook bigFuse() {
    return accepted(
        Notebook.gb().found("mains-fuse: {fuse_rating: 3 A}"), "fuse-rating", "mains-fuse");
  }

  private static final String SET_ANEW = "found: {selector: {set_voltage: 230 V}}\n";

  /** The fuse was accepted for one setting of the selector, and that is another now. */
  @Test
  void newerEvidenceOfAnotherThingThatACheckRestsOnVoidsAJudgement() {
    assertEquals(Outcome.PASS, bigFuse().outcome("fuse-rating", "mains-fuse"));
    Notebook book = bigFuse().then("b", "2026-11-26", "a", SET_ANEW);
    assertEquals(List.of(), book.evidence().judged());
    assertEquals(Outcome.HOLD, book.outcome("fuse-rating", "mains-fuse"));
    assertEquals(List.of(), bigFuse().setAside("judged.mains-fuse.fuse-rating"));
    assertEquals(
        List.of("what it rests on was worked on, recorded anew or taken back since"),
        book.setAside("judged.mains-fuse.fuse-rating"));
  }

  @Test
  void workOnAnotherThingThatACheckRestsOnVoidsAJudgement() {
    Notebook book =
        bigFuse().then("b", "2026-11-26", "a", "work: [{act: repaired, on: selector}]\n");
    assertEquals(List.of(), book.evidence().judged());
  }

  @Test
  void aSocketThatIsMeasuredLaterVoidsAJudgementOfTheTap() {
    Notebook tap =
        accepted(
                Notebook.gb().found("selector: {set_voltage: 210 V}"), "selector-tap", "instrument")
            .on("2026-11-27");
    String socket = "bench: {site: {socket_voltage: {value: 236.0 ± 2.0 V, on: 2026-11-DAY}}}";
    assertEquals(1, tap.with(socket.replace("DAY", "25")).evidence().judged().size());
    assertEquals(0, tap.with(socket.replace("DAY", "26")).evidence().judged().size());
  }

  /** Whether there is a fuse is judged of the instrument, and recorded of its fuses. */
  @Test
  void newerEvidenceOfAThingOnAListVoidsAJudgementOfTheInstrument() {
    Notebook none =
        accepted(
            Notebook.gb().found("mains-fuse: {fuse_pole: secondary}"),
            "fuse-present",
            "instrument");
    assertEquals(1, none.evidence().judged().size());
    assertEquals(
        List.of(),
        none.then("b", "2026-11-26", "a", "found: {mains-fuse: {fuse_pole: secondary}}\n")
            .evidence()
            .judged());
  }

  private static Notebook hardened() {
    Notebook two =
        Notebook.gb()
            .with("instrument: {things: {spare-lead: {kind: lead}}}")
            .found("mains-lead: {sheath: hardened}, spare-lead: {sheath: {is: sound, id: e1}}")
            .found("mains-lead: {lead_length: {value: 3 m, id: e2}}");
    return accepted(two, "lead-sheath-age", "mains-lead");
  }

  @Test
  void newerEvidenceOfAnotherThingOnTheSameListLeavesAJudgement() {
    assertEquals(1, hardened().evidence().judged().size());
    for (String other :
        List.of(
            "found: {spare-lead: {sheath: damaged}}\n",
            "work: [{act: replaced, on: spare-lead}]\n",
            "found: {mains-lead: {lead_length: 2 m}}\n",
            takesBack("e1"),
            takesBack("e2"))) {
      Notebook book = hardened().then("b", "2026-11-26", "a", other);
      assertEquals(1, book.evidence().judged().size(), other);
    }
  }

  private static String takesBack(String entry) {
    return "withdrawn: [{entry: "
        + Notebook.id("a", "2026-11-25")
        + "/"
        + entry
        + ", reason: probe_slipped}]\n";
  }

  @Test
  void evidenceThatIsTakenBackVoidsAJudgement() {
    Notebook book = Notebook.gb().found("mains-lead: {sheath: {is: hardened, id: e3}}");
    Notebook judged = accepted(book, "lead-sheath-age", "mains-lead");
    assertEquals(1, judged.evidence().judged().size());
    assertEquals(
        List.of(), judged.then("b", "2026-11-26", "a", takesBack("e3")).evidence().judged());
  }

  @Test
  void anEntryOfTheSameIdInAnotherVisitThatIsTakenBackLeavesAJudgement() {
    Notebook judged =
        accepted(
            Notebook.gb().found("mains-lead: {sheath: {is: hardened, id: e3}}"),
            "lead-sheath-age",
            "mains-lead");
    Notebook book =
        judged
            .then(
                "b",
                "2026-11-26",
                "a",
                "found: {mains-lead: {lead_length: {value: 3 m, id: e3}}}\n")
            .then(
                "c",
                "2026-11-27",
                "b",
                "withdrawn: [{entry: "
                    + Notebook.id("b", "2026-11-26")
                    + "/e3, reason: probe_slipped}]\n");
    assertEquals(1, book.evidence().judged().size());
  }

  /** Whether it applies is a part of what was judged. */
  @Test
  void newerEvidenceOfWhetherACheckAppliesVoidsAJudgement() {
    Notebook book = shared().then("b", "2026-11-26", "a", "found: {instrument: {class: I}}\n");
    assertEquals(List.of(), book.evidence().judged());
  }

  @Test
  void workOfSomebodyElseWithoutAnOrderVoidsAJudgement() {
    Notebook book =
        Notebook.gb()
            .found("instrument: {earth_fixing: shared}")
            .then("b", "2026-12-01", "a", JUDGED + "\n")
            .then("c", "2026-12-01", "a", "work: [{act: repaired, on: inside}]\n");
    assertEquals(List.of(), book.evidence().judged());
  }

  /** The judge has not seen what somebody else wrote down at the same time. */
  @Test
  void evidenceOfSomebodyElseWithoutAnOrderVoidsAJudgement() {
    Notebook book =
        Notebook.gb()
            .found("instrument: {earth_fixing: shared}")
            .then("b", "2026-12-01", "a", JUDGED + "\n")
            .then("c", "2026-12-01", "a", "found: {instrument: {earth_fixing: soldered}}\n");
    assertEquals(Outcome.HOLD, book.outcome("earth-fixing", "instrument"));
  }

  /** The judge saw the soldered fixing; the shared one counts again. */
  @Test
  void evidenceTakenBackVoidsAJudgement() {
    String seen = "found: {instrument: {earth_fixing: {is: soldered, id: f1}}}\n" + JUDGED + "\n";
    Notebook book =
        Notebook.gb()
            .found("instrument: {earth_fixing: shared}")
            .then("b", "2026-12-01", "a", seen);
    assertEquals(Outcome.PASS, book.outcome("earth-fixing", "instrument"));
    String takenBack =
        "withdrawn: [{entry: " + Notebook.id("b", "2026-12-01") + "/f1, reason: misread}]\n";
    Notebook after = book.then("c", "2026-12-02", "b", takenBack);
    assertEquals(Outcome.HOLD, after.outcome("earth-fixing", "instrument"));
  }

  // Which lead a reading went through.

  @Test
  void theOnlyLeadIsMeantWhereNobodyNamesOne() {
    assertEquals(Outcome.PASS, Notebook.gb().outcome("earth-continuity", "case"));
  }

  private static Notebook twoLeads(String through) {
    return Notebook.gb()
        .with("instrument: {things: {spare: {kind: lead}}}")
        .found(
            "spare: {attachment: detachable, core_area: 1.5 mm², lead_length: 10 m}, looked: {lead: 2},"
                + " case: {earth_resistance: {value: 0.08 Ω"
                + through
                + "}}");
  }

  /** 0.1 Ω and 3 m of 1.0 mm² at 19.5 Ω/km up to 10 m: the worse lead has the shorter copper. */
  @Test
  void ofTwoLeadsTheWorstOfBothCountsAndIsNotARecord() {
    Notebook book = twoLeads("");
    assertEquals(Outcome.HOLD, book.outcome("earth-continuity", "case"));
    assertTrue(book.reasons("earth-continuity", "case").contains(Reason.NOT_RECORDED));
  }

  @Test
  void theNamedLeadCounts() {
    assertEquals(
        Outcome.PASS, twoLeads(", through: mains-lead").outcome("earth-continuity", "case"));
    Notebook spare = twoLeads(", through: spare").found("spare: {when_moved: steady}");
    assertEquals(Outcome.PASS, spare.outcome("earth-continuity", "case"));
  }

  @Test
  void aReadingThatIsOverThroughEitherLeadFails() {
    Notebook book = twoLeads("").found("case: {earth_resistance: 0.9 Ω}");
    assertEquals(Outcome.FAIL, book.outcome("earth-continuity", "case"));
  }

  // What a meter says below zero and with its leads.

  /** Trap W4: the reading is an upper bound. */
  @Test
  void aReadingThatWasNotNulledCanPass() {
    Notebook book = Notebook.gb().found("case: {earth_resistance: {value: 0.12 Ω, nulled: no}}");
    assertEquals("[0, 0.1524]", range(book, "case", EARTH));
    assertEquals(Outcome.PASS, book.outcome("earth-continuity", "case"));
  }

  @Test
  void aReadingThatWasNotNulledCannotFail() {
    String over = "case: {earth_resistance: {value: 0.46 Ω, nulled: %s}}";
    assertEquals(
        Outcome.FAIL,
        Notebook.gb().found(over.replace("%s", "yes")).outcome("earth-continuity", "case"));
    Notebook book = Notebook.gb().found(over.replace("%s", "no"));
    assertEquals(List.of(Reason.TOO_NEAR), book.reasons("earth-continuity", "case"));
  }

  /** Trap W3: after nulling, -0.01 Ω is what a meter shows. */
  @Test
  void aLittleBelowZeroIsFine() {
    Notebook book =
        Notebook.gb().found("mains-lead: {lead_length: 0.1 m}, case: {earth_resistance: -0.01 Ω}");
    assertEquals("[0, 0.0202]", range(book, "case", EARTH));
    assertEquals(Outcome.PASS, book.outcome("earth-continuity", "case"));
  }

  @Test
  void farBelowZeroIsImplausibleAndSaysNullAgain() {
    Notebook book = Notebook.gb().found("case: {earth_resistance: -0.5 Ω}");
    assertEquals(Outcome.HOLD, book.outcome("earth-continuity", "case"));
    assertTrue(book.reasons("earth-continuity", "case").contains(Reason.IMPLAUSIBLE));
    assertTrue(
        book.finding("earth-continuity", "case").holds().stream()
            .anyMatch(hold -> hold.text().contains("null the test leads again")));
  }
}
