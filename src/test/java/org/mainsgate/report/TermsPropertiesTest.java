package org.mainsgate.report;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Visible;

/** What a record is made out for comes back from its file as it went in. */
class TermsPropertiesTest {

  private static Optional<Terms> read(String text, Complaints complaints) {
    return Terms.read("seal.yaml", text.getBytes(UTF_8), complaints);
  }

  @Property(tries = 300)
  void whatWasWrittenIsRead(
      @ForAll
          @AlphaChars
          @Chars({' ', '"', '\\', '#', ':', 'Ω', '漢', '\''})
          @StringLength(min = 1, max = 30)
          String words,
      @ForAll Terms.Purpose purpose,
      @ForAll Terms.Saying saying) {
    Map<Terms.Saying, String> said = new LinkedHashMap<>();
    said.put(saying, "x" + words + "x");
    Terms terms =
        new Terms(
            Release.VERSION,
            "NL-01",
            "cold",
            LocalDate.of(2026, 11, 25),
            12,
            purpose,
            "x" + words,
            "12345 67890",
            Optional.of(words + "x"),
            said,
            Map.of("instruments/NL-01/photos/a.jpg", "ab".repeat(32)),
            Optional.of(new Terms.WentOut(3, LocalDate.of(2026, 1, 2), List.of("cd".repeat(32)))));
    Complaints complaints = new Complaints();
    assertEquals(Optional.of(terms), read(terms.written(), complaints), complaints::renderAll);
    assertEquals("", complaints.renderAll());
  }

  /** The same for any words that a command takes. */
  @Property(tries = 500)
  void everyLineThatMayBeSaidComesBack(@ForAll @StringLength(min = 1, max = 4) String words) {
    Assume.that(Visible.faultIn(words).isEmpty());
    whatWasWrittenIsRead(words, Terms.Purpose.LENT, Terms.Saying.PLACE);
  }

  @Test
  void whatCannotBeUnderstoodIsComplainedOf() {
    String good =
        """
        format: 1
        program: a
        tag: a
        stage: a
        on: 2026-11-25
        number: 1
        purpose: sold
        signer: a
        fingerprint: a
        """;
    Complaints none = new Complaints();
    assertFalse(read(good, none).isEmpty(), none::renderAll);
    for (String wrong :
        List.of(
            good.replace("format: 1", "format: 2"),
            good.replace("2026-11-25", "2026-11-31"),
            good.replace("number: 1", "number: 0"),
            good.replace("sold", "given"),
            good + "said: {until_when: x}\n",
            good + "more: x\n")) {
      Complaints complaints = new Complaints();
      assertEquals(Optional.empty(), read(wrong, complaints), wrong);
      assertEquals(1, complaints.count(), complaints::renderAll);
    }
  }
}
