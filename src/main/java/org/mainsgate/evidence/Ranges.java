package org.mainsgate.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.mainsgate.quantity.Accuracy;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Refusal;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/** The reader of a meter's ranges by function. */
final class Ranges {
  private final Map<String, Unit> units = new TreeMap<>();
  private final Complaints complaints;

  Ranges(Vocabulary vocabulary, Map<String, MeterKind> kinds, Complaints complaints) {
    this.complaints = complaints;
    for (MeterKind kind : kinds.values()) {
      kind.functions().forEach((name, ranges) -> ranges.forEach(r -> units.put(name, r.unit())));
    }
    for (Property property : vocabulary.properties().values()) {
      if (property instanceof Property.Quantity quantity) {
        quantity.function().ifPresent(name -> units.put(name, quantity.unit()));
      }
    }
  }

  /** The functions that a meter can have. */
  Set<String> functions() {
    return new TreeSet<>(units.keySet());
  }

  /** Reads the ranges of one function, or complains. */
  List<MeterRange> read(Unit unit, List<BenchFile.RangeEntry> entries) {
    List<MeterRange> ranges = new ArrayList<>();
    entries.forEach(entry -> range(unit, entry).ifPresent(ranges::add));
    return ranges;
  }

  /** What the function's ranges are in, if there is such a function. */
  Optional<Unit> unit(String function) {
    return Optional.ofNullable(units.get(function));
  }

  private Optional<MeterRange> range(Unit like, BenchFile.RangeEntry entry) {
    Optional<Typed> to = Numbers.stated(entry.to(), like, complaints);
    Optional<Typed> digit = Numbers.stated(entry.digit(), like, complaints);
    Unit own = to.flatMap(Typed::unit).orElse(like);
    Optional<Accuracy> accuracy = accuracy(entry.accuracy(), own);
    if (to.isEmpty() || digit.isEmpty() || accuracy.isEmpty()) {
      return Optional.empty();
    }
    var end = to.get().nominal().orElseThrow();
    var step = digit.get().nominal().orElseThrow().minus(own.offset());
    if (step.signum() <= 0 || end.minus(own.offset()).compareTo(step) < 0) {
      complaints.add(
          entry.digit(),
          Words.quoted(entry.digit()) + " is no step of this range",
          "a step above 0 and not above its end");
      return Optional.empty();
    }
    return Optional.of(new MeterRange(end, step, accuracy.get(), own));
  }

  private Optional<Accuracy> accuracy(Text text, Unit like) {
    var parsed = Accuracy.parse(text.value());
    if (parsed instanceof Refusal refusal) {
      Numbers.refuse(text, refusal, like, complaints);
      return Optional.empty();
    }
    Accuracy accuracy = (Accuracy) parsed;
    if (accuracy.absoluteUnit().filter(u -> !u.dimension().equals(like.dimension())).isPresent()) {
      complaints.add(
          text,
          "the fixed part of " + Words.quoted(text) + " is not in the unit of its range",
          "a part in " + Words.quoted(like.symbol()));
      return Optional.empty();
    }
    return Optional.of(accuracy);
  }
}
