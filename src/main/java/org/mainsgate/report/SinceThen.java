package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.mainsgate.report.HandoverPage.Change;
import org.mainsgate.ruleset.Property;
import org.mainsgate.verdict.Finding;

/** What is other in an instrument that has come back than when it went out. */
final class SinceThen {
  private SinceThen() {}

  static List<Change> changes(Dossier then, Dossier now) {
    List<Change> changes = new ArrayList<>();
    Map<String, Finding> before = new LinkedHashMap<>();
    then.assessment()
        .findings()
        .forEach(finding -> before.put(finding.check().id() + " " + finding.thing(), finding));
    Phrases phrases = new Phrases(now.setting().rules().vocabulary());
    for (Finding finding : now.assessment().findings()) {
      Finding was = before.get(finding.check().id() + " " + finding.thing());
      String old = was == null ? "not there" : said(was, phrases);
      String said = said(finding, phrases);
      if (!old.equals(said)) {
        changes.add(new Change(Phrases.title(finding), old, said));
      }
    }
    now.visits().stream()
        .filter(visit -> then.visits().stream().noneMatch(other -> other.id().equals(visit.id())))
        .forEach(visit -> changes.add(new Change("visit " + visit.id(), "", "since then")));
    return changes;
  }

  /** The outcome and the readings that it rests on. */
  private static String said(Finding finding, Phrases phrases) {
    String readings =
        finding.inputs().stream()
            .filter(input -> input.property() instanceof Property.Quantity)
            .filter(input -> !input.fact().said().isEmpty())
            .filter(input -> !input.name().endsWith(".age"))
            .map(phrases::recorded)
            .distinct()
            .collect(Collectors.joining(", "));
    return finding.outcome().word() + (readings.isEmpty() ? "" : ": " + readings);
  }
}
