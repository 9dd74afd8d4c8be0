package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.agenda.Agenda;
import org.mainsgate.agenda.Task;
import org.mainsgate.agenda.Why;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Equipment;
import org.mainsgate.ruleset.Property;

/** Puts what is to do into the words of a page to fill in. */
final class WorkSheetWriter {
  private final Outlook outlook;
  private final Agenda agenda;

  WorkSheetWriter(Outlook outlook) {
    this.outlook = outlook;
    this.agenda = outlook.agenda();
  }

  WorkSheet sheet() {
    Dossier dossier = outlook.dossier();
    return new WorkSheet(
        dossier.instrument().tag(),
        Screen.identity(dossier.instrument()),
        dossier.setting().on().toString(),
        dossier.assessment().stage().title(),
        Screen.otherRules(dossier.setting()),
        steps(),
        agenda.matters().stream()
            .map(
                matter ->
                    new WorkSheet.Matter(
                        Phrases.title(matter.finding()),
                        matter.kind().words() + ". " + String.join(" ", matter.says())))
            .toList(),
        NextScreen.words(agenda.load()));
  }

  private List<WorkSheet.Step> steps() {
    List<WorkSheet.Step> steps = new ArrayList<>();
    for (Agenda.Step step : agenda.steps()) {
      String until =
          step.halt().stream()
              .map(finding -> finding.check().title())
              .distinct()
              .collect(Collectors.joining("; "));
      steps.add(
          new WorkSheet.Step(
              (steps.size() + 1) + " " + step.step().title(),
              step.tasks().isEmpty() ? "" : step.step().says(),
              step.tasks().isEmpty() ? "" : step.step().caution(),
              lines(step.tasks(), step.step().caution()),
              step.stop().map(stop -> stop.title() + ". " + stop.says()).orElse(""),
              step.stop().isPresent() ? until : ""));
    }
    return steps;
  }

  /** One line for each property or list, with a field for each thing. */
  private static List<WorkSheet.Line> lines(List<Task> tasks, String said) {
    Map<String, List<Task>> together =
        tasks.stream()
            .collect(Collectors.groupingBy(Task::subject, LinkedHashMap::new, Collectors.toList()));
    return together.values().stream().map(same -> line(same, said)).toList();
  }

  private static WorkSheet.Line line(List<Task> tasks, String said) {
    if (tasks.get(0) instanceof Task.Closing closing) {
      return list(closing);
    }
    Task.Entry first = (Task.Entry) tasks.get(0);
    String caution = first.property().heading().caution();
    return new WorkSheet.Line(
        first.property().title(),
        first.equipment().map(WorkSheetWriter::equipment).orElse(""),
        caution.equals(said) ? "" : caution,
        tasks.stream().map(task -> field((Task.Entry) task, tasks.size() > 1)).toList());
  }

  private static WorkSheet.Line list(Task.Closing closing) {
    String listed = closing.listed().isEmpty() ? "these" : String.join(", ", closing.listed());
    List<WorkSheet.Blank> blanks =
        List.of(
            new WorkSheet.Blank("", List.of("none", listed), ""),
            new WorkSheet.Blank("", List.of(), ""));
    return new WorkSheet.Line(
        "all " + closing.kind().plural(), "", "", List.of(new WorkSheet.Field("", blanks, "")));
  }

  private static String equipment(Equipment equipment) {
    return equipment.meters().stream().map(Bench.Meter::title).collect(Collectors.joining(" or "));
  }

  private static WorkSheet.Field field(Task.Entry entry, boolean several) {
    boolean itself = entry.property().isOf("instrument") || entry.property().isOf("bench");
    List<WorkSheet.Blank> blanks = new ArrayList<>();
    blanks.add(blank("", entry.property()));
    entry.with().forEach(property -> blanks.add(blank(property.title(), property)));
    String label = itself && !several ? "" : entry.title();
    return new WorkSheet.Field(label, blanks, hint(entry));
  }

  private static WorkSheet.Blank blank(String label, Property property) {
    if (property instanceof Property.Observation observation) {
      List<String> boxes = observation.values().values().stream().map(observation::title).toList();
      return new WorkSheet.Blank(label, boxes, "");
    }
    String unit = property instanceof Property.Quantity quantity ? quantity.unit().symbol() : "";
    return new WorkSheet.Blank(label, List.of(), unit);
  }

  private static String hint(Task.Entry entry) {
    Why why = entry.whys().get(0);
    boolean plain = why.cause() == Why.Cause.NEVER || why.cause() == Why.Cause.EACH_SITTING;
    return Stream.of(
            entry.expected().map(found -> "expect " + found.words()),
            plain ? Optional.<String>empty() : Optional.of(why.words()))
        .flatMap(Optional::stream)
        .collect(Collectors.joining("; "));
  }
}
