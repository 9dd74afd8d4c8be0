package org.mainsgate.source;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * A JSON Schema (2020-12), from which an editor knows what may stand where.
 *
 * <p>Every value of our files is text; an editor takes some of it for numbers, truth values or
 * nothing. So where text may be anything, all of these are allowed.
 *
 * <p>A keyword's value is a text, a whole number, a truth value, a schema, or a list or map of
 * these.
 */
public final class Schema {

  /** What anything fits. */
  public static final Schema ANY = new Schema(Map.of());

  /** A scalar as a person may write it. */
  public static final Schema TEXT = ANY.with("type", List.of("string", "number", "boolean"));

  /** A date of the calendar. */
  public static final Schema DATE =
      ANY.with("type", "string")
          .with("pattern", "^[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])$")
          .marking("year-month-day, such as `2026-11-25`");

  private static final String DEFS = "#/$defs/";

  private final Map<String, Object> keywords;

  private Schema(Map<String, Object> keywords) {
    this.keywords = keywords;
  }

  /** The same schema with what an editor says of text that does not match its pattern. */
  public Schema marking(String words) {
    return with("patternErrorMessage", words);
  }

  /** Text that a regular expression matches; it is one of ECMA 262. */
  public static Schema pattern(String pattern) {
    return TEXT.with("pattern", pattern);
  }

  /** Text that no editor takes for a number, and that a regular expression matches. */
  public static Schema strictly(String pattern) {
    return ANY.with("type", "string").with("pattern", pattern);
  }

  /** One of these words, also where an editor takes it for something else than a word. */
  public static Schema words(Collection<String> words) {
    List<Object> values = new ArrayList<>(words);
    for (String word : words) {
      if (word.matches("-?(0|[1-9][0-9]{0,8})")) {
        values.add(Integer.parseInt(word));
      } else if (List.of("yes", "on", "true").contains(word) && !values.contains(true)) {
        values.add(true);
      } else if (List.of("no", "off", "false").contains(word) && !values.contains(false)) {
        values.add(false);
      }
    }
    return ANY.with("enum", values);
  }

  /** One of these words, which an editor then offers, or any other text. */
  public static Schema offering(Collection<String> words) {
    return either(List.of(words(words), TEXT));
  }

  /** A list of one or more of these. */
  public static Schema list(Schema items) {
    return ANY.with("type", "array").with("items", items);
  }

  /** A set of fields, and no others. */
  public static Schema fields(Map<String, Schema> fields, Collection<String> required) {
    Schema schema = ANY.with("type", "object").with("properties", new LinkedHashMap<>(fields));
    return (required.isEmpty() ? schema : schema.with("required", List.copyOf(required)))
        .with("additionalProperties", false);
  }

  /** Fields under names of a person's own. */
  public static Schema named(Schema names, Schema values) {
    return ANY.with("type", "object")
        .with("propertyNames", names)
        .with("additionalProperties", values);
  }

  /** Fields under any names. */
  public static Schema named(Schema values) {
    return ANY.with("type", "object").with("additionalProperties", values);
  }

  /** What fits one of these. */
  public static Schema either(List<Schema> schemas) {
    return ANY.with("anyOf", schemas);
  }

  /** What stands under this name among the definitions. */
  public static Schema defined(String name) {
    return ANY.with("$ref", DEFS + name);
  }

  /** The same schema with one keyword more, or another value of it. */
  public Schema with(String keyword, Object value) {
    Map<String, Object> more = new LinkedHashMap<>(keywords);
    more.put(keyword, value);
    return new Schema(Collections.unmodifiableMap(more));
  }

  /** The same schema with words for a person; none where they are empty. */
  public Schema saying(String description) {
    return description.isEmpty() ? this : with("description", description);
  }

  /** The same schema that also takes a field that was left blank. */
  public Schema orBlank() {
    Object type = keywords.get("type");
    if (type instanceof String one) {
      return with("type", List.of(one, "null"));
    }
    if (type instanceof List<?> several) {
      List<Object> more = new ArrayList<>(several);
      more.add("null");
      return with("type", more);
    }
    return keywords.isEmpty() ? this : either(List.of(this, ANY.with("type", "null")));
  }

  /** The schema of a whole file, as text that ends with a line feed. */
  public static String file(String title, Schema schema, Map<String, Schema> defined) {
    Schema head =
        ANY.with("$schema", "https://json-schema.org/draft/2020-12/schema").with("title", title);
    Map<String, Object> all = new LinkedHashMap<>(head.keywords);
    all.putAll(schema.keywords);
    Map<String, Schema> used = used(schema, defined);
    if (!used.isEmpty()) {
      all.put("$defs", used);
    }
    StringBuilder text = new StringBuilder();
    write(all, 0, text);
    return text.append('\n').toString();
  }

  /** What a schema refers to, by itself or through others, in the order of the definitions. */
  private static Map<String, Schema> used(Schema schema, Map<String, Schema> defined) {
    Set<String> names = new HashSet<>();
    refer(schema, defined, names);
    Map<String, Schema> used = new LinkedHashMap<>(defined);
    used.keySet().retainAll(names);
    return used;
  }

  private static void refer(Object value, Map<String, Schema> defined, Set<String> names) {
    if (value instanceof Schema schema) {
      if (schema.keywords.get("$ref") instanceof String ref) {
        String name = ref.substring(DEFS.length());
        if (names.add(name)) {
          refer(Objects.requireNonNull(defined.get(name), name), defined, names);
        }
      }
      refer(schema.keywords, defined, names);
    } else if (value instanceof Map<?, ?> map) {
      map.values().forEach(inner -> refer(inner, defined, names));
    } else if (value instanceof Collection<?> list) {
      list.forEach(inner -> refer(inner, defined, names));
    }
  }

  private static void write(Object value, int depth, StringBuilder out) {
    if (value instanceof Schema schema) {
      write(schema.keywords, depth, out);
    } else if (value instanceof Map<?, ?> map) {
      writeMap(map, depth, out);
    } else if (value instanceof Collection<?> list) {
      writeList(list, depth, out);
    } else if (value instanceof String text) {
      quote(text, out);
    } else {
      out.append(value);
    }
  }

  private static void writeMap(Map<?, ?> map, int depth, StringBuilder out) {
    boolean oneLine = map.size() == 1 && map.containsKey("$ref");
    out.append('{');
    String comma = "";
    for (Map.Entry<?, ?> entry : map.entrySet()) {
      out.append(comma);
      if (!oneLine) {
        line(out, depth + 1);
      }
      quote(String.valueOf(entry.getKey()), out);
      out.append(": ");
      write(entry.getValue(), depth + 1, out);
      comma = ",";
    }
    if (!map.isEmpty() && !oneLine) {
      line(out, depth);
    }
    out.append('}');
  }

  private static void writeList(Collection<?> list, int depth, StringBuilder out) {
    boolean oneLine = list.stream().noneMatch(Schema.class::isInstance);
    out.append('[');
    String comma = "";
    for (Object item : list) {
      out.append(comma);
      if (!oneLine) {
        line(out, depth + 1);
      }
      write(item, depth + 1, out);
      comma = oneLine ? ", " : ",";
    }
    if (!oneLine) {
      line(out, depth);
    }
    out.append(']');
  }

  private static void line(StringBuilder out, int depth) {
    out.append('\n').append("  ".repeat(depth));
  }

  private static void quote(String text, StringBuilder out) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < ' ') {
        out.append("\\u").append(HexFormat.of().toHexDigits(c).toLowerCase(Locale.ROOT));
      } else {
        out.append(c);
      }
    }
    out.append('"');
  }
}
