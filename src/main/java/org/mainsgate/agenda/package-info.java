/**
 * What to do next at an instrument: the entries that are still open, in the order of the work, and
 * the files to write them into.
 *
 * <p>It is pure: rules, a record, what is in force and what was found go in, an agenda comes out.
 * It decides nothing about an instrument; it only reads what the findings lack. It knows no file,
 * clock or screen.
 *
 * <p>For example: with nothing recorded under the rules of {@code gb} the first step says to take
 * the plug out, and no earth is measured before the chassis stop is passed.
 */
@NullMarked
package org.mainsgate.agenda;

import org.jspecify.annotations.NullMarked;
