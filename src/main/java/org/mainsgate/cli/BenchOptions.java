package org.mainsgate.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What is looked at, and under what: the same for every command that judges. */
final class BenchOptions {
  @Parameters(index = "0", paramLabel = "BENCH", description = "the bench's folder")
  Path bench;

  @Parameters(
      index = "1..*",
      paramLabel = "TAG",
      arity = "0..*",
      description = "instruments, by tag; all if none is named")
  List<String> tags = List.of();

  @Option(
      names = "--stage",
      paramLabel = "STAGE",
      description = "the stage to judge; the first of the rules if not given")
  @Nullable String stage;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "the day that is meant, such as 2026-11-25; today if not given")
  @Nullable LocalDate on;

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description =
          "what if: judge under another profile than the bench's, by its name or by the path of a"
              + " file")
  @Nullable String profile;
}
