package org.mainsgate.cli;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** For which stage, and on which day: the same for every command that looks at an instrument. */
final class StageAndDay {
  @Option(
      names = "--stage",
      paramLabel = "STAGE",
      description = "for which stage; the first of the rules if not given")
  @Nullable String stage;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "the day that is meant, such as 2026-11-25; today if not given")
  @Nullable LocalDate on;
}
