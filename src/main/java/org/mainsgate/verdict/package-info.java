/**
 * Evidence in, findings out: the outcome of each check on each item, with its reasons, and of the
 * stage.
 *
 * <p>It is pure: no file, no clock, no screen. It does not know how evidence was recorded; of
 * sources it knows positions only.
 *
 * <p>For example: no evidence at all: every finding is a hold, and so is the stage.
 */
@NullMarked
package org.mainsgate.verdict;

import org.jspecify.annotations.NullMarked;
