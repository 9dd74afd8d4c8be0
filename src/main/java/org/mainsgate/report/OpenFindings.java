package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.mainsgate.formula.Ground;
import org.mainsgate.quantity.Truth;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;

/**
 * What fails or holds, with the reasons, what would settle it, and what can hurt on the way.
 *
 * @param phrases the words of the trade
 */
record OpenFindings(Phrases phrases) {

  /**
   * The findings of one outcome, each with its reasons. Those that only wait for one and the same
   * thing are one, and so are those that only wait for other checks: nothing is to be done about
   * them by themselves.
   */
  List<Sheet.Open> of(List<Finding> findings, Outcome outcome) {
    Map<Object, List<Finding>> together =
        findings.stream()
            .filter(finding -> finding.outcome() == outcome && !waitsForChecks(finding))
            .collect(
                Collectors.groupingBy(
                    OpenFindings::whatItWaitsFor, LinkedHashMap::new, Collectors.toList()));
    List<Sheet.Open> open = new ArrayList<>();
    together
        .values()
        .forEach(group -> open.add(group.size() == 1 ? open(group.get(0)) : waiting(group)));
    behind(findings.stream().filter(finding -> finding.outcome() == outcome).toList())
        .ifPresent(open::add);
    return open;
  }

  /** What keeps a finding, where that is nothing but words that others may share; else itself. */
  private static Object whatItWaitsFor(Finding finding) {
    List<Finding.Hold> own = own(finding);
    boolean onlyMissing =
        !own.isEmpty() && own.stream().allMatch(hold -> hold.reason() == Reason.NOT_RECORDED);
    return onlyMissing || finding.arithmetic().isEmpty() ? own : finding;
  }

  /** The reasons of a finding by itself, without those of the checks that come first. */
  private static List<Finding.Hold> own(Finding finding) {
    return finding.holds().stream()
        .filter(hold -> hold.reason() != Reason.PREREQUISITE_OPEN)
        .toList();
  }

  private static boolean waitsForChecks(Finding finding) {
    return !finding.holds().isEmpty()
        && finding.holds().stream().allMatch(hold -> hold.reason() == Reason.PREREQUISITE_OPEN);
  }

  /** The checks that nothing keeps but others that come first. */
  private static Optional<Sheet.Open> behind(List<Finding> findings) {
    List<String> titles =
        findings.stream()
            .filter(OpenFindings::waitsForChecks)
            .map(Phrases::title)
            .distinct()
            .toList();
    return titles.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Sheet.Open(
                "Nothing else keeps these: they wait for checks that come first",
                List.of(String.join("; ", titles)),
                List.of(),
                "",
                List.of()));
  }

  private Sheet.Open open(Finding finding) {
    return new Sheet.Open(
        Phrases.title(finding),
        because(finding),
        settles(finding),
        finding.remedy(),
        cautions(List.of(finding)));
  }

  private static Sheet.Open waiting(List<Finding> findings) {
    Finding first = findings.get(0);
    String holds = own(first).stream().map(OpenFindings::hold).collect(Collectors.joining("; "));
    boolean oneThing = findings.stream().map(Finding::thing).distinct().count() == 1;
    String titles =
        findings.stream()
            .map(finding -> oneThing ? finding.check().title() : Phrases.title(finding))
            .distinct()
            .collect(Collectors.joining("; "));
    return new Sheet.Open(
        holds, List.of("it keeps waiting: " + titles), settles(first), "", cautions(findings));
  }

  private static List<String> cautions(List<Finding> findings) {
    return findings.stream()
        .map(finding -> finding.check().caution())
        .filter(caution -> !caution.isEmpty())
        .distinct()
        .toList();
  }

  private static String hold(Finding.Hold hold) {
    String words = hold.reason().words();
    return hold.text().isEmpty() ? words : words + ": " + hold.text();
  }

  /** The arithmetic of an open finding, with its reasons and remarks. */
  private List<String> because(Finding finding) {
    List<String> lines = new ArrayList<>();
    finding.arithmetic().stream()
        .filter(ground -> !isOnlyMissing(finding, ground))
        .map(ground -> phrases.ground(finding, ground))
        .distinct()
        .forEach(lines::add);
    own(finding).stream()
        .filter(hold -> hold.reason() != Reason.TOO_NEAR || !saysTooNear(finding))
        .map(OpenFindings::hold)
        .forEach(lines::add);
    first(finding).ifPresent(lines::add);
    if (finding.outcome() == Outcome.FAIL) {
      lines.add("not met; it protects " + finding.check().protects());
    }
    finding.notes().stream().map(Phrases::note).forEach(lines::add);
    return lines;
  }

  /** The checks that come first, on one line. */
  private static Optional<String> first(Finding finding) {
    List<String> checks =
        finding.holds().stream()
            .filter(hold -> hold.reason() == Reason.PREREQUISITE_OPEN)
            .map(Finding.Hold::text)
            .toList();
    return checks.isEmpty()
        ? Optional.empty()
        : Optional.of(Reason.PREREQUISITE_OPEN.words() + ", first: " + String.join("; ", checks));
  }

  /** Whether a ground says no more than that nobody has recorded something. */
  private boolean isOnlyMissing(Finding finding, Ground ground) {
    boolean missing =
        finding.holds().stream().anyMatch(hold -> hold.reason() == Reason.NOT_RECORDED);
    if (ground instanceof Ground.Comparison comparison) {
      return missing && comparison.truth() == Truth.UNDECIDED && !Phrases.isNear(comparison);
    }
    return ground instanceof Ground.Choice choice
        && finding.outcome() == Outcome.HOLD
        && Phrases.input(finding, choice.text())
            .map(input -> !input.fact().recorded())
            .orElse(false);
  }

  /** Whether the arithmetic itself says that a reading is too near. */
  private static boolean saysTooNear(Finding finding) {
    return finding.arithmetic().stream()
        .anyMatch(
            ground -> ground instanceof Ground.Comparison comparison && Phrases.isNear(comparison));
  }

  /** What would settle a hold, but for what a reason says already. */
  private static List<String> settles(Finding finding) {
    return finding.settles().stream().filter(settles -> !repeats(finding, settles)).toList();
  }

  private static boolean repeats(Finding finding, String settles) {
    String what = settles.substring(settles.indexOf(':') + 1).strip();
    return finding.holds().stream().anyMatch(hold -> hold.text().contains(what));
  }
}
