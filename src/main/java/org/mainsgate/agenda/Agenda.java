package org.mainsgate.agenda;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.WorkStep;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Finding;

/**
 * What is still to do at an instrument for a stage: what to find out, in the order of the work, and
 * what no entry settles.
 *
 * @param steps the steps in which something is open, or whose stop is not passed
 * @param matters what has to be put right, judged or confirmed
 */
public record Agenda(List<Step> steps, List<Matter> matters) {

  /** Keeps the lists as they are. */
  public Agenda {
    steps = List.copyOf(steps);
    matters = List.copyOf(matters);
  }

  /**
   * A step of the work with what is open in it.
   *
   * @param step the step as the rules have it
   * @param tasks what is open
   * @param offered whether no stop stands before it
   * @param halt the findings that its stop waits for; empty where it has none, or is passed
   */
  public record Step(WorkStep step, List<Task> tasks, boolean offered, List<Finding> halt) {

    /** Keeps the lists as they are. */
    public Step {
      tasks = List.copyOf(tasks);
      halt = List.copyOf(halt);
    }

    /** How much there is to do in it. */
    public Load load() {
      return tasks.stream().map(Task::load).reduce(Load.NONE, Load::plus);
    }

    /** The stop after it, if that is not passed. */
    public Optional<WorkStep.Stop> stop() {
      return halt.isEmpty() ? Optional.empty() : step.stop();
    }
  }

  /**
   * What is to do.
   *
   * @param record what was recorded; a draft of this day is the sitting that goes on
   * @param evidence what of it is in force
   * @param assessment what the stage says of that
   * @param on the day
   */
  public static Agenda of(
      Rules rules,
      InstrumentRecord record,
      Evidence evidence,
      Assessment assessment,
      LocalDate on) {
    Situation situation = new Situation(rules, record, evidence, on);
    Wants wants = new Wants(situation);
    List<Matter> matters = new Matters().of(assessment.findings());
    Wanting wanting = new Wanting(situation, wants);
    for (Finding finding : assessment.findings()) {
      if (wanting.of(finding)) {
        matters.removeIf(matter -> Matters.isTooEarly(matter, finding));
      } else if (Matters.isForgotten(finding, matters)) {
        matters.add(Matters.look(finding));
      }
    }
    new Sitting(situation, assessment, wants).add();
    List<Task> tasks = new Tasks(situation, assessment).of(wants);
    return new Agenda(new Steps(rules, assessment).of(tasks), matters);
  }

  /** Whether nothing at all is to do. */
  public boolean isEmpty() {
    return steps.isEmpty() && matters.isEmpty();
  }

  /** All that is to be found out, in order, behind stops too. */
  public List<Task> tasks() {
    return steps.stream().flatMap(step -> step.tasks().stream()).toList();
  }

  /** What may be done now: nothing behind a stop that is not passed. */
  public List<Step> offered() {
    return steps.stream().filter(Step::offered).toList();
  }

  /** How much there is to do in all, as far as that is known. */
  public Load load() {
    return steps.stream().map(Step::load).reduce(Load.NONE, Load::plus);
  }
}
