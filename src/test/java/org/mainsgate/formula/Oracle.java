package org.mainsgate.formula;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/**
 * Two naive evaluators over the parsed tree, for the names of {@link Shop} without units: what must
 * hold and what might. Two-valued logic and plain rationals; shares nothing with the engine but the
 * parser.
 */
record Oracle(World world) {
  private static final Map<String, String> STEPS = Map.of("twice", "a + a", "warm", "a >= low");
  private static final Map<String, Rational> LIMITS =
      Map.of("low", Rational.of(1), "high", Rational.of(2), "debt", Rational.of(-2));

  /** The ends of what a number can be; null is endless. */
  private record Ends(@Nullable Rational lo, @Nullable Rational hi) {
    static final Ends UNKNOWN = new Ends(null, null);

    static Ends of(Rational point) {
      return new Ends(point, point);
    }

    boolean finite() {
      return lo != null && hi != null;
    }
  }

  boolean must(Syntax s) {
    return holds(s, true);
  }

  boolean might(Syntax s) {
    return holds(s, false);
  }

  private boolean holds(Syntax s, boolean must) {
    if (s instanceof Syntax.Junction j) {
      return switch (j.connective()) {
        case AND -> holds(j.left(), must) && holds(j.right(), must);
        case OR -> holds(j.left(), must) || holds(j.right(), must);
        case IMPLIES -> !holds(j.left(), !must) || holds(j.right(), must);
      };
    }
    if (s instanceof Syntax.Not not) {
      return !holds(not.argument(), !must);
    }
    if (s instanceof Syntax.Order order) {
      return order(order, must);
    }
    if (s instanceof Syntax.Naming naming) {
      return named(naming, must);
    }
    if (s instanceof Syntax.Each each) {
      return each(each, must);
    }
    Syntax.Path path = (Syntax.Path) s;
    return holds(Shop.parsed(STEPS.getOrDefault(path.text(), "")).syntax(), must);
  }

  private boolean order(Syntax.Order order, boolean must) {
    Ends left = ends(order.left());
    Ends right = ends(order.right());
    return switch (order.relation()) {
      case AT_MOST -> below(left, right, must, false);
      case LESS_THAN -> below(left, right, must, true);
      case AT_LEAST -> below(right, left, must, false);
      case MORE_THAN -> below(right, left, must, true);
    };
  }

  private static boolean below(Ends small, Ends great, boolean must, boolean strict) {
    Rational worst = must ? small.hi() : small.lo();
    Rational best = must ? great.lo() : great.hi();
    if (worst == null || best == null) {
      return !must;
    }
    return strict ? worst.compareTo(best) < 0 : worst.compareTo(best) <= 0;
  }

  private boolean named(Syntax.Naming naming, boolean must) {
    if (naming.negated()) {
      Syntax.Naming plain =
          new Syntax.Naming(naming.span(), naming.subject(), false, false, naming.values());
      return !named(plain, !must);
    }
    Set<String> left = candidates(naming.subject().parts());
    List<String> words = naming.values().stream().map(Syntax.Word::text).toList();
    boolean other = !naming.listed() && !Shop.COLOURS.values().contains(words.get(0));
    Set<String> right = other ? candidates(List.of(words.get(0).split("\\."))) : Set.copyOf(words);
    Predicate<String> fits =
        value -> (must && other) ? right.equals(Set.of(value)) : right.contains(value);
    return must ? left.stream().allMatch(fits) : left.stream().anyMatch(fits);
  }

  private Set<String> candidates(List<String> path) {
    return world.named(reference(path));
  }

  private Reference reference(List<String> path) {
    boolean item = world.bound().containsKey(path.get(0));
    return item
        ? new Reference(path.get(0), path.subList(1, path.size()))
        : new Reference(null, path);
  }

  private boolean each(Syntax.Each each, boolean must) {
    Listing listing = world.items(each.kind().text());
    Stream<Oracle> items =
        listing.items().stream().map(item -> new Oracle(world.with(each.variable().text(), item)));
    boolean all = each.quantifier() == Syntax.Quantifier.ALL;
    if (all) {
      return items.allMatch(o -> o.holds(each.body(), must)) && (listing.closed() || !must);
    }
    return items.anyMatch(o -> o.holds(each.body(), must)) || (!listing.closed() && !must);
  }

  private Ends ends(Syntax s) {
    if (s instanceof Syntax.Literal literal) {
      return Ends.of(literal.value());
    }
    if (s instanceof Syntax.Single minus) {
      Ends e = ends(minus.argument());
      Rational lo = e.hi();
      Rational hi = e.lo();
      return new Ends(lo == null ? null : lo.negate(), hi == null ? null : hi.negate());
    }
    if (s instanceof Syntax.Extreme extreme) {
      String end = "." + extreme.end().name().toLowerCase(Locale.ROOT);
      return ends(world.value(((Syntax.Path) extreme.argument()).text() + end));
    }
    if (s instanceof Syntax.Operation operation) {
      return operation(operation.operator(), ends(operation.left()), ends(operation.right()));
    }
    if (s instanceof Syntax.Each sum) {
      return sum(sum);
    }
    if (s instanceof Syntax.Lookup lookup) {
      return lookup(lookup);
    }
    Syntax.Path path = (Syntax.Path) s;
    Rational limit = LIMITS.get(path.text());
    String step = STEPS.get(path.text());
    if (step != null) {
      return ends(Shop.parsed(step).syntax());
    }
    return limit != null ? Ends.of(limit) : ends(world.value(world.key(reference(path.parts()))));
  }

  private static Ends ends(ExactInterval value) {
    return new Ends(value.lo(), value.hi());
  }

  private Ends sum(Syntax.Each each) {
    Listing listing = world.items(each.kind().text());
    if (!listing.closed()) {
      return Ends.UNKNOWN;
    }
    Ends total = Ends.of(Rational.ZERO);
    for (String item : listing.items()) {
      Oracle about = new Oracle(world.with(each.variable().text(), item));
      total = operation(Arithmetic.PLUS, total, about.ends(each.body()));
    }
    return total;
  }

  /** Numbers here are finite or quite unknown, so one unknown side settles all but min and max. */
  private static Ends operation(Arithmetic operator, Ends left, Ends right) {
    Rational a = left.lo();
    Rational b = left.hi();
    Rational c = right.lo();
    Rational d = right.hi();
    if (operator == Arithmetic.MIN) {
      return new Ends(
          a == null || c == null ? null : a.min(c), b == null ? d : d == null ? b : b.min(d));
    }
    if (operator == Arithmetic.MAX) {
      return new Ends(
          a == null ? c : c == null ? a : a.max(c), b == null || d == null ? null : b.max(d));
    }
    boolean pointZero = isZero(left) || isZero(right);
    if (operator == Arithmetic.TIMES && pointZero) {
      return Ends.of(Rational.ZERO);
    }
    if (a == null || b == null || c == null || d == null) {
      return endless(operator, left, right);
    }
    if (operator == Arithmetic.OVER && c.signum() <= 0 && d.signum() >= 0) {
      return Ends.UNKNOWN;
    }
    List<Rational> corners =
        Stream.of(a, b).flatMap(x -> Stream.of(c, d).map(y -> point(operator, x, y))).toList();
    return new Ends(
        corners.stream().reduce(Rational::min).orElseThrow(),
        corners.stream().reduce(Rational::max).orElseThrow());
  }

  private static boolean isZero(Ends ends) {
    return ends.equals(Ends.of(Rational.ZERO));
  }

  /**
   * Half-open ends come from min and max alone; they are followed by the engine's own intervals.
   */
  private static Ends endless(Arithmetic operator, Ends left, Ends right) {
    ExactInterval l = new ExactInterval(left.lo(), left.hi());
    ExactInterval r = new ExactInterval(right.lo(), right.hi());
    return ends(operator.exact(l, r));
  }

  private static Rational point(Arithmetic operator, Rational x, Rational y) {
    return switch (operator) {
      case PLUS -> x.plus(y);
      case MINUS -> x.minus(y);
      case TIMES -> x.times(y);
      case OVER -> x.dividedBy(y);
      case MIN -> x.min(y);
      case MAX -> x.max(y);
    };
  }

  /** By trial of every key that can matter: the ends, the rows and the middles between them. */
  private Ends lookup(Syntax.Lookup lookup) {
    if (lookup.table().equals("colours")) {
      Map<String, Long> cells = Map.of("red", 1L, "green", 3L);
      Set<String> candidates = candidates(((Syntax.Path) lookup.key()).parts());
      return hull(candidates.stream().map(cells::get).toArray(Long[]::new));
    }
    Ends key = ends(lookup.key());
    if (!key.finite()) {
      return lookup.table().equals("marks") ? Ends.UNKNOWN : halfOpen(lookup.table(), key);
    }
    return trial(lookup.table(), key.lo(), key.hi());
  }

  private static Ends halfOpen(String table, Ends key) {
    Rational lo = key.lo() == null ? Rational.of(-99) : key.lo();
    Rational hi = key.hi() == null ? Rational.of(99) : key.hi();
    return trial(table, lo.min(hi), hi.max(lo));
  }

  private static Ends trial(String table, @Nullable Rational lo, @Nullable Rational hi) {
    if (lo == null || hi == null) {
      return Ends.UNKNOWN;
    }
    Map<Rational, Boolean> keys = new HashMap<>();
    Stream.of(-99L, -1L, 0L, 1L, 2L, 3L, 4L, 5L, 6L)
        .map(half -> Rational.of(half, 2))
        .filter(x -> x.compareTo(lo) >= 0 && x.compareTo(hi) <= 0)
        .forEach(x -> keys.put(x, true));
    keys.put(lo, true);
    keys.put(hi, true);
    keys.put(lo.plus(hi).dividedBy(Rational.of(2)), true);
    return hull(keys.keySet().stream().map(x -> cell(table, x)).toArray(Long[]::new));
  }

  private static @Nullable Long cell(String table, Rational key) {
    long[] rows = {0, 1, 2};
    Long found = null;
    for (long row : rows) {
      int order = Rational.of(row).compareTo(key);
      boolean fits =
          switch (table) {
            case "steps" -> order >= 0 && found == null;
            case "stairs" -> order <= 0;
            default -> order == 0;
          };
      found = fits ? Long.valueOf(10 * row * row) : found;
    }
    return found;
  }

  private static Ends hull(@Nullable Long[] cells) {
    Rational lo = null;
    Rational hi = null;
    for (Long cell : cells) {
      if (cell == null) {
        return Ends.UNKNOWN;
      }
      Rational value = Rational.of(cell);
      lo = lo == null ? value : lo.min(value);
      hi = hi == null ? value : hi.max(value);
    }
    return new Ends(lo, hi);
  }
}
