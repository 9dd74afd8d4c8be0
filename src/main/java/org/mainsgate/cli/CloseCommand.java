package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.Closed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Closes a visit. */
@Command(
    name = "close",
    mixinStandardHelpOptions = true,
    header = "Close a visit, never to be changed again",
    description = {
      "",
      "Closes a visit: its draft becomes a file that is never changed again. A later",
      "visit corrects it. The file names the visits that it knew, so that a change,",
      "a removal or another order is noticed; its hash stands beside it.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate close demo-data/north-light NL-03",
      "",
      "Write the hash down somewhere else, or keep the bench under version control:",
      "then nobody can take the last visit away unnoticed either."
    })
final class CloseCommand implements Callable<Integer> {
  private final App app;

  @Parameters(index = "0", paramLabel = "BENCH", description = "the bench's folder")
  Path bench;

  @Parameters(index = "1", paramLabel = "TAG", description = "the instrument")
  String tag;

  @Option(
      names = "--visit",
      paramLabel = "VISIT",
      description = "which draft, where there are several")
  @Nullable String visit;

  @Option(
      names = "--on",
      paramLabel = "DATE",
      description = "the day of closing; today if not given")
  @Nullable LocalDate on;

  CloseCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Optional<OpenBench> desk = OpenBench.open(app, bench, null);
    return (desk.isPresent() ? close(desk.get()) : Exit.UNUSABLE).code();
  }

  private Exit close(OpenBench desk) throws IOException {
    Complaints complaints = new Complaints();
    Optional<Closed> closed =
        desk.folder()
            .close(
                tag,
                Optional.ofNullable(visit),
                desk.day(on),
                desk.bench(),
                desk.records(),
                complaints);
    app.err().print(complaints.renderAll());
    if (closed.isEmpty()) {
      return Exit.UNUSABLE;
    }
    app.out().println("closed: " + closed.get().path());
    app.out().println("  SHA-256 " + closed.get().hash());
    return Exit.PASS;
  }
}
