package org.mainsgate.evidence;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.formula.Nature;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.Form;
import org.mainsgate.quantity.Refusal;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.quantity.Units;
import org.mainsgate.ruleset.Property;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.NearestName;
import org.mainsgate.source.Text;

/** Quantities as the record writes them. */
final class Numbers {
  /** Two units of one dimension that never stand for each other: a torque is no energy. */
  private static final List<Set<String>> STRANGERS =
      List.of(Set.of("N m"), Set.of("J", "mJ", "kJ"));

  private static final Set<Form> ONE_SIDED = Set.of(Form.ABOVE, Form.BELOW, Form.OVER_RANGE);

  private Numbers() {}

  /** Reads a value of a quantity, or complains. */
  static Optional<Typed> read(Text text, Property.Quantity quantity, Complaints complaints) {
    Optional<Typed> typed =
        parse(text, quantity.unit(), complaints).filter(t -> inUnit(t, text, quantity, complaints));
    if (typed.isPresent()
        && quantity.nature() != Nature.MEASURED
        && ONE_SIDED.contains(typed.get().form())) {
      complaints.add(
          text,
          Words.quoted(text) + " is what a meter shows; " + called(quantity) + " is not measured",
          "a number, such as " + example(quantity.unit()) + ", or two ends joined by `to`");
      return Optional.empty();
    }
    return typed;
  }

  /** Reads one number with its unit, of a dimension, or complains. */
  static Optional<Typed> stated(Text text, Unit like, Complaints complaints) {
    Optional<Typed> typed = parse(text, like, complaints);
    if (typed.isPresent()
        && (typed.get().form() != Form.STATED
            || !typed.get().unit().orElseThrow().dimension().equals(like.dimension()))) {
      complaints.add(
          text,
          Words.quoted(text) + " is not one " + like.dimension().describe(),
          "one number, such as " + example(like));
      return Optional.empty();
    }
    return typed;
  }

  /** Whether a value is in a unit that the quantity takes; what has no unit fits all. */
  static boolean fits(Typed typed, Property.Quantity quantity) {
    return typed.unit().map(unit -> fits(unit, quantity)).orElse(true);
  }

  private static boolean fits(Unit unit, Property.Quantity quantity) {
    return unit.dimension().equals(quantity.unit().dimension())
        && STRANGERS.stream()
            .noneMatch(
                family ->
                    family.contains(unit.symbol())
                        && quantity.units().stream().noneMatch(u -> family.contains(u.symbol())));
  }

  private static Optional<Typed> parse(Text text, Unit like, Complaints complaints) {
    var parsed = Typed.parse(text.value());
    if (parsed instanceof Refusal refusal) {
      refuse(text, refusal, like, complaints);
      return Optional.empty();
    }
    return Optional.of((Typed) parsed);
  }

  /** Complains of what was refused, where it stands, with the nearest unit of that dimension. */
  static void refuse(Text text, Refusal refusal, Unit like, Complaints complaints) {
    complaints.add(
        text.at(refusal.offset()),
        refusal.what(),
        refusal.expected(),
        refusal.unknownUnit().flatMap(word -> nearest(word, like.dimension())).orElse(""));
  }

  private static Optional<String> nearest(String word, Dimension dimension) {
    List<String> same =
        Units.symbols().stream()
            .filter(s -> Units.find(s).filter(u -> u.dimension().equals(dimension)).isPresent())
            .toList();
    return NearestName.of(word, same);
  }

  private static boolean inUnit(
      Typed typed, Text text, Property.Quantity quantity, Complaints complaints) {
    if (fits(typed, quantity)) {
      return true;
    }
    Unit unit = typed.unit().orElseThrow();
    String is =
        unit.dimension().equals(quantity.unit().dimension())
            ? " is no unit of this quantity"
            : " is " + withArticle(unit.dimension());
    complaints.add(
        text,
        Words.quoted(unit.symbol())
            + is
            + "; "
            + called(quantity)
            + " takes "
            + withArticle(quantity.unit().dimension()),
        "a value such as " + example(quantity.unit()));
    return false;
  }

  private static String called(Property.Quantity quantity) {
    return Words.quoted(quantity.name());
  }

  private static String withArticle(Dimension dimension) {
    String name = dimension.describe();
    return (name.isEmpty()
        ? "a bare ratio"
        : "aeiou".indexOf(name.charAt(0)) < 0 ? "a " + name : "an " + name);
  }

  private static String example(Unit unit) {
    return Words.quoted("0.13 " + unit.symbol());
  }
}
