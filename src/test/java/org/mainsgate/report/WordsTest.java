package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a report must never say; "safety" in the title of a standard is another word. */
class WordsTest {

  private static final Pattern NEVER =
      Pattern.compile("\\b(un)?safe(ly)?\\b", Pattern.CASE_INSENSITIVE);

  @Test
  void noTemplateSaysThatSomethingIsSafe() throws IOException {
    List<Path> files = new ArrayList<>();
    for (String folder :
        List.of("src/main/jte", "src/main/resources/report", "src/test/resources/golden/report")) {
      try (Stream<Path> found = Files.walk(Path.of(folder))) {
        found
            .filter(file -> file.toString().matches(".*\\.(jte|css|txt|json)"))
            .forEach(files::add);
      }
    }
    assertTrue(files.size() > 8, () -> "too few: " + files);
    for (Path file : files) {
      assertFalse(NEVER.matcher(Files.readString(file)).find(), () -> file.toString());
    }
  }

  @Test
  void noScreenAndNoPageSaysThatSomethingIsSafe() {
    List<Dossier> all =
        List.of(Samples.near(), Samples.unearthed(), Samples.sound(), Samples.blank());
    Screen screen = new Screen(Palette.NONE);
    Pdf pdf = new Pdf();
    for (Dossier dossier : all) {
      assertSilent(screen.instrument(dossier));
      assertSilent(pdf.page(Sheet.of(dossier)));
    }
    assertSilent(
        screen.summary(
            Samples.setting(), all.stream().map(Screen.Verdicted::of).toList(), List.of()));
    assertSilent(Json.of(Samples.setting(), all, List.of()));
  }

  @Test
  void thePatternFindsTheWord() {
    assertEquals(1, NEVER.matcher("It is Safe.").results().count());
  }

  private static void assertSilent(String text) {
    assertFalse(
        NEVER.matcher(text).find(),
        () ->
            NEVER
                .matcher(text)
                .results()
                .map(
                    r ->
                        text.substring(
                            Math.max(0, r.start() - 30), Math.min(text.length(), r.end() + 30)))
                .toList()
                .toString());
  }
}
