package org.mainsgate.benchmarks;

import dev.cel.bundle.Cel;
import dev.cel.bundle.CelFactory;
import dev.cel.common.CelValidationException;
import dev.cel.common.types.SimpleType;
import dev.cel.runtime.CelEvaluationException;
import dev.cel.runtime.CelRuntime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.mainsgate.formula.Facts;
import org.mainsgate.formula.Formula;
import org.mainsgate.formula.Listing;
import org.mainsgate.formula.Meaning;
import org.mainsgate.formula.Nature;
import org.mainsgate.formula.Range;
import org.mainsgate.formula.Reference;
import org.mainsgate.formula.Scope;
import org.mainsgate.formula.Table;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.formula.Varying;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.SourceText;
import org.mainsgate.source.Text;

/**
 * Forty comparisons {@code v <= k + a * b / c} over sixteen numbers: by the formula language with
 * and without its explanation, by hand in plain Java with the same intervals, and by CEL on plain
 * numbers.
 */
public final class FormulaBenchmark {
  private static final int RULES = 40;
  private static final int NUMBERS = 16;
  private static final int REPEATED = 400;
  private static final Unit PLAIN = new Unit("1", Dimension.NONE, Rational.ONE, Rational.ZERO);

  private FormulaBenchmark() {}

  /** A comparison: which numbers stand in it, and its constant in hundredths. */
  private record Rule(int v, int k, int a, int b, int c) {
    String text() {
      return name(v) + " <= " + constant() + " + " + name(a) + " * " + name(b) + " / " + name(c);
    }

    String constant() {
      return k / 100 + "." + (k % 100) / 10 + k % 10;
    }
  }

  private static String name(int number) {
    return "v" + (char) ('a' + number);
  }

  /** Runs it. */
  public static void main(String[] arguments) {
    Random random = new Random(1956);
    List<Rule> rules = new ArrayList<>();
    for (int i = 0; i < RULES; i++) {
      rules.add(
          new Rule(
              random.nextInt(NUMBERS),
              10 + random.nextInt(190),
              random.nextInt(NUMBERS),
              random.nextInt(NUMBERS),
              random.nextInt(NUMBERS)));
    }
    Known known = new Known(random);
    List<TruthFormula> formulas = rules.stream().map(FormulaBenchmark::formula).toList();
    List<CelRuntime.Program> programs = rules.stream().map(FormulaBenchmark::program).toList();
    Map<String, Double> points = known.points();
    Interval[] numbers = known.numbers();
    Interval[] constants =
        rules.stream()
            .map(rule -> ExactInterval.point(Rational.of(rule.constant())).outward())
            .toArray(Interval[]::new);
    int again = agree(rules, formulas, known, numbers, constants);
    System.out.println(again + " of " + RULES + " are made again in exact numbers");
    new Paired()
        .with("plain Java with the same intervals", () -> byHand(rules, numbers, constants))
        .with("formula language", () -> evaluated(formulas, known))
        .with("formula language, explained", () -> explained(formulas, known))
        .with("CEL on plain numbers", () -> byCel(programs, points))
        .measure(30, 41, RULES * REPEATED, "comparison", System.out);
  }

  private static long byHand(List<Rule> rules, Interval[] numbers, Interval[] constants) {
    long met = 0;
    for (int n = 0; n < REPEATED; n++) {
      for (int i = 0; i < RULES; i++) {
        met += byHand(rules.get(i), numbers, constants[i]) == Truth.MET ? 1 : 0;
      }
    }
    return met;
  }

  private static Truth byHand(Rule rule, Interval[] numbers, Interval constant) {
    Interval product = numbers[rule.a()].times(numbers[rule.b()]).dividedBy(numbers[rule.c()]);
    return numbers[rule.v()].atMost(constant.plus(product));
  }

  private static long evaluated(List<TruthFormula> formulas, Facts facts) {
    long met = 0;
    for (int n = 0; n < REPEATED; n++) {
      for (TruthFormula formula : formulas) {
        met += formula.evaluate(facts) == Truth.MET ? 1 : 0;
      }
    }
    return met;
  }

  private static long explained(List<TruthFormula> formulas, Facts facts) {
    long grounds = 0;
    for (int n = 0; n < REPEATED; n++) {
      for (TruthFormula formula : formulas) {
        grounds += formula.explain(facts).size();
      }
    }
    return grounds;
  }

  private static long byCel(List<CelRuntime.Program> programs, Map<String, Double> points) {
    long met = 0;
    try {
      for (int n = 0; n < REPEATED; n++) {
        for (CelRuntime.Program program : programs) {
          met += Boolean.TRUE.equals(program.eval(points)) ? 1 : 0;
        }
      }
    } catch (CelEvaluationException e) {
      throw new IllegalStateException(e);
    }
    return met;
  }

  /**
   * The same work is done only where the same comes of it.
   *
   * @return how many are not decided in doubles, which the formula language then makes again
   */
  private static int agree(
      List<Rule> rules,
      List<TruthFormula> formulas,
      Facts facts,
      Interval[] numbers,
      Interval[] constants) {
    int again = 0;
    for (int i = 0; i < RULES; i++) {
      Truth hand = byHand(rules.get(i), numbers, constants[i]);
      again += hand == Truth.UNDECIDED ? 1 : 0;
      if (hand != Truth.UNDECIDED && formulas.get(i).evaluate(facts) != hand) {
        throw new IllegalStateException("they differ: " + rules.get(i).text());
      }
    }
    return again;
  }

  private static TruthFormula formula(Rule rule) {
    Complaints complaints = new Complaints();
    return Formula.parse(
            Text.whole(new SourceText("benchmark", rule.text())), complaints)
        .flatMap(read -> read.asTruth(new Numbers(), complaints))
        .orElseThrow(() -> new IllegalStateException(complaints.renderAll()));
  }

  private static CelRuntime.Program program(Rule rule) {
    var builder = CelFactory.plannerCelBuilder();
    for (int i = 0; i < NUMBERS; i++) {
      builder.addVar(name(i), SimpleType.DOUBLE);
    }
    Cel cel = builder.setResultType(SimpleType.BOOL).build();
    try {
      return cel.createProgram(cel.compile(rule.text()).getAst());
    } catch (CelValidationException | CelEvaluationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Sixteen numbers that somebody measures. */
  private static final class Numbers implements Scope {
    @Override
    public Optional<Meaning> meaning(List<String> path, Map<String, String> variables) {
      return Optional.of(
          new Meaning.Quantity(
              Reference.of(path.get(0)),
              Dimension.NONE,
              Nature.MEASURED,
              ExactInterval.atLeast(Rational.ZERO),
              PLAIN));
    }

    @Override
    public Optional<Table> table(String name) {
      return Optional.empty();
    }

    @Override
    public boolean isKind(String name) {
      return false;
    }

    @Override
    public Collection<String> names() {
      return List.of();
    }
  }

  /** What was measured: to about a hundredth. */
  private static final class Known implements Facts {
    private final Map<Reference, Range> ranges = new HashMap<>();

    Known(Random random) {
      for (int i = 0; i < NUMBERS; i++) {
        int hundredths = 50 + random.nextInt(300);
        ExactInterval exact =
            ExactInterval.of(Rational.of(hundredths - 1, 100), Rational.of(hundredths + 1, 100));
        ranges.put(Reference.of(name(i)), Range.of(exact));
      }
    }

    Interval[] numbers() {
      Interval[] all = new Interval[NUMBERS];
      for (int i = 0; i < NUMBERS; i++) {
        all[i] = number(Reference.of(name(i))).outward();
      }
      return all;
    }

    Map<String, Double> points() {
      Map<String, Double> all = new HashMap<>();
      for (int i = 0; i < NUMBERS; i++) {
        Interval interval = number(Reference.of(name(i))).outward();
        all.put(name(i), (interval.lo() + interval.hi()) / 2);
      }
      return all;
    }

    @Override
    public Range number(Reference reference) {
      return ranges.getOrDefault(reference, Range.UNKNOWN);
    }

    @Override
    public Varying varying(Reference reference) {
      return Varying.UNKNOWN;
    }

    @Override
    public Set<String> named(Reference reference) {
      throw new IllegalStateException(reference.text());
    }

    @Override
    public Listing items(String kind) {
      return Listing.UNKNOWN;
    }

    @Override
    public Facts with(String variable, String item) {
      return this;
    }
  }
}
