package org.mainsgate.report;

import java.util.List;

/**
 * A check as a person looks it up: what it asks, with every limit under every profile.
 *
 * @param id its name
 * @param title its name in trade terms
 * @param protects what it protects from
 * @param stages the titles of its stages
 * @param over what it is judged on, in words
 * @param applies when it is judged; an empty one means always
 * @param requirement what must hold
 * @param steps the named steps and statements that its formulas use
 * @param consequence what follows where the requirement is not met
 * @param requires the checks that come first
 * @param onlyUnder the profiles that have it; empty where all have
 * @param limits its limits
 * @param tables its tables
 * @param asks what has to be found out
 * @param provided how the evidence has to be taken
 * @param plausible what no true reading contradicts
 * @param remarks remarks that change no outcome
 * @param remedies what to do, the first that fits
 * @param voidedBy what work takes its evidence away
 * @param caution what can hurt, empty if nothing
 * @param source where the rule comes from
 * @param tests what the rules' own tests expect of it
 */
record CheckCard(
    String id,
    String title,
    String protects,
    List<String> stages,
    String over,
    Formula applies,
    Formula requirement,
    List<Step> steps,
    String consequence,
    List<Link> requires,
    List<String> onlyUnder,
    List<Limits> limits,
    List<Tables> tables,
    List<Ask> asks,
    List<When> provided,
    List<When> plausible,
    List<When> remarks,
    List<When> remedies,
    List<String> voidedBy,
    String caution,
    String source,
    List<Tests> tests) {

  /** A formula as it is written, and read aloud; both empty where there is none. */
  record Formula(String text, String words) {
    static final Formula NONE = new Formula("", "");

    boolean isNone() {
      return text.isEmpty();
    }
  }

  /** A named step. */
  record Step(String name, String title, Formula is) {}

  /** Another check. */
  record Link(String id, String title) {}

  /** A limit, and what it is under each group of profiles that agree about it. */
  record Limits(String name, String title, List<Value> values) {}

  /** A value with its source. */
  record Value(String profiles, String value, Cited cited) {}

  /** Where a value comes from: source, how well it is known, and a note. */
  record Cited(String source, String standing, String note) {}

  /** A table, and what it is under each group of profiles that agree about it. */
  record Tables(String name, String title, String key, List<String> columns, List<Rows> rows) {}

  /** The rows under a group of profiles; the citation of all of them where they have one. */
  record Rows(String profiles, List<Row> rows) {}

  /** One row: key, cells, source. */
  record Row(String key, List<String> cells, Cited cited) {}

  /**
   * Something that has to be found out.
   *
   * @param of the things or entries that it is said of
   * @param ofThings whether it is said of things, not written with another entry
   * @param takes the units, or the values with their titles
   */
  record Ask(
      String name,
      String title,
      String of,
      boolean ofThings,
      String takes,
      String method,
      String caution) {}

  /** Words that go with a condition, which may be none. */
  record When(Formula when, String says) {}

  /** The tests that expect one outcome. */
  record Tests(String outcome, List<String> names) {}
}
