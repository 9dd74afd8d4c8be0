package org.mainsgate.report;

import java.util.List;

/**
 * The page to take to an instrument: what is still to be found out, with boxes to tick and lines to
 * write on.
 *
 * <p>All text is plain; the template escapes it. A list that is empty is not printed.
 *
 * @param tag the instrument's tag
 * @param what what it is
 * @param on the day for which it was made, as printed
 * @param stage the title of the stage
 * @param warnings what a reader must know before anything else: rules that are not the program's
 * @param steps what to do, in order
 * @param matters what no entry settles
 * @param left how much it is
 */
public record WorkSheet(
    String tag,
    String what,
    String on,
    String stage,
    List<String> warnings,
    List<Step> steps,
    List<Matter> matters,
    String left) {

  /** Keeps the lists as they are. */
  public WorkSheet {
    warnings = List.copyOf(warnings);
    steps = List.copyOf(steps);
    matters = List.copyOf(matters);
  }

  /** The page for what is to do at an instrument. */
  public static WorkSheet of(Outlook outlook) {
    return new WorkSheetWriter(outlook).sheet();
  }

  /** What the page says at its end. */
  public static final String LAST_WORD =
      "Nothing on this page is recorded before it stands in a visit. Local codes and a qualified"
          + " person have the last word.";

  /**
   * A step.
   *
   * @param title its number and title
   * @param says what to do, empty if that needs no words
   * @param caution what can hurt, empty if nothing
   * @param lines what to find out
   * @param stop what has to be settled before the next step, empty if nothing
   * @param until the checks that settle it, empty without a stop
   */
  public record Step(
      String title, String says, String caution, List<Line> lines, String stop, String until) {

    /** Keeps the lines as they are. */
    public Step {
      lines = List.copyOf(lines);
    }
  }

  /**
   * Something to find out, of one thing or of several.
   *
   * @param title what
   * @param hint with what to measure it, empty where nothing is measured
   * @param caution what can hurt, empty if nothing more than in the whole step
   * @param fields where to write it, one for each thing
   */
  public record Line(String title, String hint, String caution, List<Field> fields) {

    /** Keeps the fields as they are. */
    public Line {
      fields = List.copyOf(fields);
    }
  }

  /**
   * Where to write something.
   *
   * @param label the thing, empty where it goes without saying
   * @param entries what to tick or to write
   * @param hint what to expect, or why it is asked again; empty if nothing
   */
  public record Field(String label, List<Blank> entries, String hint) {

    /** Keeps the entries as they are. */
    public Field {
      entries = List.copyOf(entries);
    }
  }

  /**
   * A line to write on, or boxes to tick.
   *
   * @param label what it is for, empty where it goes without saying
   * @param boxes the words beside the boxes; empty for a line to write on
   * @param unit the unit of the number, empty where there is none
   */
  public record Blank(String label, List<String> boxes, String unit) {

    /** Keeps the words as they are. */
    public Blank {
      boxes = List.copyOf(boxes);
    }
  }

  /**
   * Something that no entry settles.
   *
   * @param title the check, and the thing where that is not the instrument
   * @param says what it takes
   */
  public record Matter(String title, String says) {}
}
