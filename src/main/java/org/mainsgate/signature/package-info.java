/**
 * Keys, fingerprints and signatures over bytes (CMS, RFC 5652, with the attributes of ETSI EN 319
 * 122-1), and time-stamps over them (RFC 3161).
 *
 * <p>It knows no PDF, no record, no file and no clock. The JDK's own providers do the arithmetic.
 *
 * <p>For example: {@code Signature.of(identity, bytes, Optional.empty())} signs; {@code
 * Signature.judge(der, bytes)} says what is wrong with a signature.
 */
@NullMarked
package org.mainsgate.signature;

import org.jspecify.annotations.NullMarked;
