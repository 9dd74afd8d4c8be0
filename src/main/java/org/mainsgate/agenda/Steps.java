package org.mainsgate.agenda;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.WorkStep;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;

/** Puts tasks into the order of the work, and finds the stops that are not passed. */
final class Steps {
  /** What stands in files, not at the instrument, and so before everything. */
  private static final String PAPERS = "papers";

  private final Rules rules;
  private final Assessment assessment;

  Steps(Rules rules, Assessment assessment) {
    this.rules = rules;
    this.assessment = assessment;
  }

  List<Agenda.Step> of(List<Task> tasks) {
    List<Agenda.Step> steps = new ArrayList<>();
    boolean offered = true;
    for (WorkStep step : order()) {
      List<Task> own = tasks.stream().filter(task -> stepOf(task).equals(step.id())).toList();
      List<Finding> halt = halt(step, own);
      if (!own.isEmpty() || !halt.isEmpty()) {
        steps.add(new Agenda.Step(step, sorted(own, step), offered, halt));
      }
      offered = offered && halt.isEmpty();
    }
    return steps;
  }

  private List<WorkStep> order() {
    return Stream.concat(
            Stream.of(
                unnamed(PAPERS, "On the bench and on the plate"), unnamed("", "At the instrument")),
            rules.order().stream())
        .toList();
  }

  private static WorkStep unnamed(String id, String title) {
    return new WorkStep(
        id, title, "", List.of(), List.of(), "", false, List.of(), Optional.empty());
  }

  private String stepOf(Task task) {
    return rules.order().stream()
        .filter(
            step -> step.asks().contains(task.subject()) || step.closes().contains(task.subject()))
        .map(WorkStep::id)
        .findFirst()
        .orElse(isOnPaper(task) ? PAPERS : "");
  }

  private static boolean isOnPaper(Task task) {
    return task instanceof Task.Entry entry
        && entry.property().heading().home() != Property.Home.VISIT;
  }

  /**
   * Lists first, since what is on them is asked about; then as the step, or the vocabulary, says.
   */
  private List<Task> sorted(List<Task> tasks, WorkStep step) {
    List<String> words = new ArrayList<>(step.closes());
    words.addAll(step.asks());
    if (step.asks().isEmpty()) {
      words.addAll(rules.vocabulary().kinds().keySet());
      words.addAll(rules.vocabulary().properties().keySet());
    }
    return tasks.stream()
        .sorted(
            Comparator.<Task>comparingInt(task -> words.indexOf(task.subject()))
                .thenComparing(task -> task instanceof Task.Entry entry ? entry.thing() : ""))
        .toList();
  }

  /**
   * The findings that a step's stop waits for; checks of another stage do not stop this one. What
   * has to be done again in this sitting opens no stop on the word of another one.
   */
  private List<Finding> halt(WorkStep step, List<Task> own) {
    boolean again = own.stream().anyMatch(Steps::isDoneAgain);
    return step.stop().stream()
        .flatMap(stop -> stop.until().stream())
        .flatMap(
            check ->
                assessment.findings().stream()
                    .filter(finding -> finding.check().id().equals(check)))
        .filter(finding -> finding.outcome() != Outcome.NOT_APPLICABLE)
        .filter(finding -> again || finding.outcome() != Outcome.PASS)
        .toList();
  }

  /** What is true for an hour is asked with the reading that needs it, and stops nothing. */
  private static boolean isDoneAgain(Task task) {
    return task instanceof Task.Entry entry
        && !entry.property().isMomentary()
        && entry.whys().stream().anyMatch(why -> why.cause() == Why.Cause.EACH_SITTING);
  }
}
