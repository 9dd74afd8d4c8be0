/**
 * Numbers that know how well they are known: three-valued truth, intervals, exact rationals, units,
 * and what the display of a meter says about the true value.
 *
 * <p>This room knows nothing of files, rules or instruments. All quantities are in SI units inside;
 * a unit is met only where a text comes in and where a number goes out. No binary floating point
 * stands between a typed decimal and a verdict: {@link org.mainsgate.quantity.Interval} is a fast
 * outward filter, {@link org.mainsgate.quantity.ExactInterval} decides.
 *
 * <pre>{@code
 * Typed typed = (Typed) Typed.parse("0.13 Ω");
 * Accuracy accuracy = (Accuracy) Accuracy.parse("2 % + 3 digits");
 * Unit ohm = Units.find("Ω").orElseThrow();
 * MeterRange range = new MeterRange(Rational.of("20"), Rational.of("0.01"), accuracy, ohm);
 * ExactInterval trueValue = new Display(range, Nulling.YES).read(typed);     // [0.0974, 0.1626] Ω
 * trueValue.atMost(ExactInterval.point(Rational.of("0.1585")));              // UNDECIDED
 * Print.quantity(trueValue, ohm);                                            // "0.097 to 0.163 Ω"
 * }</pre>
 */
@NullMarked
package org.mainsgate.quantity;

import org.jspecify.annotations.NullMarked;
