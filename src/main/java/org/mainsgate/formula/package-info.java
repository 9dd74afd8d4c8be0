/**
 * The formula language: text becomes a tree, the tree a formula whose names and units are checked,
 * and the formula an outcome.
 *
 * <p>It may know quantities and positions in a source; it does not know where evidence, limits or
 * tables come from, and nothing of files, checks or stages. Whoever uses it answers two questions:
 * what a name means ({@link org.mainsgate.formula.Scope}) and what is known ({@link
 * org.mainsgate.formula.Facts}).
 *
 * <p>For example, {@code earth_resistance <= base} with 0.0974 Ω to 0.1626 Ω against a limit of
 * 0.15 Ω is undecided; with 0.0974 Ω to 0.15 Ω it is met, for {@code <=} includes the limit:
 *
 * <pre>{@code
 * Complaints complaints = new Complaints();
 * TruthFormula met =
 *     Formula.parse(text, complaints).flatMap(read -> read.asTruth(scope, complaints)).orElseThrow();
 * Truth outcome = met.evaluate(facts);
 * List<Ground> why = met.explain(facts);
 * }</pre>
 *
 * <p>In a YAML file a formula with a colon ({@code all p in lead: ...}) is quoted or stands in a
 * block.
 */
@NullMarked
package org.mainsgate.formula;

import org.jspecify.annotations.NullMarked;
