package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.seal.TrustList;
import org.mainsgate.signature.Fingerprint;
import org.mainsgate.source.Complaints;

/** What a command that was stopped leaves, and what two at once write. */
class StoppedCommandsTest {
  private static final String NOW = "2026-11-25T18:00:00Z";

  @TempDir Path folder;
  private final Map<String, String> variables = new HashMap<>();

  @BeforeEach
  void aHome() {
    variables.put("MAINSGATE_HOME", folder.resolve("home").toString());
    variables.put("MAINSGATE_PASSWORD", "a long enough sentence");
  }

  private Run run(Object... arguments) {
    Surroundings around =
        new Surroundings() {
          @Override
          public Optional<String> variable(String name) {
            return Optional.ofNullable(variables.get(name));
          }

          @Override
          public Optional<char[]> ask(String prompt) {
            return Optional.empty();
          }

          @Override
          public Path userHome() {
            return folder.resolve("nobody");
          }
        };
    return Run.around(around, NOW, arguments);
  }

  @Test
  void aKeyWhoseMakingWasStoppedIsKnownAfterTheSameCommand() throws IOException {
    assertEquals(0, run("identity", "new", "--name", "the restorer").code());
    Path trusted = folder.resolve("home/trusted.yaml");
    String known = Files.readString(trusted);
    byte[] key = Files.readAllBytes(folder.resolve("home/identity.p12"));
    Files.delete(trusted);
    Run another = run("identity", "new", "--name", "somebody else");
    assertEquals(3, another.code());
    assertTrue(another.err().contains("there is a key in"), another.err());
    assertFalse(Files.exists(trusted));
    Run again = run("identity", "new", "--name", "the restorer");
    assertEquals(0, again.code(), again.err());
    assertEquals(known, Files.readString(trusted));
    assertArrayEquals(key, Files.readAllBytes(folder.resolve("home/identity.p12")));
    assertEquals(3, run("identity", "new", "--name", "the restorer").code(), "it is whole now");
  }

  @Test
  void ofManyWhoWriteDownAKeyAtOnceNoneIsLost() throws IOException {
    Home home = new Home(folder.resolve("home"));
    List<TrustList.Key> keys =
        IntStream.range(0, 40)
            .mapToObj(
                i ->
                    new TrustList.Key(
                        "key " + i, Fingerprint.of(new byte[] {(byte) i}), LocalDate.EPOCH))
            .toList();
    keys.parallelStream().forEach(key -> know(home, key));
    TrustList known = home.trusted(new Complaints()).orElseThrow();
    keys.forEach(key -> assertTrue(known.nameOf(key.fingerprint()).isPresent(), key::name));
  }

  private static void know(Home home, TrustList.Key key) {
    try {
      assertTrue(home.trust(before -> before.with(key), new Complaints()));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void anAddThatWasStoppedLeavesTheVerdictsOfTheRest() throws IOException {
    Path bench = Run.smallBench(folder);
    int before = run("check", bench).code();
    Files.createDirectories(bench.resolve("instruments/NL-09"));
    Run check = run("check", bench);
    assertEquals(before, check.code());
    assertTrue(check.err().contains("instruments/NL-09"), check.err());
    assertEquals(0, run("add", bench, "NL-09", "--what", "bridge").code());
  }

  @Test
  void aSecondSealOfTheSameDayHasAnotherNumber() {
    assertEquals(0, run("identity", "new", "--name", "the restorer").code());
    Path bench = Run.copy(Path.of("demo-data/north-light"), folder.resolve("bench"));
    run("seal", bench, "NL-01", "-o", folder.resolve("one.pdf"));
    run("seal", bench, "NL-01", "-o", folder.resolve("two.pdf"));
    assertTrue(Files.exists(bench.resolve("instruments/NL-01/reports/0001_2026-11-25_record.pdf")));
    assertTrue(Files.exists(bench.resolve("instruments/NL-01/reports/0002_2026-11-25_record.pdf")));
    assertFalse(Files.exists(bench.resolve("instruments/NL-01/reports/.2.number")));
  }
}
