/**
 * The laws that every verdict obeys, as functions of an engine; random evidence and records to try
 * them on; a second opinion that shares nothing with the engine; and engines that break the laws.
 */
@NullMarked
package org.mainsgate.laws;

import org.jspecify.annotations.NullMarked;
