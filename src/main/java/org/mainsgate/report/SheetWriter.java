package org.mainsgate.report;

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
import org.mainsgate.evidence.Instrument;
import org.mainsgate.ruleset.Citation;
import org.mainsgate.ruleset.Overlay;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
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
  private final Phrases phrases;
  private final History history;
  private final List<Finding> findings;
  private final Map<Cited, Integer> sources = new LinkedHashMap<>();

  /** A value or rule, and where it comes from. */
  private record Cited(String value, Citation citation) {}

  SheetWriter(Dossier dossier) {
    this.dossier = dossier;
    this.setting = dossier.setting();
    this.phrases = new Phrases(setting.rules().vocabulary());
    this.history = new History(dossier, phrases);
    this.findings = dossier.assessment().findings();
  }

  Sheet sheet(Optional<HandoverPage> handover) {
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
        photos(),
        new OpenFindings(phrases).of(findings, Outcome.FAIL),
        new OpenFindings(phrases).of(findings, Outcome.HOLD),
        judgements(),
        cautions(),
        rows,
        skipped(),
        setAside(),
        new Meters(setting).of(dossier.visits()),
        rules(),
        sources(),
        dossier.visits().stream().map(history::sitting).toList(),
        dossier.heads(),
        history.people(),
        handover);
  }

  private List<String> warnings() {
    List<String> warnings = new ArrayList<>();
    if (setting.whatIf()) {
      warnings.add("What if: this report uses other rules than those that the bench names.");
    }
    if (setting.rules().fromFile()) {
      warnings.add(
          "The profile is a file ("
              + setting.rules().profile()
              + "), not one that the program carries. Compare the identity of its rules.");
    }
    warnings.addAll(localRules(setting.rules()));
    return warnings;
  }

  /** The overlays by name, and what they relax. */
  static List<String> localRules(Rules rules) {
    List<String> lines = new ArrayList<>();
    for (Overlay overlay : rules.overlays()) {
      lines.add(
          "Local rules: "
              + overlay.name()
              + ", edition "
              + overlay.edition()
              + ": "
              + overlay.title());
    }
    for (Overlay.Relaxation relaxed : rules.relaxations()) {
      lines.add(
          "Relaxed by local rules: "
              + relaxed.what()
              + "; because: "
              + relaxed.because()
              + "; by: "
              + relaxed.by());
    }
    for (Overlay.Confirmation confirmed : rules.confirmations()) {
      lines.add(
          "From memory, and confirmed by local rules: "
              + confirmed.what()
              + "; read in edition "
              + confirmed.word().edition()
              + " on "
              + confirmed.word().on()
              + "; by: "
              + confirmed.word().by());
    }
    return lines;
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
        .map(entry -> history.text(entry.property(), entry.value()))
        .collect(Collectors.joining(", "));
  }

  private List<Sheet.Photo> photos() {
    List<Sheet.Photo> photos = new ArrayList<>();
    for (Picture picture : dossier.photos()) {
      String which = photos.isEmpty() ? "" : "another ";
      photos.add(new Sheet.Photo(picture, which + photoText(dossier.instrument())));
    }
    return photos;
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

  private List<Sheet.Line> rules() {
    return List.of(
        new Sheet.Line("profile", profile()),
        new Sheet.Line("edition", setting.rules().edition()),
        new Sheet.Line("identity", setting.rules().identity()));
  }

  private String profile() {
    return setting.rules().profile() + ": " + setting.rules().title();
  }
}
