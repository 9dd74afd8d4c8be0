package org.mainsgate.formula;

/** A row of a table that a formula has used. */
public record RowUse(String table, String rowId) {}
