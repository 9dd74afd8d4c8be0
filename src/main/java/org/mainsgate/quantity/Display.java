package org.mainsgate.quantity;

/**
 * What the display of a meter says about the true value.
 *
 * <p>All results are in SI units and know nothing of physics: that a resistance is not negative is
 * for the caller to add.
 *
 * @param range in which the meter was read
 * @param nulling what is known of the leads
 */
public record Display(MeterRange range, Nulling nulling) {

  /**
   * The true value behind a typed reading.
   *
   * <p>Limits of error that the person typed themselves ({@code 0.13 ± 0.02 Ω}) stand as typed; to
   * everything else the meter's are added, at each end of a display that wandered ({@code 0.12 to
   * 0.14 Ω}) too. Over-range means above the end of the range. The leads are taken off last.
   */
  public ExactInterval read(Typed typed) {
    ExactInterval shown =
        switch (typed.form()) {
          case STATED, BETWEEN, ABOVE, BELOW -> widened(typed.bounds());
          case TOLERANCE -> typed.bounds();
          case OVER_RANGE -> widened(ExactInterval.atLeast(range.to()));
        };
    return shown.minus(nulling.leads(range));
  }

  /** The true value behind one displayed SI value. */
  public ExactInterval at(Rational display) {
    return widened(ExactInterval.point(display)).minus(nulling.leads(range));
  }

  /** The distance from one display to the next, in SI units. */
  public Rational step() {
    return range.digit();
  }

  private ExactInterval widened(ExactInterval shown) {
    Rational lo = shown.lo();
    Rational hi = shown.hi();
    return new ExactInterval(
        lo == null ? null : lo.minus(range.halfWidth(lo)),
        hi == null ? null : hi.plus(range.halfWidth(hi)));
  }
}
