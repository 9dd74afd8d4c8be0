package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Nature;
import org.mainsgate.quantity.Display;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Form;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Nulling;
import org.mainsgate.quantity.Parsed;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;

/**
 * The values that an entry leaves possible, with the error of the meter.
 *
 * @param bounds in SI units, without what physics adds
 * @param display the meter's display behind it; empty where no meter was read, or the person stated
 *     the limits of error
 * @param how how the bounds came about, in words; empty where they stand as written
 */
public record Reading(ExactInterval bounds, Optional<Display> display, String how) {

  /**
   * The reading behind an entry.
   *
   * <p>A meter whose ranges could not show what was written tells nothing: the reader of the record
   * has complained of it.
   *
   * @param quantity what the entry is of
   * @param kinds the ruleset's meter kinds, by name
   * @param day the day of the reading: the entry's, else that of its visit
   * @throws IllegalArgumentException if the entry holds no number
   */
  public static Reading of(
      Entry entry,
      Property.Quantity quantity,
      Bench bench,
      Map<String, MeterKind> kinds,
      LocalDate day) {
    if (!(entry.value() instanceof Value.Amount amount)) {
      throw new IllegalArgumentException("no number: " + entry.id());
    }
    if (quantity.nature() != Nature.MEASURED) {
      return new Reading(amount.typed().bounds(), Optional.empty(), "");
    }
    MeterOnDay meter = MeterOnDay.of(entry.meter(), quantity, bench, kinds, day);
    Nulling nulling =
        entry.nulled().flatMap(text -> Leads.parse(text, quantity)).orElse(Leads.unsaid(quantity));
    Optional<MeterRange> range = meter.range(amount.typed(), entry.range().flatMap(Reading::end));
    return amount.typed().form() == Form.TOLERANCE
        ? stated(amount.typed(), range, nulling)
        : range
            .map(r -> shown(amount.typed(), new Display(r, nulling), meter))
            .orElse(new Reading(ExactInterval.UNBOUNDED, Optional.empty(), "unreadable"));
  }

  /** The end of a range as typed, in SI units. */
  static Optional<Rational> end(String text) {
    Parsed parsed = Typed.parse(text);
    return parsed instanceof Typed typed && typed.form() == Form.STATED
        ? typed.nominal()
        : Optional.empty();
  }

  private static Reading stated(Typed typed, Optional<MeterRange> range, Nulling nulling) {
    ExactInterval bounds =
        range
            .map(r -> new Display(r, nulling).read(typed))
            .orElseGet(() -> withoutRange(typed.bounds(), nulling));
    return new Reading(bounds, Optional.empty(), "stated with its error" + leads(nulling));
  }

  /** Without a range nobody knows how well a short was read: nothing is taken off at all. */
  private static ExactInterval withoutRange(ExactInterval bounds, Nulling nulling) {
    Rational hi = bounds.hi();
    return nulling.equals(Nulling.YES) || hi == null ? bounds : ExactInterval.atMost(hi);
  }

  private static Reading shown(Typed typed, Display display, MeterOnDay meter) {
    MeterRange range = display.range();
    String how =
        meter.title()
            + ", range "
            + MeterOnDay.end(range)
            + ", "
            + range.accuracy().describe()
            + (meter.source().isEmpty() ? "" : " (" + meter.source() + ")")
            + leads(display.nulling());
    return new Reading(display.read(typed), Optional.of(display), how);
  }

  private static String leads(Nulling nulling) {
    if (nulling instanceof Nulling.Nulled) {
      return "";
    }
    return nulling instanceof Nulling.NotNulled
        ? ", test leads not nulled"
        : ", test leads taken off";
  }
}
