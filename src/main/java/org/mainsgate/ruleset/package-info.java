/**
 * Checks, tables, limits and profiles as their authors wrote them, read and refused or accepted as
 * a whole.
 *
 * <p>It reads what ships with the program from the class path and touches no file; it does not know
 * any instrument.
 *
 * <p>Overlays of local rules are laid over a profile, and may only tighten it.
 *
 * <p>For example: a common ruleset with the profile {@code gb} gives every named parameter one
 * value with its source.
 */
@NullMarked
package org.mainsgate.ruleset;

import org.jspecify.annotations.NullMarked;
