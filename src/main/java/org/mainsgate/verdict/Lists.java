package org.mainsgate.verdict;

import org.mainsgate.ruleset.Check;

/**
 * The findings about a list itself, where there is no thing on it to judge or where there may be
 * more.
 */
final class Lists {
  private Lists() {}

  /** The finding for a list on which a person has counted none. */
  static Finding none(Check check, String plural) {
    return new Draft(check, check.over().orElse(Kinds.INSTRUMENT), plural)
        .because("looked, and there are none: " + plural)
        .finish(Outcome.NOT_APPLICABLE);
  }

  /** The finding for a list that may not be empty. */
  static Finding nothingListed(Check check, String plural) {
    Draft draft = new Draft(check, check.over().orElse(Kinds.INSTRUMENT), plural);
    draft.hold(Reason.NOT_MET, "counted none, and there has to be one: " + plural);
    draft.settle("Look again, and list what is there; else look again at the class");
    return draft.finish(Outcome.HOLD);
  }

  /** The finding for a check that applies to nothing on a list, whatever is on it. */
  static Finding notApplicable(Check check, String kind, String plural, Known facts) {
    return new Draft(check, kind, plural)
        .because(Findings.why(check, facts))
        .finish(Outcome.NOT_APPLICABLE);
  }

  /** The finding for a list that nobody has closed. */
  static Finding openList(Check check, String kind, String plural, Evidence.Listed list) {
    int listed = list.listing().items().size();
    String text =
        list.counted()
            .map(count -> "counted " + count + ", listed " + listed + ": " + plural)
            .orElse("nobody has said that the list is complete: " + plural);
    Draft draft = new Draft(check, kind, plural);
    draft.hold(Reason.LIST_OPEN, text);
    draft.settle(
        "Look for all "
            + plural
            + ", list each in the instrument's file, and close the list: `looked: {"
            + kind
            + ": [...]}`");
    return draft.finish(Outcome.HOLD);
  }
}
