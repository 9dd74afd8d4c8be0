package org.mainsgate.verdict;

import java.time.LocalDate;
import java.util.Optional;
import org.mainsgate.quantity.Display;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;

/**
 * One entry of the record that a fact rests on.
 *
 * @param entry the entry's id, unique on the bench: {@code VISIT/ENTRY}
 * @param on the date of the visit
 * @param by who wrote it down
 * @param text the value as typed, or the title of the named value
 * @param unit the unit it was typed in, if it is a number
 * @param how with what it was measured and how wide that makes it, in words; empty for an
 *     observation
 * @param shown the number that the display showed, in SI units, if it is one number
 * @param display how that meter's displays turn into intervals, if a meter was read
 */
public record Said(
    String entry,
    LocalDate on,
    String by,
    String text,
    Optional<Unit> unit,
    String how,
    Optional<Rational> shown,
    Optional<Display> display) {

  /** The same entry in other words. */
  public Said saying(String words) {
    return new Said(entry, on, by, words, unit, how, shown, display);
  }

  /** The same entry, where the meter was put to another thing, and this one was no worse. */
  public Said bound(String meter) {
    return new Said(entry, on, by, text, unit, meter, Optional.empty(), Optional.empty());
  }

  /** The same entry, with what the meter makes of it. */
  public Said read(String meter, Optional<Display> shownOn) {
    return new Said(entry, on, by, text, unit, meter, shown, shownOn);
  }
}
