package org.mainsgate.laws;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a table that has numbers for its keys, found by trial.
 *
 * @param rows in the order of their numbers
 * @param rule which row belongs to a number
 */
record Keys(List<RuleText.Row> rows, String rule) {
  private static final Fraction ONE = Fraction.of(java.math.BigDecimal.ONE);

  /** Every row that some number leads to, and null if one leads to none. */
  Set<RuleText.@Nullable Row> found(Ends number) {
    Set<RuleText.@Nullable Row> found = new HashSet<>();
    for (Fraction trial : trials(number)) {
      found.add(row(trial));
    }
    if (rule.equals("exact") && !number.isPoint()) {
      found.add(null);
    }
    return found;
  }

  /** The ends, and the rows between them. */
  private List<Fraction> trials(Ends number) {
    Fraction first = rows.get(0).at().minus(ONE);
    Fraction last = rows.get(rows.size() - 1).at().plus(ONE);
    List<Fraction> trials = new ArrayList<>();
    trials.add(
        number.lo() != null
            ? number.lo()
            : number.hi() == null ? first : first.smaller(number.hi()));
    trials.add(
        number.hi() != null ? number.hi() : number.lo() == null ? last : last.greater(number.lo()));
    rows.stream().map(RuleText.Row::at).filter(number::mayBe).forEach(trials::add);
    return trials;
  }

  private RuleText.@Nullable Row row(Fraction number) {
    RuleText.Row found = null;
    for (RuleText.Row row : rows) {
      int order = row.at().compareTo(number);
      boolean fits =
          switch (rule) {
            case "at least" -> order >= 0 && found == null;
            case "at most" -> order <= 0;
            default -> order == 0;
          };
      found = fits ? row : found;
    }
    return found;
  }
}
