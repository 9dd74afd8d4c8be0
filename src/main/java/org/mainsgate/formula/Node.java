package org.mainsgate.formula;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** A part of a checked formula. */
interface Node {
  List<Node> parts();

  /** Tells what this part by itself asks for; the parts below are told by {@link Survey}. */
  default void tell(Survey.Builder survey) {}

  /** The variable that the parts below may use, where there is one. */
  default Optional<Input.Binding> binds() {
    return Optional.empty();
  }

  /** What is already known of a named step, so that it is not walked through again. */
  default Optional<Survey> surveyed() {
    return Optional.empty();
  }

  /** What raising a limit does to this part. */
  Sign sign(String limit);

  /** Names the rows of tables that the facts lead to. */
  default void rows(Facts facts, Consumer<RowUse> rows) {
    parts().forEach(part -> part.rows(facts, rows));
  }
}
