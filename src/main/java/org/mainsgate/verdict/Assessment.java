package org.mainsgate.verdict;

import java.util.List;
import org.mainsgate.ruleset.Stage;

/**
 * What a stage says of one instrument.
 *
 * @param stage the stage
 * @param verdict its verdict
 * @param findings one for each check and thing, in the order of the ruleset and of the list
 */
public record Assessment(Stage stage, Verdict verdict, List<Finding> findings) {

  /** Keeps the findings as they are. */
  public Assessment {
    findings = List.copyOf(findings);
  }
}
