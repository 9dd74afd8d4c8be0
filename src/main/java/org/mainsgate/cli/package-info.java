/**
 * The commands: arguments in, text and an exit code out.
 *
 * <p>It is the one room with a clock and with the standard streams, and the only one that knows
 * every other room. It decides nothing about an instrument.
 *
 * <p>For example: {@code check BENCH --on 2026-11-25} prints the findings of each instrument and
 * returns 0, 10 or 20 for pass, hold or fail.
 */
@NullMarked
package org.mainsgate.cli;

import org.jspecify.annotations.NullMarked;
