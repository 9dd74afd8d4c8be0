package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The version stands in two places. */
class ReleaseTest {
  @Test
  void theVersionIsThatOfTheBuild() throws Exception {
    String pom = Files.readString(Path.of("pom.xml"));
    assertTrue(
        pom.contains(
            "<artifactId>mainsgate</artifactId>\n  <version>" + Release.VERSION + "</version>"));
  }
}
