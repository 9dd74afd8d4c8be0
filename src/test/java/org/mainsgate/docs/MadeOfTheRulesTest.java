package org.mainsgate.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.cli.App;
import org.mainsgate.report.Palette;

/** What is made of the rules and committed beside them. */
class MadeOfTheRulesTest {
  @TempDir Path folder;

  @Test
  void thePagesOfTheChecksAreThoseOfTheRules() throws IOException {
    same("pages", "docs/checks");
  }

  @Test
  void theSchemasAreThoseOfTheRules() throws IOException {
    same("schema", "docs/schema");
  }

  @Test
  void noPageOrSchemaCallsAnythingSafe() throws IOException {
    for (String folder : new String[] {"docs/checks", "docs/schema"}) {
      files(Path.of(folder))
          .forEach(
              (name, text) -> assertFalse(text.matches("(?is).*\\b(?:un)?safe(?:ly)?\\b.*"), name));
    }
  }

  private void same(String command, String committed) throws IOException {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
    Clock clock = Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC);
    int code =
        new App(stream, stream, clock, Palette.NONE, new java.util.Random(1958))
            .run("rules", command, "-o", folder.toString());
    assertEquals(0, code, said.toString(StandardCharsets.UTF_8));
    String run =
        "the rules are others now: run `java -jar target/mainsgate.jar rules "
            + command
            + " -o "
            + committed
            + "` and look at the difference";
    Map<String, String> made = files(folder);
    Map<String, String> kept = files(Path.of(committed));
    kept.keySet().removeIf(name -> name.equals("README.md") && !made.containsKey(name));
    assertEquals(made.keySet(), kept.keySet(), run);
    made.forEach((name, text) -> assertEquals(text, kept.get(name), name + ": " + run));
  }

  private static Map<String, String> files(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> paths = Files.list(folder)) {
      for (Path path : paths.toList()) {
        files.put(path.getFileName().toString(), Files.readString(path));
      }
    }
    return files;
  }
}
