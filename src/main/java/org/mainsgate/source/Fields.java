package org.mainsgate.source;

import java.util.LinkedHashMap;
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

  /**
   * These fields with others put over them: fields on both sides are put together in the same way,
   * and of everything else the other's counts.
   */
  public Fields overlaid(Fields over) {
    Map<String, Field> together = new LinkedHashMap<>(fields);
    for (Field field : over.fields()) {
      Optional<Fields> own =
          get(field.key().value()).filter(Fields.class::isInstance).map(Fields.class::cast);
      Node value =
          field.value() instanceof Fields deeper
              ? own.map(fields -> fields.overlaid(deeper)).orElse(deeper)
              : field.value();
      together.put(field.key().value(), new Field(field.key(), value));
    }
    return new Fields(source, start, together);
  }

  /** These fields without the one at a path of names; empty if nothing is there. */
  public Optional<Fields> without(List<String> path) {
    Field field = fields.get(path.get(0));
    if (field == null) {
      return Optional.empty();
    }
    Map<String, Field> left = new LinkedHashMap<>(fields);
    if (path.size() == 1) {
      left.remove(path.get(0));
      return Optional.of(new Fields(source, start, left));
    }
    if (!(field.value() instanceof Fields deeper)) {
      return Optional.empty();
    }
    return deeper
        .without(path.subList(1, path.size()))
        .map(
            less -> {
              left.put(path.get(0), new Field(field.key(), less));
              return new Fields(source, start, left);
            });
  }

  @Override
  public String toString() {
    return fields.values().toString();
  }
}
