package org.mainsgate.evidence;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Nature;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;

/**
 * The words that a record can use.
 *
 * @param vocabulary things, properties, acts and reasons
 * @param meterKinds by name
 * @param checks the names of the checks
 */
record Dictionary(
    Vocabulary vocabulary, Map<String, MeterKind> meterKinds, Collection<String> checks) {

  /** The names of what can stand with an entry of a property, in the vocabulary's order. */
  List<String> with(String property) {
    return vocabulary.properties().keySet().stream()
        .filter(name -> vocabulary.with(property, name).filter(Dictionary::isTyped).isPresent())
        .toList();
  }

  /** Whether people write it down with an entry. What is measured is an entry of its own. */
  private static boolean isTyped(Property property) {
    return !(property instanceof Property.Quantity quantity)
        || !(quantity.derived() || quantity.nature() == Nature.MEASURED);
  }

  /**
   * A complaint about a name that stands with every entry, and can't be written here.
   *
   * @param what what is wrong
   * @param right what would be right
   */
  record Refused(String what, String right) {}

  /** Why a name can't be written with an entry of a property; empty if it can, or means nothing. */
  Optional<Refused> refusedWith(String property, String name) {
    return vocabulary
        .with(property, name)
        .filter(found -> !isTyped(found))
        .map(found -> refused((Property.Quantity) found));
  }

  /** The same for a method, which can't know either what is true for one visit only. */
  Optional<Refused> refusedInMethod(String property, String name) {
    Optional<Refused> momentary =
        vocabulary
            .with(property, name)
            .filter(Property::isMomentary)
            .map(
                found ->
                    new Refused(
                        Words.quoted(name) + " is true for one visit only",
                        "it in each visit, found anew"));
    return refusedWith(property, name).or(() -> momentary);
  }

  private static Refused refused(Property.Quantity quantity) {
    String name = Words.quoted(quantity.name());
    return quantity.derived()
        ? new Refused(name + " is computed from the date", "the entry without it")
        : new Refused(
            name + " is measured, and an entry of its own",
            "it under `found` or `left`, with its meter");
  }
}
