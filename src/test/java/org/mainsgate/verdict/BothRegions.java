package org.mainsgate.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.UnaryOperator;
import org.mainsgate.laws.Notebook;
import org.mainsgate.laws.Rulebook;

/**
 * One record under the rules of Britain and under those of Europe.
 *
 * <p>{@code sound().found("cover: {closed_up: no}").holds("earth-closed-up", "case")} says that the
 * sound record passes and the changed one does not, under both.
 */
record BothRegions(List<Notebook> books) {
  /** The kinds of which the sound record says that somebody looked, and found none. */
  static final List<String> ABSENT =
      List.of(
          "hazard",
          "outlet",
          "reachable_voltage",
          "mains_capacitor",
          "touch_capacitor",
          "small_capacitor",
          "modification");

  BothRegions {
    books = List.copyOf(books);
  }

  /** The sound record of the notebook, of which a test of its own says that it passes. */
  static BothRegions sound() {
    return new BothRegions(List.of(Notebook.gb(), Notebook.eu()));
  }

  /** The sound record with this found of the instrument itself. */
  static BothRegions instrument(String found) {
    return sound().found("instrument: {" + found + "}");
  }

  BothRegions but(UnaryOperator<Notebook> change) {
    return new BothRegions(books.stream().map(change).toList());
  }

  BothRegions found(String inside) {
    return but(book -> book.found(inside));
  }

  BothRegions unfound(String path) {
    return but(book -> book.unfound(path));
  }

  /** With one thing of a kind of which there was none, of which this was found. */
  BothRegions having(String thing, String kind, String found) {
    String none = String.join(", ", ABSENT.stream().filter(k -> !k.equals(kind)).toList());
    return with(thing, kind, found, kind + ": 1, none: [" + none + "]");
  }

  /** With a second thing of a kind, of which this was found. */
  BothRegions second(String thing, String kind, String found) {
    return with(thing, kind, found, kind + ": 2");
  }

  private BothRegions with(String thing, String kind, String found, String looked) {
    return but(
        book ->
            book.with(thing(thing, kind))
                .found(thing + ": {" + found + "}, looked: {" + looked + "}"));
  }

  /** Something listed on the instrument, as its file has it. */
  static String thing(String name, String kind) {
    boolean designated = Rulebook.gb().vocabulary().kind(kind).orElseThrow().designated();
    String more = designated ? ", designator: " + name : "";
    return "instrument: {things: {" + name + ": {kind: " + kind + more + "}}}";
  }

  BothRegions passes() {
    for (Notebook book : books) {
      Assessment assessment = book.assess();
      assertEquals(Verdict.PASS, assessment.verdict(), () -> open(assessment));
    }
    return this;
  }

  private static String open(Assessment assessment) {
    StringBuilder all = new StringBuilder();
    for (Finding finding : assessment.findings()) {
      if (finding.outcome() == Outcome.HOLD || finding.outcome() == Outcome.FAIL) {
        all.append(finding.check().id()).append(' ').append(finding.holds()).append('\n');
      }
    }
    return all.toString();
  }

  /** It does not pass, and this finding is a hold for these reasons among others. */
  void holds(String check, String thing, Reason... reasons) {
    for (Notebook book : books) {
      assertNotEquals(Verdict.PASS, book.assess().verdict());
      assertEquals(Outcome.HOLD, book.outcome(check, thing), check);
      List<Reason> found = book.reasons(check, thing);
      assertTrue(found.containsAll(List.of(reasons)), () -> check + " " + found);
    }
  }

  void fails(String check, String thing) {
    for (Notebook book : books) {
      assertEquals(Outcome.FAIL, book.outcome(check, thing), check);
      assertEquals(Verdict.FAIL, book.assess().verdict());
    }
  }

  /** This finding says this, in a note, as a reason of a hold, or as what is to be done. */
  void says(String check, String thing, String words) {
    for (Notebook book : books) {
      Finding finding = book.finding(check, thing);
      String all = finding.notes() + " " + finding.holds() + " " + finding.remedy();
      assertTrue(all.contains(words), () -> check + ": " + all);
    }
  }
}
