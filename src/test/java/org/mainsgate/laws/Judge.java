package org.mainsgate.laws;

import java.time.LocalDate;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Engine;
import org.mainsgate.verdict.Evidence;

/** Whatever says pass, hold or fail: the engine, or one that is broken on purpose. */
public interface Judge {
  /** The engine. */
  Judge ENGINE = (rules, evidence) -> new Engine(rules).assess(rules.firstStage(), evidence);

  /** What it says of evidence. */
  Assessment judge(Rules rules, Evidence evidence);

  /** What it says of a record. */
  default Assessment judge(Rules rules, InstrumentRecord record, LocalDate on) {
    return judge(rules, InForce.of(rules, record, on).evidence());
  }
}
