/**
 * Text that people wrote, where each piece of it stands, and what to say when it can't be
 * understood.
 *
 * <p>The one room that knows the YAML parser: nothing of it, and none of its exceptions, leaves
 * this package. It knows nothing of instruments, quantities or rules, reads no file itself and has
 * no clock; it is handed a name and bytes.
 *
 * <p>An example:
 *
 * <pre>{@code
 * record Site(Text profile, @Nullable Text zone) {}
 *
 * Complaints complaints = new Complaints();
 * Optional<Site> site =
 *     StrictYaml.readFields("bench.yaml", "profil: gb".getBytes(UTF_8), complaints)
 *         .flatMap(fields -> Binder.bind(fields, Site.class, complaints));
 * complaints.renderAll();
 * // bench.yaml:1:1: unknown field `profil`
 * //     profil: gb
 * //     ^
 * //   expected: one of `profile`, `zone`
 * //   nearest: `profile`
 * }</pre>
 */
@NullMarked
package org.mainsgate.source;

import org.jspecify.annotations.NullMarked;
