package org.mainsgate.formula;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Unit;

/** A number in a checked formula. Values are in SI units. */
sealed interface NumberNode extends Node
    permits NumberNode.Fixed,
        NumberNode.Limited,
        NumberNode.Known,
        NumberNode.Picked,
        NumberNode.Operated,
        NumberNode.Applied,
        NumberNode.Total,
        NumberNode.Stepped,
        Cell {
  Dimension dimension();

  /** The value in doubles, rounded outward: encloses {@link #exact}. */
  Interval fast(Facts facts);

  /**
   * The value in rationals; wider than the true one only by √, ln and 2ˣ, and by repeated names.
   */
  ExactInterval exact(Facts facts);

  /**
   * The signs that the value can have under any facts, with the limits moved but not their signs.
   */
  Signs signs();

  /** The unit to print it in, where a part of it suggests one. */
  default Optional<Unit> unit() {
    return Optional.empty();
  }

  /** A number that stands in the text, or π. */
  record Fixed(Dimension dimension, Range value) implements NumberNode {
    @Override
    public List<Node> parts() {
      return List.of();
    }

    @Override
    public Interval fast(Facts facts) {
      return value.outward();
    }

    @Override
    public ExactInterval exact(Facts facts) {
      return value.exact();
    }

    @Override
    public Signs signs() {
      return Signs.of(value.exact());
    }

    @Override
    public Sign sign(String limit) {
      return Sign.ABSENT;
    }
  }

  /** A limit, whose value does not change with the facts. */
  record Limited(Meaning.Limit limit, Range value) implements NumberNode {
    @Override
    public List<Node> parts() {
      return List.of();
    }

    @Override
    public void tell(Survey.Builder survey) {
      survey.limit(limit.name());
    }

    @Override
    public Dimension dimension() {
      return limit.unit().dimension();
    }

    @Override
    public Interval fast(Facts facts) {
      return value.outward();
    }

    @Override
    public ExactInterval exact(Facts facts) {
      return value.exact();
    }

    @Override
    public Signs signs() {
      return Signs.of(value.exact());
    }

    @Override
    public Sign sign(String name) {
      return name.equals(limit.name()) ? Sign.RAISES : Sign.ABSENT;
    }

    @Override
    public Optional<Unit> unit() {
      return Optional.of(limit.unit());
    }
  }

  /** A measured or marked number. */
  record Known(Meaning.Quantity quantity) implements NumberNode {
    @Override
    public List<Node> parts() {
      return List.of();
    }

    @Override
    public void tell(Survey.Builder survey) {
      survey.input(quantity.reference());
    }

    @Override
    public Dimension dimension() {
      return quantity.dimension();
    }

    @Override
    public Interval fast(Facts facts) {
      return facts.number(quantity.reference()).outward();
    }

    @Override
    public ExactInterval exact(Facts facts) {
      return facts.number(quantity.reference()).exact();
    }

    @Override
    public Signs signs() {
      return Signs.of(quantity.possible());
    }

    @Override
    public Sign sign(String limit) {
      return Sign.ABSENT;
    }

    @Override
    public Optional<Unit> unit() {
      return Optional.of(quantity.unit());
    }
  }

  /** One of the values of something that varies. */
  record Picked(Meaning.Quantity quantity, Syntax.End end) implements NumberNode {
    @Override
    public List<Node> parts() {
      return List.of();
    }

    @Override
    public void tell(Survey.Builder survey) {
      survey.input(quantity.reference());
    }

    @Override
    public Dimension dimension() {
      return quantity.dimension();
    }

    @Override
    public Interval fast(Facts facts) {
      return exact(facts).outward();
    }

    @Override
    public ExactInterval exact(Facts facts) {
      Varying varying = facts.varying(quantity.reference());
      return switch (end) {
        case HIGHEST -> varying.highest();
        case LOWEST -> varying.lowest();
        case NOMINAL -> varying.nominal();
      };
    }

    @Override
    public Signs signs() {
      return Signs.of(quantity.possible());
    }

    @Override
    public Sign sign(String limit) {
      return Sign.ABSENT;
    }

    @Override
    public Optional<Unit> unit() {
      return Optional.of(quantity.unit());
    }
  }

  /** An operation on two numbers. */
  record Operated(Arithmetic operator, NumberNode left, NumberNode right, Dimension dimension)
      implements NumberNode {
    @Override
    public List<Node> parts() {
      return List.of(left, right);
    }

    @Override
    public Interval fast(Facts facts) {
      return operator.fast(left.fast(facts), right.fast(facts));
    }

    @Override
    public ExactInterval exact(Facts facts) {
      return operator.exact(left.exact(facts), right.exact(facts));
    }

    @Override
    public Signs signs() {
      return operator.signs(left.signs(), right.signs());
    }

    @Override
    public Sign sign(String limit) {
      return operator.slope(left.sign(limit), right.sign(limit), left.signs(), right.signs());
    }

    @Override
    public Optional<Unit> unit() {
      return left.unit().filter(this::fits).or(() -> right.unit().filter(this::fits));
    }

    private boolean fits(Unit unit) {
      boolean picks = operator == Arithmetic.MIN || operator == Arithmetic.MAX;
      return unit.dimension().equals(dimension) && (picks || PrintUnit.hasNoOffset(unit));
    }
  }

  /** A function of one number. */
  record Applied(Function function, NumberNode argument, Dimension dimension)
      implements NumberNode {
    @Override
    public List<Node> parts() {
      return List.of(argument);
    }

    @Override
    public Interval fast(Facts facts) {
      return function.fast(argument.fast(facts));
    }

    @Override
    public ExactInterval exact(Facts facts) {
      return function.exact(argument.exact(facts));
    }

    @Override
    public Signs signs() {
      return function.signs(argument.signs());
    }

    @Override
    public Sign sign(String limit) {
      return function.slope(argument.sign(limit), argument.signs());
    }

    @Override
    public Optional<Unit> unit() {
      return argument
          .unit()
          .filter(unit -> unit.dimension().equals(dimension) && PrintUnit.hasNoOffset(unit));
    }
  }

  /** A sum over the things of a kind; unknown while the list is open, for there may be more. */
  record Total(Input.Binding binding, NumberNode body) implements NumberNode {
    @Override
    public List<Node> parts() {
      return List.of(body);
    }

    @Override
    public Optional<Input.Binding> binds() {
      return Optional.of(binding);
    }

    @Override
    public Dimension dimension() {
      return body.dimension();
    }

    @Override
    public Interval fast(Facts facts) {
      Listing listing = facts.items(binding.kind());
      if (!listing.closed()) {
        return Interval.UNBOUNDED;
      }
      Interval total = Interval.point(0);
      for (String item : listing.items()) {
        total = total.plus(body.fast(facts.with(binding.variable(), item)));
      }
      return total;
    }

    @Override
    public ExactInterval exact(Facts facts) {
      Listing listing = facts.items(binding.kind());
      if (!listing.closed()) {
        return ExactInterval.UNBOUNDED;
      }
      ExactInterval total = ExactInterval.point(Rational.ZERO);
      for (String item : listing.items()) {
        total = total.plus(body.exact(facts.with(binding.variable(), item)));
      }
      return total;
    }

    @Override
    public Signs signs() {
      Signs one = body.signs();
      return one.plus(one).or(one).or(Signs.ZERO).orUnknown();
    }

    @Override
    public Sign sign(String limit) {
      return body.sign(limit);
    }

    @Override
    public void rows(Facts facts, Consumer<RowUse> rows) {
      for (String item : facts.items(binding.kind()).items()) {
        body.rows(facts.with(binding.variable(), item), rows);
      }
    }

    @Override
    public Optional<Unit> unit() {
      return body.unit().filter(PrintUnit::hasNoOffset);
    }
  }

  /** A named intermediate number. */
  record Stepped(Meaning.Step step) implements NumberNode {
    private NumberNode inner() {
      return step.value().node();
    }

    @Override
    public void tell(Survey.Builder survey) {
      survey.step(step.name(), step);
    }

    @Override
    public List<Node> parts() {
      return List.of(inner());
    }

    @Override
    public Optional<Survey> surveyed() {
      return Optional.of(step.value().survey());
    }

    @Override
    public Dimension dimension() {
      return inner().dimension();
    }

    @Override
    public Interval fast(Facts facts) {
      return inner().fast(facts);
    }

    @Override
    public ExactInterval exact(Facts facts) {
      return inner().exact(facts);
    }

    @Override
    public Signs signs() {
      return inner().signs();
    }

    @Override
    public Sign sign(String limit) {
      return inner().sign(limit);
    }

    @Override
    public Optional<Unit> unit() {
      return inner().unit();
    }
  }
}
