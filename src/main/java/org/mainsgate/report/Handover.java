package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.evidence.Visit;
import org.mainsgate.report.HandoverPage.Part;
import org.mainsgate.report.Terms.Saying;
import org.mainsgate.ruleset.Property;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Verdict;

/**
 * What a sealed record says on its first page, and whether an instrument may be handed over so at
 * all. The customs of the trade, without a source; local law is deferred to, not cited.
 */
public final class Handover {
  /** How many months readings hold for use, at the most: the custom of the trade, no source. */
  public static final int MONTHS = 12;

  /** What a pass of a stage that does not speak of use is worth. */
  public static final String FIRST_CONNECTION_ONLY = "First connection only";

  /** The words that nobody can take for a pass. */
  public static final String NOT_FOR_CONNECTION = "Not for connection";

  /** So many letters of limits have room on the smallest tag. */
  private static final int ON_A_TAG = 110;

  private final Dossier dossier;
  private final Evidence evidence;
  private final Terms terms;
  private final Phrases phrases;

  /**
   * A hand-over.
   *
   * @param dossier the instrument, judged
   * @param evidence what is in force
   * @param terms what the record is made out for
   */
  public Handover(Dossier dossier, Evidence evidence, Terms terms) {
    this.dossier = dossier;
    this.evidence = evidence;
    this.terms = terms;
    this.phrases = new Phrases(dossier.setting().rules().vocabulary());
  }

  private boolean passes() {
    return dossier.assessment().verdict() == Verdict.PASS;
  }

  /** Why it may not be handed over so, and what is missing; empty if it may. */
  public List<String> complaints() {
    return new Missing(dossier, terms).complaints();
  }

  private boolean uses() {
    return dossier.assessment().stage().uses();
  }

  /** What a person's judgement made pass; only somebody competent is lent such an instrument. */
  private List<Released> released() {
    return Released.in(dossier.assessment());
  }

  private List<String> limits() {
    return Released.limits(released());
  }

  /**
   * The page.
   *
   * @param then the same instrument as it was when it went out, if it has come back
   */
  public HandoverPage page(Optional<Dossier> then) {
    return new HandoverPage(
        headline(),
        passes(),
        reason(),
        lines(),
        parts(),
        then.map(was -> SinceThen.changes(was, dossier)).orElse(List.of()));
  }

  /** The words for a tag: what may be done, or that nothing may. */
  public String inShort() {
    if (!passes()) {
      boolean never = of(Outcome.FAIL).stream().anyMatch(this::isNever);
      String kind =
          never ? "Never." : of(Outcome.FAIL).isEmpty() ? "Not settled." : "Until repaired.";
      return kind
          + " Do not plug it in, not for a moment, not through a lamp or an isolating transformer.";
    }
    return limitsOnATag()
        + (uses()
            ? "Attended only, indoors, dry, behind a residual current device. After a knock, damp or"
                + " smoke: stop, unplug, have it looked at."
            : "By somebody competent, supervised, current-limited and behind a residual current"
                + " device; no word about use.");
  }

  /** A limit that would not fit on a tag is not cut short: it is said to be there. */
  private String limitsOnATag() {
    String all = "Only: " + String.join("; ", limits()) + ". ";
    if (limits().isEmpty()) {
      return released().isEmpty() ? "" : "By a person's judgement: read the record. ";
    }
    return all.length() <= ON_A_TAG ? all : "Restricted: read the record first. ";
  }

  /** Whether it passes only under a limit that a person set. */
  public boolean isRestricted() {
    return passes() && !limits().isEmpty();
  }

  private String headline() {
    String record = "Record " + terms.number() + " of " + terms.tag();
    if (!passes()) {
      return NOT_FOR_CONNECTION;
    }
    String judged = released().isEmpty() ? "" : ": by a person's judgement";
    return (uses() ? "" : FIRST_CONNECTION_ONLY + ". ")
        + record
        + (isRestricted() ? ": restricted" : judged);
  }

  private String reason() {
    if (passes()) {
      String limits = isRestricted() ? " Only: " + String.join("; ", limits()) + "." : "";
      return dossier.assessment().stage().pass() + limits;
    }
    List<Finding> fails = of(Outcome.FAIL);
    List<String> never =
        fails.stream()
            .filter(this::isNever)
            .map(found -> found.check().title())
            .distinct()
            .toList();
    if (!never.isEmpty()) {
      return "Never. It fails: "
          + String.join("; ", never)
          + ". No repair at a bench makes it fit for a socket.";
    }
    return fails.isEmpty()
        ? "Unknown: what decides it was not examined, or is not settled. Nobody may take it for sound."
        : "Until repaired. It fails: " + String.join("; ", titles(fails)) + ".";
  }

  private boolean isNever(Finding finding) {
    return dossier.assessment().stage().never().contains(finding.check().id());
  }

  private List<Finding> of(Outcome outcome) {
    return dossier.assessment().findings().stream()
        .filter(finding -> finding.outcome() == outcome)
        .toList();
  }

  private static List<String> titles(List<Finding> findings) {
    return findings.stream().map(Phrases::title).distinct().toList();
  }

  private List<Sheet.Line> lines() {
    List<Sheet.Line> lines = new ArrayList<>();
    lines.add(line("record", terms.number() + " of " + terms.tag() + ", " + terms.on()));
    lines.add(line("made out as", terms.purpose().words()));
    terms.to().ifPresent(name -> lines.add(line("to", name)));
    for (Saying saying : Saying.values()) {
      terms.said(saying).ifPresent(text -> lines.add(line(saying.words(), saying.inWords(text))));
    }
    if (passes()) {
      lines.addAll(goesWith());
    }
    latest().ifPresent(day -> lines.add(line("last looked at and measured", day)));
    lines.add(line("last tested with power", "not part of this record"));
    lines.add(line("signed by", terms.signer()));
    lines.add(line("their key", terms.fingerprint()));
    return lines;
  }

  private Optional<String> latest() {
    return dossier.visits().stream()
        .filter(visit -> !visit.found().isEmpty() || !visit.left().isEmpty())
        .map(Visit::date)
        .max(java.util.Comparator.naturalOrder())
        .map(Object::toString);
  }

  private static Sheet.Line line(String label, String text) {
    return new Sheet.Line(label, text);
  }

  /** What belongs to the instrument and has to stay as it is. */
  private List<Sheet.Line> goesWith() {
    Map<String, List<String>> found = new LinkedHashMap<>();
    for (String name : dossier.assessment().stage().goesWith()) {
      List<String> things = evidence.facts().keySet().stream().sorted().toList();
      for (String thing : things) {
        evidence
            .fact(thing, name)
            .filter(Fact::recorded)
            .ifPresent(
                fact ->
                    found
                        .computeIfAbsent(evidence.title(thing), title -> new ArrayList<>())
                        .add(phrases.titleOf(name) + " " + said(name, fact)));
      }
    }
    return found.entrySet().stream()
        .map(entry -> line(entry.getKey(), String.join(", ", entry.getValue())))
        .toList();
  }

  private String said(String name, Fact fact) {
    Optional<Property> property = dossier.setting().rules().vocabulary().property(name);
    if (fact instanceof Fact.Named named
        && property.isPresent()
        && property.get() instanceof Property.Observation observation) {
      return named.candidates().stream()
          .sorted()
          .map(value -> observation.titles().getOrDefault(value, value))
          .collect(Collectors.joining(" or "));
    }
    return fact.said().stream()
        .map(said -> said.text())
        .distinct()
        .collect(Collectors.joining(" and "));
  }

  private List<Part> parts() {
    return Stream.of(
            byJudgement(),
            passes() ? use() : notForConnection(),
            kind(),
            new Part("What was not looked at", List.of(dossier.assessment().stage().says())),
            supersedes())
        .filter(part -> !part.lines().isEmpty())
        .toList();
  }

  /** In front of everything else: whoever reads no further has read the limit. */
  private Part byJudgement() {
    if (!passes()) {
      return new Part("", List.of());
    }
    return new Part(
        "It passes by a person's judgement, within these limits",
        released().stream().map(Released::words).toList());
  }

  private Part use() {
    if (!uses()) {
      return new Part(
          "Conditions",
          List.of(
              "This speaks of a supervised first connection only, by somebody competent. It is no word about use.",
              "Current-limited and behind a residual current device; where there is an earth core, at a socket whose"
                  + " earth is proven.",
              "Its readings hold for days, not for months, and not after a knock or damp: `mainsgate verify` says"
                  + " whether they still do, else they are taken again."));
    }
    return new Part(
        "Conditions of use",
        List.of(
            "Never left alone while it is on; indoors, dry; behind a residual current device.",
            "Where there is an earth core, only at a socket whose earth is proven; the earth is never lifted, not for"
                + " hum nor for anything else.",
            "Switched off at the socket afterwards. Not with a cover off. No other lead, no other setting.",
            "Each time: look at lead and plug, at the cover and the controls; is anything loose, warm, wet or smelling?",
            "After a knock, damp, smoke, or twelve months unused, the record no longer holds: look at it again."));
  }

  private Part notForConnection() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "Do not plug it in, not for a moment, not through a lamp or an isolating transformer.");
    terms
        .said(Saying.PLUG)
        .ifPresentOrElse(
            text -> lines.add("Its plug is " + Saying.PLUG.inWords(text) + ". Leave it so."),
            () ->
                lines.add(
                    "Paper does not stop a plug: cut it off, or lock it in a plug cover, and tie the tag there."));
    Map<String, List<String>> byRemedy = new LinkedHashMap<>();
    of(Outcome.FAIL)
        .forEach(
            finding ->
                byRemedy
                    .computeIfAbsent(finding.remedy(), remedy -> new ArrayList<>())
                    .add(Phrases.title(finding)));
    byRemedy.forEach(
        (remedy, titles) ->
            lines.add(
                String.join("; ", titles.stream().distinct().toList())
                    + (remedy.isEmpty() ? "." : ": " + remedy)));
    int open = of(Outcome.HOLD).size();
    if (open > 0) {
      lines.add(
          "Not settled: "
              + open
              + (open == 1 ? " question" : " questions")
              + ", on the pages that follow.");
    }
    lines.add(
        "Before anybody examines it again: a person competent for mains instruments, with the plug out."
            + " Capacitors can hold a dangerous voltage for days after that; they are discharged and measured first.");
    return new Part("What has to happen first", lines);
  }

  private Part kind() {
    return switch (terms.purpose()) {
      case RECORD -> new Part("", List.of());
      case SOLD ->
          new Part(
              "Sold",
              List.of(
                  "What may be sold, to whom and with which marking, differs from country to country. Local law and"
                      + " a qualified person decide; this record does not.",
                  passes()
                      ? "Whoever owns it now answers for its next inspections."
                      : "Goods that have to be repaired before use. The new owner is told so, and signs for knowing it."));
      case LENT ->
          new Part(
              "Lent",
              List.of(
                  "Used by the named person at the named place only. Not opened; lead, fuse and setting stay as they are.",
                  "If anything is odd: stop, switch off at the socket, unplug, and tell the owner.",
                  "Before each loan lead and earth are looked at again; no loan on readings older than three months."));
      case RETURNED ->
          new Part(
              "Returned",
              List.of(
                  "Before it is used again: look at it, and measure earth and insulation.",
                  "Readings are compared below with those that it went out with."));
    };
  }

  private Part supersedes() {
    return new Part(
        "Which record counts",
        List.of(
            "A record of this instrument of a later date, or of the same date with a higher number, takes the place of this one. Void if"
                + " there is a later record.",
            "The file holds the whole record; `mainsgate verify FILE` judges it again. Not an accredited laboratory;"
                + " not a certificate of conformity.",
            "Whoever accepts it signs for knowing what it says, for nothing else."));
  }
}
