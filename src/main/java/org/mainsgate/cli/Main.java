package org.mainsgate.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import org.mainsgate.report.Palette;
import picocli.CommandLine;

/** The program's entry point. */
public final class Main {
  private Main() {}

  /**
   * Runs one command and ends the program with its exit code.
   *
   * @param arguments the command and its arguments
   */
  public static void main(String[] arguments) {
    PrintStream out = stream(FileDescriptor.out);
    PrintStream err = stream(FileDescriptor.err);
    int code =
        new App(out, err, Clock.systemUTC(), palette(), new SecureRandom(), new Machine())
            .run(arguments);
    out.flush();
    err.flush();
    System.exit(code);
  }

  /** UTF-8 whatever the machine is set to. */
  private static PrintStream stream(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), false, StandardCharsets.UTF_8);
  }

  /** Words are set off only where a person looks at a terminal, and has not said no. */
  private static Palette palette() {
    return CommandLine.Help.Ansi.AUTO.enabled() ? Palette.ANSI : Palette.NONE;
  }
}
