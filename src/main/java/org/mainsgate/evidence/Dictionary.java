package org.mainsgate.evidence;

import java.util.Collection;
import java.util.List;
import java.util.Map;
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

  /** Whether people write it down with an entry: neither computed nor a word of the whole visit. */
  private static boolean isTyped(Property property) {
    return !(property instanceof Property.Quantity quantity && quantity.derived());
  }
}
