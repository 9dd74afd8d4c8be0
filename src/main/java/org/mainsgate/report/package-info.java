/**
 * Findings as a person or a program reads them: screen text, PDF, JSON.
 *
 * <p>It is the one room that knows the PDF and template libraries. It writes to a stream it is
 * given, and knows neither files nor the bench on disk.
 *
 * <p>For example: a finding that holds prints its reading as interval, the limit, and what would
 * settle it.
 */
@NullMarked
package org.mainsgate.report;

import org.jspecify.annotations.NullMarked;
