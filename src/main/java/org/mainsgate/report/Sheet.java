package org.mainsgate.report;

import java.util.List;
import java.util.Optional;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Verdict;

/**
 * The report on one instrument in words, before anything is laid out: what the templates print.
 *
 * <p>All text is plain; the templates escape it. A list that is empty is not printed, with its
 * head.
 *
 * @param tag the instrument's tag
 * @param what what it is
 * @param on the date of the verdict, as printed
 * @param stage the title of the stage
 * @param verdict the verdict
 * @param meaning what the verdict means, in one sentence
 * @param reach what the stage does not look at
 * @param warnings what a reader must know before anything else: rules that are not the program's
 * @param identity what tells this instrument from others
 * @param photos the pictures that it is recognised by
 * @param fails what fails
 * @param holds what holds
 * @param judgements what people have decided
 * @param cautions what can hurt
 * @param checks every check with everything that it was judged on
 * @param skipped how many findings are about something else, and why, in one sentence each
 * @param setAside what was recorded and does not count
 * @param meters what was measured with
 * @param rules the profile and the identity of the rules
 * @param sources where limits and rules come from, numbered from 1
 * @param visits what was found and done, earliest first
 * @param heads hashes of the latest closed visits
 * @param people who is responsible, in their own words
 * @param handover the first page, where the report is sealed
 */
public record Sheet(
    String tag,
    String what,
    String on,
    String stage,
    Verdict verdict,
    String meaning,
    String reach,
    List<String> warnings,
    List<Line> identity,
    List<Photo> photos,
    List<Open> fails,
    List<Open> holds,
    List<Judgement> judgements,
    List<String> cautions,
    List<Row> checks,
    List<String> skipped,
    List<Aside> setAside,
    List<Meter> meters,
    List<Line> rules,
    List<Source> sources,
    List<Sitting> visits,
    List<String> heads,
    List<Line> people,
    Optional<HandoverPage> handover) {

  /** Keeps the lists as they are. */
  public Sheet {
    warnings = List.copyOf(warnings);
    identity = List.copyOf(identity);
    fails = List.copyOf(fails);
    holds = List.copyOf(holds);
    judgements = List.copyOf(judgements);
    cautions = List.copyOf(cautions);
    checks = List.copyOf(checks);
    skipped = List.copyOf(skipped);
    setAside = List.copyOf(setAside);
    meters = List.copyOf(meters);
    rules = List.copyOf(rules);
    sources = List.copyOf(sources);
    visits = List.copyOf(visits);
    heads = List.copyOf(heads);
    people = List.copyOf(people);
  }

  /** The report on an instrument. */
  public static Sheet of(Dossier dossier) {
    return new SheetWriter(dossier).sheet(Optional.empty());
  }

  /** The report on an instrument behind the first page of a sealed record. */
  public static Sheet of(Dossier dossier, HandoverPage handover) {
    return new SheetWriter(dossier).sheet(Optional.of(handover));
  }

  /** What the report says at its end, whatever the verdict. */
  public static final String LAST_WORD =
      "Not an accredited laboratory; not a certificate of conformity. Local codes and a qualified"
          + " person have the last word.";

  /**
   * Something with a name.
   *
   * @param label the name
   * @param text what it is
   */
  public record Line(String label, String text) {}

  /**
   * A picture of the instrument.
   *
   * @param picture what it shows, ready to be printed
   * @param text what is seen on it, for a reader who cannot see it
   */
  public record Photo(Picture picture, String text) {}

  /**
   * A finding that fails or holds.
   *
   * @param title the check, and the thing where that is not the instrument
   * @param because each reason, with its arithmetic
   * @param settles what would settle it, best first
   * @param remedy what to do, empty if nothing is known
   * @param cautions what can hurt on the way
   */
  public record Open(
      String title,
      List<String> because,
      List<String> settles,
      String remedy,
      List<String> cautions) {

    /** Keeps the lists as they are. */
    public Open {
      because = List.copyOf(because);
      settles = List.copyOf(settles);
      cautions = List.copyOf(cautions);
    }
  }

  /**
   * A person's decision.
   *
   * @param title the check and the thing
   * @param who name and competence
   * @param because the reason given
   * @param restriction what it is limited to, empty if nothing
   * @param on the date, as printed
   */
  public record Judgement(
      String title, String who, String because, String restriction, String on) {}

  /**
   * A check on one thing.
   *
   * @param title the check
   * @param thing the thing
   * @param outcome what it says
   * @param found readings and observations: as recorded, what that can be, and how it was taken
   * @param notes remarks
   * @param asked what was compared and chosen, with limits and margins
   * @param sources the numbers of the sources used
   */
  public record Row(
      String title,
      String thing,
      Outcome outcome,
      List<String> found,
      List<String> notes,
      List<String> asked,
      String sources) {

    /** Keeps the lists as they are. */
    public Row {
      found = List.copyOf(found);
      notes = List.copyOf(notes);
      asked = List.copyOf(asked);
    }
  }

  /**
   * A record that does not count.
   *
   * @param title whose and what
   * @param text as recorded
   * @param because why it does not count
   * @param entry where it stands
   */
  public record Aside(String title, String text, String because, String entry) {}

  /**
   * A meter.
   *
   * @param title make, type and serial number
   * @param accuracy by function and range
   * @param calibrated how it was calibrated or checked, and when that is due again
   */
  public record Meter(String title, List<String> accuracy, String calibrated) {

    /** Keeps the list as it is. */
    public Meter {
      accuracy = List.copyOf(accuracy);
    }
  }

  /**
   * Where a value or a rule comes from.
   *
   * @param number its number in this report
   * @param value the value that it is the source of, or the rule
   * @param title source, edition, clause and note
   * @param standing how well it is known
   */
  public record Source(int number, String value, String title, String standing) {}

  /**
   * A visit.
   *
   * @param title its id, date and who
   * @param lines what was found, done and left, each with its name
   * @param hash the hash of its file, or that it is not closed
   */
  public record Sitting(String title, List<Line> lines, String hash) {

    /** Keeps the lines as they are. */
    public Sitting {
      lines = List.copyOf(lines);
    }
  }
}
