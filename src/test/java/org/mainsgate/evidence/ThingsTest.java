package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Notebook;

/** The list of things: designators, and what exists once. */
class ThingsTest {
  private static final Notebook BOOK = Notebook.gb();

  private static Notebook things(String things) {
    return BOOK.with("instrument: {things: {" + things + "}}");
  }

  private static String title(Notebook book, String id) {
    return Objects.requireNonNull(book.record().instrument().things().get(id)).title();
  }

  @Test
  void aDesignatorStandsBeforeTheTitle() {
    Notebook book =
        things(
            "x-cap: {kind: mains_capacitor, designator: C12, title: suppressor across the line},"
                + "r-1: {kind: mains_capacitor, designator: R1/2-a.b}");
    assertEquals("C12, suppressor across the line", title(book, "x-cap"));
    assertEquals("R1/2-a.b", title(book, "r-1"));
    assertEquals("case", title(book, "case"), "its id where it has neither");
    assertEquals("C12, suppressor across the line", book.evidence().title("x-cap"));
  }

  @Test
  void aDesignatorIsDueWhereTheKindHasOne() {
    String missing = things("x-cap: {kind: mains_capacitor}").complaints();
    assertTrue(missing.contains("a `mains_capacitor` without a designator"), missing);
    String needless = things("case: {designator: P1}").complaints();
    assertTrue(needless.contains("a `exposed_part` has no designator"), needless);
  }

  @Test
  void aDesignatorHasItsShape() {
    for (String wrong : new String[] {"\"C 12\"", "C_12", "\"C12,\"", "C1234567890123456"}) {
      String shape = things("x: {kind: mains_capacitor, designator: " + wrong + "}").complaints();
      assertTrue(shape.contains("can't be a designator"), wrong + shape);
    }
    assertEquals(
        "", things("x: {kind: mains_capacitor, designator: C123456789012345}").complaints());
  }

  @Test
  void twoThingsOfOneKindHaveTwoDesignators() {
    String twice =
        things(
                "x: {kind: mains_capacitor, designator: C12}, y: {kind: mains_capacitor, designator: c12}")
            .complaints();
    assertTrue(twice.contains("a second `c12`"), twice);
    assertEquals(
        "",
        things(
                "x: {kind: mains_capacitor, designator: C12}, y: {kind: touch_capacitor, designator: C12}")
            .complaints());
  }

  @Test
  void whatExistsOnceIsNotListed() {
    String setting = things("s: {kind: selector}").complaints().replaceAll("\\s+", " ");
    assertTrue(setting.contains("there is one `selector`, and it is not listed"), setting);
    assertTrue(setting.contains("of two that are set together, both"), setting);
    String cover = things("c: {kind: cover}").complaints().replaceAll("\\s+", " ");
    assertTrue(cover.contains("there is one `cover`, and it is not listed"), cover);
    assertTrue(cover.contains("what is found of it under `cover` in a visit"), cover);
  }
}
