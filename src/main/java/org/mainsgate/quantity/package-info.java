/**
 * Numbers with units, and the three-valued logic of comparing them: truth values, intervals, exact
 * rationals, units, meter accuracy.
 *
 * <p>It knows nothing of text files, rules or instruments, and depends on no other room.
 *
 * <p>For example: a meter that reads 0.13 Ω and is good to 2 % + 3 digits of 0.01 Ω gives the
 * interval 0.0974 Ω to 0.1626 Ω.
 */
@NullMarked
package org.mainsgate.quantity;

import org.jspecify.annotations.NullMarked;
