/**
 * Targets for a fuzzer that follows which branches an input reaches: what strangers write, into the
 * readers that must complain and never throw. Compiled and run in the Maven profile {@code fuzz}
 * alone; whatever was found stands as an ordinary test in the room that it was found in.
 */
@NullMarked
package org.mainsgate.fuzz;

import org.jspecify.annotations.NullMarked;
