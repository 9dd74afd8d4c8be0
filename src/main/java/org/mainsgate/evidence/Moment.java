package org.mainsgate.evidence;

/**
 * A place in time: a visit, before or after its work.
 *
 * @param visit the visit
 * @param afterWork whether it is how the instrument was left, not how it was found
 */
record Moment(Visit visit, boolean afterWork) {}
