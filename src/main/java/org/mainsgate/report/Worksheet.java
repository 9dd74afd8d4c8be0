package org.mainsgate.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The page of paper for a sitting at an instrument: everything that is still open in the order of
 * the work, with boxes to tick and lines to write on. Nothing is judged on it.
 *
 * <p>All text is plain; the template escapes it.
 *
 * @param tag the instrument's tag
 * @param what what it is
 * @param on the date of the page, as printed
 * @param stage the title of the stage
 * @param rules profile, edition and identity
 * @param setting how close the lines stand
 * @param warnings what a reader must know first: rules that are not the program's
 * @param matters what no entry settles: to be put right, judged or confirmed
 * @param steps the steps of the work
 * @param later the titles of steps for which these pages have no room
 */
public record Worksheet(
    String tag,
    String what,
    String on,
    String stage,
    String rules,
    Closeness setting,
    List<String> warnings,
    List<Matter> matters,
    List<Step> steps,
    List<String> later) {

  /** The most pages that it may have: the two sides of one sheet. */
  static final int MOST_PAGES = 2;

  /** Keeps the lists as they are. */
  public Worksheet {
    warnings = List.copyOf(warnings);
    matters = List.copyOf(matters);
    steps = List.copyOf(steps);
    later = List.copyOf(later);
  }

  /** The page for an instrument. */
  public static Worksheet of(Outlook outlook) {
    return new WorksheetWriter(outlook).worksheet();
  }

  /** What it says at its end. */
  public static final String LAST_WORD =
      "Nothing is judged on paper. Type it into the record, then check. What you do not know, leave"
          + " empty. Local codes and a qualified person have the last word.";

  /** How close the lines stand. */
  public enum Closeness {
    /** With room to write. */
    WIDE,
    /** Closer. */
    CLOSE,
    /** As close as can be read and written. */
    TIGHT;

    /** Its name in the style sheet. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Whether it has lines for things that nobody has listed yet. */
  public boolean isForUnlisted() {
    return steps.stream()
        .flatMap(step -> step.items().stream())
        .flatMap(item -> item.parts().stream())
        .anyMatch(part -> part.mark() == Mark.NUMBERS);
  }

  /** The same, set closer or wider. */
  Worksheet with(Closeness other) {
    return new Worksheet(tag, what, on, stage, rules, other, warnings, matters, steps, later);
  }

  /** The same without its last step, which is then named only. */
  Worksheet shorter() {
    int last = steps.size() - 1;
    List<String> named = new ArrayList<>(later);
    named.add(0, steps.get(last).title());
    return new Worksheet(
        tag, what, on, stage, rules, setting, warnings, matters, steps.subList(0, last), named);
  }

  /**
   * What no entry settles.
   *
   * @param kind what it takes
   * @param title the checks and things that ask for it
   * @param says what to do
   */
  public record Matter(String kind, String title, List<String> says) {

    /** Keeps the words as they are. */
    public Matter {
      says = List.copyOf(says);
    }
  }

  /**
   * A step of the work.
   *
   * @param title its title
   * @param says what to do
   * @param cautions what can hurt in it
   * @param items what is found out
   * @param stop what the stop after it says; empty if there is none
   * @param until what that stop waits for
   */
  public record Step(
      String title,
      String says,
      List<String> cautions,
      List<Item> items,
      String stop,
      String until) {

    /** Keeps the lists as they are. */
    public Step {
      cautions = List.copyOf(cautions);
      items = List.copyOf(items);
    }
  }

  /**
   * Something to find out.
   *
   * @param title what
   * @param hint what to expect, and why it is asked again; empty if nothing
   * @param parts what is ticked and written
   */
  public record Item(String title, String hint, List<Part> parts) {
    private static final int HALF = 46;
    private static final int BLANK = 9;
    private static final int BOX = 3;

    /** Keeps the parts as they are. */
    public Item {
      parts = List.copyOf(parts);
    }

    /** Whether it needs the whole width of the page. */
    public boolean isWide() {
      int length = title.length() + hint.length();
      for (Part part : parts) {
        length += part.label().length() + part.unit().length() + part.blanks().size() * BLANK;
        length += part.boxes().stream().mapToInt(box -> box.length() + BOX).sum();
      }
      return length > HALF;
    }
  }

  /**
   * One answer.
   *
   * @param label what is answered, where an item has several
   * @param mark what stands with each value: a box for a tick, or a line for numbers
   * @param boxes the values to choose from
   * @param blanks lines to write on, each with what stands before it
   * @param unit the unit after the last line
   */
  public record Part(
      String label, Mark mark, List<String> boxes, List<String> blanks, String unit) {

    /** Keeps the lists as they are. */
    public Part {
      boxes = List.copyOf(boxes);
      blanks = List.copyOf(blanks);
    }
  }

  /** What stands with a value. */
  public enum Mark {
    /** A box to tick. */
    BOX,
    /** A short line for the numbers of the things that it is true of. */
    NUMBERS
  }
}
