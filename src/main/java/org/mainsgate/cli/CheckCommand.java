package org.mainsgate.cli;

import java.util.concurrent.Callable;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Json;
import org.mainsgate.report.Screen;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Judges instruments and says so on the screen. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Judge the instruments of a bench",
    description = {
      "",
      "Judges the instruments of a bench: pass, hold or fail, with the arithmetic,",
      "and what would settle a hold. Nothing is written.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate check demo-data/north-light",
      "  mainsgate check demo-data/north-light NL-02 --profile eu",
      "",
      "Ends with 0 if all pass, 10 if the worst is a hold, 20 a fail, 3 if something",
      "can't be read (the other instruments are judged all the same)."
    })
final class CheckCommand implements Callable<Integer> {
  private final App app;

  @Mixin BenchOptions bench = new BenchOptions();

  @Option(names = "--json", description = "print findings as JSON, for other programs")
  boolean json;

  CheckCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() {
    return Judging.of(app, bench).map(this::print).orElse(Exit.UNUSABLE).code();
  }

  private Exit print(Judging judging) {
    if (json) {
      Json text = new Json();
      app.out().print(text.begin(judging.setting()));
      judging.each(Desk.Pictures.LEFT_OUT, Json::one, one -> app.out().print(text.next(one)));
      app.out().print(text.end(judging.verdicts(), judging.unreadable()));
    } else {
      Screen screen = new Screen(app.palette());
      judging.each(
          Desk.Pictures.LEFT_OUT,
          dossier -> judging.onScreen(screen, dossier),
          one -> app.out().print(one));
      app.out().print(judging.summary(screen));
    }
    return judging.exit();
  }
}
