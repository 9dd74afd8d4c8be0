package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.quantity.Form;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Node;
import org.mainsgate.source.Text;

/**
 * The reader of how a value was measured, with what the bench's method says where it says nothing.
 */
final class Measuring {
  /** The fields that only a measured quantity has. */
  static final List<String> KEYS = List.of("meter", "range", "nulled", "method");

  private final Bench bench;
  private final Map<String, MeterKind> kinds;
  private final Complaints complaints;

  Measuring(Bench bench, Map<String, MeterKind> kinds, Complaints complaints) {
    this.bench = bench;
    this.kinds = kinds;
    this.complaints = complaints;
  }

  /**
   * How a value was measured.
   *
   * @param meter the meter, if anything says which
   * @param range the end of its range as typed
   * @param nulled what was written of the test leads
   * @param with what the method says of every reading
   */
  record Means(
      Optional<String> meter,
      Optional<String> range,
      Optional<String> nulled,
      Map<String, Value> with) {
    static final Means NONE =
        new Means(Optional.empty(), Optional.empty(), Optional.empty(), Map.of());
  }

  /** Reads the means, and complains where the meter could not have shown the value. */
  Means read(
      Property.Quantity quantity,
      Node main,
      Optional<Value> value,
      Map<String, Node> written,
      Optional<LocalDate> date) {
    int before = complaints.count();
    Optional<Text> meter = meter(written);
    Optional<Text> range = text(written, "range");
    Optional<Text> nulled = text(written, "nulled");
    range.ifPresent(text -> Numbers.stated(text, quantity.unit(), complaints));
    nulled.ifPresent(text -> checkNulled(text, quantity, complaints));
    Optional<Bench.Method> method = method(quantity, main, meter, written);
    Means means = means(meter, range, nulled, method);
    if (complaints.count() == before
        && date.isPresent()
        && value.isPresent()
        && value.get() instanceof Value.Amount amount) {
      Node place = range.isPresent() ? range.get() : main;
      check(quantity, amount.typed(), means, place, date.get());
    }
    return means;
  }

  private static Means means(
      Optional<Text> meter,
      Optional<Text> range,
      Optional<Text> nulled,
      Optional<Bench.Method> method) {
    return new Means(
        meter.map(Text::value).or(() -> method.flatMap(Bench.Method::meter)),
        range.map(Text::value).or(() -> method.flatMap(Bench.Method::range)),
        nulled.map(Text::value).or(() -> method.flatMap(Bench.Method::nulled)),
        method.map(Bench.Method::with).orElse(Map.of()));
  }

  private Optional<Text> text(Map<String, Node> written, String key) {
    return Optional.ofNullable(written.get(key)).flatMap(n -> Words.text(n, key, complaints));
  }

  private Optional<Text> meter(Map<String, Node> written) {
    Optional<Text> meter = text(written, "meter");
    meter.ifPresent(text -> Words.known(text, "meter", bench.meters().keySet(), complaints));
    return meter;
  }

  /** Complains of a word on the test leads that can't be understood. */
  static void checkNulled(Text text, Property.Quantity quantity, Complaints complaints) {
    if (Leads.parse(text.value(), quantity).isEmpty()) {
      complaints.add(
          text,
          Words.quoted(text) + " says nothing of the test leads",
          "`yes`, `no`, or what the meter showed with the probes joined, such as `short reads 0.28 "
              + quantity.unit().symbol()
              + "`");
    }
  }

  /**
   * The method that the entry names, else the bench's one for the quantity. One that belongs to
   * another meter says nothing of this reading.
   */
  private Optional<Bench.Method> method(
      Property.Quantity quantity, Node main, Optional<Text> meter, Map<String, Node> written) {
    List<Bench.Method> all =
        bench.methods().values().stream().filter(m -> m.of().equals(quantity.name())).toList();
    List<String> names = all.stream().map(Bench.Method::name).toList();
    Optional<Text> named = text(written, "method");
    if (written.containsKey("method")) {
      return named
          .filter(text -> Words.known(text, "method", names, complaints))
          .map(text -> bench.methods().get(text.value()));
    }
    List<Bench.Method> fit = all.stream().filter(method -> fits(method, meter)).toList();
    if (fit.size() > 1 && meter.isEmpty()) {
      complaints.add(
          main,
          "several methods of the bench measure " + Words.quoted(quantity.name()),
          "`method:` with " + Complaints.oneOf(names) + ", or `meter:`");
    }
    return fit.size() == 1 ? Optional.of(fit.get(0)) : Optional.empty();
  }

  private static boolean fits(Bench.Method method, Optional<Text> meter) {
    return meter.isEmpty()
        || method.meter().isEmpty()
        || method.meter().get().equals(meter.get().value());
  }

  private void check(
      Property.Quantity quantity, Typed typed, Means means, Node place, LocalDate day) {
    MeterOnDay meter = MeterOnDay.of(means.meter(), quantity, bench, kinds, day);
    Optional<Rational> end = means.range().flatMap(Reading::end);
    String who = means.meter().map(Words::quoted).orElse("a meter of unknown kind");
    if (meter.ranges().isEmpty()) {
      complaints.add(place, unfit(quantity, means, who), fit(quantity, day));
    } else if (end.isPresent()
        && meter.ranges().stream().noneMatch(r -> r.to().equals(end.get()))) {
      complaints.add(
          place, who + " has no range " + Words.quoted(means.range().orElse("")), ranges(meter));
    } else if (typed.form() == Form.OVER_RANGE && end.isEmpty()) {
      complaints.add(
          place,
          "an over-range display without its range",
          "`range:` with the end of one of " + meter.describe());
    } else if (typed.form() != Form.TOLERANCE && meter.range(typed, end).isEmpty()) {
      complaints.add(place, unshowable(typed, means, who), ranges(meter));
    }
  }

  private String unfit(Property.Quantity quantity, Means means, String who) {
    String kind =
        means
            .meter()
            .map(bench.meters()::get)
            .flatMap(meter -> Optional.ofNullable(kinds.get(meter.kind())))
            .map(found -> ", a " + found.title() + ",")
            .orElse("");
    return who + kind + " does not measure " + Words.quoted(quantity.name());
  }

  private String fit(Property.Quantity quantity, LocalDate day) {
    String function = quantity.function().orElse("");
    List<String> fit =
        bench.meters().keySet().stream()
            .filter(
                name ->
                    !MeterOnDay.of(Optional.of(name), quantity, bench, kinds, day)
                        .ranges()
                        .isEmpty())
            .toList();
    return fit.isEmpty()
        ? "a meter with ranges for " + Words.quoted(function) + " in the bench's file"
        : "`meter:` with " + Complaints.oneOf(fit);
  }

  private static String unshowable(Typed typed, Means means, String who) {
    String range = means.range().map(r -> " in its range " + Words.quoted(r)).orElse("");
    String named = means.meter().isEmpty() ? "no meter is named, and " : "";
    return named + who + " can't show " + Words.quoted(typed.text()) + range;
  }

  private static String ranges(MeterOnDay meter) {
    return "one of its ranges: " + meter.describe();
  }
}
