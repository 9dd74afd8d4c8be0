/**
 * The record as written, and what of it is in force on a date: what later visits supersede, and
 * what work voids.
 *
 * <p>It is pure: records in, evidence out. It does not know where the records lie and never asks
 * for the date of today.
 *
 * <p>For example: a reading of the earth of a part, then work on the lead: the reading is no longer
 * in force.
 */
@NullMarked
package org.mainsgate.evidence;

import org.jspecify.annotations.NullMarked;
