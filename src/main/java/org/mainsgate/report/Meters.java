package org.mainsgate.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Visit;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Print;
import org.mainsgate.ruleset.MeterKind;

/**
 * What was measured with, and how well that measures.
 *
 * @param setting the bench with its meters, and the rules with their kinds of meter
 */
record Meters(Setting setting) {

  /** The meters that were used, each with its data on the day of its last use. */
  List<Sheet.Meter> of(List<Visit> visits) {
    Map<String, LocalDate> used = new LinkedHashMap<>();
    for (Visit visit : visits) {
      Stream.concat(visit.found().stream(), visit.left().stream())
          .forEach(
              entry ->
                  entry
                      .meter()
                      .ifPresent(meter -> used.put(meter, entry.on().orElse(visit.date()))));
    }
    return used.entrySet().stream()
        .flatMap(
            entry ->
                Optional.ofNullable(setting.bench().meters().get(entry.getKey()))
                    .map(meter -> meter(meter, entry.getValue()))
                    .stream())
        .toList();
  }

  private Sheet.Meter meter(Bench.Meter meter, LocalDate on) {
    Optional<Bench.MeterData> data = meter.on(on);
    List<String> accuracy = data.map(known -> accuracy(known.functions())).orElse(List.of());
    return new Sheet.Meter(
        meter.title() + (meter.serial().isEmpty() ? "" : ", serial number " + meter.serial()),
        accuracy.isEmpty() ? ofItsKind(meter) : accuracy,
        data.map(Meters::calibrated).orElse("not calibrated"));
  }

  /** What a meter without data is taken to be. */
  private List<String> ofItsKind(Bench.Meter meter) {
    MeterKind kind = setting.rules().meterKinds().get(meter.kind());
    if (kind == null) {
      return List.of("not known");
    }
    List<String> lines = new ArrayList<>();
    lines.add("its own is not known; taken as " + kind.title() + ", " + kind.standing().words());
    lines.addAll(accuracy(kind.functions()));
    return lines;
  }

  private static List<String> accuracy(Map<String, List<MeterRange>> functions) {
    return functions.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .flatMap(
            function -> function.getValue().stream().map(range -> range(function.getKey(), range)))
        .toList();
  }

  private static String range(String function, MeterRange range) {
    String symbol = " " + range.unit().symbol();
    return function.replace('_', ' ')
        + " to "
        + Print.value(range.to(), range.unit())
        + symbol
        + ": "
        + range.accuracy().describe()
        + ", a digit being "
        + Print.value(range.digit().plus(range.unit().offset()), range.unit())
        + symbol;
  }

  private static String calibrated(Bench.MeterData data) {
    String how = data.calibrated().isEmpty() ? "not calibrated" : data.calibrated();
    return how + "; data from " + data.from() + data.due().map(due -> "; due " + due).orElse("");
  }
}
