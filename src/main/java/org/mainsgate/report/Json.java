package org.mainsgate.report;

import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Ground;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Print;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Truth;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.Citation;
import org.mainsgate.ruleset.Overlay;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Judged;
import org.mainsgate.verdict.Said;
import org.mainsgate.verdict.Verdict;

/**
 * Verdicts for a program to read, as one JSON text (RFC 8259) in a fixed order of fields.
 *
 * <p>Numbers are strings in plain decimal: all digits where twelve suffice, else rounded outward to
 * twelve. An end that is open is {@code null}. The truth of a comparison or choice is its own,
 * before any {@code not} or {@code or} around it in the rule.
 */
public final class Json {

  private static final int DIGITS = 12;

  /** How deep an instrument stands. */
  private static final int INSTRUMENT = 2;

  private final JsonText out;

  /** A text that has not begun. */
  public Json() {
    this(new JsonText());
  }

  private Json(JsonText out) {
    this.out = out;
  }

  /**
   * The text of several instruments, the worst of their verdicts last: a text that is cut off has
   * none.
   */
  public static String of(Setting setting, List<Dossier> dossiers, List<String> unreadable) {
    Json json = new Json();
    StringBuilder all = new StringBuilder(json.begin(setting));
    dossiers.forEach(dossier -> all.append(json.next(one(dossier))));
    List<Verdict> verdicts =
        dossiers.stream().map(dossier -> dossier.assessment().verdict()).toList();
    return all.append(json.end(verdicts, unreadable)).toString();
  }

  /** What stands above the instruments. */
  public String begin(Setting setting) {
    out.open()
        .number("format", 1)
        .text("on", setting.on().toString())
        .text("profile", setting.rules().profile())
        .truth("what_if", setting.whatIf())
        .name("rules")
        .open()
        .text("edition", setting.rules().edition())
        .text("identity", setting.rules().identity())
        .list("overlays", setting.rules().overlays(), this::overlay)
        .list("relaxations", setting.rules().relaxations(), this::relaxation)
        .list("confirmations", setting.rules().confirmations(), this::confirmation)
        .close()
        .text("stage", setting.stage().id())
        .name("instruments")
        .openList();
    return out.taken();
  }

  /** One instrument; it can be told apart from all others, in any order. */
  public static String one(Dossier dossier) {
    Json json = new Json(JsonText.within(INSTRUMENT));
    json.instrument(dossier);
    return json.out.taken();
  }

  /** The same in its place. */
  public String next(String one) {
    return out.told(one).taken();
  }

  /** What stands below the instruments. */
  public String end(List<Verdict> verdicts, List<String> unreadable) {
    return out.closeList()
        .list("unreadable", unreadable, out::text)
        .text("verdict", worst(verdicts, unreadable).word())
        .close()
        .toString();
  }

  private void overlay(Overlay overlay) {
    out.open()
        .text("name", overlay.name())
        .text("title", overlay.title())
        .text("edition", overlay.edition())
        .close();
  }

  private void relaxation(Overlay.Relaxation relaxed) {
    out.open()
        .text("what", relaxed.what())
        .text("because", relaxed.because())
        .text("by", relaxed.by())
        .close();
  }

  private void confirmation(Overlay.Confirmation confirmed) {
    out.open()
        .text("what", confirmed.what())
        .text("by", confirmed.word().by())
        .text("on", confirmed.word().on())
        .text("edition", confirmed.word().edition())
        .close();
  }

  /** The worst verdict; nothing judged, or something that can't be read, is not a pass. */
  static Verdict worst(List<Verdict> verdicts, List<String> unreadable) {
    Verdict least = unreadable.isEmpty() ? Verdict.PASS : Verdict.HOLD;
    return verdicts.stream().reduce(Verdict::worse).map(least::worse).orElse(Verdict.HOLD);
  }

  private void instrument(Dossier dossier) {
    Verdict verdict = dossier.assessment().verdict();
    String clears = dossier.assessment().stage().clears();
    out.open()
        .text("tag", dossier.instrument().tag())
        .text("stage", dossier.assessment().stage().id())
        .text("verdict", verdict.word())
        .text("clears", verdict == Verdict.PASS ? clears : "nothing")
        .list("findings", dossier.assessment().findings(), this::finding)
        .close();
  }

  private void finding(Finding finding) {
    out.open()
        .text("check", finding.check().id())
        .text("item", finding.thing())
        .text("title", Phrases.title(finding))
        .text("outcome", finding.outcome().word())
        .list("reasons", finding.holds(), this::hold)
        .text("because", finding.because())
        .list("comparisons", of(finding, Ground.Comparison.class), this::comparison)
        .list("choices", of(finding, Ground.Choice.class), this::choice)
        .list("open_lists", of(finding, Ground.OpenList.class), list -> out.text(list.kind()))
        .name("margin");
    margin(Phrases.telling(finding).flatMap(Margin::of));
    out.list("inputs", finding.inputs(), this::input)
        .list("limits", finding.limits(), this::limit)
        .list("notes", finding.notes(), note -> out.text(Phrases.note(note)))
        .list("settles", finding.settles(), out::text)
        .text("remedy", finding.remedy())
        .text("caution", finding.check().caution())
        .name("judged");
    judged(finding.judged());
    out.close();
  }

  private static <T extends Ground> List<T> of(Finding finding, Class<T> kind) {
    return finding.arithmetic().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private void hold(Finding.Hold hold) {
    out.open().text("reason", hold.reason().words()).text("text", hold.text()).close();
  }

  private void comparison(Ground.Comparison comparison) {
    Unit unit = comparison.unit();
    out.open()
        .text("left", comparison.leftText())
        .text("operator", comparison.operator())
        .text("right", comparison.rightText())
        .text("unit", unit.symbol());
    interval("left_interval", comparison.left(), unit);
    interval("right_interval", comparison.right(), unit);
    out.text("truth", truth(comparison.truth())).close();
  }

  private void choice(Ground.Choice choice) {
    out.open()
        .text("name", choice.text())
        .row("candidates", choice.candidates())
        .truth("negated", choice.negated())
        .row("wanted", choice.wanted())
        .text("truth", truth(choice.truth()))
        .close();
  }

  private static String truth(Truth truth) {
    return switch (truth) {
      case MET -> "met";
      case UNDECIDED -> "undecided";
      case NOT_MET -> "not-met";
    };
  }

  private void margin(Optional<Margin> margin) {
    if (margin.isEmpty()) {
      out.nothing();
      return;
    }
    out.open()
        .text("value", margin.get().number(DIGITS))
        .text("unit", margin.get().unit().symbol())
        .close();
  }

  private void input(Finding.Input input) {
    Fact fact = input.fact();
    out.open()
        .text("name", input.name())
        .text("title", input.title())
        .text("thing", input.thing())
        .text("text", fact.said().stream().map(Said::text).collect(Collectors.joining(", ")));
    known(input);
    out.truth("recorded", fact.recorded())
        .truth("disagrees", fact.disagrees())
        .row("entries", fact.said().stream().map(Said::entry).toList())
        .close();
  }

  private void known(Finding.Input input) {
    Fact fact = input.fact();
    if (fact instanceof Fact.Amount number) {
      quantity(number.range().exact(), Phrases.unit(input));
    } else if (fact instanceof Fact.Varying varying) {
      quantity(varying.range().lowest().hull(varying.range().highest()), Phrases.unit(input));
    } else {
      out.row("candidates", Phrases.candidates(input));
    }
  }

  private void quantity(ExactInterval value, Unit unit) {
    out.text("unit", unit.symbol());
    interval("interval", value, unit);
  }

  private void interval(String name, ExactInterval value, Unit unit) {
    out.name(name).openRow();
    end(value.lo(), unit, RoundingMode.FLOOR);
    end(value.hi(), unit, RoundingMode.CEILING);
    out.closeRow();
  }

  private void end(@Nullable Rational end, Unit unit, RoundingMode outward) {
    if (end == null) {
      out.nothing();
    } else {
      out.text(Print.value(end, unit, DIGITS, outward));
    }
  }

  private void limit(Finding.Used limit) {
    Citation citation = limit.citation();
    out.open()
        .text("name", limit.name())
        .text("title", limit.title())
        .text("text", limit.text())
        .text("source", citation.title())
        .text("edition", citation.edition())
        .text("clause", citation.clause())
        .text("standing", citation.standing().words())
        .text("note", citation.note())
        .close();
  }

  private void judged(Optional<Judged> judged) {
    if (judged.isEmpty()) {
      out.nothing();
      return;
    }
    Judged decision = judged.get();
    out.open()
        .text("entry", decision.entry())
        .text("by", decision.by())
        .text("competence", decision.competence())
        .text("because", decision.because())
        .text("restriction", decision.restriction())
        .text("on", decision.on().toString())
        .close();
  }
}
