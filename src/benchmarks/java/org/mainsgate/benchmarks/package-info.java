/**
 * How fast and how frugal the program is, beside what somebody could take instead. Not part of the
 * program, nor of its tests: figures differ from machine to machine, so ratios of one run count.
 */
@NullMarked
package org.mainsgate.benchmarks;

import org.jspecify.annotations.NullMarked;
