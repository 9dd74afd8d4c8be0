package org.mainsgate.cli;

import java.util.List;
import org.mainsgate.trial.TrialReport;

/** What a run of rulesets' tests found, as text. */
final class TrialText {
  private final StringBuilder text = new StringBuilder();

  private TrialText() {}

  static String of(TrialReport report) {
    TrialText lines = new TrialText();
    report.failures().forEach(lines::failure);
    lines.line(report.ran() + " tests, " + report.failures().size() + " failed");
    int outcomes = report.covered().size() + report.uncovered().size();
    lines.line(report.covered().size() + " of " + outcomes + " possible outcomes of checks seen");
    lines.list("not seen", report.uncovered());
    if (report.failures().isEmpty()) {
      lines.line(
          report.moved() + " values moved by a tenth, " + report.unnoticed().size() + " unnoticed");
      lines.list("unnoticed", report.unnoticed());
    }
    return lines.text.toString();
  }

  private void failure(TrialReport.Failure failure) {
    line(failure.at() + ": " + failure.test() + " (" + failure.profile() + ")");
    line("  expected " + failure.expected());
    line("  found    " + failure.found());
  }

  private void list(String label, List<String> items) {
    items.forEach(item -> line("  " + label + ": " + item));
  }

  private void line(String line) {
    text.append(line).append('\n');
  }
}
