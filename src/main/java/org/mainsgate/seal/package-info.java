/**
 * The sealed record: a report with the record that it was made of, signed, and the judging of such
 * a file that somebody else hands over.
 *
 * <p>It knows no bench on disk, no screen, no clock and no network. Everything that it reads is a
 * stranger's: bounded, and refused where it is not laid out to the byte as this program lays it
 * out.
 *
 * <p>For example: {@code SealedFile.read(bytes, broken)} takes a file apart; {@code
 * Revision.after(...)} writes what one signature adds to it.
 */
@NullMarked
package org.mainsgate.seal;

import org.jspecify.annotations.NullMarked;
