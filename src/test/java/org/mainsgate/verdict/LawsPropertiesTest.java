package org.mainsgate.verdict;

import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.mainsgate.laws.Judge;
import org.mainsgate.laws.Law;

/** The laws of verdicts, on the engine and on the rules that the program carries. */
class LawsPropertiesTest {

  @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
  void betterKnowledgeNeverChangesWhatWasDecided(@ForAll long seed) {
    Law.MONOTONE.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void plausibilityTakesPassesAwayAndNothingElse(@ForAll long seed) {
    Law.PLAUSIBILITY.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void noPointInsideContradictsWhatWasDecided(@ForAll long seed) {
    Law.SOUND.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  void withoutEvidenceEveryCheckHolds(@ForAll long seed) {
    Law.NOTHING_RECORDED.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
  void withoutOneOfItsInputsAPassIsAHold(@ForAll long seed) {
    Law.GAP.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void withoutTheRecordsOfOneInputAPassIsAHold(@ForAll long seed) {
    Law.RECORD_GAP.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void withOneThingLessOnAClosedListThereIsNoPass(@ForAll long seed) {
    Law.SHORT_LIST.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
  void nothingPassesBeforeItsPrerequisites(@ForAll long seed) {
    Law.PREREQUISITES.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
  void whereEverythingIsKnownNothingIsUndecided(@ForAll long seed) {
    Law.DECISIVE.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
  void aSecondOpinionSaysTheSame(@ForAll long seed) {
    Law.SECOND_OPINION.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
  void localeZoneAndTheOrderOfMapsChangeNoByte(@ForAll long seed) {
    Law.REPRODUCIBLE.tryOn(Judge.ENGINE, seed);
  }

  @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
  void theOrderInFilesAndFoldersChangesNoByte(@ForAll long seed) {
    Law.ORDER_FREE.tryOn(Judge.ENGINE, seed);
  }
}
