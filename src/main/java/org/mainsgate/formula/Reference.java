package org.mainsgate.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The identity of one piece of evidence that a formula asks for: a dotted path, of the item that a
 * variable stands for or of the instrument itself.
 *
 * @param variable the variable whose item is meant, null for the instrument
 * @param path the names after the variable, at least one
 */
public record Reference(@Nullable String variable, List<String> path) {
  /** A reference with at least one name. */
  public Reference {
    path = List.copyOf(path);
    if (path.isEmpty()) {
      throw new IllegalArgumentException("a reference without a name");
    }
  }

  /** The reference to something of the instrument itself. */
  public static Reference of(String... path) {
    return new Reference(null, List.of(path));
  }

  /** The reference as a formula writes it, such as {@code p.earth_resistance}. */
  public String text() {
    String names = String.join(".", path);
    return variable == null ? names : variable + "." + names;
  }
}
