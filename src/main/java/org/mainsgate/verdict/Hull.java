package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mainsgate.formula.Range;
import org.mainsgate.formula.Varying;

/**
 * Two facts about one property taken together: everything that either allows, so that the worse of
 * two readings counts.
 */
public final class Hull {
  private Hull() {}

  /**
   * The hull of two facts of one sort. It is recorded where both are; two that exclude each other
   * do not disagree by that alone, since they may be of different things.
   */
  public static Fact of(Fact a, Fact b) {
    boolean recorded = a.recorded() && b.recorded();
    boolean disagrees = a.disagrees() || b.disagrees();
    List<Said> said = both(a.said(), b.said());
    Map<String, Fact> with = with(a, b);
    if (a instanceof Fact.Amount x && b instanceof Fact.Amount y) {
      Range range = Range.of(x.range().exact().hull(y.range().exact()));
      return new Fact.Amount(
          range, recorded, disagrees, x.impossible() || y.impossible(), said, with);
    }
    if (a instanceof Fact.Named x && b instanceof Fact.Named y) {
      return new Fact.Named(union(x.candidates(), y.candidates()), recorded, disagrees, said, with);
    }
    if (a instanceof Fact.Pointer x && b instanceof Fact.Pointer y) {
      return new Fact.Pointer(
          union(x.things(), y.things()),
          x.complete() && y.complete(),
          recorded,
          disagrees,
          said,
          with);
    }
    Varying x = ((Fact.Varying) a).range();
    Varying y = ((Fact.Varying) b).range();
    Varying range =
        new Varying(
            x.lowest().hull(y.lowest()),
            x.nominal().hull(y.nominal()),
            x.highest().hull(y.highest()));
    return new Fact.Varying(range, recorded, disagrees, said, with);
  }

  /** The same fact, where it is not certain that it is the one that is meant. */
  static Fact unrecorded(Fact fact) {
    if (fact instanceof Fact.Amount x) {
      return new Fact.Amount(x.range(), false, x.disagrees(), x.impossible(), x.said(), x.with());
    }
    if (fact instanceof Fact.Named x) {
      return new Fact.Named(x.candidates(), false, x.disagrees(), x.said(), x.with());
    }
    if (fact instanceof Fact.Pointer x) {
      return new Fact.Pointer(x.things(), x.complete(), false, x.disagrees(), x.said(), x.with());
    }
    Fact.Varying x = (Fact.Varying) fact;
    return new Fact.Varying(x.range(), false, x.disagrees(), x.said(), x.with());
  }

  /** The same fact, made of entries that exclude each other. */
  public static Fact disagreeing(Fact fact) {
    if (fact instanceof Fact.Amount x) {
      return new Fact.Amount(x.range(), x.recorded(), true, x.impossible(), x.said(), x.with());
    }
    if (fact instanceof Fact.Named x) {
      return new Fact.Named(x.candidates(), x.recorded(), true, x.said(), x.with());
    }
    if (fact instanceof Fact.Pointer x) {
      return new Fact.Pointer(x.things(), x.complete(), x.recorded(), true, x.said(), x.with());
    }
    Fact.Varying x = (Fact.Varying) fact;
    return new Fact.Varying(x.range(), x.recorded(), true, x.said(), x.with());
  }

  /** What stands with both; what stands with one only is not known of the two together. */
  private static Map<String, Fact> with(Fact a, Fact b) {
    Map<String, Fact> with = new HashMap<>();
    a.with()
        .forEach(
            (name, fact) -> {
              Fact other = b.with().get(name);
              if (other != null) {
                with.put(name, of(fact, other));
              }
            });
    return with;
  }

  private static List<Said> both(List<Said> a, List<Said> b) {
    List<Said> both = new ArrayList<>(a);
    both.addAll(b);
    return both;
  }

  private static Set<String> union(Set<String> a, Set<String> b) {
    Set<String> union = new HashSet<>(a);
    union.addAll(b);
    return union;
  }
}
