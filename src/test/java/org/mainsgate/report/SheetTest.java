package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.mainsgate.verdict.Outcome;

class SheetTest {

  private final Sheet near = Sheet.of(Samples.near());

  @Test
  void everyFindingIsARowOrIsSaidNotToApply() {
    Dossier dossier = Samples.near();
    long judged =
        dossier.assessment().findings().stream()
            .filter(finding -> finding.outcome() != Outcome.NOT_APPLICABLE)
            .count();
    assertEquals(judged, near.checks().size());
    assertEquals(1, near.skipped().stream().filter(text -> text.contains("detachable")).count());
  }

  @Test
  void everySourceThatARowNamesIsListedWithItsStanding() {
    Set<String> listed =
        near.sources().stream().map(source -> "" + source.number()).collect(Collectors.toSet());
    for (Sheet.Row row : near.checks()) {
      assertTrue(listed.containsAll(List.of(row.sources().split(", ", -1))), row::sources);
    }
    Sheet.Source copper =
        near.sources().stream()
            .filter(source -> source.title().contains("IEC 60228"))
            .findFirst()
            .orElseThrow();
    assertEquals("published", copper.standing());
    assertTrue(copper.value().endsWith("19.5 Ω/km"), copper::value);
  }

  @Test
  void aReadingStandsWithItsIntervalItsMeterAndItsLimit() {
    Sheet.Row row =
        near.checks().stream()
            .filter(found -> found.thing().equals("front panel") && found.sources().length() > 2)
            .findFirst()
            .orElseThrow();
    assertTrue(row.found().get(0).contains("0.13 Ω, that is 0.097 to 0.163 Ω; low-ohm tester"));
    assertTrue(row.asked().get(0).contains("against 0.1 Ω + 0.0585 Ω"), row::toString);
  }

  @Test
  void aMeterStandsWithItsAccuracyAndCalibration() {
    assertEquals(
        List.of(
            new Sheet.Meter(
                "low-ohm tester, Fallowmere LT-2, serial number 0412",
                List.of("resistance to 19.99 Ω: 2 % + 3 digits, a digit being 0.01 Ω"),
                "own 0.1 Ω resistor, reads 0.10 Ω; data from 2026-01-12; due 2027-01-12")),
        near.meters());
  }

  @Test
  void whatWasTakenBackIsPrintedWithItsReason() {
    assertEquals("withdrawn: the probe slipped", near.setAside().get(0).because());
  }

  @Test
  void otherRulesThanTheBenchNamesAreSaidFirst() {
    Dossier dossier = Samples.sound();
    Setting own = dossier.setting();
    Setting other = new Setting(own.bench(), own.rules(), true, own.stage(), own.on());
    Dossier whatIf =
        new Dossier(
            other,
            dossier.instrument(),
            dossier.visits(),
            dossier.assessment(),
            dossier.setAside(),
            dossier.heads(),
            dossier.photos());
    assertEquals(List.of(), Sheet.of(dossier).warnings());
    assertEquals(1, Sheet.of(whatIf).warnings().size());
    assertTrue(
        new Screen(Palette.NONE)
            .summary(other, List.of(Screen.Verdicted.of(whatIf)), List.of())
            .contains("What if"));
  }

  @Test
  void theResponsibleStandInTheirOwnWords() {
    assertEquals(
        List.of(
            new Sheet.Line("AR, A. Rowe", "thirty years of valve instruments, no formal licence")),
        near.people());
  }

  @Test
  void theCautionsOfTheStageAndOfEachCheckAreOnTheFirstPage() {
    assertTrue(near.cautions().containsAll(Samples.RULES.firstStage().cautions()));
    assertTrue(near.cautions().stream().anyMatch(caution -> caution.startsWith("Unplugged.")));
  }
}
