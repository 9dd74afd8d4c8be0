package org.mainsgate.ruleset;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.Accuracy;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Form;
import org.mainsgate.quantity.Parsed;
import org.mainsgate.quantity.ParsedAccuracy;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Refusal;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.NearestName;
import org.mainsgate.source.Text;

/**
 * The small words of every file: units, numbers, accuracies and names from a list, each understood
 * or complained about where it stands.
 */
public final class Wording {

  /** The unit of a plain number; a ruleset writes it {@code 1}. */
  static final Unit ONE = new Unit("1", Dimension.NONE, Rational.ONE, Rational.ZERO);

  private static final int MOST_SECONDS = 3600;

  private final Complaints complaints;

  /** A reader that puts its complaints there. */
  public Wording(Complaints complaints) {
    this.complaints = complaints;
  }

  /** The text's value, or nothing. */
  static String orEmpty(@Nullable Text text) {
    return text == null ? "" : text.value().strip();
  }

  /** The name, if it is one of these. */
  public Optional<String> oneOf(String thing, Text text, Collection<String> valid) {
    if (valid.contains(text.value())) {
      return Optional.of(text.value());
    }
    complaints.addUnknown(text.at(), thing, text.value(), valid);
    return Optional.empty();
  }

  /** What a word stands for, if it is one of these. */
  public <T> Optional<T> oneOf(String thing, Text text, Map<String, T> valid) {
    return oneOf(thing, text, new TreeSet<>(valid.keySet())).map(valid::get);
  }

  /** Whether the text says yes; it may say only yes or no. */
  boolean yes(@Nullable Text text) {
    return text != null
        && oneOf("answer", text, List.of("yes", "no")).map("yes"::equals).orElse(false);
  }

  /** A time in whole seconds, up to an hour; what is usual where nothing is said. */
  int seconds(@Nullable Text text, int usual) {
    if (text == null) {
      return usual;
    }
    boolean fits = text.value().matches("[1-9][0-9]{0,3}");
    int seconds = fits ? Integer.parseInt(text.value()) : 0;
    if (!fits || seconds > MOST_SECONDS) {
      complaints.add(
          text, "`" + text.value() + "` is no time for this", "whole seconds from `1` to `3600`");
      return usual;
    }
    return seconds;
  }

  /** The unit of this symbol. */
  public Optional<Unit> unit(Text text) {
    if (text.value().equals(ONE.symbol())) {
      return Optional.of(ONE);
    }
    Optional<Unit> unit = Units.find(text.value());
    if (unit.isEmpty()) {
      complaints.addUnknown(text.at(), "unit", text.value(), Units.symbols());
    }
    return unit;
  }

  /** A quantity as typed, of any unit. */
  public Optional<Typed> typed(Text text) {
    Parsed parsed = Typed.parse(text.value());
    if (parsed instanceof Refusal refusal) {
      refuse(text, refusal);
      return Optional.empty();
    }
    return Optional.of((Typed) parsed);
  }

  /** One number with a unit of this dimension, in SI units. */
  public Optional<Typed> point(Text text, Dimension dimension) {
    Optional<Typed> typed = typed(text);
    if (typed.isEmpty()) {
      return typed;
    }
    Typed found = typed.get();
    boolean fits =
        found.form() == Form.STATED
            && found.unit().map(unit -> unit.dimension().equals(dimension)).orElse(false);
    if (!fits) {
      complaints.add(
          text, "`" + text.value() + "` does not fit here", "one " + dimension.describe());
      return Optional.empty();
    }
    return typed;
  }

  /** The value of a limit or of a table's cell: one number in a unit of the dimension. */
  Optional<Value> value(Text text, Dimension dimension) {
    if (dimension.equals(Dimension.NONE)) {
      Optional<Rational> plain = Rational.parse(text.value());
      if (plain.isPresent()) {
        return Optional.of(new Value(ExactInterval.point(plain.get()), ONE));
      }
    }
    return point(text, dimension).map(typed -> new Value(typed.bounds(), typed.unit().orElse(ONE)));
  }

  /** The value of a limit of which the dimension is not said anywhere else. */
  Optional<Value> value(Text text) {
    Optional<Rational> plain = Rational.parse(text.value());
    if (plain.isPresent()) {
      return Optional.of(new Value(ExactInterval.point(plain.get()), ONE));
    }
    Optional<Typed> typed = typed(text);
    return typed.flatMap(found -> found.unit().flatMap(unit -> value(text, unit.dimension())));
  }

  /** A number and the unit it was written in. */
  record Value(ExactInterval si, Unit unit) {}

  /** The accuracy of a meter. */
  public Optional<Accuracy> accuracy(Text text) {
    ParsedAccuracy parsed = Accuracy.parse(text.value());
    if (parsed instanceof Refusal refusal) {
      refuse(text, refusal);
      return Optional.empty();
    }
    return Optional.of((Accuracy) parsed);
  }

  private void refuse(Text text, Refusal refusal) {
    String nearest =
        refusal.unknownUnit().flatMap(word -> NearestName.of(word, Units.symbols())).orElse("");
    complaints.add(text.at(refusal.offset()), refusal.what(), refusal.expected(), nearest);
  }
}
