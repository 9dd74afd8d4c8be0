package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/** A random better knowledge of the same things: of all to the point, or of some a little. */
record Narrowing(Random random, boolean points) {
  World of(World world) {
    Map<String, ExactInterval> numbers = new LinkedHashMap<>();
    world.numbers().forEach((name, value) -> numbers.put(name, narrower(value)));
    Map<String, Set<String>> choices = new LinkedHashMap<>();
    world.choices().forEach((name, values) -> choices.put(name, fewer(values)));
    Map<String, Listing> lists = new LinkedHashMap<>();
    world.lists().forEach((kind, listing) -> lists.put(kind, closed(listing)));
    return new World(numbers, choices, lists, world.bound());
  }

  private ExactInterval narrower(ExactInterval value) {
    Rational lo = value.lo() == null ? Rational.of(-3) : value.lo();
    Rational hi = value.hi() == null ? Rational.of(5) : value.hi();
    Rational x = between(lo, hi);
    Rational y = between(lo, hi);
    if (points) {
      return ExactInterval.point(x);
    }
    return random.nextInt(3) == 0 ? value : ExactInterval.of(x.min(y), x.max(y));
  }

  private Rational between(Rational lo, Rational hi) {
    return lo.plus(hi.minus(lo).times(Rational.of(random.nextInt(9), 8)));
  }

  private Set<String> fewer(Set<String> values) {
    List<String> all = new ArrayList<>(new TreeSet<>(values));
    int keep = points ? 1 : 1 + random.nextInt(all.size());
    while (all.size() > keep) {
      all.remove(random.nextInt(all.size()));
    }
    return Set.copyOf(all);
  }

  /** An open list may turn out to be longer when it is closed. */
  private Listing closed(Listing listing) {
    boolean stays = listing.closed() || (!points && random.nextBoolean());
    if (stays) {
      return listing;
    }
    List<String> items = new ArrayList<>(listing.items());
    items.addAll(List.of("p3", "p4").subList(0, random.nextInt(3)));
    return new Listing(items, true);
  }
}
