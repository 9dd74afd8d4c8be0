package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;

/** Random formulas over the plain names of {@link Shop}, and random worlds for them. */
final class RandomFormulas {
  private static final List<String> NUMBERS = List.of("a", "b", "c", "d", "e", "f");
  private static final List<String> OBSERVATIONS = List.of("k", "n");

  /** What a value is a small multiple of, in SI units: 25 mΩ, 5 A, 0.25 mm², 0.5 m, 40 V, 50 K. */
  private static final Map<String, Rational> SHOP_UNITS =
      new TreeMap<>(
          Map.of(
              "earth_resistance", Rational.of(1, 40),
              "earth_resistance.test_current", Rational.of(5),
              "core_area", Rational.of(1, 4_000_000),
              "lead_length", Rational.of(1, 2),
              "voltage", Rational.of(40),
              "supply.lowest", Rational.of(40),
              "supply.nominal", Rational.of(40),
              "supply.highest", Rational.of(40),
              "ambient", Rational.of(50)));

  private RandomFormulas() {}

  /** Statements that use the whole language but for √, ln, 2ˣ and π, which end in doubles. */
  static Arbitrary<String> statements() {
    return statement(3, false);
  }

  private static Arbitrary<String> statement(int depth, boolean inside) {
    List<Arbitrary<String>> leaves = new ArrayList<>();
    leaves.add(comparison(number(2, inside, false)));
    leaves.add(
        Arbitraries.of(
            "k is red", "k is not green", "n in (red, blue)", "k is n", "k is not n", "warm"));
    if (inside) {
      leaves.add(Arbitraries.of("p.m_colour is red", "p.m_colour is k", "p.m_colour in (blue)"));
    }
    Arbitrary<String> leaf = Arbitraries.oneOf(leaves);
    if (depth == 0) {
      return leaf;
    }
    Arbitrary<String> part = statement(depth - 1, inside);
    Arbitrary<String> joined =
        Combinators.combine(part, Arbitraries.of("and", "or", "implies"), part)
            .as((l, word, r) -> "(" + l + " " + word + " " + r + ")");
    List<Arbitrary<String>> all =
        new ArrayList<>(List.of(leaf, joined, part.map("not (%s)"::formatted)));
    if (!inside) {
      Arbitrary<String> body = statement(depth - 1, true);
      all.add(body.map("(all p in part: %s)"::formatted));
      all.add(body.map("(any p in part: %s)"::formatted));
    }
    return Arbitraries.oneOf(all);
  }

  private static Arbitrary<String> comparison(Arbitrary<String> number) {
    return Combinators.combine(number, Arbitraries.of("<=", "<", ">=", ">"), number)
        .as((l, sign, r) -> l + " " + sign + " " + r);
  }

  private static Arbitrary<String> number(int depth, boolean inside, boolean summed) {
    List<String> names =
        new ArrayList<>(
            List.of("a", "b", "c", "e", "highest(v)", "lowest(v)", "nominal(v)", "low", "high"));
    names.addAll(List.of("0", "1", "0.5", "3", "twice", "colours(k).value"));
    names.addAll(inside ? List.of("p.m", "p.m") : List.of());
    names.addAll(summed ? List.of("q.m", "q.m") : List.of());
    Arbitrary<String> leaf = Arbitraries.of(names);
    if (depth == 0) {
      return leaf;
    }
    Arbitrary<String> part = number(depth - 1, inside, summed);
    List<Arbitrary<String>> all = new ArrayList<>(List.of(leaf, operations(part)));
    all.add(
        Combinators.combine(Arbitraries.of("steps", "stairs", "marks"), part)
            .as((table, key) -> table + "(" + key + ").value"));
    if (!summed) {
      all.add(number(depth - 1, inside, true).map("(sum q in part: %s)"::formatted));
    }
    return Arbitraries.oneOf(all);
  }

  private static Arbitrary<String> operations(Arbitrary<String> part) {
    Arbitrary<String> signs =
        Combinators.combine(part, Arbitraries.of("+", "-", "*", "/"), part)
            .as((l, sign, r) -> "(" + l + " " + sign + " " + r + ")");
    Arbitrary<String> ends =
        Combinators.combine(Arbitraries.of("min", "max"), part, part)
            .as((end, l, r) -> end + "(" + l + ", " + r + ")");
    return Arbitraries.oneOf(signs, ends, part.map("-(%s)"::formatted));
  }

  /**
   * Statements with units, and with √, ln, 2ˣ and π, over the names that {@link #shopPoints} knows.
   */
  static Arbitrary<String> statementsWithUnits() {
    Arbitrary<String> leaf =
        Arbitraries.oneOf(
            comparison(
                quantity(
                    "earth_resistance",
                    "base",
                    "copper",
                    "flex(core_area).plain * lead_length",
                    "voltage / earth_resistance.test_current")),
            comparison(
                quantity(
                    "voltage",
                    "highest(supply)",
                    "lowest(supply)",
                    "nominal(supply)",
                    "earth_resistance * earth_resistance.test_current")),
            comparison(quantity("ambient", "hot", "rise", "(ambient + rise)")),
            comparison(grownQuantity(factor())));
    Arbitrary<String> joined =
        Combinators.combine(leaf, Arbitraries.of("and", "or", "implies", "and not"), leaf)
            .as((l, word, r) -> "(" + l + ") " + word + " (" + r + ")");
    return Arbitraries.oneOf(leaf, leaf.map("not (%s)"::formatted), joined);
  }

  private static Arbitrary<String> quantity(String... names) {
    Arbitrary<String> small = grownQuantity(Arbitraries.of(names));
    return grownQuantity(Arbitraries.oneOf(Arbitraries.of(names), small));
  }

  private static Arbitrary<String> grownQuantity(Arbitrary<String> part) {
    Arbitrary<String> signs =
        Combinators.combine(part, Arbitraries.of("+", "-"), part)
            .as((l, sign, r) -> "(" + l + " " + sign + " " + r + ")");
    Arbitrary<String> scaled =
        Combinators.combine(part, Arbitraries.of("*", "/"), factor())
            .as((l, sign, r) -> "(" + l + " " + sign + " " + r + ")");
    Arbitrary<String> ends =
        Combinators.combine(Arbitraries.of("min", "max"), part, part)
            .as((end, l, r) -> end + "(" + l + ", " + r + ")");
    Arbitrary<String> root =
        Combinators.combine(part, part).as((l, r) -> "sqrt(" + l + " * " + r + ")");
    return Arbitraries.oneOf(part, signs, scaled, ends, root, part.map("-(%s)"::formatted));
  }

  private static Arbitrary<String> factor() {
    return Arbitraries.of(
        "2",
        "0.1",
        "3",
        "share",
        "pi",
        "a",
        "sqrt(e)",
        "ln(f)",
        "exp2(b)",
        "steps(a).value",
        "(earth_resistance / base)",
        "(voltage / nominal(supply))");
  }

  /**
   * Worlds of points, in units of the trade, for {@link #statementsWithUnits}: round values that
   * meet limits and rows, and crooked ones.
   */
  static Arbitrary<World> shopPoints() {
    Arbitrary<Rational> round = Arbitraries.integers().between(0, 8).map(Rational::of);
    Arbitrary<Rational> crooked =
        Arbitraries.integers().between(1, 800).map(parts -> Rational.of(parts, 97));
    Arbitrary<List<Rational>> amounts =
        Arbitraries.frequencyOf(Tuple.of(1, round), Tuple.of(7, crooked))
            .list()
            .ofSize(SHOP_UNITS.size());
    return Combinators.combine(worlds(true, false), amounts).as(RandomFormulas::withUnits);
  }

  private static World withUnits(World plain, List<Rational> amounts) {
    World world = plain;
    int i = 0;
    for (Map.Entry<String, Rational> unit : SHOP_UNITS.entrySet()) {
      Rational value = unit.getValue().times(amounts.get(i++));
      world = world.number(unit.getKey(), ExactInterval.point(value));
    }
    return world;
  }

  /** Statements with every name at most once, of operations whose extremes are at corners. */
  static Arbitrary<String> statementsWithEachNameOnce() {
    Arbitrary<List<String>> names =
        Arbitraries.shuffle(List.of("a", "b", "c", "d", "e", "f", "2", "0.5"));
    Arbitrary<List<String>> signs = Arbitraries.of("+", "-", "*", "min").list().ofSize(4);
    Arbitrary<List<String>> relations = Arbitraries.of("<=", "<", ">=", ">").list().ofSize(2);
    Arbitrary<List<String>> words = Arbitraries.of("and", "or", "implies").list().ofSize(2);
    return Combinators.combine(names, signs, relations, words)
        .as(
            (n, s, r, w) -> {
              String first = joined(s.get(0), n.get(0), joined(s.get(1), n.get(1), n.get(2)));
              String second = joined(s.get(2), n.get(4), n.get(5));
              String third = joined(s.get(3), n.get(6), n.get(7));
              return "(%s %s %s %s not %s %s %s) %s k is red"
                  .formatted(
                      first, r.get(0), n.get(3), w.get(0), second, r.get(1), third, w.get(1));
            });
  }

  private static String joined(String sign, String left, String right) {
    return sign.equals("min")
        ? "min(" + left + ", " + right + ")"
        : "(" + left + " " + sign + " " + right + ")";
  }

  /** Worlds on a coarse grid, so that ends meet limits and rows often. */
  static Arbitrary<World> worlds(boolean points, boolean mayBeUnknown) {
    Arbitrary<ExactInterval> value = interval(points, mayBeUnknown);
    Arbitrary<Map<String, ExactInterval>> numbers =
        value.list().ofSize(13).map(RandomFormulas::named);
    Arbitrary<List<Set<String>>> choices =
        Arbitraries.of(Shop.COLOURS.values())
            .set()
            .ofMinSize(1)
            .ofMaxSize(points ? 1 : 3)
            .list()
            .ofSize(4);
    Arbitrary<Boolean> closed = points ? Arbitraries.just(true) : Arbitraries.of(true, true, false);
    Arbitrary<List<String>> items =
        Arbitraries.integers().between(0, 2).map(count -> List.of("p1", "p2").subList(0, count));
    return Combinators.combine(numbers, choices, closed, items)
        .as(
            (n, c, all, i) ->
                new World(n, chosen(c), Map.of("part", new Listing(i, all)), Map.of()));
  }

  private static Map<String, ExactInterval> named(List<ExactInterval> values) {
    List<String> names = new ArrayList<>(NUMBERS);
    names.addAll(List.of("v.lowest", "v.nominal", "v.highest", "p1.m", "p2.m", "p3.m", "p4.m"));
    Map<String, ExactInterval> numbers = new LinkedHashMap<>();
    for (int i = 0; i < names.size(); i++) {
      boolean positive = names.get(i).equals("e") || names.get(i).equals("f");
      numbers.put(names.get(i), positive ? magnitude(values.get(i)) : values.get(i));
    }
    return numbers;
  }

  /** The part of an interval above zero, or zero: for what is never negative. */
  private static ExactInterval magnitude(ExactInterval value) {
    return value.max(ExactInterval.point(Rational.ZERO));
  }

  private static Map<String, Set<String>> chosen(List<Set<String>> choices) {
    Map<String, Set<String>> named = new LinkedHashMap<>();
    List<String> names = new ArrayList<>(OBSERVATIONS);
    names.addAll(List.of("p1.m_colour", "p2.m_colour"));
    for (int i = 0; i < names.size(); i++) {
      named.put(names.get(i), choices.get(i));
    }
    return named;
  }

  private static Arbitrary<ExactInterval> interval(boolean points, boolean mayBeUnknown) {
    Arbitrary<Rational> ends =
        Arbitraries.integers().between(-4, 8).map(halves -> Rational.of(halves, 2));
    Arbitrary<ExactInterval> point = ends.map(ExactInterval::point);
    if (points) {
      return point;
    }
    Arbitrary<ExactInterval> wide =
        Combinators.combine(ends, ends).as((x, y) -> ExactInterval.of(x.min(y), x.max(y)));
    return mayBeUnknown
        ? Arbitraries.oneOf(point, wide, wide, Arbitraries.just(ExactInterval.UNBOUNDED))
        : Arbitraries.oneOf(point, wide, wide);
  }
}
