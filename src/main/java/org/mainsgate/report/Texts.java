package org.mainsgate.report;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiConsumer;

/**
 * Every text of a record, with the name of the field it stands in.
 *
 * <p>For example: the second text in the list {@code cautions} is {@code cautions 2}, and the text
 * that goes with the label {@code serial number} in the list {@code identity} is {@code identity,
 * serial number}.
 */
final class Texts {

  private final BiConsumer<String, String> told;

  /** Tells each text to {@code told}: first the field, then the text. */
  Texts(BiConsumer<String, String> told) {
    this.told = told;
  }

  void of(Record whole) {
    fields("", whole);
  }

  private void fields(String before, Record whole) {
    for (RecordComponent field : whole.getClass().getRecordComponents()) {
      value(before.isEmpty() ? spoken(field) : before + ", " + spoken(field), get(field, whole));
    }
  }

  private void value(String name, Object value) {
    if (value instanceof String text) {
      told.accept(name, text);
    } else if (value instanceof List<?> list) {
      for (int i = 0; i < list.size(); i++) {
        value(name + " " + (i + 1), list.get(i));
      }
    } else if (value instanceof Optional<?> optional) {
      optional.ifPresent(there -> value(name, there));
    } else if (value instanceof Sheet.Line line) {
      told.accept(name, line.label());
      told.accept(name + ", " + line.label(), line.text());
    } else if (value instanceof Record inner) {
      fields(name, inner);
    }
  }

  private static String spoken(RecordComponent field) {
    return field.getName().toLowerCase(Locale.ROOT);
  }

  private static Object get(RecordComponent field, Record whole) {
    try {
      return field.getAccessor().invoke(whole);
    } catch (ReflectiveOperationException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
