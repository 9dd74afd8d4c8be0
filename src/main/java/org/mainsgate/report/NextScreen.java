package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.agenda.Agenda;
import org.mainsgate.agenda.Form;
import org.mainsgate.agenda.Load;
import org.mainsgate.agenda.Matter;
import org.mainsgate.agenda.Task;
import org.mainsgate.agenda.Why;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Equipment;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.verdict.Finding;

/** What to do next at an instrument, for a person at a terminal of 80 columns. */
public final class NextScreen {
  private static final int FEW = 2;
  private static final int IN = 4;
  private static final int DEEP = 6;

  private final Outlook outlook;
  private final boolean all;
  private final Lines lines = new Lines();

  /**
   * The screen of an instrument.
   *
   * @param all whether every step is told, not only the next
   */
  public NextScreen(Outlook outlook, boolean all) {
    this.outlook = outlook;
    this.all = all;
  }

  /** The whole screen. */
  public String text() {
    Dossier dossier = outlook.dossier();
    lines.add(0, dossier.instrument().tag() + "  ", Screen.identity(dossier.instrument()));
    lines.add(0, dossier.assessment().stage().title() + ", " + dossier.setting().on());
    Screen.otherRules(dossier.setting()).forEach(line -> lines.add(0, line));
    if (outlook.agenda().isEmpty()) {
      done();
    } else {
      matters();
      steps();
      load();
    }
    return lines.toString();
  }

  private void done() {
    Stage stage = outlook.dossier().assessment().stage();
    String verdict = outlook.dossier().assessment().verdict().word();
    String meaning =
        Screen.meaning(stage, Screen.outcome(outlook.dossier().assessment().verdict()));
    lines.blank().add(0, "Nothing is open: " + verdict + ". " + meaning);
    lines.add(0, "What it clears: " + stage.clears() + ". " + stage.says());
    lines.add(0, "Local codes and a qualified person have the last word.");
  }

  private void matters() {
    for (Matter.Kind kind : Matter.Kind.values()) {
      List<Matter> own =
          outlook.agenda().matters().stream().filter(matter -> matter.kind() == kind).toList();
      if (!own.isEmpty()) {
        lines.blank().add(0, kind.words());
        own.stream()
            .collect(Collectors.groupingBy(Matter::says, LinkedHashMap::new, Collectors.toList()))
            .forEach(this::matter);
      }
    }
  }

  /** What is to be done, once for all the findings that ask for the same. */
  private void matter(List<String> says, List<Matter> matters) {
    lines.add(
        0,
        "  - ",
        matters.stream()
            .map(matter -> Phrases.title(matter.finding()))
            .distinct()
            .collect(Collectors.joining("; ")));
    says.forEach(text -> lines.add(IN, text));
    matters.stream()
        .map(matter -> matter.finding().check().caution())
        .filter(caution -> !caution.isEmpty())
        .distinct()
        .forEach(caution -> lines.add(IN, "caution: ", caution));
  }

  private void steps() {
    List<Agenda.Step> steps = outlook.agenda().steps();
    int told = 0;
    for (Agenda.Step step : steps) {
      boolean next = step.offered() && told < FEW;
      if (all || next) {
        step(step);
        told += step.tasks().isEmpty() ? 0 : 1;
        stop(step);
      }
    }
    later(steps, told);
  }

  private void later(List<Agenda.Step> steps, int told) {
    List<String> later =
        steps.stream()
            .filter(step -> !step.tasks().isEmpty())
            .skip(told)
            .map(step -> step.step().title())
            .toList();
    if (!later.isEmpty()) {
      lines.blank().add(0, "then: ", String.join("; ", later));
    }
  }

  private void step(Agenda.Step step) {
    if (step.tasks().isEmpty()) {
      return;
    }
    lines.blank().add(0, step.step().title() + (step.offered() ? "" : " (behind a stop)"));
    if (!step.step().says().isEmpty()) {
      lines.add(2, step.step().says());
    }
    if (!step.step().caution().isEmpty()) {
      lines.add(2, "caution: ", step.step().caution());
    }
    groups(step.tasks()).forEach(group -> group(group, step.step().caution()));
  }

  /** Tasks of one property together, in their order. */
  private static List<List<Task>> groups(List<Task> tasks) {
    List<List<Task>> groups = new ArrayList<>();
    for (Task task : tasks) {
      List<Task> last = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
      if (last.isEmpty() || !last.get(0).subject().equals(task.subject())) {
        last = new ArrayList<>();
        groups.add(last);
      }
      last.add(task);
    }
    return groups;
  }

  private void group(List<Task> tasks, String said) {
    if (tasks.get(0) instanceof Task.Closing closing) {
      lines.add(0, "  - ", "all " + closing.kind().plural());
      lines.add(IN, "Look for all of them, and list each in the instrument's file.");
      lines.add(IN, "write: ", "looked: {" + Form.of(closing) + "}");
      whys(closing);
      return;
    }
    Task.Entry first = (Task.Entry) tasks.get(0);
    Property.Heading heading = first.property().heading();
    lines.add(0, "  - ", heading.title());
    if (!heading.method().isEmpty()) {
      lines.add(IN, heading.method());
    }
    if (!heading.caution().isEmpty() && !heading.caution().equals(said)) {
      lines.add(IN, "caution: ", heading.caution());
    }
    first.equipment().ifPresent(equipment -> lines.add(IN, "with: ", equipment(equipment)));
    tasks.forEach(task -> entry((Task.Entry) task));
  }

  private void entry(Task.Entry entry) {
    lines.add(IN, "write: ", where(entry) + ": {" + Form.of(entry) + "}");
    entry.expected().ifPresent(found -> lines.add(DEEP, "expect ", found.words()));
    whys(entry);
  }

  private static String where(Task.Entry entry) {
    return switch (entry.property().heading().home()) {
      case VISIT -> entry.thing();
      case INSTRUMENT -> "plate";
      case BENCH -> "site";
    };
  }

  private void whys(Task task) {
    Why first = task.whys().get(0);
    if (first.cause() != Why.Cause.NEVER && first.cause() != Why.Cause.EACH_SITTING) {
      lines.add(DEEP, first.words());
    }
  }

  private static String equipment(Equipment equipment) {
    if (equipment.meters().isEmpty()) {
      return "no meter of the bench can measure it";
    }
    String meters =
        equipment.meters().stream().map(Bench.Meter::title).collect(Collectors.joining(" or "));
    return equipment.methods().size() == 1
        ? meters + " (method " + equipment.methods().get(0) + ")"
        : meters;
  }

  private void stop(Agenda.Step step) {
    step.stop()
        .ifPresent(
            stop -> {
              lines.blank().add(0, "STOP  ", stop.title() + ". " + stop.says());
              String waits =
                  step.halt().stream()
                      .map(Finding::check)
                      .map(check -> check.title())
                      .distinct()
                      .collect(Collectors.joining("; "));
              lines.add(DEEP, "until: ", waits);
            });
  }

  private void load() {
    Load left = outlook.agenda().load();
    long behind =
        outlook.agenda().steps().stream()
            .filter(step -> !step.offered())
            .mapToLong(step -> step.tasks().size())
            .sum();
    lines.blank();
    if (behind > 0) {
      lines.add(0, counted(behind, "entry", "entries") + " of these behind a stop.");
    }
    lines.add(0, words(left));
  }

  /** How much is left: {@code 6 readings left, about 7 minutes}. */
  static String words(Load left) {
    String counted =
        Stream.of(
                counted(left.readings(), "reading", "readings"),
                counted(left.typed(), "other value", "other values"),
                counted(left.ticks(), "tick", "ticks"))
            .filter(text -> !text.startsWith("0 "))
            .collect(Collectors.joining(", "));
    return counted.isEmpty()
        ? "No entry left."
        : counted + " left, about " + counted(left.minutes(), "minute", "minutes");
  }

  private static String counted(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }
}
