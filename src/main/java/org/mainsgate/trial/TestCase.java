package org.mainsgate.trial;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Node;
import org.mainsgate.source.Text;
import org.mainsgate.trial.TestFile.TestEntry;
import org.mainsgate.trial.TrialReport.Failure;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Engine;
import org.mainsgate.verdict.Finding;

/** One test of a file, ready to be run under any rules. */
final class TestCase {
  static final String STAGE = "stage";

  private final TestEntry entry;
  private final Fields record;

  private TestCase(TestEntry entry, Fields record) {
    this.entry = entry;
    this.record = record;
  }

  /** The test with its record made: fields taken out, then others put over. */
  static Optional<TestCase> of(
      TestEntry entry, Map<String, Fields> records, Complaints complaints) {
    Fields record = records.get(entry.record().value());
    if (record == null) {
      complaints.addUnknown(
          entry.record().at(), "record", entry.record().value(), records.keySet());
      return Optional.empty();
    }
    for (Text path : entry.remove()) {
      Optional<Fields> less = record.without(List.of(path.value().split("/")));
      if (less.isEmpty()) {
        complaints.add(path, "nothing at `" + path.value() + "`", "a path of the record");
      }
      record = less.orElse(record);
    }
    Fields change = entry.change();
    return Optional.of(new TestCase(entry, change == null ? record : record.overlaid(change)));
  }

  List<String> profiles() {
    return entry.profiles().stream().map(Text::value).toList();
  }

  TestEntry entry() {
    return entry;
  }

  /** Whether it expects something of one of these checks. */
  boolean isAbout(Set<String> checks) {
    return Stream.of(entry.expect(), entry.says(), entry.silent())
        .flatMap(wanted -> wanted.keySet().stream())
        .anyMatch(key -> checks.contains(key.split("/", 2)[0]));
  }

  /** What the rules say of the record; empty after a complaint. */
  Optional<Assessment> assess(Rules rules, Complaints complaints) {
    RecordReader reader =
        new RecordReader(rules.vocabulary(), rules.meterKinds(), rules.checks().keySet());
    Optional<Bench> bench = part("bench", complaints).flatMap(f -> reader.bench(f, complaints));
    Optional<Instrument> instrument =
        bench.flatMap(
            b -> part("instrument", complaints).flatMap(f -> reader.instrument(f, b, complaints)));
    Optional<Visit> visit =
        instrument.flatMap(
            i ->
                part("visit", complaints)
                    .flatMap(
                        f -> reader.visit(f, id(f), Optional.empty(), bench.get(), i, complaints)));
    return visit.map(
        v -> {
          InstrumentRecord whole = new InstrumentRecord(bench.get(), instrument.get(), List.of(v));
          LocalDate on = entry.on() == null ? v.date() : LocalDate.parse(entry.on().value());
          return new Engine(rules)
              .assess(stage(rules, complaints), InForce.of(rules, whole, on).evidence());
        });
  }

  private Stage stage(Rules rules, Complaints complaints) {
    Text stage = entry.stage();
    if (stage == null) {
      return rules.firstStage();
    }
    Optional<Stage> found = rules.stage(stage.value());
    if (found.isEmpty()) {
      complaints.addUnknown(stage.at(), "stage", stage.value(), rules.stages().keySet());
    }
    return found.orElseGet(rules::firstStage);
  }

  private Optional<Fields> part(String name, Complaints complaints) {
    Optional<Node> node = record.get(name);
    if (node.isPresent() && node.get() instanceof Fields fields) {
      return Optional.of(fields);
    }
    complaints.add(record, "the record has no `" + name + "`", "`bench`, `instrument` and `visit`");
    return Optional.empty();
  }

  /** A name such as a visit's file would have. */
  private static String id(Fields visit) {
    String date = visit.get("date").map(Object::toString).orElse("");
    String by = visit.get("by").map(Object::toString).orElse("");
    return date + "-" + by + "-test";
  }

  /** Where the findings are not as expected. */
  List<Failure> compare(Assessment assessment, String profile) {
    List<Failure> failures = new ArrayList<>();
    entry
        .expect()
        .forEach(
            (key, wanted) -> {
              if (!agrees(assessment, key, wanted.value())) {
                failures.add(failure(key, wanted, profile, found(assessment, key)));
              }
            });
    entry.says().forEach((key, words) -> words(assessment, key, words, true, profile, failures));
    entry.silent().forEach((key, words) -> words(assessment, key, words, false, profile, failures));
    return failures;
  }

  private void words(
      Assessment assessment,
      String key,
      Text words,
      boolean wanted,
      String profile,
      List<Failure> failures) {
    String said =
        String.join("; ", matching(assessment, key).stream().map(TestCase::said).toList());
    if (said.contains(words.value()) != wanted) {
      String demand = wanted ? "says " : "does not say ";
      failures.add(failure(key + " " + demand, words, profile, said));
    }
  }

  /** All words of a finding by which a person goes on. */
  private static String said(Finding finding) {
    List<String> all = new ArrayList<>();
    finding.holds().forEach(hold -> all.add(hold.text()));
    finding.notes().forEach(note -> all.add(note.says()));
    all.add(finding.remedy());
    return String.join("; ", all);
  }

  private Failure failure(String key, Text wanted, String profile, String found) {
    return new Failure(
        entry.name().value(), profile, wanted.at().toString(), key + ": " + wanted.value(), found);
  }

  private static boolean agrees(Assessment assessment, String key, String wanted) {
    if (key.equals(STAGE)) {
      return assessment.verdict().word().equals(wanted);
    }
    List<Finding> findings = matching(assessment, key);
    return !findings.isEmpty() && findings.stream().allMatch(found -> is(found, wanted));
  }

  private static List<Finding> matching(Assessment assessment, String key) {
    return assessment.findings().stream()
        .filter(
            found ->
                key.equals(found.check().id())
                    || key.equals(found.check().id() + "/" + found.thing()))
        .toList();
  }

  /**
   * Whether a finding is {@code outcome}, or {@code hold: reason} with that reason among its own.
   */
  private static boolean is(Finding finding, String wanted) {
    int colon = wanted.indexOf(':');
    String outcome = colon < 0 ? wanted : wanted.substring(0, colon);
    String reason = colon < 0 ? "" : wanted.substring(colon + 1).strip();
    return finding.outcome().word().equals(outcome)
        && (reason.isEmpty()
            || finding.holds().stream().anyMatch(hold -> hold.reason().words().equals(reason)));
  }

  private static String found(Assessment assessment, String key) {
    if (key.equals(STAGE)) {
      return assessment.verdict().word();
    }
    List<String> found = matching(assessment, key).stream().map(TestCase::words).toList();
    return found.isEmpty() ? "no such finding" : String.join("; ", found);
  }

  private static String words(Finding finding) {
    List<String> reasons = finding.holds().stream().map(hold -> hold.reason().words()).toList();
    String outcome = finding.thing() + " " + finding.outcome().word();
    return reasons.isEmpty() ? outcome : outcome + ": " + String.join(", ", reasons);
  }
}
