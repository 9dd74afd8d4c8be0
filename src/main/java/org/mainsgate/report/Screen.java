package org.mainsgate.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.source.Visible;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Verdict;

/**
 * Verdicts for a person at a terminal of 80 columns.
 *
 * <p>Each outcome has a word and a sign: a gate of two posts, open, or with one bar or a grille
 * across it.
 */
public final class Screen {

  private static final int SIGN = 4;
  private static final int IDENTITY = 16;

  private final Palette palette;

  /** A screen that sets words off as the palette says. */
  public Screen(Palette palette) {
    this.palette = palette;
  }

  /** Everything about one instrument, and a blank line. */
  public String instrument(Dossier dossier) {
    return instrument(dossier, true);
  }

  /** One of several instruments: what is open about it in full, what has passed as a number. */
  public String oneOfSeveral(Dossier dossier) {
    return instrument(dossier, false);
  }

  private String instrument(Dossier dossier, boolean alone) {
    Lines lines = new Lines();
    head(lines, dossier);
    Phrases phrases = new Phrases(dossier.setting().rules().vocabulary());
    List<Finding> findings = dossier.assessment().findings();
    OpenFindings open = new OpenFindings(phrases);
    open(lines, "fails", Outcome.FAIL, open.of(findings, Outcome.FAIL));
    open(lines, "holds", Outcome.HOLD, open.of(findings, Outcome.HOLD));
    List<Finding> passed = with(findings, Outcome.PASS);
    if (alone) {
      passes(lines, phrases, passed);
    } else if (!passed.isEmpty()) {
      lines.blank().add(0, "passes: " + passed.size() + "; ask for this one alone to see them");
    }
    int skipped = with(findings, Outcome.NOT_APPLICABLE).size();
    if (skipped > 0) {
      lines.blank().add(0, "not applicable: " + skipped);
    }
    return lines.blank().toString();
  }

  /**
   * An instrument on one line.
   *
   * @param tag its tag
   * @param what what it is
   * @param verdict its verdict
   */
  public record Verdicted(String tag, String what, Verdict verdict) {

    /** The line of an instrument that was judged. */
    public static Verdicted of(Dossier dossier) {
      return new Verdicted(
          dossier.instrument().tag(), dossier.instrument().what(), dossier.assessment().verdict());
    }
  }

  /** What stands below the last instrument: all verdicts, the rules, and what they don't reach. */
  public String summary(Setting setting, List<Verdicted> judged, List<String> unreadable) {
    Lines lines = new Lines();
    int widest =
        Stream.concat(judged.stream().map(Verdicted::tag), unreadable.stream())
            .mapToInt(Visible::width)
            .max()
            .orElse(0);
    for (Verdicted one : judged) {
      Outcome outcome = outcome(one.verdict());
      String tag = one.tag();
      String pad = " ".repeat(widest - Visible.width(tag) + 2);
      lines.add(
          0,
          tag + pad + sign(outcome) + " " + painted(outcome) + "  ",
          widest + 2 + SIGN + outcome.word().length() + 2,
          one.what());
    }
    for (String tag : unreadable) {
      String pad = " ".repeat(widest - Visible.width(tag) + 2);
      lines.add(0, tag + pad + "|?| ", widest + 2 + SIGN, "no verdict: its record can't be used");
    }
    if (!judged.isEmpty() || !unreadable.isEmpty()) {
      lines.blank();
    }
    rules(lines, setting);
    lines.add(0, setting.stage().title() + ": " + setting.stage().says());
    cautions(lines, setting);
    lines.blank().add(0, "Local codes and a qualified person have the last word.");
    return lines.toString();
  }

  private void head(Lines lines, Dossier dossier) {
    Instrument instrument = dossier.instrument();
    Stage stage = dossier.assessment().stage();
    Outcome outcome = outcome(dossier.assessment().verdict());
    lines.add(0, instrument.tag() + "  ", identity(instrument));
    lines.add(0, stage.title() + ", " + dossier.setting().on());
    lines.blank();
    lines.add(
        0,
        sign(outcome) + " " + painted(outcome) + "  ",
        SIGN + outcome.word().length() + 2,
        meaning(stage, outcome));
  }

  /** What an instrument is, on one line. */
  static String identity(Instrument instrument) {
    List<String> parts = new ArrayList<>();
    parts.add(instrument.what());
    String made = (instrument.maker() + " " + instrument.model()).strip();
    if (!made.isEmpty()) {
      parts.add(made);
    }
    if (!instrument.serial().isEmpty()) {
      parts.add("serial number " + instrument.serial());
    }
    return String.join(", ", parts);
  }

  /** What a verdict means, in the words of the stage. */
  static String meaning(Stage stage, Outcome outcome) {
    return switch (outcome) {
      case PASS -> stage.pass();
      case HOLD, NOT_APPLICABLE -> stage.hold();
      case FAIL -> stage.fail();
    };
  }

  /** A verdict as the outcome of the same word. */
  static Outcome outcome(Verdict verdict) {
    return switch (verdict) {
      case PASS -> Outcome.PASS;
      case HOLD -> Outcome.HOLD;
      case FAIL -> Outcome.FAIL;
    };
  }

  private void open(Lines lines, String head, Outcome outcome, List<Sheet.Open> findings) {
    if (findings.isEmpty()) {
      return;
    }
    lines.blank().add(0, head);
    for (Sheet.Open finding : findings) {
      lead(lines, outcome, finding.title());
      finding.because().forEach(because -> lines.add(SIGN, because));
      finding.settles().forEach(settles -> lines.add(SIGN, "to settle: ", settles));
      say(lines, "to do: ", finding.remedy());
      finding.cautions().forEach(caution -> lines.add(SIGN, "caution: ", caution));
    }
  }

  private static void say(Lines lines, String lead, String text) {
    if (!text.isEmpty()) {
      lines.add(SIGN, lead, text);
    }
  }

  private void lead(Lines lines, Outcome outcome, String text) {
    lines.add(0, palette.paint(outcome, sign(outcome)) + " ", SIGN, text);
  }

  private void passes(Lines lines, Phrases phrases, List<Finding> findings) {
    if (findings.isEmpty()) {
      return;
    }
    lines.blank().add(0, "passes");
    for (Finding finding : findings) {
      String brief = phrases.brief(finding);
      lead(lines, Outcome.PASS, Phrases.title(finding) + (brief.isEmpty() ? "" : "; " + brief));
      finding.notes().forEach(note -> lines.add(SIGN, "note: ", Phrases.note(note)));
      finding
          .judged()
          .ifPresent(judged -> lines.add(SIGN, "judged by: ", SheetWriter.judged(judged)));
    }
  }

  private static void cautions(Lines lines, Setting setting) {
    lines.blank().add(0, "cautions");
    setting.stage().cautions().forEach(caution -> lines.add(0, "  - ", caution));
  }

  private static void rules(Lines lines, Setting setting) {
    Rules rules = setting.rules();
    lines.add(0, "profile " + rules.profile() + ": " + rules.title());
    lines.add(
        0,
        "rules "
            + rules.edition()
            + ", identity "
            + rules.identity().substring(0, Math.min(IDENTITY, rules.identity().length())));
    otherRules(setting).forEach(line -> lines.add(0, line));
  }

  /** What a reader must know of rules that are not the program's own. */
  static List<String> otherRules(Setting setting) {
    List<String> told = new ArrayList<>();
    if (setting.whatIf()) {
      told.add("What if: these are not the rules that the bench names.");
    }
    if (setting.rules().fromFile()) {
      told.add("The profile is a file, not one that the program carries.");
    }
    told.addAll(SheetWriter.localRules(setting.rules()));
    return told;
  }

  private static List<Finding> with(List<Finding> findings, Outcome outcome) {
    return findings.stream().filter(finding -> finding.outcome() == outcome).toList();
  }

  private String painted(Outcome outcome) {
    return palette.paint(outcome, Phrases.capitals(outcome.word()));
  }

  /** Two posts, and what stands between them. */
  private static String sign(Outcome outcome) {
    return switch (outcome) {
      case PASS -> "| |";
      case HOLD -> "|-|";
      case FAIL -> "|#|";
      case NOT_APPLICABLE -> " . ";
    };
  }
}
