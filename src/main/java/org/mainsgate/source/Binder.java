package org.mainsgate.source;

import java.lang.reflect.Constructor;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Fields made into a record by the names of its components.
 *
 * <p>The component {@code coreArea} takes the field {@code core_area}; one that would be a Java
 * keyword has an underscore at its end ({@code default_} takes {@code default}). A component is a
 * {@link Text}, a {@link Node} of any or of a certain kind, a record of such components, a {@code
 * List} of these, or a {@code Map} from a name to them in the order of the file. All are required
 * but those marked {@code @Nullable}, and lists and maps, which are empty where nothing is written.
 * A value left blank is the same as no field. A component {@code at} of type {@link Position} is no
 * field: it takes the place where the fields start.
 */
public final class Binder {

  private static final ClassValue<Plan> PLANS =
      new ClassValue<>() {
        @Override
        protected Plan computeValue(Class<?> type) {
          return Plan.of(type);
        }
      };

  private Binder() {}

  /**
   * Binds the fields to a record, and complains about each field that is unknown, missing or of the
   * wrong kind.
   *
   * @return empty if there was such a complaint
   * @throws IllegalArgumentException if the record class has a component of another type than those
   *     above
   */
  public static <T extends Record> Optional<T> bind(
      Fields fields, Class<T> type, Complaints complaints) {
    return Optional.ofNullable(PLANS.get(type).bind(fields, complaints)).map(type::cast);
  }

  /** The name of the field that a record component takes. */
  static String keyOf(String component) {
    String key =
        component.endsWith("_") ? component.substring(0, component.length() - 1) : component;
    return key.replaceAll("([A-Z])", "_$1").toLowerCase(Locale.ROOT);
  }

  /** How a node becomes the value of a component. */
  private interface Taking {

    /** The value, or null after a complaint. */
    @Nullable Object take(Node node, String name, Complaints complaints);

    /** The value where nothing is written; null where there is none. */
    default @Nullable Object nothing() {
      return null;
    }
  }

  private record Component(String key, Taking taking, boolean optional) {}

  /** How fields become a record of one class; a component without a key takes the position. */
  private record Plan(
      Constructor<?> constructor, List<Component> components, Map<String, Component> byKey) {

    private static final String POSITION = "";

    static Plan of(Class<?> type) {
      RecordComponent[] parts = type.getRecordComponents();
      List<Component> components = Arrays.stream(parts).map(Plan::component).toList();
      Map<String, Component> byKey = new LinkedHashMap<>();
      components.stream()
          .filter(c -> !c.key().equals(POSITION))
          .forEach(c -> byKey.put(c.key(), c));
      Class<?>[] types =
          Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
      try {
        Constructor<?> constructor = type.getDeclaredConstructor(types);
        constructor.setAccessible(true);
        return new Plan(constructor, components, byKey);
      } catch (NoSuchMethodException e) {
        throw new IllegalArgumentException(type + " has no canonical constructor", e);
      }
    }

    private static Component component(RecordComponent part) {
      if (part.getType() == Position.class && part.getName().equals("at")) {
        return new Component(POSITION, (node, name, complaints) -> node.at(), false);
      }
      boolean optional = part.getAnnotatedType().isAnnotationPresent(Nullable.class);
      return new Component(keyOf(part.getName()), taking(part.getGenericType()), optional);
    }

    @Nullable Object bind(Fields fields, Complaints complaints) {
      int before = complaints.count();
      Set<String> misspelt = complainOfUnknown(fields, complaints);
      @Nullable Object[] values = new Object[components.size()];
      for (int i = 0; i < values.length; i++) {
        Component component = components.get(i);
        values[i] =
            misspelt.contains(component.key()) ? null : value(component, fields, complaints);
      }
      return complaints.count() == before ? create(values) : null;
    }

    // The fields that unknown ones most likely stand for: they aren't missing too, one complaint is
    // enough.
    private Set<String> complainOfUnknown(Fields fields, Complaints complaints) {
      Set<String> misspelt = new HashSet<>();
      for (Fields.Field field : fields.fields()) {
        String key = field.key().value();
        if (!byKey.containsKey(key)) {
          complaints.addUnknown(field.key().at(), "field", key, byKey.keySet());
          NearestName.of(key, byKey.keySet())
              .filter(near -> fields.get(near).isEmpty())
              .ifPresent(misspelt::add);
        }
      }
      return misspelt;
    }

    private static @Nullable Object value(
        Component component, Fields fields, Complaints complaints) {
      if (component.key().equals(POSITION)) {
        return fields.at();
      }
      Optional<Node> node =
          fields.get(component.key()).filter(n -> !(n instanceof Text text && text.isBlank()));
      if (node.isPresent()) {
        return component.taking().take(node.get(), Visible.quoted(component.key()), complaints);
      }
      Object nothing = component.taking().nothing();
      if (nothing == null && !component.optional()) {
        Position at = fields.get(component.key()).map(Node::at).orElse(fields.at());
        complaints.add(at, "missing " + Visible.quoted(component.key()));
      }
      return nothing;
    }

    private Object create(@Nullable Object[] values) {
      try {
        return constructor.newInstance(values);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException("could not create " + constructor.getDeclaringClass(), e);
      }
    }
  }

  private static Taking taking(Type type) {
    if (type instanceof ParameterizedType generic && generic.getRawType() == List.class) {
      return new TakingList(taking(generic.getActualTypeArguments()[0]));
    }
    if (type instanceof ParameterizedType generic
        && generic.getRawType() == Map.class
        && generic.getActualTypeArguments()[0] == String.class) {
      return new TakingMap(taking(generic.getActualTypeArguments()[1]));
    }
    if (type == Node.class) {
      return (node, name, complaints) -> node;
    }
    if (type == Text.class || type == Items.class || type == Fields.class) {
      return (node, name, complaints) ->
          type == node.getClass() ? node : wrongKind(node, name, (Class<?>) type, complaints);
    }
    if (type instanceof Class<?> raw && raw.isRecord()) {
      return (node, name, complaints) ->
          node instanceof Fields fields
              ? PLANS.get(raw).bind(fields, complaints)
              : wrongKind(node, name, Fields.class, complaints);
    }
    throw new IllegalArgumentException("nothing in a file can become a " + type);
  }

  private record TakingList(Taking each) implements Taking {

    @Override
    public @Nullable Object take(Node node, String name, Complaints complaints) {
      if (!(node instanceof Items items)) {
        return wrongKind(node, name, Items.class, complaints);
      }
      List<Object> values = new ArrayList<>();
      for (Node item : items.items()) {
        Object value = takeWritten(each, item, "an item of " + name, complaints);
        if (value != null) {
          values.add(value);
        }
      }
      return Collections.unmodifiableList(values);
    }

    @Override
    public Object nothing() {
      return List.of();
    }
  }

  private record TakingMap(Taking each) implements Taking {

    @Override
    public @Nullable Object take(Node node, String name, Complaints complaints) {
      if (!(node instanceof Fields fields)) {
        return wrongKind(node, name, Fields.class, complaints);
      }
      Map<String, Object> values = new LinkedHashMap<>();
      for (Fields.Field field : fields.fields()) {
        String key = field.key().value();
        Object value = takeWritten(each, field.value(), Visible.quoted(key), complaints);
        if (value != null) {
          values.put(key, value);
        }
      }
      return Collections.unmodifiableMap(values);
    }

    @Override
    public Object nothing() {
      return Map.of();
    }
  }

  private static @Nullable Object takeWritten(
      Taking each, Node node, String name, Complaints complaints) {
    if (node instanceof Text text && text.isBlank()) {
      complaints.add(node.at(), name + " is blank", "a value, or no entry at all");
      return null;
    }
    return each.take(node, name, complaints);
  }

  private static @Nullable Object wrongKind(
      Node node, String name, Class<?> due, Complaints complaints) {
    String found =
        node instanceof Text
            ? "a single value"
            : node instanceof Items ? "a list" : "a set of fields";
    String right =
        due == Text.class
            ? "a single value"
            : due == Items.class ? "a list, `[]` for none" : "fields, each `name: value`";
    complaints.add(node.at(), name + " is " + found, right);
    return null;
  }
}
