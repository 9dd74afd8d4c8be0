package org.mainsgate.laws;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;

/**
 * A file of a record on one sheet of its own: maps, lists and texts that can be taken out or
 * written over, one at a time.
 */
record Leaf(Object tree) {

  /** A sheet with what stands in a file. */
  static Leaf of(Node node) {
    return new Leaf(plain(node));
  }

  private static Object plain(Node node) {
    if (node instanceof Fields fields) {
      Map<String, Object> map = new LinkedHashMap<>();
      fields.fields().forEach(field -> map.put(field.key().value(), plain(field.value())));
      return map;
    }
    if (node instanceof Items items) {
      return items.items().stream().map(Leaf::plain).toList();
    }
    return String.valueOf(node);
  }

  /** The places of everything that stands below a place, itself included. */
  static List<List<String>> places(Object tree, List<String> at) {
    List<List<String>> places = new ArrayList<>(List.of(at));
    children(tree).forEach((key, child) -> places.addAll(places(child, longer(at, key))));
    return places;
  }

  List<List<String>> places() {
    return places(tree, List.of());
  }

  static List<String> longer(List<String> path, String key) {
    List<String> longer = new ArrayList<>(path);
    longer.add(key);
    return List.copyOf(longer);
  }

  /** What stands in a map by its keys, in a list by its numbers. */
  static Map<String, Object> children(Object tree) {
    Map<String, Object> children = new LinkedHashMap<>();
    if (tree instanceof Map<?, ?> map) {
      map.forEach((key, child) -> children.put(String.valueOf(key), child));
    } else if (tree instanceof List<?> list) {
      list.forEach(child -> children.put(String.valueOf(children.size()), child));
    }
    return children;
  }

  Object at(List<String> place) {
    Object found = tree;
    for (String key : place) {
      found = Objects.requireNonNull(children(found).get(key), () -> "nothing at " + place);
    }
    return found;
  }

  /** Without what stands at a place; what is left empty goes with it. */
  Leaf without(List<String> place) {
    List<String> parent = place.subList(0, place.size() - 1);
    Map<String, Object> left = children(at(parent));
    left.remove(place.get(place.size() - 1));
    if (left.isEmpty() && !parent.isEmpty()) {
      return without(parent);
    }
    boolean list = at(parent) instanceof List<?>;
    return with(parent, list ? List.copyOf(left.values()) : left);
  }

  /** With something else at a place. */
  Leaf with(List<String> place, Object value) {
    return new Leaf(put(tree, place, value));
  }

  private static Object put(Object tree, List<String> place, Object value) {
    if (place.isEmpty()) {
      return value;
    }
    Map<String, Object> children = children(tree);
    Object below = Objects.requireNonNull(children.get(place.get(0)));
    children.put(place.get(0), put(below, place.subList(1, place.size()), value));
    return tree instanceof List<?> ? List.copyOf(children.values()) : children;
  }

  /** As text that the record's reader takes. */
  String yaml() {
    StringBuilder text = new StringBuilder();
    write(tree, text);
    return text.append('\n').toString();
  }

  private static void write(Object tree, StringBuilder text) {
    if (tree instanceof Map<?, ?>) {
      text.append('{');
      children(tree)
          .forEach(
              (key, child) -> {
                text.append("\n \"").append(key).append("\": ");
                write(child, text);
                text.append(',');
              });
      text.append('}');
    } else if (tree instanceof List<?> list) {
      text.append('[');
      list.forEach(
          child -> {
            write(child, text);
            text.append(", ");
          });
      text.append(']');
    } else {
      String escaped = tree.toString().replace("\\", "\\\\").replace("\"", "\\\"");
      text.append('"').append(escaped.replace("\n", "\\n")).append('"');
    }
  }
}
