package org.mainsgate.verdict;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.mainsgate.laws.Fingerprint;

/** The same record and the same rules give the same findings in another process. */
class AnyMachineTest {

  /** Another process also has another random order of unordered sets. */
  @Test
  void aTurkishMachineAtTheDateLineFindsTheSame() throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Duser.language=tr",
                "-Duser.country=TR",
                "-Duser.timezone=Pacific/Kiritimati",
                "-Dfile.encoding=ISO-8859-1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Fingerprint.class.getName())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String there = new String(process.getInputStream().readAllBytes(), UTF_8).strip();
    assertEquals(0, process.waitFor());
    assertEquals(Fingerprint.take(), there);
  }
}
