package org.mainsgate.source;

import java.util.List;

/** A list in a YAML file. */
public final class Items implements Node {

  private final SourceText source;
  private final int start;
  private final List<Node> items;

  Items(SourceText source, int start, List<Node> items) {
    this.source = source;
    this.start = start;
    this.items = List.copyOf(items);
  }

  @Override
  public Position at() {
    return source.position(start);
  }

  /** The items in their order; not to be changed. */
  public List<Node> items() {
    return items;
  }

  @Override
  public String toString() {
    return items.toString();
  }
}
