package org.mainsgate.source;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Named values in a YAML file, in their order; each name stands once. */
public final class Fields implements Node {

  /** A name and its value. */
  public record Field(Text key, Node value) {}

  private final SourceText source;
  private final int start;
  private final Map<String, Field> fields;

  /** The map is owned by the new object. */
  Fields(SourceText source, int start, Map<String, Field> fields) {
    this.source = source;
    this.start = start;
    this.fields = fields;
  }

  @Override
  public Position at() {
    return source.position(start);
  }

  /** The value of that name. */
  public Optional<Node> get(String key) {
    return Optional.ofNullable(fields.get(key)).map(Field::value);
  }

  /** The fields in their order; not to be changed. */
  public List<Field> fields() {
    return List.copyOf(fields.values());
  }

  @Override
  public String toString() {
    return fields.values().toString();
  }
}
