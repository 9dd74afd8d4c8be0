package org.mainsgate.evidence;

import java.util.Optional;
import org.mainsgate.quantity.Form;
import org.mainsgate.quantity.Nulling;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.Property;

/** What a person wrote of the test leads: {@code yes}, {@code no} or {@code short reads 0.28 Ω}. */
final class Leads {
  private static final String SHORT = "short reads ";

  /**
   * The meter's function in which leads add to every reading, so that leads of which nothing is
   * said count as not nulled. In the others they add nothing that could be seen.
   */
  private static final String RESISTANCE = "resistance";

  private Leads() {}

  /** What was written, if it can be understood. */
  static Optional<Nulling> parse(String text, Property.Quantity quantity) {
    if (text.equals("yes")) {
      return Optional.of(Nulling.YES);
    }
    if (text.equals("no")) {
      return Optional.of(notNulled(quantity));
    }
    return text.startsWith(SHORT)
        ? shorted(text.substring(SHORT.length()), quantity)
        : Optional.empty();
  }

  private static Optional<Nulling> shorted(String text, Property.Quantity quantity) {
    return Typed.parse(text) instanceof Typed typed
            && typed.form() == Form.STATED
            && Numbers.fits(typed, quantity)
        ? typed.nominal().map(Nulling::shortReads)
        : Optional.empty();
  }

  /** What counts where nothing was written. */
  static Nulling unsaid(Property.Quantity quantity) {
    return quantity.function().filter(RESISTANCE::equals).isPresent()
        ? notNulled(quantity)
        : Nulling.YES;
  }

  private static Nulling notNulled(Property.Quantity quantity) {
    return quantity.leads().map(Nulling::atMost).orElse(Nulling.NO);
  }
}
