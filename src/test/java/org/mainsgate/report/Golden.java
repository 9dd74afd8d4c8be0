package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Texts that a person has read and found right; a new version waits under {@code target}. */
final class Golden {

  private static final Path EXPECTED = Path.of("src/test/resources/golden/report");
  private static final Path WRITTEN = Path.of("target/golden/report");

  private Golden() {}

  static void check(String name, String text) throws IOException {
    Files.createDirectories(WRITTEN);
    Files.writeString(WRITTEN.resolve(name), text);
    Path expected = EXPECTED.resolve(name);
    assertEquals(
        Files.exists(expected) ? Files.readString(expected) : "",
        text,
        () -> "compare " + expected + " with " + WRITTEN.resolve(name));
  }
}
