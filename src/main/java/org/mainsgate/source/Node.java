package org.mainsgate.source;

/** A piece of a YAML file: a text, a list of pieces, or fields with names. */
public sealed interface Node permits Text, Items, Fields {

  /** Where the piece starts. */
  Position at();
}
