package org.mainsgate.cli;

import org.mainsgate.report.Release;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command without a command: says what there is. */
@Command(
    name = "mainsgate",
    version = "mainsgate " + Release.VERSION,
    mixinStandardHelpOptions = true,
    commandListHeading = "%nCommands:%n",
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "",
      "A gate between an old instrument and the mains.",
      "",
      "You write down what you see and measure; the rules say pass, hold or fail,",
      "with the arithmetic and what would settle a hold. It decides nothing that",
      "is yours: local codes and a qualified person have the last word.",
      ""
    },
    footer = {
      "",
      "Start with:  mainsgate start BENCH, then mainsgate add BENCH TAG",
      "",
      "How a command ends: 0 pass or done, 10 hold, 20 fail, 3 input that can't be",
      "used, 2 wrong usage, 1 a defect of the program. The worst counts. `verify` also",
      "ends with 30 altered, 31 signer unknown, 32 rules unknown."
    })
final class TopCommand implements Runnable {
  @Spec CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "which command?");
  }
}
