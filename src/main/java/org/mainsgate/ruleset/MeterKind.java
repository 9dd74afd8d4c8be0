package org.mainsgate.ruleset;

import java.util.List;
import java.util.Map;
import org.mainsgate.quantity.MeterRange;

/**
 * What a meter is taken to be where its own data are not known.
 *
 * @param name its name in the bench file
 * @param title its name for people
 * @param standing how well that is known
 * @param functions the ranges by function
 */
public record MeterKind(
    String name, String title, Standing standing, Map<String, List<MeterRange>> functions) {

  /** The kind of a meter that nobody has named. */
  public static final String UNKNOWN = "unknown";

  /** Keeps the functions as they are. */
  public MeterKind {
    functions = Map.copyOf(functions);
  }
}
