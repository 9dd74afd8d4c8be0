package org.mainsgate.verdict;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mainsgate.formula.Range;

/** What is in force about one property of one thing, and what it rests on. */
public sealed interface Fact {

  /** Whether a person has recorded it, and nothing has voided it since. */
  boolean recorded();

  /** Whether two entries that both count exclude each other. */
  boolean disagrees();

  /** The entries it rests on. */
  List<Said> said();

  /** What was recorded with it: how a reading was taken, on what an observation rests. */
  Map<String, Fact> with();

  /**
   * A number.
   *
   * @param range every value that it can have
   * @param impossible whether the whole range lies below what its quantity can be
   */
  record Amount(
      Range range,
      boolean recorded,
      boolean disagrees,
      boolean impossible,
      List<Said> said,
      Map<String, Fact> with)
      implements Fact {

    /** Keeps the collections as they are. */
    public Amount {
      said = List.copyOf(said);
      with = Map.copyOf(with);
    }
  }

  /**
   * A quantity that takes all of its values in turn.
   *
   * @param range its lowest, nominal and highest value
   */
  record Varying(
      org.mainsgate.formula.Varying range,
      boolean recorded,
      boolean disagrees,
      List<Said> said,
      Map<String, Fact> with)
      implements Fact {

    /** Keeps the collections as they are. */
    public Varying {
      said = List.copyOf(said);
      with = Map.copyOf(with);
    }
  }

  /**
   * A named value.
   *
   * @param candidates every name that it can be; never empty
   */
  record Named(
      Set<String> candidates,
      boolean recorded,
      boolean disagrees,
      List<Said> said,
      Map<String, Fact> with)
      implements Fact {

    /** Keeps the collections as they are. */
    public Named {
      if (candidates.isEmpty()) {
        throw new IllegalArgumentException("a named value without a candidate");
      }
      candidates = Set.copyOf(candidates);
      said = List.copyOf(said);
      with = Map.copyOf(with);
    }
  }

  /**
   * A pointer to a thing.
   *
   * @param things every thing that it can be
   * @param complete whether it can be nothing else
   */
  record Pointer(
      Set<String> things,
      boolean complete,
      boolean recorded,
      boolean disagrees,
      List<Said> said,
      Map<String, Fact> with)
      implements Fact {

    /** Keeps the collections as they are. */
    public Pointer {
      things = Set.copyOf(things);
      said = List.copyOf(said);
      with = Map.copyOf(with);
    }
  }
}
