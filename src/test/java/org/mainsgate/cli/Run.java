package org.mainsgate.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.mainsgate.report.Palette;

/**
 * One command that was run, with all that it said.
 *
 * @param code the exit code
 * @param out the standard output
 * @param err the error stream
 */
@NullMarked
record Run(int code, String out, String err) {
  private static final Path SMALL = Path.of("src/test/resources/benches/small");

  /** Runs a command on 25 November 2026, before noon in Greenwich. */
  static Run of(Object... arguments) {
    return around(Surroundings.NONE, "2026-11-25T09:00:00Z", arguments);
  }

  /** The same at another time, with variables and a home folder around it. */
  static Run around(Surroundings around, String now, Object... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Clock clock = Clock.fixed(Instant.parse(now), ZoneOffset.UTC);
    App app =
        new App(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            clock,
            Palette.NONE,
            new Random(1958),
            around);
    String[] words = Stream.of(arguments).map(Object::toString).toArray(String[]::new);
    int code = app.run(words);
    return new Run(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** A copy of a bench with one instrument, a draft and nothing wrong with it. */
  static Path smallBench(Path folder) {
    return copy(SMALL, folder.resolve("bench"));
  }

  static Path copy(Path from, Path to) {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Path target = to.resolve(from.relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(target);
        } else {
          Files.copy(file, target);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return to;
  }

  /** Every file below a folder with its bytes, to see whether anything was written. */
  static Map<String, String> everything(Path folder) {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : paths.filter(Files::isRegularFile).toList()) {
        String bytes = new String(Files.readAllBytes(path), StandardCharsets.ISO_8859_1);
        files.put(folder.relativize(path).toString(), bytes);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return files;
  }
}
