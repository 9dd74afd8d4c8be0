/**
 * The formula language: text becomes a tree, the tree a formula whose units are checked, and the
 * formula an outcome.
 *
 * <p>It may know quantities and positions in a source; it does not know where evidence or limits
 * come from.
 *
 * <p>For example: {@code earth_resistance <= limit} on 0.0974 Ω to 0.1626 Ω against 0.15 Ω is
 * undecided.
 */
@NullMarked
package org.mainsgate.formula;

import org.jspecify.annotations.NullMarked;
