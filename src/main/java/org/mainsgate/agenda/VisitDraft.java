package org.mainsgate.agenda;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.mainsgate.evidence.Bench;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.WorkStep;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Said;

/**
 * The text of a draft of a visit in which everything that is still open stands as a comment:
 * nothing is said until a person takes the sign away. What was found earlier and still counts is
 * told, not asked.
 */
public final class VisitDraft {
  private static final int THING = 2;
  private static final int ENTRY = 4;

  private final Rules rules;
  private final Evidence evidence;
  private final Agenda agenda;
  private final Commented text = new Commented();

  /** What was explained further up, and need not be again. */
  private final Set<String> explained = new HashSet<>();

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
    draft.steps();
    draft.found();
    draft.work();
    return draft.text.toString();
  }

  private void head(String tag, LocalDate on, String by) {
    text.comment(
            0,
            "A visit to "
                + tag
                + ", to be filled in. Take the `# ` away before a line and leave the one value that"
                + " you found; a line with its `# ` says nothing. What you do not know is `unknown`.")
        .line("format: 1")
        .line("date: " + on)
        .line("by: " + Commented.quoted(by))
        .line("# note: ...")
        .line("");
  }

  /** The order of the work, since the lines below stand by thing. */
  private void steps() {
    if (agenda.steps().isEmpty()) {
      return;
    }
    text.comment(0, "In this order:");
    for (Agenda.Step step : agenda.steps()) {
      String says = step.step().says().isEmpty() ? "" : ". " + step.step().says();
      if (!step.tasks().isEmpty()) {
        text.comment(0, number(step.step()) + " " + step.step().title() + says);
        text.comment(0, caution(step.step().caution()));
      }
      step.stop().ifPresent(stop -> text.comment(0, "STOP: " + stop.title() + ". " + stop.says()));
    }
    papers();
    text.line("");
  }

  private static String caution(String caution) {
    return caution.isEmpty() ? "" : "caution: " + caution;
  }

  private String number(WorkStep step) {
    List<WorkStep> steps = agenda.steps().stream().map(Agenda.Step::step).toList();
    return (steps.indexOf(step) + 1) + ".";
  }

  /** What belongs into other files is named only. */
  private void papers() {
    for (Task task : agenda.tasks()) {
      if (task instanceof Task.Entry entry && !isOfVisit(entry)) {
        boolean plate = entry.property().heading().home() == Property.Home.INSTRUMENT;
        text.comment(
            0,
            "Not in this file: "
                + entry.property().title()
                + (plate ? ", `plate` of instrument.yaml: " : ", `site` of bench.yaml: ")
                + Form.of(entry));
      }
    }
  }

  private static boolean isOfVisit(Task.Entry entry) {
    return entry.property().heading().home() == Property.Home.VISIT;
  }

  private record Numbered(WorkStep step, Task.Entry entry) {}

  private void found() {
    text.line("found:");
    Map<String, List<Numbered>> things = new LinkedHashMap<>();
    List<Task.Closing> lists = new ArrayList<>();
    for (Agenda.Step step : agenda.steps()) {
      for (Task task : step.tasks()) {
        if (task instanceof Task.Closing closing) {
          lists.add(closing);
        } else if (task instanceof Task.Entry entry && isOfVisit(entry)) {
          things
              .computeIfAbsent(entry.thing(), thing -> new ArrayList<>())
              .add(new Numbered(step.step(), entry));
        }
      }
    }
    things.forEach(this::thing);
    if (!lists.isEmpty()) {
      text.line("  looked:");
      for (Task.Closing closing : lists) {
        text.comment(ENTRY, "all " + closing.kind().plural() + "; each listed in instrument.yaml");
        text.open(ENTRY, Form.of(closing));
      }
    }
    text.line("");
  }

  private void thing(String thing, List<Numbered> entries) {
    text.line(" ".repeat(THING) + thing + ":");
    String title = evidence.title(thing);
    text.comment(ENTRY, title.equals(thing) ? "" : title);
    asLastTime(thing, entries).ifPresent(words -> text.comment(ENTRY, "as last time: " + words));
    Optional<WorkStep> last = Optional.empty();
    for (Numbered numbered : entries) {
      if (!last.equals(Optional.of(numbered.step())) && !numbered.step().title().isEmpty()) {
        text.line("");
        text.comment(ENTRY, number(numbered.step()) + " " + numbered.step().title());
      }
      last = Optional.of(numbered.step());
      entry(numbered.entry());
    }
  }

  private void entry(Task.Entry entry) {
    Property.Heading heading = entry.property().heading();
    Why why = entry.whys().get(0);
    boolean plain = why.cause() == Why.Cause.NEVER || why.cause() == Why.Cause.EACH_SITTING;
    text.line("");
    text.comment(ENTRY, heading.title() + (plain ? "" : " (" + why.words() + ")"));
    if (explained.add(heading.name())) {
      text.comment(ENTRY, heading.method());
      text.comment(ENTRY, caution(heading.caution()));
    }
    entry
        .equipment()
        .filter(equipment -> !equipment.meters().isEmpty())
        .ifPresent(
            equipment ->
                text.comment(
                    ENTRY,
                    "with "
                        + equipment.meters().stream()
                            .map(Bench.Meter::title)
                            .collect(Collectors.joining(" or "))));
    entry.expected().ifPresent(expected -> text.comment(ENTRY, "expect " + expected.words()));
    text.open(ENTRY, Form.of(entry));
  }

  /** How the thing was built when it was last looked at, as far as that still counts. */
  private Optional<String> asLastTime(String thing, List<Numbered> entries) {
    List<String> asked = entries.stream().map(n -> n.entry().property().name()).toList();
    List<String> told =
        rules.vocabulary().properties().values().stream()
            .filter(property -> isConstruction(property) && !asked.contains(property.name()))
            .flatMap(
                property ->
                    evidence.fact(thing, property.name()).stream()
                        .map(fact -> property.title() + ": " + said(fact)))
            .toList();
    return told.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", told));
  }

  private static boolean isConstruction(Property property) {
    boolean measured =
        property instanceof Property.Quantity quantity && quantity.function().isPresent();
    return property.heading().home() == Property.Home.VISIT && !property.isMomentary() && !measured;
  }

  private static String said(Fact fact) {
    return fact.said().stream().map(Said::text).distinct().collect(Collectors.joining(", "));
  }

  private void work() {
    if (!agenda.matters().isEmpty()) {
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
    text.comment(0, "What was done, if anything; below `left:` goes what was found after it. Acts:")
        .comment(0, String.join(", ", rules.vocabulary().acts().keySet()))
        .open(0, "work:")
        .open(0, "  - {act: ..., on: ..., note: ...}");
  }
}
