package org.mainsgate.formula;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The identity of one piece of evidence that a formula asks for: a dotted path, of the item that a
 * variable stands for or of the instrument itself.
 *
 * <p>Not a record: facts are looked up by it all the time, so it keeps its hash.
 */
public final class Reference {
  private final @Nullable String variable;
  private final List<String> path;
  private final int hash;

  /**
   * A reference with at least one name.
   *
   * @param variable the variable whose item is meant, null for the instrument
   * @param path the names after the variable, at least one
   */
  public Reference(@Nullable String variable, List<String> path) {
    if (path.isEmpty()) {
      throw new IllegalArgumentException("a reference without a name");
    }
    this.variable = variable;
    this.path = List.copyOf(path);
    this.hash = 31 * Objects.hashCode(variable) + this.path.hashCode();
  }

  /** The reference to something of the instrument itself. */
  public static Reference of(String... path) {
    return new Reference(null, List.of(path));
  }

  /** The variable whose item is meant, null for the instrument. */
  public @Nullable String variable() {
    return variable;
  }

  /** The names after the variable, at least one. */
  public List<String> path() {
    return path;
  }

  /** The reference as a formula writes it, such as {@code p.earth_resistance}. */
  public String text() {
    String names = String.join(".", path);
    return variable == null ? names : variable + "." + names;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Reference that
            && hash == that.hash
            && Objects.equals(variable, that.variable)
            && path.equals(that.path));
  }

  @Override
  public int hashCode() {
    return hash;
  }

  @Override
  public String toString() {
    return text();
  }
}
