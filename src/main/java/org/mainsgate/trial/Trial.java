package org.mainsgate.trial;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Adjustment;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.trial.TrialReport.Failure;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;

/**
 * A run of rulesets' test files: what is expected, which outcomes are seen, and whether any test
 * notices when a value is moved by a tenth.
 */
public final class Trial {
  private static final List<Rational> TENTHS = List.of(Rational.of(9, 10), Rational.of(11, 10));

  private final Shelf shelf;
  private final Map<String, Shelf.Choice> profiles;
  private final Complaints complaints;
  private final List<TestCase> cases = new ArrayList<>();
  private final Map<String, Rules> rules = new LinkedHashMap<>();
  private final Set<String> seen = new LinkedHashSet<>();

  private Trial(Shelf shelf, Map<String, Shelf.Choice> profiles, Complaints complaints) {
    this.shelf = shelf;
    this.profiles = profiles;
    this.complaints = complaints;
  }

  /**
   * Runs the tests.
   *
   * @param shelf the rulesets of the program
   * @param profiles the profiles that tests may name
   * @param files the test files' bytes, by name
   * @return empty after a complaint about a test file, a record in it, or the rules
   */
  public static Optional<TrialReport> run(
      Shelf shelf,
      Map<String, Shelf.Choice> profiles,
      Map<String, byte[]> files,
      Complaints complaints) {
    Trial trial = new Trial(shelf, profiles, complaints);
    files.forEach(trial::read);
    profiles.forEach(
        (name, choice) ->
            shelf.open(choice, complaints).ifPresent(found -> trial.rules.put(name, found)));
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    List<Failure> failures = trial.failures(trial.rules, true);
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(trial.report(failures));
  }

  private void read(String name, byte[] bytes) {
    Optional<TestFile> file =
        StrictYaml.readFields(name, bytes, complaints)
            .flatMap(fields -> Binder.bind(fields, TestFile.class, complaints));
    file.ifPresent(
        found ->
            found
                .tests()
                .forEach(entry -> TestCase.of(entry, found, complaints).ifPresent(this::add)));
  }

  private void add(TestCase test) {
    cases.add(test);
    test.entry()
        .profiles()
        .forEach(
            text -> {
              if (!profiles.containsKey(text.value())) {
                complaints.addUnknown(text.at(), "profile", text.value(), profiles.keySet());
              }
            });
  }

  /** Every test under every profile that it names; with the outcomes noted, if asked. */
  private List<Failure> failures(Map<String, Rules> under, boolean note) {
    List<Failure> failures = new ArrayList<>();
    for (TestCase test : cases) {
      for (String profile : test.profiles()) {
        Rules found = under.get(profile);
        if (found != null) {
          Optional<Assessment> assessment = test.assess(found, complaints);
          assessment.ifPresent(a -> failures.addAll(test.compare(a, profile)));
          if (note) {
            assessment.ifPresent(this::note);
          }
        }
      }
    }
    return failures;
  }

  private void note(Assessment assessment) {
    for (Finding finding : assessment.findings()) {
      seen.add(finding.check().id() + ": " + finding.outcome().word());
    }
  }

  private TrialReport report(List<Failure> failures) {
    Set<String> possible = new LinkedHashSet<>();
    rules.values().forEach(found -> found.checks().values().forEach(c -> possible(c, possible)));
    List<String> covered = possible.stream().filter(seen::contains).toList();
    List<String> uncovered = possible.stream().filter(outcome -> !seen.contains(outcome)).toList();
    Set<String> values = values();
    List<String> unnoticed = failures.isEmpty() ? unnoticed(values) : List.of();
    int ran = cases.stream().mapToInt(test -> test.profiles().size()).sum();
    return new TrialReport(ran, failures, covered, uncovered, values.size(), unnoticed);
  }

  private static void possible(Check check, Collection<String> into) {
    into.add(check.id() + ": " + Outcome.PASS.word());
    into.add(check.id() + ": " + Outcome.HOLD.word());
    if (check.consequence() == Check.Consequence.FAIL) {
      into.add(check.id() + ": " + Outcome.FAIL.word());
    }
    if (check.applies().isPresent() || check.over().isPresent()) {
      into.add(check.id() + ": " + Outcome.NOT_APPLICABLE.word());
    }
  }

  /** Every value that can be moved; a tenth of zero is nothing. */
  private Set<String> values() {
    Set<String> values = new LinkedHashSet<>();
    for (Rules found : rules.values()) {
      found.limits().values().forEach(limit -> addUnlessZero(values, limit.name(), limit.value()));
      found
          .tables()
          .values()
          .forEach(
              cited ->
                  cited
                      .table()
                      .rows()
                      .forEach(
                          row ->
                              row.cells()
                                  .forEach(
                                      (column, value) ->
                                          addUnlessZero(
                                              values,
                                              Adjustment.cell(
                                                  cited.table().name(), row.id(), column),
                                              value))));
    }
    return values;
  }

  private static void addUnlessZero(
      Set<String> values, String name, org.mainsgate.quantity.ExactInterval value) {
    Rational lo = value.lo();
    if (lo != null && lo.signum() != 0) {
      values.add(name);
    }
  }

  private List<String> unnoticed(Set<String> values) {
    List<String> unnoticed = new ArrayList<>();
    for (String value : values) {
      for (Rational factor : TENTHS) {
        if (!isNoticed(new Adjustment(value, factor))) {
          unnoticed.add(value + " × " + (factor.compareTo(Rational.ONE) < 0 ? "0.9" : "1.1"));
        }
      }
    }
    return unnoticed;
  }

  private boolean isNoticed(Adjustment moved) {
    Map<String, Rules> changed = new LinkedHashMap<>();
    Complaints broken = new Complaints();
    profiles.forEach(
        (name, choice) ->
            shelf.moving(moved).open(choice, broken).ifPresent(found -> changed.put(name, found)));
    return !broken.isEmpty() || !failures(changed, false).isEmpty();
  }
}
