package org.mainsgate.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.mainsgate.report.Lines;
import org.mainsgate.report.Palette;
import org.mainsgate.source.Visible;
import picocli.CommandLine;

/** The whole program as an object: streams and a clock in, an exit code out. */
public final class App {
  private final PrintStream out;
  private final PrintStream err;
  private final Clock clock;
  private final Palette palette;
  private final RandomGenerator chance;
  private final Surroundings around;

  /**
   * A program that writes there.
   *
   * @param clock read once, for the day that is meant where no other is given
   * @param palette whether words may be set off
   * @param chance what new identities are made of
   * @param around variables, console and home folder
   */
  public App(
      PrintStream out,
      PrintStream err,
      Clock clock,
      Palette palette,
      RandomGenerator chance,
      Surroundings around) {
    this.out = out;
    this.err = err;
    this.clock = clock;
    this.palette = palette;
    this.chance = chance;
    this.around = around;
  }

  /** A program with nothing around it. */
  public App(
      PrintStream out, PrintStream err, Clock clock, Palette palette, RandomGenerator chance) {
    this(out, err, clock, palette, chance, Surroundings.NONE);
  }

  /** Runs one command; the exit code is one of {@code 0 10 20 31 32 30 3 2 1}. */
  public int run(String... arguments) {
    PrintWriter screen = new PrintWriter(out, true, StandardCharsets.UTF_8);
    PrintWriter complaints = new PrintWriter(err, true, StandardCharsets.UTF_8);
    CommandLine line =
        Commands.line(this, arguments)
            .registerConverter(LocalDate.class, App::day)
            .setOut(screen)
            .setErr(complaints)
            .setUsageHelpWidth(80)
            .setUsageHelpAutoWidth(false)
            .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
            .setExecutionExceptionHandler((e, command, result) -> failed(e));
    int code = isOfLines(arguments) ? line.execute(arguments) : Exit.USAGE;
    out.flush();
    err.flush();
    return code;
  }

  /** Each argument is one line: what is said there is printed, signed and read again. */
  private boolean isOfLines(String... arguments) {
    boolean all = true;
    for (String argument : arguments) {
      Optional<String> fault = Visible.faultIn(argument);
      fault.ifPresent(
          what ->
              complain(
                  Visible.quoted(Visible.text(argument))
                      + ": "
                      + what
                      + " can't stand in what a command is told; one line of plain text can"));
      all &= fault.isEmpty();
    }
    return all;
  }

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new CommandLine.TypeConversionException(
          "`" + Visible.text(text) + "` is no day; write it as `2026-11-25`");
    }
  }

  /** What the disk refused; some refusals name the place alone. */
  private static String unwritable(Exception e) {
    Throwable cause = e instanceof UncheckedIOException && e.getCause() != null ? e.getCause() : e;
    if (cause instanceof NoSuchFileException missing) {
      return "there is no `" + missing.getFile() + "`";
    }
    return cause instanceof FileSystemException refused && refused.getReason() == null
        ? "`" + refused.getFile() + "` can't be written or read"
        : String.valueOf(cause.getMessage());
  }

  /** A disk that fails is the person's to know; anything else is a defect of ours. */
  private int failed(Exception e) {
    if (e instanceof IOException || e instanceof UncheckedIOException) {
      err.println("mainsgate: " + Visible.text(unwritable(e)));
      if (!(e instanceof NoSuchFileException)) {
        err.println("  nothing is half-written: each file is as it was, or is there whole");
      }
      return Exit.UNUSABLE.code();
    }
    err.println(
        "mainsgate: a defect of the program, not of your files: " + Visible.text(e.toString()));
    err.println("  no verdict was given; please report it with the command that you used");
    return Exit.DEFECT.code();
  }

  /** A paragraph for the person, at 80 columns. */
  void say(String text) {
    out.print(new Lines().add(0, text));
  }

  /** A paragraph about something that is wrong, at 80 columns. */
  void complain(String text) {
    err.print(new Lines().add(0, text));
  }

  PrintStream out() {
    return out;
  }

  PrintStream err() {
    return err;
  }

  Clock clock() {
    return clock;
  }

  /** The day of this machine, in UTC, where no bench says another zone. */
  LocalDate today() {
    return LocalDate.now(clock.withZone(ZoneOffset.UTC));
  }

  Palette palette() {
    return palette;
  }

  Surroundings around() {
    return around;
  }

  RandomGenerator chance() {
    return chance;
  }
}
