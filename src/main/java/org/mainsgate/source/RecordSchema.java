package org.mainsgate.source;

import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.AnnotatedParameterizedType;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Schemas of the records that {@link Binder} makes of fields, with the constraints that {@link
 * Shapes} checks.
 *
 * <p>A field is known by its path from the file's kind down, such as {@code bench.meters.history};
 * maps and lists add nothing to it. What the record can't say, such as which words are valid, is
 * told for a path or for the end of one; so are words for a person, in a file {@code
 * schema/fields.yaml} of the program. The names in a map are told for the path with {@code .*}.
 */
public final class RecordSchema {
  private static final String FILE = "/schema/fields.yaml";
  private static final java.util.regex.Pattern LITERAL =
      java.util.regex.Pattern.compile("[A-Za-z0-9 ]+");

  private final Map<String, Schema> told;
  private final boolean whole;

  /**
   * Schemas of records.
   *
   * @param told what is known of a field, by its path or the end of it
   * @param whole whether fields that have to be there are demanded
   */
  public RecordSchema(Map<String, Schema> told, boolean whole) {
    this.told = Map.copyOf(told);
    this.whole = whole;
  }

  /** The schema of a record of a kind of file. */
  public Schema of(String kind, Class<? extends Record> type) {
    return record(kind, type).saying(atEnd(Read.WORDS, kind).orElse(""));
  }

  /** The same with what the words say of the path. */
  public Schema described(String path, Schema schema) {
    return schema.saying(atEnd(Read.WORDS, path).orElse(""));
  }

  private static Map<String, String> read() {
    Complaints complaints = new Complaints();
    Map<String, String> words = new LinkedHashMap<>();
    try (InputStream in = RecordSchema.class.getResourceAsStream(FILE)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + FILE);
      }
      StrictYaml.readFields(FILE, in.readAllBytes(), complaints)
          .ifPresent(
              fields ->
                  fields
                      .fields()
                      .forEach(f -> words.put(f.key().value(), f.value().toString().strip())));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    if (!complaints.isEmpty()) {
      throw new IllegalStateException(complaints.renderAll());
    }
    return words;
  }

  /** The words, read when first needed. */
  private static final class Read {
    static final Map<String, String> WORDS = read();
  }

  private Schema record(String path, Class<?> type) {
    Map<String, Schema> fields = new LinkedHashMap<>();
    List<String> required = new ArrayList<>();
    for (RecordComponent part : type.getRecordComponents()) {
      if (part.getType() == Position.class) {
        continue;
      }
      String key = Binder.keyOf(part.getName());
      boolean optional = isOptional(part);
      fields.put(key, field(path + "." + key, part.getAnnotatedType(), optional));
      if (!optional && whole) {
        required.add(key);
      }
    }
    return Schema.fields(fields, required);
  }

  private static boolean isOptional(RecordComponent part) {
    return part.getAnnotatedType().isAnnotationPresent(Nullable.class)
        || List.class.isAssignableFrom(part.getType())
        || Map.class.isAssignableFrom(part.getType());
  }

  private Schema field(String path, AnnotatedType type, boolean optional) {
    Schema value = value(path, type);
    return described(path, optional ? value.orBlank() : value);
  }

  private Schema value(String path, AnnotatedType annotated) {
    Type type = annotated.getType();
    Optional<Schema> known = atEnd(told, path);
    if (type instanceof ParameterizedType generic && generic.getRawType() == List.class) {
      return Schema.list(value(path, argument(annotated, 0)));
    }
    if (type instanceof ParameterizedType generic && generic.getRawType() == Map.class) {
      return known.orElseGet(() -> map(path, argument(annotated, 1)));
    }
    if (known.isPresent()) {
      return known.get();
    }
    if (type == Text.class) {
      return text(annotated);
    }
    if (type instanceof Class<?> raw && raw.isRecord()) {
      return record(path, raw);
    }
    return type == Fields.class ? Schema.ANY.with("type", "object") : Schema.ANY;
  }

  private Schema map(String path, AnnotatedType each) {
    Schema values = value(path, each);
    return atEnd(told, path + ".*")
        .map(names -> Schema.named(names, values))
        .orElseGet(() -> Schema.named(values));
  }

  private static AnnotatedType argument(AnnotatedType type, int index) {
    return ((AnnotatedParameterizedType) type).getAnnotatedActualTypeArguments()[index];
  }

  private static Schema text(AnnotatedType type) {
    if (type.isAnnotationPresent(CalendarDate.class)) {
      return Schema.DATE;
    }
    Pattern pattern =
        type.isAnnotationPresent(Name.class)
            ? Name.class.getAnnotation(Pattern.class)
            : type.getAnnotation(Pattern.class);
    if (pattern != null) {
      return LITERAL.matcher(pattern.regexp()).matches()
          ? Schema.words(Set.of(pattern.regexp()))
          : Schema.pattern("^(?:" + pattern.regexp() + ")$");
    }
    Size size = type.getAnnotation(Size.class);
    if (size == null) {
      return Schema.TEXT;
    }
    Schema text = size.min() > 0 ? Schema.TEXT.with("minLength", size.min()) : Schema.TEXT;
    return text.with("maxLength", size.max());
  }

  /** What is told for the path, else for the longest end of it. */
  private static <T> Optional<T> atEnd(Map<String, T> told, String path) {
    String end = path;
    while (true) {
      T found = told.get(end);
      int dot = end.indexOf('.');
      if (found != null || dot < 0) {
        return Optional.ofNullable(found);
      }
      end = end.substring(dot + 1);
    }
  }
}
