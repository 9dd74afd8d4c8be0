package org.mainsgate.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mainsgate.desk.Profiles;
import org.mainsgate.report.CheckTest;
import org.mainsgate.report.RulesScreen;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.NearestName;
import org.mainsgate.source.Position;
import org.mainsgate.source.Visible;
import org.mainsgate.trial.Trial;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what the rules ask, and where their limits come from. */
@Command(
    name = "show",
    mixinStandardHelpOptions = true,
    header = "Show what the rules ask, and where it comes from",
    description = {
      "",
      "Without a name, lists the checks. With names, or --all, shows each in full:",
      "what it protects from, what must hold, its limits under every profile side by",
      "side, how to measure, what to do, and what its tests expect.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate rules show",
      "  mainsgate rules show earth-continuity",
      "  mainsgate rules show earth-continuity --profile gb --profile our-workshop.yaml",
      "",
      "Ends with 0, or 3 if there is no such check or the rules can't be read."
    })
final class RulesShow implements Callable<Integer> {
  private final App app;

  @Parameters(paramLabel = "CHECK", arity = "0..*", description = "checks to show in full")
  List<String> checks = List.of();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description =
          "only this profile, by name, or the file of one or of an overlay; may be repeated")
  List<String> profiles = List.of();

  @Option(names = "--all", description = "every check in full")
  boolean all;

  RulesShow(App app) {
    this.app = app;
  }

  @Override
  public Integer call() {
    Complaints complaints = new Complaints();
    Map<String, Rules> rules = rules(profiles, complaints);
    Optional<RulesScreen> screen =
        complaints.isEmpty() ? Optional.of(new RulesScreen(rules, tests())) : Optional.empty();
    screen.ifPresent(found -> known(found, complaints));
    app.err().print(complaints.renderAll());
    if (screen.isEmpty() || !complaints.isEmpty()) {
      return Exit.UNUSABLE.code();
    }
    print(screen.get());
    return Exit.PASS.code();
  }

  private void known(RulesScreen screen, Complaints complaints) {
    for (String check : checks) {
      if (!screen.checks().contains(check)) {
        complaints.add(
            new Position("CHECK", 1, 1),
            "unknown check " + Visible.quoted(check),
            "one of those that `rules show` lists",
            NearestName.of(check, screen.checks()).orElse(""));
      }
    }
  }

  private void print(RulesScreen screen) {
    if (checks.isEmpty() && !all) {
      app.out().print(screen.list());
      return;
    }
    (all ? screen.checks() : checks).forEach(check -> app.out().print(screen.check(check)));
  }

  /** The rules of the named profiles, or of all that the program carries. */
  static Map<String, Rules> rules(List<String> names, Complaints complaints) {
    Map<String, Shelf.Choice> choices = new LinkedHashMap<>();
    if (names.isEmpty()) {
      choices.putAll(RulesCommand.profiles(List.of(), complaints));
    }
    for (String name : names) {
      GivenProfile.of(name, complaints)
          .ifPresent(
              choice ->
                  choices.putAll(
                      choice.bytes().isPresent()
                          ? RulesCommand.choices(RulesCommand.base(Path.of(name)), choice)
                          : Map.of(name, choice)));
    }
    Map<String, Rules> rules = new LinkedHashMap<>();
    choices.forEach(
        (name, choice) ->
            Profiles.rules(new Shelf(), choice, complaints)
                .ifPresent(found -> rules.put(name, found)));
    return rules;
  }

  /** What is expected by the program's own tests, and by those beside the files that were named. */
  private List<CheckTest> tests() {
    Map<String, byte[]> files = new LinkedHashMap<>(RulesCommand.shelfTests());
    for (String name : profiles) {
      Path file = Path.of(name);
      RulesCommand.RulesTest.fileTests(file, new Complaints())
          .ifPresent(bytes -> files.put(file + " tests", bytes));
    }
    return Trial.expectations(files, new Complaints()).stream()
        .map(found -> new CheckTest(found.check(), found.test(), found.profiles(), found.outcome()))
        .toList();
  }
}
