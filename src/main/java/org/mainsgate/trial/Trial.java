package org.mainsgate.trial;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Table;
import org.mainsgate.formula.TruthFormula;
import org.mainsgate.quantity.Rational;
import org.mainsgate.ruleset.Adjustment;
import org.mainsgate.ruleset.Check;
import org.mainsgate.ruleset.Limit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Position;
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

  private static final Rational TENTH = Rational.of(1, 10);
  private static final long DAY = 86_400;

  private final Shelf shelf;
  private final Map<String, Shelf.Choice> profiles;
  private final Concern concern;
  private final Complaints complaints;
  private final List<TestFile> files = new ArrayList<>();
  private final Map<String, Fields> records = new LinkedHashMap<>();
  private final List<TestCase> cases = new ArrayList<>();
  private final Map<String, Rules> rules = new LinkedHashMap<>();
  private final Set<String> seen = new LinkedHashSet<>();

  private Trial(
      Shelf shelf, Map<String, Shelf.Choice> profiles, Concern concern, Complaints complaints) {
    this.shelf = shelf;
    this.profiles = profiles;
    this.concern = concern;
    this.complaints = complaints;
  }

  /**
   * What a run is about.
   *
   * @param records test files of which only the records are taken, by name
   * @param rules the files whose checks and values are looked at; all if there is none
   */
  public record Concern(Map<String, byte[]> records, Set<String> rules) {
    /** Everything. */
    public static final Concern ALL = new Concern(Map.of(), Set.of());

    /** Keeps the collections as they are. */
    public Concern {
      records = Map.copyOf(records);
      rules = Set.copyOf(rules);
    }

    boolean isAbout(Position at) {
      return rules.isEmpty() || rules.contains(at.file());
    }
  }

  /**
   * Runs the tests.
   *
   * @param shelf the rulesets of the program
   * @param profiles the profiles that tests may name
   * @param files the test files' bytes, by name
   * @param concern what the run is about
   * @return empty after a complaint about a test file, a record in it, or the rules
   */
  public static Optional<TrialReport> run(
      Shelf shelf,
      Map<String, Shelf.Choice> profiles,
      Map<String, byte[]> files,
      Concern concern,
      Complaints complaints) {
    Trial trial = new Trial(shelf, profiles, concern, complaints);
    concern.records().forEach(trial::readRecords);
    files.forEach(trial::read);
    trial.make();
    profiles.forEach(
        (name, choice) ->
            shelf.open(choice, complaints).ifPresent(found -> trial.rules.put(name, found)));
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    List<Failure> failures = trial.failures();
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(trial.report(failures));
  }

  /** What tests expect of checks, in the order of the files; nothing is run. */
  public static List<Expectation> expectations(Map<String, byte[]> files, Complaints complaints) {
    List<Expectation> expectations = new ArrayList<>();
    files.forEach(
        (name, bytes) ->
            StrictYaml.readFields(name, bytes, complaints)
                .flatMap(fields -> Binder.bind(fields, TestFile.class, complaints))
                .ifPresent(
                    file ->
                        file.tests().forEach(entry -> expectations.addAll(Expectation.of(entry)))));
    return expectations;
  }

  private void read(String name, byte[] bytes) {
    Optional<TestFile> file =
        StrictYaml.readFields(name, bytes, complaints)
            .flatMap(fields -> Binder.bind(fields, TestFile.class, complaints));
    file.ifPresent(this::take);
  }

  private void readRecords(String name, byte[] bytes) {
    StrictYaml.readFields(name, bytes, complaints)
        .flatMap(fields -> Binder.bind(fields, TestFile.class, complaints))
        .ifPresent(this::takeRecords);
  }

  private void take(TestFile file) {
    files.add(file);
    takeRecords(file);
  }

  private void takeRecords(TestFile file) {
    file.records()
        .forEach(
            (name, record) -> {
              if (records.putIfAbsent(name, record) != null) {
                complaints.add(record, "a second record `" + name + "`", "a name of its own");
              }
            });
  }

  /** The tests of all files; each may start from a record of any of them. */
  private void make() {
    for (TestFile file : files) {
      for (TestFile.TestEntry entry : file.tests()) {
        TestCase.of(entry, records, complaints).ifPresent(this::add);
      }
    }
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

  /** What every test finds under every profile that it names. */
  private List<Failure> failures() {
    List<Failure> failures = new ArrayList<>();
    for (TestCase test : cases) {
      for (String profile : test.profiles()) {
        failures.addAll(failures(test, profile, rules, true));
      }
    }
    return failures;
  }

  private List<Failure> failures(
      TestCase test, String profile, Map<String, Rules> under, boolean note) {
    Rules found = under.get(profile);
    if (found == null) {
      return List.of();
    }
    Optional<Assessment> assessment = test.assess(found, complaints);
    if (note) {
      assessment.ifPresent(this::note);
    }
    return assessment.map(judged -> test.compare(judged, profile)).orElse(List.of());
  }

  private void note(Assessment assessment) {
    for (Finding finding : assessment.findings()) {
      seen.add(finding.check().id() + ": " + finding.outcome().word());
    }
  }

  private TrialReport report(List<Failure> failures) {
    Set<String> possible = new LinkedHashSet<>();
    for (Rules found : rules.values()) {
      found.checks().values().stream()
          .filter(check -> concern.isAbout(check.at()))
          .forEach(check -> possible(check, possible));
    }
    List<String> covered = possible.stream().filter(seen::contains).toList();
    List<String> uncovered = possible.stream().filter(outcome -> !seen.contains(outcome)).toList();
    Set<Movable> values = new LinkedHashSet<>();
    rules.forEach((profile, found) -> movable(profile, found, values));
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
    if (check.applies().isPresent() || (check.over().isPresent() && !check.needsOne())) {
      into.add(check.id() + ": " + Outcome.NOT_APPLICABLE.word());
    }
  }

  /**
   * A value that can be moved.
   *
   * @param name its name
   * @param owner the profile that gives it, or the overlay's file; empty for the common rules
   * @param wholeDays whether it is a number of days
   * @param size in SI units
   */
  private record Movable(String name, String owner, boolean wholeDays, Rational size) {

    /** A tenth down and up; of whole days at least one, since nobody counts parts of a day. */
    List<Rational> factors() {
      Rational day = Rational.of(DAY);
      Rational share = day.dividedBy(size);
      return wholeDays && share.compareTo(TENTH) > 0
          ? List.of(Rational.ONE.minus(share), Rational.ONE.plus(share))
          : TENTHS;
    }

    boolean concerns(String profile, Shelf.Choice choice) {
      return owner.isEmpty() || owner.equals(profile) || choice.overlays().containsKey(owner);
    }
  }

  /** Every value of the rules; a tenth of zero is nothing. */
  private void movable(String profile, Rules found, Set<Movable> values) {
    for (Limit limit : found.limits().values()) {
      if (!concern.isAbout(limit.at())) {
        continue;
      }
      boolean days = limit.unit().symbol().equals("d");
      add(values, limit.name(), owner(profile, limit.at()), limit.value().lo(), days);
    }
    for (Rules.CitedTable cited : found.tables().values()) {
      if (!concern.isAbout(cited.at())) {
        continue;
      }
      String owner = owner(profile, cited.at());
      String table = cited.table().name();
      for (Table.Row row : cited.table().rows()) {
        add(values, Adjustment.key(table, row.id()), owner, row.number(), false);
        row.cells()
            .forEach(
                (column, value) ->
                    add(
                        values,
                        Adjustment.cell(table, row.id(), column),
                        owner,
                        value.lo(),
                        false));
      }
    }
  }

  private static void add(
      Set<Movable> values, String name, String owner, @Nullable Rational value, boolean days) {
    if (value != null && value.signum() != 0) {
      values.add(new Movable(name, owner, days, value));
    }
  }

  /** Under an overlay, the profile's own values are the profile's still. */
  private String owner(String profile, Position at) {
    Shelf.Choice choice = profiles.getOrDefault(profile, Shelf.Choice.named(profile));
    if (choice.overlays().containsKey(at.file())) {
      return at.file();
    }
    String file = choice.bytes().isPresent() ? choice.name() : shelf.fileOf(choice.name());
    String own = choice.overlays().isEmpty() ? profile : choice.name();
    return at.file().equals(file) ? own : "";
  }

  private List<String> unnoticed(Set<Movable> values) {
    List<String> unnoticed = new ArrayList<>();
    for (Movable value : values) {
      for (Rational factor : value.factors()) {
        if (!isNoticed(value, factor)) {
          String of = value.owner().isEmpty() ? "" : " of " + value.owner();
          String by = factor.compareTo(Rational.ONE) < 0 ? " × 0.9" : " × 1.1";
          unnoticed.add(value.name() + of + by);
        }
      }
    }
    return unnoticed;
  }

  /**
   * Whether a test fails with the value moved, under any rules that have it from its owner. Tests
   * of the checks that name it come first: nearly always one of them notices.
   */
  private boolean isNoticed(Movable value, Rational factor) {
    Complaints broken = new Complaints();
    Shelf moved = shelf.moving(new Adjustment(value.name(), factor));
    for (Map.Entry<String, Shelf.Choice> profile : profiles.entrySet()) {
      if (value.concerns(profile.getKey(), profile.getValue())) {
        Optional<Rules> changed = moved.open(profile.getValue(), broken);
        if (changed.isEmpty() || anyFails(profile.getKey(), changed.get(), value)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean anyFails(String profile, Rules changed, Movable value) {
    String name = value.name().split("\\[", 2)[0];
    Set<String> about = new LinkedHashSet<>();
    changed.checks().values().stream()
        .filter(check -> check.statements().stream().anyMatch(s -> mentions(s, name)))
        .forEach(check -> about.add(check.id()));
    Map<String, Rules> under = Map.of(profile, changed);
    List<TestCase> ours = cases.stream().filter(test -> test.profiles().contains(profile)).toList();
    return Stream.concat(
            ours.stream().filter(test -> test.isAbout(about)),
            ours.stream().filter(test -> !test.isAbout(about)))
        .anyMatch(test -> !failures(test, profile, under, false).isEmpty());
  }

  private static boolean mentions(TruthFormula statement, String name) {
    return statement.limits().contains(name) || statement.tables().contains(name);
  }
}
