package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;

/** An operation on two numbers, in doubles rounded outward and in exact rationals. */
enum Arithmetic {
  PLUS("add") {
    @Override
    Interval fast(Interval left, Interval right) {
      return left.plus(right);
    }

    @Override
    ExactInterval exact(ExactInterval left, ExactInterval right) {
      return left.plus(right);
    }
  },
  MINUS("subtract") {
    @Override
    Interval fast(Interval left, Interval right) {
      return left.minus(right);
    }

    @Override
    ExactInterval exact(ExactInterval left, ExactInterval right) {
      return left.minus(right);
    }
  },
  TIMES("multiply") {
    @Override
    Interval fast(Interval left, Interval right) {
      return left.times(right);
    }

    @Override
    ExactInterval exact(ExactInterval left, ExactInterval right) {
      return left.times(right);
    }
  },
  OVER("divide") {
    @Override
    Interval fast(Interval left, Interval right) {
      return left.dividedBy(right);
    }

    @Override
    ExactInterval exact(ExactInterval left, ExactInterval right) {
      return left.dividedBy(right);
    }
  },
  MIN("take the smaller of") {
    @Override
    Interval fast(Interval left, Interval right) {
      return left.min(right);
    }

    @Override
    ExactInterval exact(ExactInterval left, ExactInterval right) {
      return left.min(right);
    }
  },
  MAX("take the greater of") {
    @Override
    Interval fast(Interval left, Interval right) {
      return left.max(right);
    }

    @Override
    ExactInterval exact(ExactInterval left, ExactInterval right) {
      return left.max(right);
    }
  };

  private final String verb;

  Arithmetic(String verb) {
    this.verb = verb;
  }

  String verb() {
    return verb;
  }

  abstract Interval fast(Interval left, Interval right);

  abstract ExactInterval exact(ExactInterval left, ExactInterval right);
}
