/**
 * The bench on disk: its folders and files, read whole and written so that nothing is half written.
 *
 * <p>It does not judge: it knows no report and no command, and never asks for the date of today.
 *
 * <p>For example: {@code instruments/BR-07/visits/2026-11-25-KO-7f3a.yaml} is one visit to the
 * instrument {@code BR-07}.
 */
@NullMarked
package org.mainsgate.store;

import org.jspecify.annotations.NullMarked;
