package org.mainsgate.cli;

import org.mainsgate.verdict.Verdict;

/** How a command ends. The order is from best to worst; the worst of a run counts. */
enum Exit {
  /** Every instrument that was asked about passes, or the command did what it was asked. */
  PASS(0),
  /** The worst verdict is a hold. */
  HOLD(10),
  /** The worst verdict is a fail. */
  FAIL(20),
  /** Nobody here knows the key that signed a file. */
  SIGNER_UNKNOWN(31),
  /** Nobody here knows the rules that a file was judged under. */
  RULES_UNKNOWN(32),
  /** A sealed file is not as it was sealed, or never was. */
  ALTERED(30),
  /** The input can't be used; what is wrong with it stands on the error stream. */
  UNUSABLE(3),
  /** A defect of the program. */
  DEFECT(1);

  /** Wrong usage: nothing was looked at. Picocli's own code, outside the order. */
  static final int USAGE = 2;

  private final int code;

  Exit(int code) {
    this.code = code;
  }

  int code() {
    return code;
  }

  Exit worse(Exit other) {
    return compareTo(other) >= 0 ? this : other;
  }

  static Exit of(Verdict verdict) {
    return switch (verdict) {
      case PASS -> PASS;
      case HOLD -> HOLD;
      case FAIL -> FAIL;
    };
  }
}
