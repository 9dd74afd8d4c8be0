package org.mainsgate.cli;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mainsgate.report.Terms;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Seals the record of an instrument. */
@Command(
    name = "seal",
    mixinStandardHelpOptions = true,
    header = "Sign a report that anybody can check and judge again",
    description = {
      "",
      "Judges an instrument from its closed visits, and writes a signed PDF that holds",
      "the report and the whole record: the visits, the bench as far as they name it,",
      "and the rules. Whoever gets it can verify it, and judge it again.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate seal demo-data/north-light NL-01 -o NL-01.pdf",
      "",
      "Ends like `check`. A copy is kept under `reports` in the instrument's folder."
    })
final class SealCommand implements Callable<Integer> {
  private final App app;

  @Mixin Sealing sealing = new Sealing();

  SealCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Sealing.Asked plain =
        new Sealing.Asked(Terms.Purpose.RECORD, Optional.empty(), Map.of(), Optional.empty());
    return sealing.seal(app, plain).code();
  }
}
