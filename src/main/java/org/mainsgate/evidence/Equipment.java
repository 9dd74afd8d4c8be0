package org.mainsgate.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.mainsgate.quantity.Display;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Nulling;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.verdict.Fact;

/**
 * What a bench has to measure a quantity with, on one day.
 *
 * @param methods the names of the bench's methods for it
 * @param meters the meters that can: those of the methods, else all that have the function
 * @param displays the ranges in which it will be read, and the test leads; empty where it is not
 *     settled which meter it will be
 * @param with what the bench's one method records with each reading
 */
public record Equipment(
    List<String> methods,
    List<Bench.Meter> meters,
    List<Display> displays,
    Map<String, Fact> with) {

  /** Keeps the collections as they are. */
  public Equipment {
    methods = List.copyOf(methods);
    meters = List.copyOf(meters);
    displays = List.copyOf(displays);
    with = Map.copyOf(with);
  }

  /** What the bench has for a quantity. */
  public static Equipment of(Bench bench, Rules rules, Property.Quantity quantity, LocalDate day) {
    List<Bench.Method> methods =
        bench.methods().values().stream().filter(m -> m.of().equals(quantity.name())).toList();
    List<Bench.Meter> meters = new ArrayList<>();
    for (Bench.Method method : methods) {
      method
          .meter()
          .map(bench.meters()::get)
          .filter(m -> !meters.contains(m))
          .ifPresent(meters::add);
    }
    boolean anyMeter = methods.stream().anyMatch(method -> method.meter().isEmpty());
    if (meters.isEmpty() || anyMeter) {
      bench.meters().values().stream()
          .filter(meter -> !meters.contains(meter) && can(meter, rules, quantity, day))
          .forEach(meters::add);
    }
    Optional<Bench.Method> method =
        methods.size() == 1 ? Optional.of(methods.get(0)) : Optional.empty();
    boolean settled = meters.size() == 1 && methods.size() <= 1;
    return new Equipment(
        methods.stream().map(Bench.Method::name).toList(),
        meters,
        settled ? displays(meters.get(0), method, bench, rules, quantity, day) : List.of(),
        method.map(found -> with(found, rules, day)).orElse(Map.of()));
  }

  private static boolean can(
      Bench.Meter meter, Rules rules, Property.Quantity quantity, LocalDate day) {
    String function = quantity.function().orElse("");
    boolean own = meter.on(day).map(data -> data.functions().containsKey(function)).orElse(false);
    return own
        || Optional.ofNullable(rules.meterKinds().get(meter.kind()))
            .map(kind -> kind.functions().containsKey(function))
            .orElse(false);
  }

  private static List<Display> displays(
      Bench.Meter meter,
      Optional<Bench.Method> method,
      Bench bench,
      Rules rules,
      Property.Quantity quantity,
      LocalDate day) {
    Nulling nulling =
        method
            .flatMap(Bench.Method::nulled)
            .flatMap(text -> Leads.parse(text, quantity))
            .orElse(Leads.unsaid(quantity));
    Optional<Rational> end = method.flatMap(Bench.Method::range).flatMap(Reading::end);
    List<MeterRange> ranges =
        MeterOnDay.of(Optional.of(meter.name()), quantity, bench, rules.meterKinds(), day).ranges();
    return ranges.stream()
        .filter(range -> end.map(range.to()::equals).orElse(true))
        .map(range -> new Display(range, nulling))
        .toList();
  }

  private static Map<String, Fact> with(Bench.Method method, Rules rules, LocalDate day) {
    Map<String, Fact> with = new TreeMap<>();
    method
        .with()
        .forEach(
            (name, value) ->
                rules
                    .vocabulary()
                    .property(name)
                    .ifPresent(
                        property -> with.put(name, Testimony.given(property, value, method, day))));
    return with;
  }
}
