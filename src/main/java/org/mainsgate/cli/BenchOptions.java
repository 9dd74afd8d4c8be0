package org.mainsgate.cli;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
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

  @Mixin StageAndDay meant = new StageAndDay();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description =
          "what if: judge under another profile than the bench's, by its name or by the path of a"
              + " file")
  @Nullable String profile;
}
