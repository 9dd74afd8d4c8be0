package org.mainsgate.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ComplaintsTest {

  private final Complaints complaints = new Complaints();

  @Test
  void withoutComplaintsThereIsNothingToSay() {
    assertTrue(complaints.isEmpty());
    assertEquals(0, complaints.count());
    assertEquals("", complaints.renderAll());
  }

  @Test
  void complaintsComeInTheOrderOfTheFileWhateverTheOrderTheyWereMadeIn() {
    complaints.add(at("b", 1, 1), "fifth");
    complaints.add(at("a", 10, 1), "fourth");
    complaints.add(at("a", 2, 5), "third");
    complaints.add(at("a", 2, 1), "second");
    complaints.add(at("a", 2, 1), "first");
    assertEquals(
        List.of("first", "second", "third", "fourth", "fifth"),
        complaints.sorted().stream().map(Complaint::what).toList());
  }

  @Test
  void theLineIsShownOnceItsTextIsKnown() {
    complaints.add(at("a", 2, 3), "unknown text");
    complaints.reading(new SourceText("a", "one\ntwo\n"));
    complaints.add(at("a", 2, 3), "what");
    assertEquals("a:2:3: unknown text\na:2:3: what\n    two\n      ^\n", complaints.renderAll());
  }

  @Test
  void afterAHundredOfAFileTheRestIsCounted() {
    for (int line = 1; line <= 103; line++) {
      complaints.add(at("a", line, 1), "what");
    }
    complaints.add(at("b", 1, 1), "other");
    assertEquals(104, complaints.count());
    assertEquals(101, complaints.sorted().size());
    assertTrue(complaints.renderAll().endsWith("a:100:1: what\na: and 3 more\nb:1:1: other\n"));
  }

  @Test
  void anUnknownNameComesWithTheListAndTheNearest() {
    complaints.addUnknown(at("a", 1, 1), "field", "profil", List.of("bench", "profile"));
    Complaint complaint = complaints.sorted().get(0);
    assertEquals("unknown field `profil`", complaint.what());
    assertEquals("one of `bench`, `profile`", complaint.right());
    assertEquals("profile", complaint.nearest());
    assertFalse(complaints.isEmpty());
  }

  @Test
  void whereNoNameIsValidItSaysSo() {
    complaints.addUnknown(at("a", 1, 1), "table", "flex", List.of());
    assertEquals("no table here", complaints.sorted().get(0).right());
  }

  @Test
  void aComplaintMustSayWhatIsWrong() {
    Position at = at("a", 1, 1);
    assertThrows(IllegalArgumentException.class, () -> complaints.add(at, " "));
  }

  @Test
  void longTextIsBrokenAtEightyColumns() {
    complaints.add(at("a", 1, 1), "word ".repeat(40).strip(), "right ".repeat(40).strip());
    String rendered = complaints.renderAll();
    assertTrue(rendered.lines().allMatch(line -> line.length() <= 80), rendered);
    assertTrue(rendered.lines().anyMatch(line -> line.length() > 74), rendered);
  }

  @Test
  void nothingInAComplaintCanMoveATerminal() {
    String evil = "\u001b[2J\r\u202e\u0000\u0085\u2028\ud800";
    complaints.reading(new SourceText(evil, evil));
    complaints.add(at(evil, 1, 3), evil, evil, evil);
    String rendered = complaints.renderAll();
    assertTrue(rendered.codePoints().allMatch(c -> c == '\n' || !Visible.isUnseen(c)), rendered);
    assertTrue(rendered.contains("\\u001b[2J\\r\\u202e\\u0000\\u0085\\u2028\\ud800"), rendered);
  }

  @Test
  void veryLongWordsOfAPersonAreCut() {
    assertEquals("`" + "a".repeat(59) + "…`", Visible.quoted("a".repeat(61)));
    assertEquals("`" + "a".repeat(60) + "`", Visible.quoted("a".repeat(60)));
    assertEquals("`" + "a".repeat(58) + "…`", Visible.quoted("a".repeat(58) + "😀😀"));
  }

  private static Position at(String file, int line, int column) {
    return new Position(file, line, column);
  }
}
