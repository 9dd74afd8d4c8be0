package org.mainsgate.agenda;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.mainsgate.formula.Input;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;

/**
 * What will be asked of each thing of a kind, where nothing of the kind is listed yet and its list
 * is open: for a page of paper, which can't grow when something is found.
 *
 * @param kind the kind of thing
 * @param property what will be asked of each
 * @param certain whether each thing needs it; otherwise it depends on how the thing is made
 */
public record Prospect(Kind kind, Property property, boolean certain) {

  /** What the checks of a stage will ask of what the open lists of an agenda bring. */
  public static List<Prospect> of(Rules rules, Stage stage, Agenda agenda) {
    Set<String> named =
        rules.checksOf(stage).stream()
            .flatMap(check -> names(check).stream())
            .collect(Collectors.toSet());
    List<Prospect> prospects = new ArrayList<>();
    for (Task task : agenda.tasks()) {
      if (task instanceof Task.Closing closing && closing.listed().isEmpty()) {
        rules.vocabulary().properties().values().stream()
            .filter(property -> property.isOf(closing.kind().name()))
            .filter(property -> isAsked(property) && named.contains(property.name()))
            .map(property -> new Prospect(closing.kind(), property, isCertain(property, rules)))
            .forEach(prospects::add);
      }
    }
    return prospects;
  }

  private static boolean isAsked(Property property) {
    return property.heading().home() == Property.Home.VISIT
        && property.heading().tier() != Property.Tier.NOTE;
  }

  /**
   * Where nothing at all is needed of every thing of a kind, being there is what calls for its
   * observations.
   */
  private static boolean isCertain(Property property, Rules rules) {
    boolean choice = property instanceof Property.Observation;
    return isGate(property)
        || (choice
            && rules.vocabulary().properties().values().stream()
                .filter(other -> other.heading().of().stream().anyMatch(property::isOf))
                .noneMatch(Prospect::isGate));
  }

  private static boolean isGate(Property property) {
    return property.heading().tier() == Property.Tier.GATE;
  }

  private static List<String> names(Check check) {
    return check.statements().stream()
        .flatMap(statement -> statement.inputs().stream())
        .map(Input::reference)
        .flatMap(reference -> reference.path().stream())
        .toList();
  }
}
