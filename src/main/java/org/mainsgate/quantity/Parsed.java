package org.mainsgate.quantity;

/**
 * What became of a text that should be a quantity: the quantity, or the reason why it can't be
 * understood.
 */
public sealed interface Parsed permits Typed, Refusal {}
