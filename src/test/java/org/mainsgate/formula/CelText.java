package org.mainsgate.formula;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;

/**
 * A statement of {@link Shop} as text of the Common Expression Language, for one world of points.
 *
 * <p>Numbers are doubles in SI units, limits and cells stand in the text, and a sum is written out
 * for the things that there are. What has no value (a division by zero, a key outside its table, a
 * root below zero) is an error in CEL, whose {@code && || !} and macros treat an error as our logic
 * treats what is not decided.
 *
 * <p><b>Where doubles may not be asked.</b> The engine is exact and CEL rounds. Sums, products and
 * comparisons of small multiples of a half are exact in both, and ties between them are compared.
 * Elsewhere (a quotient, a root, a limit such as 0.1) {@link #doubt} is a second CEL text: whether
 * two sides are so near each other that the rounding may have turned their order. Its bound is a
 * running one: every number carries its {@code size}, which is to a double's rounding what the
 * number would be without cancellation.
 *
 * @param truth the statement
 * @param doubt whether rounding may have decided it
 * @param picks whether it takes a smaller or greater of two: of the unknown and five, the engine
 *     still knows that the smaller is at most five; CEL knows nothing
 */
record CelText(String truth, String doubt, boolean picks) {
  /** What CEL has no value for. */
  static final String UNDEFINED = "nothing['at all']";

  /** Thousands of times the last digit of a double: of far more operations than a formula has. */
  private static final String ROUNDING = "1e-12";

  static CelText of(String formula, Shop shop, World world) {
    return of(Shop.parsed(formula).syntax(), shop, world);
  }

  static CelText of(Syntax syntax, Shop shop, World world) {
    Writer writer = new Writer(shop, world);
    String truth = writer.truth(syntax);
    return new CelText(truth, any(writer.doubts), writer.picks);
  }

  /** The facts under the names of the text. */
  static Map<String, Object> facts(World world) {
    Map<String, Object> facts = new HashMap<>();
    world.numbers().forEach((name, value) -> facts.put(variable(name), nearest(point(value))));
    world.choices().forEach((name, values) -> facts.put(variable(name), only(values)));
    world.lists().forEach((kind, listing) -> facts.put(kind, things(world, listing)));
    facts.put("nothing", Map.of());
    return facts;
  }

  private static List<Map<String, Object>> things(World world, Listing listing) {
    return listing.items().stream()
        .map(
            item ->
                Map.<String, Object>of(
                    "m", nearest(point(world.value(item + ".m"))),
                    "m_colour", only(world.choices().getOrDefault(item + ".m_colour", Set.of()))))
        .toList();
  }

  private static String only(Iterable<String> values) {
    return values.iterator().next();
  }

  static String variable(String name) {
    return name.replace(".", "__");
  }

  private static Rational point(ExactInterval value) {
    Rational lo = Objects.requireNonNull(value.lo());
    if (!value.isPoint()) {
      throw new IllegalArgumentException("no point: " + value);
    }
    return lo;
  }

  private static double nearest(Rational value) {
    return value.down();
  }

  private static boolean isExact(Rational value) {
    return Rational.of(nearest(value)).equals(value);
  }

  private static String any(List<String> statements) {
    return statements.isEmpty() ? "false" : "(" + String.join(" || ", statements) + ")";
  }

  /**
   * A number.
   *
   * @param size at least its amount, and what its rounding is relative to
   * @param exact whether no rounding stands in it
   * @param total whether it surely has a value
   * @param typed whether it is a value of the facts or the text: what is equal there is rounded to
   *     equal doubles
   */
  private record Amount(String value, String size, boolean exact, boolean total, boolean typed) {
    static Amount of(Rational value) {
      return typed("(" + nearest(value) + ")", isExact(value));
    }

    static Amount typed(String value, boolean exact) {
      return new Amount(value, "math.abs(" + value + ")", exact, true, true);
    }

    Amount with(Amount other, String template, String sizes) {
      return new Amount(
          template.formatted(value, other.value),
          sizes.formatted(size, other.size),
          exact && other.exact,
          total && other.total,
          false);
    }

    /** A function that rounds; undefined where the condition says so. */
    Amount through(String function, String undefined, String sizes) {
      String result = "(%s ? %s : %s(%s))".formatted(undefined, UNDEFINED, function, value);
      return new Amount(result, sizes, false, false, false);
    }
  }

  /** The walk through a statement. */
  private static final class Writer {
    private final Shop shop;
    private final World world;
    private final Map<String, String> things = new LinkedHashMap<>();
    private List<String> doubts = new ArrayList<>();
    private boolean picks;

    private Writer(Shop shop, World world) {
      this.shop = shop;
      this.world = world;
    }

    private String truth(Syntax syntax) {
      if (syntax instanceof Syntax.Junction junction) {
        String left = truth(junction.left());
        String right = truth(junction.right());
        return switch (junction.connective()) {
          case AND -> "(" + left + " && " + right + ")";
          case OR -> "(" + left + " || " + right + ")";
          case IMPLIES -> "(!" + left + " || " + right + ")";
        };
      }
      if (syntax instanceof Syntax.Not not) {
        return "(!" + truth(not.argument()) + ")";
      }
      if (syntax instanceof Syntax.Order order) {
        return order(order);
      }
      if (syntax instanceof Syntax.Naming naming) {
        return named(naming);
      }
      if (syntax instanceof Syntax.Each each) {
        return each(each);
      }
      Meaning.TruthStep step = (Meaning.TruthStep) meaning((Syntax.Path) syntax);
      return truth(Shop.parsed(step.value().text()).syntax());
    }

    private String order(Syntax.Order order) {
      Amount left = amount(order.left());
      Amount right = amount(order.right());
      doubtUnlessApart(left, right);
      String sign =
          switch (order.relation()) {
            case AT_MOST -> "<=";
            case LESS_THAN -> "<";
            case AT_LEAST -> ">=";
            case MORE_THAN -> ">";
          };
      return "(" + left.value() + " " + sign + " " + right.value() + ")";
    }

    private void doubtUnlessApart(Amount left, Amount right) {
      if ((!left.exact() || !right.exact()) && (!left.typed() || !right.typed())) {
        doubts.add(
            "(math.abs(%s - %s) < %s * (%s + %s))"
                .formatted(left.value(), right.value(), ROUNDING, left.size(), right.size()));
      }
    }

    private String named(Syntax.Naming naming) {
      List<String> words = naming.values().stream().map(Syntax.Word::text).toList();
      String left = name(naming.subject().parts());
      boolean other = !naming.listed() && !Shop.COLOURS.values().contains(words.get(0));
      if (other) {
        String right = name(Arrays.asList(words.get(0).split("\\.")));
        return "(" + left + (naming.negated() ? " != " : " == ") + right + ")";
      }
      String wanted = words.stream().map(word -> "'" + word + "'").collect(Collectors.joining(","));
      return "(" + (naming.negated() ? "!" : "") + "(" + left + " in [" + wanted + "]))";
    }

    private String name(List<String> parts) {
      String thing = things.get(parts.get(0));
      return thing == null
          ? variable(String.join(".", parts))
          : "string(" + thing + "." + parts.get(1) + ")";
    }

    private String each(Syntax.Each each) {
      String kind = each.kind().text();
      String variable = each.variable().text();
      List<String> outer = doubts;
      doubts = new ArrayList<>();
      things.put(variable, variable);
      String body = truth(each.body());
      things.remove(variable);
      outer.add("%s.exists(%s, %s)".formatted(kind, variable, any(doubts)));
      doubts = outer;
      String macro = each.quantifier() == Syntax.Quantifier.ALL ? "all" : "exists";
      return "%s.%s(%s, %s)".formatted(kind, macro, variable, body);
    }

    private Amount amount(Syntax syntax) {
      if (syntax instanceof Syntax.Literal literal) {
        Unit unit = literal.unit();
        return Amount.of(unit == null ? literal.value() : Rational.ZERO);
      }
      if (syntax instanceof Syntax.Pi) {
        return new Amount("" + Math.PI, "" + Math.PI, false, true, false);
      }
      if (syntax instanceof Syntax.Single single) {
        return applied(single.function(), amount(single.argument()));
      }
      if (syntax instanceof Syntax.Extreme extreme) {
        String end = extreme.end().name().toLowerCase(Locale.ROOT);
        return known(((Syntax.Path) extreme.argument()).text() + "." + end);
      }
      if (syntax instanceof Syntax.Operation operation) {
        Amount left = amount(operation.left());
        return operated(operation.operator(), left, amount(operation.right()));
      }
      if (syntax instanceof Syntax.Each sum) {
        return sum(sum);
      }
      if (syntax instanceof Syntax.Lookup lookup) {
        return cell(lookup);
      }
      return path((Syntax.Path) syntax);
    }

    private Amount path(Syntax.Path path) {
      String thing = things.get(path.parts().get(0));
      if (thing != null) {
        return Amount.typed("double(" + thing + "." + path.parts().get(1) + ")", true);
      }
      Meaning meaning = meaning(path);
      if (meaning instanceof Meaning.Limit limit) {
        return Amount.of(point(limit.value()));
      }
      return meaning instanceof Meaning.Step step
          ? amount(Shop.parsed(step.value().text()).syntax())
          : known(path.text());
    }

    private Amount known(String name) {
      return Amount.typed(variable(name), isExact(point(world.value(name))));
    }

    private Meaning meaning(Syntax.Path path) {
      return shop.meaning(path.parts(), Map.of()).orElseThrow();
    }

    private Amount operated(Arithmetic operator, Amount left, Amount right) {
      return switch (operator) {
        case PLUS -> left.with(right, "(%s + %s)", "(%s + %s)");
        case MINUS -> left.with(right, "(%s - %s)", "(%s + %s)");
        case TIMES -> times(left, right);
        case OVER -> over(left, right);
        case MIN -> picked(left, right, "math.least(%s, %s)");
        case MAX -> picked(left, right, "math.greatest(%s, %s)");
      };
    }

    private Amount picked(Amount left, Amount right, String template) {
      picks = true;
      Amount one = left.with(right, template, "math.greatest(%s, %s)");
      boolean typed = left.typed() && right.typed();
      return new Amount(one.value(), one.size(), one.exact(), one.total(), typed);
    }

    /** Zero times what has no value is zero. */
    private Amount times(Amount left, Amount right) {
      if (left.total() && right.total()) {
        return left.with(right, "(%s * %s)", "(%s * %s)");
      }
      Amount zero = Amount.of(Rational.ZERO);
      doubtUnlessApart(left, zero);
      doubtUnlessApart(right, zero);
      return left.with(right, "(%1$s == 0.0 || %2$s == 0.0 ? 0.0 : %1$s * %2$s)", "(%s * %s)");
    }

    private Amount over(Amount left, Amount right) {
      doubtUnlessApart(right, Amount.of(Rational.ZERO));
      Amount both = left.with(right, "(%2$s == 0.0 ? " + UNDEFINED + " : %1$s / %2$s)", "(%s * %s");
      String size = both.size() + " / (" + right.value() + " * " + right.value() + "))";
      return new Amount(both.value(), size, false, false, false);
    }

    private Amount applied(Function function, Amount x) {
      if (function == Function.SQRT || function == Function.LN) {
        doubtUnlessApart(x, Amount.of(Rational.ZERO));
      }
      String value = x.value();
      return switch (function) {
        case MINUS -> new Amount("(-" + value + ")", x.size(), x.exact(), x.total(), x.typed());
        case SQRT ->
            x.through(
                "math.sqrt",
                value + " < 0.0",
                "(%1$s == 0.0 ? 0.0 : %2$s / math.sqrt(%1$s))".formatted(value, x.size()));
        case LN ->
            x.through(
                "ln",
                value + " <= 0.0",
                "(%2$s / %1$s + math.abs(ln(%1$s)))".formatted(value, x.size()));
        case EXP2 ->
            new Amount(
                "exp2(" + value + ")",
                "(exp2(%s) * (1.0 + %s))".formatted(value, x.size()),
                false,
                x.total(),
                false);
      };
    }

    private Amount sum(Syntax.Each each) {
      String kind = each.kind().text();
      Amount total = Amount.of(Rational.ZERO);
      for (int i = 0; i < world.items(kind).items().size(); i++) {
        things.put(each.variable().text(), kind + "[" + i + "]");
        total = total.with(amount(each.body()), "(%s + %s)", "(%s + %s)");
      }
      things.remove(each.variable().text());
      return total;
    }

    private Amount cell(Syntax.Lookup lookup) {
      Table table = shop.table(lookup.table()).orElseThrow();
      String column = lookup.column().text();
      List<Rational> cells = table.rows().stream().map(row -> cell(row, column)).toList();
      String value =
          table.key() instanceof Table.NumberKey key
              ? chain(table.rows(), column, key.mode(), amount(lookup.key()))
              : chain(table.rows(), column, name(((Syntax.Path) lookup.key()).parts()));
      Rational greatest = cells.stream().map(Rational::abs).reduce(Rational.ZERO, Rational::max);
      boolean exact = cells.stream().allMatch(CelText::isExact);
      return new Amount(value, "" + nearest(greatest), exact, false, true);
    }

    /**
     * Rows stand in the order of their keys; what is at most the key is looked for from the end.
     */
    private String chain(List<Table.Row> rows, String column, Table.RowMode mode, Amount key) {
      String chain = UNDEFINED;
      for (int i = 0; i < rows.size(); i++) {
        int at = mode == Table.RowMode.AT_MOST ? i : rows.size() - 1 - i;
        Table.Row row = rows.get(at);
        Amount own = Amount.of(Objects.requireNonNull(row.number()));
        doubtUnlessApart(key, own);
        String sign =
            switch (mode) {
              case AT_LEAST -> " <= ";
              case AT_MOST -> " >= ";
              case EXACT -> " == ";
            };
        String fits = key.value() + sign + own.value();
        chain = "(%s ? %s : %s)".formatted(fits, Amount.of(cell(row, column)).value(), chain);
      }
      return chain;
    }

    private static String chain(List<Table.Row> rows, String column, String key) {
      String chain = UNDEFINED;
      for (Table.Row row : rows) {
        String fits = key + " == '" + row.named() + "'";
        chain = "(%s ? %s : %s)".formatted(fits, Amount.of(cell(row, column)).value(), chain);
      }
      return chain;
    }

    private static Rational cell(Table.Row row, String column) {
      return point(row.cell(column));
    }
  }
}
