package org.mainsgate.laws;

import java.util.Random;

/** What holds of every verdict, tried once on a random example. */
public enum Law {
  /** Better knowledge changes no pass, fail or not applicable; it may settle a hold. */
  MONOTONE,
  /** Plausibility may take a pass away and changes nothing else. */
  PLAUSIBILITY,
  /** No point inside what is known contradicts what was said of all of them. */
  SOUND,
  /** Without evidence every check holds. */
  NOTHING_RECORDED,
  /** Without one of the inputs that it names a pass is a hold. */
  GAP,
  /** The same, with the entries taken out of the record. */
  RECORD_GAP,
  /** With one thing less on a closed list there is no pass until the list is closed again. */
  SHORT_LIST,
  /** Nothing passes whose prerequisites have not. */
  PREREQUISITES,
  /** Where everything is known to the point, nothing is undecided. */
  DECISIVE,
  /** Two naive evaluators over the rules' own text say the same. */
  SECOND_OPINION,
  /** The same findings, byte for byte, whatever the machine is used to. */
  REPRODUCIBLE,
  /** The order in files and folders changes nothing. */
  ORDER_FREE;

  /**
   * Tries the law once.
   *
   * @throws AssertionError if it is broken
   */
  public void tryOn(Judge judge, long seed) {
    // Neighbouring seeds begin with the same numbers unless they are torn apart.
    Random random = new Random(seed * 0x9E3779B97F4A7C15L);
    switch (this) {
      case MONOTONE -> Laws.monotone(judge, random);
      case PLAUSIBILITY -> Laws.plausibility(judge, random);
      case SOUND -> Laws.sound(judge, random);
      case NOTHING_RECORDED -> Laws.nothingRecorded(judge, random);
      case GAP -> Laws.gap(judge, random);
      case RECORD_GAP -> Laws.recordGap(judge, random);
      case SHORT_LIST -> Laws.shortList(judge, random);
      case PREREQUISITES -> Laws.prerequisites(judge, random);
      case DECISIVE -> Laws.decisive(judge, random);
      case SECOND_OPINION -> Laws.secondOpinion(judge, random);
      case REPRODUCIBLE -> Laws.reproducible(judge, random);
      case ORDER_FREE -> Laws.orderFree(judge, random);
    }
  }
}
