package org.mainsgate.evidence;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Form;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Print;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;

/**
 * What a meter could do with one quantity on one day.
 *
 * @param title the meter's name for people
 * @param ranges its ranges for the quantity; empty if nothing is known of it
 * @param source where the ranges are from, where they are not the meter's own; else empty
 */
record MeterOnDay(String title, List<MeterRange> ranges, String source) {
  private static final Pattern PLACES = Pattern.compile("\\.([0-9]+)");

  MeterOnDay {
    ranges = List.copyOf(ranges);
  }

  /**
   * The meter's own data, else those of its kind, else those of a meter of unknown kind.
   *
   * @param name the meter's name; empty where nobody has written it down
   */
  static MeterOnDay of(
      Optional<String> name,
      Property.Quantity quantity,
      Bench bench,
      Map<String, MeterKind> kinds,
      LocalDate day) {
    String function = quantity.function().orElse("");
    Optional<Bench.Meter> meter = name.map(bench.meters()::get);
    String title = meter.map(Bench.Meter::title).orElse("no meter named");
    Optional<List<MeterRange>> own =
        meter.flatMap(m -> m.on(day)).map(data -> data.functions().get(function));
    return own.map(ranges -> new MeterOnDay(title, ranges, ""))
        .or(() -> ofKind(title, meter.map(Bench.Meter::kind), function, kinds))
        .or(() -> ofKind(title, Optional.of(MeterKind.UNKNOWN), function, kinds))
        .orElse(new MeterOnDay(title, List.of(), ""));
  }

  private static Optional<MeterOnDay> ofKind(
      String title, Optional<String> name, String function, Map<String, MeterKind> kinds) {
    Optional<MeterKind> kind = name.map(kinds::get);
    return kind.map(k -> k.functions().get(function))
        .map(ranges -> new MeterOnDay(title, ranges, source(kind.orElseThrow())));
  }

  private static String source(MeterKind kind) {
    return "taken as " + kind.title() + ", " + kind.standing().words();
  }

  /**
   * The range in which the meter was read: the one with the coarsest step of those that could show
   * what was typed, the first of equals.
   *
   * @param end the end of the range that the person named, in SI units
   */
  Optional<MeterRange> range(Typed typed, Optional<Rational> end) {
    return ranges.stream()
        .filter(range -> end.map(range.to()::equals).orElse(true))
        .filter(range -> couldShow(range, typed, end.isPresent()))
        .filter(range -> isFineEnough(range, typed))
        .sorted(Comparator.comparing(MeterRange::digit).reversed())
        .findFirst();
  }

  /**
   * Whether the range has all the places that were typed behind the point: a display in steps of
   * 0.1 Ω never shows 0.10 Ω. A whole number says nothing of the step.
   */
  private static boolean isFineEnough(MeterRange range, Typed typed) {
    Matcher places = PLACES.matcher(typed.text());
    Optional<Rational> size = typed.unit().map(Unit::factor);
    boolean display = typed.form() != Form.TOLERANCE;
    while (display && places.find() && size.isPresent()) {
      Rational last = Rational.of(BigDecimal.ONE.movePointLeft(places.group(1).length()));
      if (range.digit().compareTo(last.times(size.get())) > 0) {
        return false;
      }
    }
    return true;
  }

  private static boolean couldShow(MeterRange range, Typed typed, boolean named) {
    return switch (typed.form()) {
      case STATED, BELOW -> typed.nominal().filter(range::canShow).isPresent();
      case TOLERANCE -> typed.nominal().filter(v -> v.abs().compareTo(range.to()) <= 0).isPresent();
      case BETWEEN -> showsEnds(range, typed.bounds());
      // A meter that ends at 199.9 says `> 200`: one step more than it can show.
      case ABOVE ->
          typed
              .nominal()
              .filter(v -> range.canShow(v) || range.canShow(v.minus(range.digit())))
              .isPresent();
      case OVER_RANGE -> named;
    };
  }

  private static boolean showsEnds(MeterRange range, ExactInterval ends) {
    Rational lo = ends.lo();
    Rational hi = ends.hi();
    return lo != null && hi != null && range.canShow(lo) && range.canShow(hi);
  }

  /** The ranges as a complaint names them. */
  String describe() {
    return String.join(
        ", ",
        ranges.stream()
            .map(range -> "`" + end(range) + "` in steps of `" + step(range) + "`")
            .toList());
  }

  /** The end of a range with its unit, in full. */
  static String end(MeterRange range) {
    return Print.value(range.to(), range.unit()) + " " + range.unit().symbol();
  }

  private static String step(MeterRange range) {
    return Print.value(range.digit().plus(range.unit().offset()), range.unit())
        + " "
        + range.unit().symbol();
  }
}
