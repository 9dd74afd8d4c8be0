package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.mainsgate.agenda.Agenda;
import org.mainsgate.agenda.Matter;
import org.mainsgate.agenda.Prospect;
import org.mainsgate.agenda.Task;
import org.mainsgate.agenda.Why;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.WorkStep;
import org.mainsgate.verdict.Finding;

/** Puts an agenda on paper. */
final class WorksheetWriter {
  /** So many things of a kind have a line before anybody knows how many there are. */
  private static final int LINES = 4;

  private static final int MORE_LINES = 2;

  private final Outlook outlook;
  private final Setting setting;
  private final List<Prospect> prospects;

  /** Each caution stands where it is needed first. */
  private final Set<String> told = new LinkedHashSet<>();

  WorksheetWriter(Outlook outlook) {
    this.outlook = outlook;
    this.setting = outlook.dossier().setting();
    this.prospects = Prospect.of(setting.rules(), setting.stage(), outlook.agenda());
  }

  Worksheet worksheet() {
    return new Worksheet(
        outlook.dossier().instrument().tag(),
        outlook.dossier().instrument().what(),
        setting.on().toString(),
        setting.stage().title(),
        rules(setting.rules()),
        Worksheet.Closeness.WIDE,
        Screen.otherRules(setting),
        matters(),
        steps(),
        List.of());
  }

  private static String rules(Rules rules) {
    return rules.profile() + ", edition " + rules.edition();
  }

  private List<Worksheet.Matter> matters() {
    Map<List<String>, List<Matter>> same =
        outlook.agenda().matters().stream()
            .collect(
                Collectors.groupingBy(
                    matter ->
                        Stream.concat(Stream.of(matter.kind().words()), matter.says().stream())
                            .toList(),
                    LinkedHashMap::new,
                    Collectors.toList()));
    return same.values().stream().map(WorksheetWriter::matter).toList();
  }

  private static Worksheet.Matter matter(List<Matter> same) {
    String title =
        same.stream()
            .map(matter -> Phrases.title(matter.finding()))
            .distinct()
            .collect(Collectors.joining("; "));
    return new Worksheet.Matter(same.get(0).kind().words(), title, same.get(0).says());
  }

  private List<Worksheet.Step> steps() {
    List<Worksheet.Step> steps = new ArrayList<>();
    Map<String, Agenda.Step> open =
        outlook.agenda().steps().stream()
            .collect(Collectors.toMap(step -> step.step().id(), step -> step));
    for (Agenda.Step step : outlook.agenda().steps()) {
      if (isOutsideTheOrder(step.step())) {
        steps.add(step(step.step(), Optional.of(step)));
      }
    }
    for (WorkStep step : setting.rules().order()) {
      Worksheet.Step written = step(step, Optional.ofNullable(open.get(step.id())));
      if (!written.items().isEmpty() || !written.stop().isEmpty()) {
        steps.add(written);
      }
    }
    return steps;
  }

  private boolean isOutsideTheOrder(WorkStep step) {
    return setting.rules().order().stream().noneMatch(ordered -> ordered.id().equals(step.id()));
  }

  private Worksheet.Step step(WorkStep step, Optional<Agenda.Step> open) {
    List<Task> tasks = open.map(Agenda.Step::tasks).orElse(List.of());
    List<Prospect> ahead =
        step.asks().stream()
            .flatMap(name -> prospects.stream().filter(p -> p.property().name().equals(name)))
            .toList();
    boolean empty = tasks.isEmpty() && ahead.isEmpty();
    List<String> cautions = empty ? List.of() : cautions(step, tasks, ahead);
    List<Worksheet.Item> items =
        Stream.of(
                tasks.stream().map(WorksheetWriter::item),
                ahead.stream().filter(Prospect::certain).map(WorksheetWriter::item),
                perhaps(ahead).stream())
            .flatMap(part -> part)
            .toList();
    Optional<WorkStep.Stop> stop = open.flatMap(Agenda.Step::stop);
    return new Worksheet.Step(
        step.title(),
        empty ? "" : step.says(),
        cautions,
        items,
        stop.map(found -> found.title() + ". " + found.says()).orElse(""),
        open.map(WorksheetWriter::until).orElse(""));
  }

  private static String until(Agenda.Step step) {
    return step.halt().stream()
        .map(Finding::check)
        .map(check -> check.title())
        .distinct()
        .collect(Collectors.joining("; "));
  }

  private List<String> cautions(WorkStep step, List<Task> tasks, List<Prospect> ahead) {
    Stream<Property> asked =
        tasks.stream()
            .filter(Task.Entry.class::isInstance)
            .map(task -> ((Task.Entry) task).property());
    return Stream.concat(
            Stream.of(step.caution()),
            Stream.concat(asked, ahead.stream().map(Prospect::property))
                .map(property -> property.heading().caution()))
        .filter(caution -> !caution.isEmpty())
        .filter(told::add)
        .toList();
  }

  private static Worksheet.Item item(Task task) {
    return task instanceof Task.Entry entry ? entry(entry) : closing((Task.Closing) task);
  }

  private static Worksheet.Item closing(Task.Closing closing) {
    boolean none = closing.listed().isEmpty();
    List<String> boxes = none ? List.of("none", "these are all:") : List.of("these are all:");
    String listed = none ? "" : "listed: " + String.join(", ", closing.listed());
    return new Worksheet.Item(
        closing.kind().plural(),
        listed,
        List.of(
            new Worksheet.Part(
                "", Worksheet.Mark.BOX, boxes, numbered(none ? LINES : MORE_LINES), "")));
  }

  private static List<String> numbered(int lines) {
    return IntStream.rangeClosed(1, lines).mapToObj(String::valueOf).toList();
  }

  private static Worksheet.Item entry(Task.Entry entry) {
    List<Worksheet.Part> parts = new ArrayList<>();
    parts.add(part("", entry.property()));
    entry.with().forEach(property -> parts.add(part(property.title(), property)));
    return new Worksheet.Item(title(entry), hint(entry), parts);
  }

  private static Worksheet.Part part(String label, Property property) {
    if (property instanceof Property.Observation observation) {
      return new Worksheet.Part(label, Worksheet.Mark.BOX, values(observation), List.of(), "");
    }
    return new Worksheet.Part(label, Worksheet.Mark.BOX, List.of(), List.of(""), unit(property));
  }

  private static List<String> values(Property.Observation observation) {
    return observation.values().values().stream().map(observation::title).toList();
  }

  private static String unit(Property property) {
    return property instanceof Property.Quantity quantity ? quantity.unit().symbol() : "";
  }

  private static String title(Task.Entry entry) {
    boolean named = entry.property().heading().of().contains(entry.thing());
    return named ? entry.property().title() : entry.property().title() + ", " + entry.title();
  }

  private static String hint(Task.Entry entry) {
    Why first = entry.whys().get(0);
    boolean plain = first.cause() == Why.Cause.NEVER || first.cause() == Why.Cause.EACH_SITTING;
    return Stream.of(
            entry.expected().map(expected -> "expect " + expected.words()).orElse(""),
            plain ? "" : first.words())
        .filter(text -> !text.isEmpty())
        .collect(Collectors.joining("; "));
  }

  /** A line for each thing that may be found, or for their numbers before each value. */
  private static Worksheet.Item item(Prospect prospect) {
    Property property = prospect.property();
    String title = property.title() + ", each " + prospect.kind().title();
    Worksheet.Part part =
        property instanceof Property.Observation observation
            ? new Worksheet.Part("", Worksheet.Mark.NUMBERS, values(observation), List.of(), "")
            : new Worksheet.Part(
                "", Worksheet.Mark.NUMBERS, List.of(), numbered(LINES), unit(property));
    return new Worksheet.Item(title, "", List.of(part));
  }

  /** What only some of the things will need, all in one place. */
  private static Optional<Worksheet.Item> perhaps(List<Prospect> ahead) {
    List<Worksheet.Part> parts =
        ahead.stream()
            .filter(prospect -> !prospect.certain())
            .map(Prospect::property)
            .distinct()
            .map(property -> perhaps(property))
            .toList();
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(new Worksheet.Item("Where a thing is so made:", "", parts));
  }

  private static Worksheet.Part perhaps(Property property) {
    return new Worksheet.Part(
        property.title(), Worksheet.Mark.NUMBERS, List.of(), List.of(""), unit(property));
  }
}
