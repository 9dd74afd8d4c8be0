package org.mainsgate.agenda;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.ruleset.WorkStep;
import org.mainsgate.verdict.Evidence;

/**
 * The text of a draft of a visit in which everything that is still open stands as a comment:
 * nothing is said until a person takes the sign away. What was found earlier and still counts is
 * told, not asked. How each thing is measured is left to the command {@code next}.
 */
public final class VisitDraft {
  private static final String OR = " | ";

  private final Rules rules;
  private final Evidence evidence;
  private final Agenda agenda;
  private final Commented text = new Commented();

  private VisitDraft(Rules rules, Evidence evidence, Agenda agenda) {
    this.rules = rules;
    this.evidence = evidence;
    this.agenda = agenda;
  }

  /** The text of the file. */
  public static String of(
      Rules rules, Evidence evidence, Agenda agenda, String tag, LocalDate on, String by) {
    VisitDraft draft = new VisitDraft(rules, evidence, agenda);
    draft.head(tag, on, by);
    draft.papers();
    List<Agenda.Step> steps = draft.atTheInstrument();
    Set<String> told = draft.order(steps);
    new FoundDraft(rules, evidence, steps, told, draft.text).write();
    draft.matters();
    draft.work();
    return draft.text.toString();
  }

  private void head(String tag, LocalDate on, String by) {
    text.comment(
            0,
            "A visit to "
                + tag
                + ", to be filled in. Take the `# ` away before a line and leave the one value that"
                + " you found; a line with its `# ` says nothing. What you do not know is `unknown`."
                + " How to find out: `next`.")
        .line("format: 1")
        .line("date: " + on)
        .line("by: " + Commented.quoted(by))
        .open(0, "note: ...")
        .line("");
  }

  private List<Agenda.Step> atTheInstrument() {
    return agenda.steps().stream()
        .filter(
            step -> step.tasks().isEmpty() || step.tasks().stream().anyMatch(FoundDraft::isOfVisit))
        .toList();
  }

  /** What belongs into other files is named only. */
  private void papers() {
    for (Property.Home home : List.of(Property.Home.BENCH, Property.Home.INSTRUMENT)) {
      List<String> names =
          agenda.tasks().stream()
              .filter(Task.Entry.class::isInstance)
              .map(Task.Entry.class::cast)
              .filter(entry -> entry.property().heading().home() == home)
              .map(entry -> entry.property().name())
              .toList();
      boolean plate = home == Property.Home.INSTRUMENT;
      if (!names.isEmpty()) {
        text.comment(
            0,
            "Missing in "
                + (plate ? "instrument.yaml, below `plate`: " : "bench.yaml, below `site`: ")
                + String.join(", ", names));
      }
    }
  }

  /** The order of the work, since the lines below stand by thing; comes back with its cautions. */
  private Set<String> order(List<Agenda.Step> steps) {
    Set<String> cautions = new HashSet<>();
    if (!steps.isEmpty()) {
      text.line("").comment(0, "In this order:");
    }
    for (int i = 0; i < steps.size(); i++) {
      WorkStep step = steps.get(i).step();
      text.comment(0, (i + 1) + ". " + step.title());
      text.comment(0, step.caution().isEmpty() ? "" : "caution: " + step.caution());
      cautions.add(step.caution());
      steps
          .get(i)
          .stop()
          .ifPresent(stop -> text.comment(0, "STOP: " + stop.title() + ". " + stop.says()));
    }
    text.line("");
    return cautions;
  }

  /** What no entry settles. */
  private void matters() {
    if (agenda.matters().isEmpty()) {
      return;
    }
    text.comment(0, "Open besides, and no entry settles it:");
    for (Matter matter : agenda.matters()) {
      String says = String.join(" ", matter.says());
      text.comment(
          0,
          "- "
              + matter.finding().check().title()
              + ": "
              + matter.kind().words()
              + (says.isEmpty() ? "" : ". " + says));
    }
    text.line("");
  }

  private void work() {
    Vocabulary vocabulary = rules.vocabulary();
    text.comment(0, "What was done, if anything; what was found after it goes below `left:`.")
        .open(0, "work:")
        .open(
            0,
            "  - {act: "
                + String.join(OR, vocabulary.acts().keySet())
                + ", on: "
                + String.join(OR, things(vocabulary))
                + ", note: ...}");
  }

  /** All that work can be done on. */
  private List<String> things(Vocabulary vocabulary) {
    List<String> things = new ArrayList<>();
    for (Kind kind : vocabulary.kinds().values()) {
      if (kind.isListed()) {
        things.addAll(evidence.list(kind.name()).listing().items());
      } else if (kind.once() == Kind.Once.INSTRUMENT) {
        things.add(kind.name());
      }
    }
    return things;
  }
}
