/**
 * Runs a ruleset's own test files: evidence in, findings out, coverage of the outcomes of each
 * check, and each limit moved by a tenth.
 *
 * <p>It knows no bench on disk and no report.
 *
 * <p>For example: a limit that can be moved by a tenth without any test case failing is reported as
 * not covered.
 */
@NullMarked
package org.mainsgate.trial;

import org.jspecify.annotations.NullMarked;
