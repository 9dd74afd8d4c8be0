package org.mainsgate.formula;

import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Interval;

/** An operation on two numbers, in doubles rounded outward, in exact rationals and on signs. */
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

    @Override
    Signs signs(Signs left, Signs right) {
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

    @Override
    Signs signs(Signs left, Signs right) {
      return left.plus(right.negate());
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

    @Override
    Signs signs(Signs left, Signs right) {
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

    @Override
    Signs signs(Signs left, Signs right) {
      return right.mayBeZero() || right.mayBeUnknown() ? Signs.ANY : left.times(right);
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

    @Override
    Signs signs(Signs left, Signs right) {
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

    @Override
    Signs signs(Signs left, Signs right) {
      return left.negate().min(right.negate()).negate();
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

  abstract Signs signs(Signs left, Signs right);

  /**
   * How the result moves with a limit, from how both sides move with it.
   *
   * <p>A product follows a side as far as the other has one sign, and a quotient as far as its
   * divisor has one and is never zero. Where nothing may be known of a factor, a side that may be
   * zero is no guide: zero times the unknown is zero, so a move to zero would make something known.
   */
  Sign slope(Sign left, Sign right, Signs leftSigns, Signs rightSigns) {
    return switch (this) {
      case PLUS, MIN, MAX -> left.join(right);
      case MINUS -> left.join(right.flip());
      case TIMES -> factor(left, leftSigns, rightSigns).join(factor(right, rightSigns, leftSigns));
      case OVER -> left.scaled(rightSigns).join(divisor(right, leftSigns, rightSigns));
    };
  }

  private static Sign factor(Sign side, Signs own, Signs other) {
    return other.mayBeUnknown() && own.mayBeZero() ? side.unclear() : side.scaled(other);
  }

  private static Sign divisor(Sign side, Signs dividend, Signs own) {
    boolean clear = !own.mayBeZero() && !own.mayBeUnknown() && !own.isMixed();
    return clear ? side.flip().scaled(dividend) : side.unclear();
  }
}
