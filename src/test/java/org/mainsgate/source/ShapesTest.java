package org.mainsgate.source;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShapesTest {

  record Part(
      @Name Text id,
      @Nullable @Pattern(regexp = "[0-9]+", message = "{typed} is no count|digits") Text howMany) {}

  record Whole(
      @Nullable @CalendarDate Text madeOn,
      @Nullable @Valid Part one,
      List<@Valid Part> parts,
      Map<String, @Valid Part> byName,
      List<@Name Text> names,
      Map<String, @CalendarDate Text> dates,
      @Size(max = 1, message = "two of {typed}|at most one") List<Text> few) {}

  record Wordless(@Pattern(regexp = "x") Text text) {}

  @Test
  void whatFitsIsNotComplainedAbout() {
    assertEquals(
        List.of(),
        check(
            """
            made_on: 2024-02-29
            one: {id: A-1}
            parts: [{id: a.b, how_many: 12}]
            by_name: {x: {id: c_d}}
            names: [e]
            dates: {f: 2026-11-25}
            few: [g]
            """));
  }

  @Test
  void nothingIsRequiredByAConstraint() {
    assertEquals(List.of(), check("few: []\n"));
  }

  @Test
  void complaintsStandAtTheValueHoweverDeepItLies() {
    assertEquals(
        List.of(
            "f:1:10: `2026-02-29` does not exist|a day from `01` to `28`",
            "f:2:11: `-a` can't be a name here|" + NAME,
            "f:4:9: `b c` can't be a name here|" + NAME,
            "f:4:24: `two` is no count|digits",
            "f:5:19: `d:` can't be a name here|" + NAME,
            "f:6:12: `é` can't be a name here|" + NAME,
            "f:7:12: `2026-00-01` does not exist|a month from `01` to `12`",
            "f:8:6: two of this|at most one"),
        check(
            """
            made_on: 2026-02-29
            one: {id: -a}
            parts: [{id: a},
              {id:  b c, how_many: two}]
            by_name: {x: {id: 'd:'}}
            names: [a, é]
            dates: {b: 2026-00-01}
            few: [a, b]
            """));
  }

  private static final String NAME =
      "1 to 32 of `A` to `Z`, `a` to `z`, `0` to `9`, `.`, `_`, `-`, a letter or digit first";

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-2-3",
        "25.11.2026",
        "2026-11-25T10:00",
        "20261125",
        "+2026-11-25",
        "2026-11-2x",
        "٢٠٢٦-11-25",
        "2026-W48-3"
      })
  void whatIsNotWrittenAsADateIsNone(String written) {
    assertEquals(
        List.of(
            "f:1:10: `"
                + written
                + "` is not a calendar date|year-month-day, such as `2026-11-25`"),
        check("made_on: " + written + "\n"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"2100-02-29", "2026-04-31", "2026-06-00", "2026-13-01"})
  void aDayOrMonthMustExist(String written) {
    assertEquals(
        1,
        check("made_on: " + written + "\n").stream()
            .filter(c -> c.contains("does not exist"))
            .count());
  }

  @ParameterizedTest
  @ValueSource(strings = {"2000-02-29", "2026-12-31", "1935-01-01"})
  void oldAndLeapDaysExist(String written) {
    assertEquals(List.of(), check("made_on: " + written + "\n"));
  }

  @Test
  void theWordsOfAPersonCanNotSpoilAMessage() {
    assertEquals(
        List.of("f:1:11: `{typed}|${1+1}` can't be a name here|" + NAME),
        check("one: {id: '{typed}|${1+1}'}\n"));
  }

  @Test
  void thirtyTwoCharactersAreANameAndThirtyThreeAreNot() {
    assertEquals(List.of(), check("names: [" + "a".repeat(32) + "]\n"));
    assertEquals(1, check("names: [" + "a".repeat(33) + "]\n").size());
  }

  @Test
  void aConstraintWithoutOurOwnWordsIsAMistakeOfOurs() {
    Complaints complaints = new Complaints();
    Fields fields =
        StrictYaml.readFields("f", "text: y\n".getBytes(UTF_8), complaints).orElseThrow();
    Wordless bean = Binder.bind(fields, Wordless.class, complaints).orElseThrow();
    assertThrows(IllegalStateException.class, () -> Shapes.check(bean, fields, complaints));
  }

  private static List<String> check(String yaml) {
    Complaints complaints = new Complaints();
    Fields fields = StrictYaml.readFields("f", yaml.getBytes(UTF_8), complaints).orElseThrow();
    Whole whole = Binder.bind(fields, Whole.class, complaints).orElseThrow();
    Shapes.check(whole, fields, complaints);
    return complaints.sorted().stream()
        .map(c -> c.at() + ": " + c.what() + "|" + c.right())
        .toList();
  }
}
