package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.mainsgate.report.CheckPages;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.source.Complaints;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes a page for each check. */
@Command(
    name = "pages",
    mixinStandardHelpOptions = true,
    header = "Write a page for each check",
    description = {
      "",
      "Writes one page in Markdown for each check, for the wall beside the bench: what",
      "it protects from, how to find out, the limits by profile, what to do. Pages of",
      "the same name are replaced.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate rules pages -o docs/checks",
      "  mainsgate rules pages -o pages --profile our-workshop.yaml",
      "",
      "Ends with 0, or 3 if the rules can't be read."
    })
final class RulesPages implements Callable<Integer> {
  private final App app;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FOLDER",
      required = true,
      description = "the folder for the pages; made if it is not there")
  Path folder;

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description =
          "only this profile, by name, or the file of one or of an overlay; may be repeated")
  List<String> profiles = List.of();

  RulesPages(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Complaints complaints = new Complaints();
    Map<String, Rules> rules = RulesShow.rules(profiles, complaints);
    app.err().print(complaints.renderAll());
    if (!complaints.isEmpty()) {
      return Exit.UNUSABLE.code();
    }
    Written.all(folder, new CheckPages(rules).files(), app.out());
    return Exit.PASS.code();
  }
}
