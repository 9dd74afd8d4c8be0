/**
 * Text as a person wrote it: positions, complaints about text that can't be understood, and strict
 * YAML read into located nodes.
 *
 * <p>It is the one room that knows the YAML parser and the constraint engine. It knows nothing of
 * instruments or rules, and depends on no other room.
 *
 * <p>For example: in {@code profil: gb} the key is a complaint at line 1, column 1, with the
 * nearest valid name, {@code profile}.
 */
@NullMarked
package org.mainsgate.source;

import org.jspecify.annotations.NullMarked;
