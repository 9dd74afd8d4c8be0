package org.mainsgate.source;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;

class StrictYamlPropertiesTest {

  private static final List<String> PIECES =
      List.of(
          "a: ",
          "- ",
          "? ",
          ": ",
          "'",
          "\"",
          "|",
          ">-",
          "[",
          "]",
          "{",
          "}",
          ", ",
          "&x ",
          "*x",
          "!t ",
          "!<",
          "%TAG ",
          "#",
          "---",
          "...",
          "<<: ",
          "\n",
          "\n  ",
          "\t",
          "\r",
          "\r\n",
          "\\",
          "\\x4",
          "\\U0011FFFF",
          "\\uDC00",
          "key",
          "1",
          "Ω",
          "😀",
          "\u0000",
          "\u202e",
          "\ufeff",
          "\u0085",
          "~",
          "@",
          "`",
          "=",
          " ");

  @Property(tries = 2000)
  void anyBytesAreReadOrComplainedAbout(@ForAll byte[] bytes) {
    readOrComplain(bytes);
  }

  @Property(tries = 5000)
  void anyPiecesOfYamlAreReadOrComplainedAbout(@ForAll("pieces") String text) {
    readOrComplain(text.getBytes(UTF_8));
  }

  @Property
  void fieldsAreReadAsTheyWereWrittenWhereTheyWereWritten(
      @ForAll("entries") @Size(max = 5) List<Entry> entries) {
    StringBuilder yaml = new StringBuilder("top: 1\n");
    for (int i = 0; i < entries.size(); i++) {
      yaml.append("k")
          .append(i)
          .append(entries.get(i).gap())
          .append(entries.get(i).written())
          .append('\n');
    }
    Complaints complaints = new Complaints();
    Fields fields =
        StrictYaml.readFields("f", yaml.toString().getBytes(UTF_8), complaints).orElseThrow();
    assertTrue(complaints.isEmpty(), complaints::renderAll);
    assertEquals(entries.size() + 1, fields.fields().size());
    for (int i = 0; i < entries.size(); i++) {
      Text text = (Text) fields.get("k" + i).orElseThrow();
      assertEquals(entries.get(i).value(), text.value());
      assertEachCharStandsThere(text, yaml.toString());
    }
  }

  private static void assertEachCharStandsThere(Text text, String yaml) {
    String[] lines = yaml.split("\n", -1);
    text.value()
        .codePoints()
        .distinct()
        .filter(c -> " \n\"".indexOf(c) < 0)
        .forEach(
            c -> {
              Position at = text.at(text.value().indexOf(c));
              String line = lines[at.line() - 1];
              assertEquals(c, line.codePointAt(line.offsetByCodePoints(0, at.column() - 1)), yaml);
            });
  }

  private static void readOrComplain(byte[] bytes) {
    Complaints complaints = new Complaints();
    Optional<Node> node = StrictYaml.read("f", bytes, complaints);
    assertTrue(node.isPresent() || !complaints.isEmpty());
    node.ifPresent(StrictYamlPropertiesTest::touch);
    String rendered = complaints.renderAll();
    assertEquals(complaints.isEmpty(), rendered.isEmpty());
    assertTrue(rendered.codePoints().allMatch(c -> c == '\n' || !Visible.isUnseen(c)), rendered);
    assertTrue(
        rendered.lines().allMatch(line -> Visible.width(line) <= 80 || !line.contains(" ")),
        rendered);
    // None of the parser's own words.
    assertTrue(complaints.sorted().stream().noneMatch(c -> c.what().contains("while ")), rendered);
  }

  private static void touch(Node node) {
    assertNotEquals("", node.at().toString());
    if (node instanceof Items items) {
      items.items().forEach(StrictYamlPropertiesTest::touch);
    } else if (node instanceof Fields fields) {
      fields.fields().forEach(field -> touch(field.key()));
      fields.fields().forEach(field -> touch(field.value()));
    } else if (node instanceof Text text) {
      Position last = text.at();
      for (int i = 0; i <= text.value().length(); i++) {
        Position next = text.at(i);
        assertTrue(last.compareTo(next) <= 0, () -> last + " is after " + next);
      }
    }
  }

  @Provide
  Arbitrary<String> pieces() {
    return Arbitraries.of(PIECES).list().ofMaxSize(30).map(pieces -> String.join("", pieces));
  }

  @Provide
  Arbitrary<List<Entry>> entries() {
    Arbitrary<String> words =
        Arbitraries.of("a", "b", "Ω", "µ", "😀", "漢", "%", "(", ")", ".", "#")
            .list()
            .ofMaxSize(8)
            .map(letters -> "w" + String.join("", letters) + "w");
    Arbitrary<List<String>> lines = words.list().ofMinSize(1).ofMaxSize(4);
    Arbitrary<String> gaps = Arbitraries.of(": ", ":   ", ":\n    ");
    return Combinators.combine(lines, gaps, Arbitraries.of(Style.values())).as(Entry::of).list();
  }

  private enum Style {
    PLAIN,
    SINGLE,
    DOUBLE,
    LITERAL,
    FOLDED
  }

  /** A value, and a way to write it. */
  private record Entry(String gap, String written, String value) {

    static Entry of(List<String> lines, String gap, Style style) {
      String folded = String.join(" ", lines);
      String broken = String.join("\n     ", lines);
      return switch (style) {
        case PLAIN -> new Entry(gap, broken, folded);
        case SINGLE ->
            new Entry(gap, "'" + broken.replace("(", "(''") + "'", folded.replace("(", "('"));
        case DOUBLE ->
            new Entry(gap, "\"" + broken.replace("(", "(\\\"") + "\"", folded.replace("(", "(\""));
        case LITERAL -> new Entry(": ", "|\n     " + broken, String.join("\n", lines) + "\n");
        case FOLDED -> new Entry(": ", ">-\n     " + broken, folded);
      };
    }
  }
}
