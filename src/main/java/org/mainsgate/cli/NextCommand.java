package org.mainsgate.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.mainsgate.report.NextScreen;
import org.mainsgate.report.Outlook;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Setting;
import org.mainsgate.report.Worksheet;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says what to do next at an instrument. */
@Command(
    name = "next",
    mixinStandardHelpOptions = true,
    header = "Say what to do next at an instrument",
    description = {
      "",
      "Says what to find out next, in the order of the work: what to write where, how",
      "to measure it, with which meter, and what to expect. Nothing behind a stop is",
      "offered before the stop is passed. Each day begins with the plug out.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate next demo-data/north-light NL-02",
      "  mainsgate next demo-data/north-light NL-03 --paper -o page.pdf",
      "",
      "Ends like `check`: 0 if it passes, 10 if it holds, 20 if it fails, 3 if",
      "something can't be read."
    })
final class NextCommand implements Callable<Integer> {
  private final App app;

  @Parameters(index = "0", paramLabel = "BENCH", description = "the bench's folder")
  Path bench;

  @Parameters(index = "1", paramLabel = "TAG", description = "the instrument")
  String tag;

  @Option(names = "--all", description = "all steps, not only the next")
  boolean all;

  @Mixin StageAndDay meant = new StageAndDay();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "what if: another profile than the bench's, by name or by the path of a file")
  @Nullable String profile;

  @ArgGroup(exclusive = false)
  @Nullable Paper paper;

  /** Where a page to be filled in is wanted. */
  static final class Paper {
    @Option(
        names = "--paper",
        required = true,
        description = "write all of it on a page of paper, with boxes and lines")
    boolean wanted;

    @Option(
        names = {"-o", "--out"},
        paramLabel = "FILE",
        required = true,
        description = "the PDF of that page; replaced if it is there")
    Path file;
  }

  NextCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Optional<Outlook> outlook = outlook();
    if (outlook.isEmpty()) {
      return Exit.UNUSABLE.code();
    }
    Paper wanted = paper;
    Exit exit = wanted == null ? print(outlook.get()) : write(outlook.get(), wanted.file);
    return exit.code();
  }

  private Optional<Outlook> outlook() {
    return OpenBench.open(app, bench, profile)
        .flatMap(
            desk ->
                Judging.stage(app, desk, meant.stage)
                    .map(
                        found ->
                            new Setting(
                                desk.bench(),
                                desk.rules(),
                                profile != null,
                                found,
                                desk.day(meant.on)))
                    .flatMap(setting -> desk.outlook(tag, setting)));
  }

  private Exit print(Outlook outlook) {
    app.out().print(new NextScreen(outlook, all).text());
    return Exit.of(outlook.dossier().assessment().verdict());
  }

  private Exit write(Outlook outlook, Path file) throws IOException {
    Worksheet sheet = Worksheet.of(outlook);
    Pdf pdf = new Pdf();
    List<String> complaints = pdf.complaints(sheet);
    if (!complaints.isEmpty()) {
      complaints.forEach(found -> app.err().println(tag + ": " + found));
      return Exit.UNUSABLE;
    }
    ByteArrayOutputStream page = new ByteArrayOutputStream();
    pdf.write(sheet, outlook.dossier().setting().on(), page);
    new PageFile(file).replace(page.toByteArray());
    app.out().println("written: " + file);
    return Exit.of(outlook.dossier().assessment().verdict());
  }
}
