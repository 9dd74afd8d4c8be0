package org.mainsgate.report;

import java.time.LocalDate;
import org.mainsgate.evidence.Bench;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;

/**
 * What all instruments of one run are judged under.
 *
 * @param bench the bench
 * @param rules the rules that were used
 * @param whatIf whether these are other rules than those that the bench names
 * @param stage the stage
 * @param on the date of the verdicts
 */
public record Setting(Bench bench, Rules rules, boolean whatIf, Stage stage, LocalDate on) {}
