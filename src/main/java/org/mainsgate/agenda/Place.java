package org.mainsgate.agenda;

import java.util.List;
import java.util.Optional;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Finding;

/**
 * The entry that an input of a check is written in: {@code earth_resistance.test_current} is part
 * of the entry {@code earth_resistance}, and {@code earth_resistance.through.core_area} is the
 * entry {@code core_area} of a lead.
 *
 * @param base the property of the entry
 * @param more what is asked of it beyond its value: something recorded with it, true in the same
 *     sitting, or computed from it
 * @param pointers the kinds of thing that the way there points to
 * @param things the things whose entry it can be
 */
record Place(Property base, Optional<Property> more, List<String> pointers, List<String> things) {

  static Place of(Finding.Input input, Vocabulary vocabulary) {
    List<Property> path =
        List.of(input.name().split("\\.")).stream()
            .map(name -> vocabulary.property(name).orElseThrow())
            .toList();
    int start = 0;
    for (int i = 0; i < path.size() - 1; i++) {
      if (path.get(i) instanceof Property.Pointer) {
        start = i + 1;
      }
    }
    List<String> pointers =
        path.stream()
            .filter(Property.Pointer.class::isInstance)
            .map(property -> ((Property.Pointer) property).to())
            .toList();
    Optional<Property> more =
        start < path.size() - 1 ? Optional.of(path.get(path.size() - 1)) : Optional.empty();
    return new Place(path.get(start), more, pointers, input.owners());
  }

  /** Whether what is asked beyond the value is recorded with the entry itself. */
  boolean isCompanion() {
    return more.filter(property -> property.isOf(base.name()) && !property.isMomentary())
        .isPresent();
  }

  /** Whether what is asked beyond the value is true in the same sitting. */
  boolean isMomentary() {
    return more.filter(Property::isMomentary).isPresent();
  }
}
