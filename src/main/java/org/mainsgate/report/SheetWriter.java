package org.mainsgate.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.Value;
import org.mainsgate.evidence.Visit;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Print;
import org.mainsgate.ruleset.Citation;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Judged;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Said;
import org.mainsgate.verdict.Verdict;

/** Puts a dossier into words, page by page. */
final class SheetWriter {

  /** Named for every check that has the same source. */
  private static final String RULE = "the rule";

  private final Dossier dossier;
  private final Setting setting;
  private final Vocabulary words;
  private final Phrases phrases;
  private final List<Finding> findings;
  private final Map<Cited, Integer> sources = new LinkedHashMap<>();

  /** A value or rule, and where it comes from. */
  private record Cited(String value, Citation citation) {}

  SheetWriter(Dossier dossier) {
    this.dossier = dossier;
    this.setting = dossier.setting();
    this.words = setting.rules().vocabulary();
    this.phrases = new Phrases(words);
    this.findings = dossier.assessment().findings();
  }

  Sheet sheet() {
    Instrument instrument = dossier.instrument();
    Verdict verdict = dossier.assessment().verdict();
    List<Sheet.Row> rows = rows();
    return new Sheet(
        instrument.tag(),
        instrument.what(),
        setting.on().toString(),
        dossier.assessment().stage().title(),
        verdict,
        Screen.meaning(dossier.assessment().stage(), Screen.outcome(verdict)),
        dossier.assessment().stage().says(),
        warnings(),
        identity(instrument),
        dossier.photo().map(photo -> new Sheet.Photo(photo, photoText(instrument))),
        phrases.open(findings, Outcome.FAIL),
        phrases.open(findings, Outcome.HOLD),
        judgements(),
        cautions(),
        rows,
        skipped(),
        setAside(),
        meters(),
        rules(),
        sources(),
        dossier.visits().stream().map(this::sitting).toList(),
        dossier.heads(),
        people());
  }

  private List<String> warnings() {
    return setting.whatIf()
        ? List.of("What if: this report uses other rules than those that the bench names.")
        : List.of();
  }

  private List<Sheet.Line> identity(Instrument instrument) {
    return Stream.of(
            new Sheet.Line("tag", instrument.tag()),
            new Sheet.Line("maker", instrument.maker()),
            new Sheet.Line("model", instrument.model()),
            new Sheet.Line("serial number", instrument.serial()),
            new Sheet.Line("made", instrument.made()),
            new Sheet.Line("identity", instrument.uid()),
            new Sheet.Line("bench", setting.bench().title()),
            new Sheet.Line("on the plate", plate(instrument)),
            new Sheet.Line("judged under", profile() + ", edition " + setting.rules().edition()))
        .filter(line -> !line.text().isEmpty())
        .toList();
  }

  private String plate(Instrument instrument) {
    return instrument.plate().stream()
        .map(entry -> text(entry.property(), entry.value()))
        .collect(Collectors.joining(", "));
  }

  private static String photoText(Instrument instrument) {
    String made = (instrument.maker() + " " + instrument.model()).strip();
    String serial = instrument.serial().isEmpty() ? "" : ", serial number " + instrument.serial();
    return "photo of "
        + instrument.tag()
        + ": "
        + instrument.what()
        + (made.isEmpty() ? "" : ", " + made)
        + serial;
  }

  private List<Sheet.Judgement> judgements() {
    return findings.stream()
        .flatMap(finding -> finding.judged().stream().map(judged -> judgement(finding, judged)))
        .toList();
  }

  private Sheet.Judgement judgement(Finding finding, Judged judged) {
    return new Sheet.Judgement(
        Phrases.title(finding),
        judged.by() + " (" + judged.competence() + ")",
        judged.because(),
        judged.restriction(),
        judged.on().toString());
  }

  /** A decision on one line. */
  static String judged(Judged judged) {
    String restriction = judged.restriction().isEmpty() ? "" : "; only: " + judged.restriction();
    return judged.by() + ", " + judged.on() + ": " + judged.because() + restriction;
  }

  private List<String> cautions() {
    Set<String> cautions = new LinkedHashSet<>(dossier.assessment().stage().cautions());
    findings.stream()
        .filter(finding -> finding.outcome() != Outcome.NOT_APPLICABLE)
        .map(finding -> finding.check().caution())
        .filter(caution -> !caution.isEmpty())
        .forEach(cautions::add);
    return List.copyOf(cautions);
  }

  private List<Sheet.Row> rows() {
    return findings.stream()
        .filter(finding -> finding.outcome() != Outcome.NOT_APPLICABLE)
        .map(this::row)
        .toList();
  }

  private Sheet.Row row(Finding finding) {
    return new Sheet.Row(
        finding.check().title(),
        finding.check().over().isEmpty() ? "" : finding.thingTitle(),
        finding.outcome(),
        found(finding),
        notes(finding),
        phrases.asked(finding),
        cited(finding));
  }

  /** Numbers on a line each, then all observations. */
  private List<String> found(Finding finding) {
    Map<Boolean, List<String>> parts =
        finding.inputs().stream()
            .collect(
                Collectors.partitioningBy(
                    input -> input.property() instanceof Property.Quantity,
                    Collectors.mapping(this::found, Collectors.toList())));
    String observations =
        parts.getOrDefault(false, List.of()).stream().distinct().collect(Collectors.joining("; "));
    return Stream.concat(
            parts.getOrDefault(true, List.of()).stream().distinct(), Stream.of(observations))
        .filter(line -> !line.isEmpty())
        .toList();
  }

  private static List<String> notes(Finding finding) {
    return Stream.concat(
            finding.notes().stream().map(note -> "Note: " + Phrases.note(note)),
            finding.judged().stream().map(judged -> "Judged by " + judged(judged)))
        .toList();
  }

  /** What was recorded, how, and the interval that it stands for. */
  private String found(Finding.Input input) {
    String how =
        input.fact().said().stream()
            .map(Said::how)
            .filter(text -> !text.isEmpty())
            .distinct()
            .collect(Collectors.joining(", "));
    String recorded = phrases.recorded(input);
    String known = input.fact().said().isEmpty() ? "" : phrases.known(input);
    boolean says = !known.isEmpty() && !known.equals(recorded) && !isPoint(input);
    return input.title()
        + ": "
        + recorded
        + (says ? ", that is " + known : "")
        + (how.isEmpty() ? "" : "; " + how);
  }

  private static boolean isPoint(Finding.Input input) {
    return input.fact() instanceof Fact.Amount amount && amount.range().exact().isPoint();
  }

  private String cited(Finding finding) {
    Set<Integer> numbers = new TreeSet<>();
    numbers.add(number(new Cited(RULE, finding.check().citation())));
    finding
        .limits()
        .forEach(limit -> numbers.add(number(new Cited(value(limit), limit.citation()))));
    return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  private int number(Cited cited) {
    return sources.computeIfAbsent(cited, unused -> sources.size() + 1);
  }

  private static String value(Finding.Used limit) {
    return limit.title() + ": " + limit.text();
  }

  private List<Sheet.Source> sources() {
    List<Sheet.Source> list = new ArrayList<>();
    sources.forEach(
        (cited, number) ->
            list.add(
                new Sheet.Source(
                    number, cited.value(), from(cited.citation()), standing(cited.citation()))));
    return list;
  }

  private static String from(Citation citation) {
    return Stream.of(citation.title(), edition(citation), citation.clause(), citation.note())
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("; "));
  }

  private static String edition(Citation citation) {
    return citation.edition().equals("none") ? "" : "edition " + citation.edition();
  }

  private static String standing(Citation citation) {
    return citation.standing().words()
        + citation
            .confirmed()
            .map(by -> ", confirmed by " + by.by() + " on " + by.on() + " in " + by.edition())
            .orElse("");
  }

  private List<String> skipped() {
    return findings.stream()
        .filter(finding -> finding.outcome() == Outcome.NOT_APPLICABLE)
        .collect(Collectors.groupingBy(Finding::because, LinkedHashMap::new, Collectors.toList()))
        .entrySet()
        .stream()
        .map(group -> skipped(group.getKey(), group.getValue()))
        .toList();
  }

  private static String skipped(String because, List<Finding> findings) {
    String titles =
        findings.stream().map(Phrases::title).distinct().collect(Collectors.joining("; "));
    return "Not applicable" + (because.isEmpty() ? "" : ", since " + because) + ": " + titles;
  }

  private List<Sheet.Aside> setAside() {
    return dossier.setAside().stream()
        .map(
            aside ->
                new Sheet.Aside(
                    aside.title() + ", " + aside.thing(), aside.text(), aside.why(), aside.entry()))
        .toList();
  }

  private List<Sheet.Meter> meters() {
    Map<String, LocalDate> used = new LinkedHashMap<>();
    for (Visit visit : dossier.visits()) {
      Stream.concat(visit.found().stream(), visit.left().stream())
          .forEach(
              entry ->
                  entry
                      .meter()
                      .ifPresent(meter -> used.put(meter, entry.on().orElse(visit.date()))));
    }
    return used.entrySet().stream()
        .flatMap(
            entry ->
                Optional.ofNullable(setting.bench().meters().get(entry.getKey()))
                    .map(meter -> meter(meter, entry.getValue()))
                    .stream())
        .toList();
  }

  private Sheet.Meter meter(Bench.Meter meter, LocalDate on) {
    Optional<Bench.MeterData> data = meter.on(on);
    List<String> accuracy = data.map(known -> accuracy(known.functions())).orElse(List.of());
    return new Sheet.Meter(
        meter.title() + (meter.serial().isEmpty() ? "" : ", serial number " + meter.serial()),
        accuracy.isEmpty() ? ofItsKind(meter) : accuracy,
        data.map(SheetWriter::calibrated).orElse("not calibrated"));
  }

  /** What a meter without data is taken to be. */
  private List<String> ofItsKind(Bench.Meter meter) {
    MeterKind kind = setting.rules().meterKinds().get(meter.kind());
    if (kind == null) {
      return List.of("not known");
    }
    List<String> lines = new ArrayList<>();
    lines.add("its own is not known; taken as " + kind.title() + ", " + kind.standing().words());
    lines.addAll(accuracy(kind.functions()));
    return lines;
  }

  private static List<String> accuracy(Map<String, List<MeterRange>> functions) {
    return functions.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .flatMap(
            function -> function.getValue().stream().map(range -> range(function.getKey(), range)))
        .toList();
  }

  private static String range(String function, MeterRange range) {
    String symbol = " " + range.unit().symbol();
    return function.replace('_', ' ')
        + " to "
        + Print.value(range.to(), range.unit())
        + symbol
        + ": "
        + range.accuracy().describe()
        + ", a digit being "
        + Print.value(range.digit().plus(range.unit().offset()), range.unit())
        + symbol;
  }

  private static String calibrated(Bench.MeterData data) {
    String how = data.calibrated().isEmpty() ? "not calibrated" : data.calibrated();
    return how + "; data from " + data.from() + data.due().map(due -> "; due " + due).orElse("");
  }

  private List<Sheet.Line> rules() {
    return List.of(
        new Sheet.Line("profile", profile()),
        new Sheet.Line("edition", setting.rules().edition()),
        new Sheet.Line("identity", setting.rules().identity()));
  }

  private String profile() {
    return setting.rules().profile() + ": " + setting.rules().title();
  }

  private Sheet.Sitting sitting(Visit visit) {
    List<Sheet.Line> lines = new ArrayList<>();
    entries(lines, "found", visit.found());
    lists(lines, visit.foundLists());
    visit.work().forEach(work -> lines.add(new Sheet.Line("work", work(work))));
    entries(lines, "left", visit.left());
    lists(lines, visit.leftLists());
    if (!visit.note().isEmpty()) {
      lines.add(new Sheet.Line("note", visit.note()));
    }
    String hash =
        visit
            .closing()
            .map(closing -> "closed " + closing.on() + ", SHA-256 " + closing.hash())
            .orElse("a draft, not closed");
    return new Sheet.Sitting(visit.id() + ", " + person(visit.by()), lines, hash);
  }

  /** The entries of one part, a line for each thing. */
  private void entries(List<Sheet.Line> lines, String part, List<Entry> entries) {
    entries.stream()
        .collect(Collectors.groupingBy(Entry::thing, LinkedHashMap::new, Collectors.toList()))
        .forEach(
            (thing, said) ->
                lines.add(
                    new Sheet.Line(
                        part,
                        thing(thing)
                            + ": "
                            + said.stream().map(this::entry).collect(Collectors.joining("; ")))));
  }

  private String entry(Entry entry) {
    String note = entry.note().isEmpty() ? "" : " (" + entry.note() + ")";
    return phrases.titleOf(entry.property()) + " " + text(entry.property(), entry.value()) + note;
  }

  private void lists(List<Sheet.Line> lines, List<Visit.Looked> lists) {
    for (Visit.Looked looked : lists) {
      String kind = phrases.plural(looked.kind());
      lines.add(new Sheet.Line("looked", kind + ": " + looked.count() + ", and these are all"));
    }
  }

  private String work(Visit.Work work) {
    Vocabulary.Act act = words.acts().get(work.act());
    String done = act == null ? work.act() : act.title();
    return thing(work.on()) + ": " + done + (work.note().isEmpty() ? "" : ", " + work.note());
  }

  private String text(String property, Value value) {
    if (value instanceof Value.Amount number) {
      return number.typed().text();
    }
    if (value instanceof Value.Names names) {
      return names.candidates().stream()
          .sorted()
          .map(name -> phrases.title(property, name))
          .collect(Collectors.joining(" or "));
    }
    return thing(((Value.Thing) value).thing());
  }

  private String thing(String id) {
    Instrument.Thing thing = dossier.instrument().things().get(id);
    if (thing != null) {
      return thing.title();
    }
    return words.kind(id).map(kind -> kind.title()).orElse(id);
  }

  private String person(String initials) {
    Bench.Person person = setting.bench().people().get(initials);
    return person == null ? initials : person.name();
  }

  private List<Sheet.Line> people() {
    Set<String> initials = new TreeSet<>();
    for (Visit visit : dossier.visits()) {
      initials.add(visit.by());
      Stream.concat(visit.found().stream(), visit.left().stream())
          .forEach(entry -> entry.by().ifPresent(initials::add));
      visit.judged().forEach(judgement -> initials.add(judgement.by()));
    }
    return initials.stream().map(this::responsible).toList();
  }

  private Sheet.Line responsible(String initials) {
    Bench.Person person = setting.bench().people().get(initials);
    return person == null
        ? new Sheet.Line(initials, "not among the people of the bench")
        : new Sheet.Line(initials + ", " + person.name(), person.competence());
  }
}
