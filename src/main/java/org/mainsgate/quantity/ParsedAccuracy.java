package org.mainsgate.quantity;

/**
 * What became of a text that should be the accuracy of a meter: the accuracy, or the reason why it
 * can't be understood.
 */
public sealed interface ParsedAccuracy permits Accuracy, Refusal {}
