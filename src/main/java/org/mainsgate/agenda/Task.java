package org.mainsgate.agenda;

import java.util.List;
import java.util.Optional;
import org.mainsgate.evidence.Equipment;
import org.mainsgate.formula.Nature;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.verdict.Expected;

/** One thing to find out and to write down. */
public sealed interface Task {

  /** Why it is asked for, the weightiest reason first; never empty. */
  List<Why> whys();

  /** How much it is. */
  Load load();

  /** What in the order of the work it belongs to: a property's name, or a kind's. */
  String subject();

  /**
   * A property of a thing.
   *
   * @param thing the thing's id
   * @param title the thing's title
   * @param property the property
   * @param with what has to be recorded with it, which no method of the bench says
   * @param whys why
   * @param equipment what the bench measures it with; empty where nothing is measured
   * @param expected what the display should show, if that can be said
   */
  record Entry(
      String thing,
      String title,
      Property property,
      List<Property> with,
      List<Why> whys,
      Optional<Equipment> equipment,
      Optional<Expected> expected)
      implements Task {

    /** Keeps the lists as they are. */
    public Entry {
      with = List.copyOf(with);
      whys = List.copyOf(whys);
    }

    @Override
    public String subject() {
      return property.name();
    }

    @Override
    public Load load() {
      Load load = load(property);
      for (Property more : with) {
        load = load.plus(load(more));
      }
      return load;
    }

    /** Whether a meter is read for it. */
    public boolean isReading() {
      return isReading(property);
    }

    private static boolean isReading(Property property) {
      return property instanceof Property.Quantity quantity && quantity.nature() == Nature.MEASURED;
    }

    private static Load load(Property property) {
      int seconds = property.heading().seconds();
      if (property instanceof Property.Quantity) {
        return isReading(property) ? new Load(1, 0, 0, seconds) : new Load(0, 1, 0, seconds);
      }
      return new Load(0, 0, 1, seconds);
    }
  }

  /**
   * A list of things to complete and to close.
   *
   * @param kind the kind of thing
   * @param listed the ids that are listed so far
   * @param whys why
   */
  record Closing(Kind kind, List<String> listed, List<Why> whys) implements Task {

    /** Keeps the lists as they are. */
    public Closing {
      listed = List.copyOf(listed);
      whys = List.copyOf(whys);
    }

    @Override
    public String subject() {
      return kind.name();
    }

    @Override
    public Load load() {
      return new Load(0, 0, 1, kind.seconds());
    }
  }
}
