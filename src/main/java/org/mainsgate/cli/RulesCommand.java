package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.mainsgate.desk.Profiles;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.trial.Trial;
import org.mainsgate.trial.TrialReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What can be done with rulesets. */
@Command(
    name = "rules",
    mixinStandardHelpOptions = true,
    subcommands = {
      RulesShow.class,
      RulesTrust.class,
      RulesCommand.RulesCheck.class,
      RulesCommand.RulesTest.class,
      RulesPages.class,
      RulesSchema.class
    },
    synopsisSubcommandLabel = "COMMAND",
    header = "Look after the rulesets",
    description = {
      "",
      "What the rules ask, whether they are sound, and whether they are tested.",
      ""
    })
final class RulesCommand implements Runnable {
  @Spec CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "which command: show, check, test, pages or schema?");
  }

  /**
   * Profiles of the program and in files, and the program's under each overlay, by the name that
   * tests use: {@code gb}, {@code our-profile}, {@code gb+our-workshop}.
   */
  static Map<String, Shelf.Choice> profiles(List<Path> files, Complaints complaints) {
    Map<String, Shelf.Choice> profiles = new LinkedHashMap<>();
    new Shelf().profiles().forEach(name -> profiles.put(name, Shelf.Choice.named(name)));
    for (Path file : files) {
      GivenProfile.file(file, complaints)
          .ifPresent(choice -> profiles.putAll(choices(base(file), choice)));
    }
    return profiles;
  }

  static Map<String, Shelf.Choice> choices(String name, Shelf.Choice file) {
    byte[] bytes = file.bytes().orElseThrow();
    Map<String, Shelf.Choice> choices = new LinkedHashMap<>();
    if (Shelf.isOverlay(bytes)) {
      Map<String, byte[]> laid = Map.of(file.name(), bytes);
      new Shelf()
          .profiles()
          .forEach(p -> choices.put(p + "+" + name, Shelf.Choice.named(p).under(laid)));
    } else {
      choices.put(name, file);
    }
    return choices;
  }

  static String base(Path file) {
    String name = String.valueOf(file.getFileName());
    return name.endsWith(".yaml") ? name.substring(0, name.length() - ".yaml".length()) : name;
  }

  /** The tests that the program carries, by name. */
  static Map<String, byte[]> shelfTests() {
    Shelf shelf = new Shelf();
    Map<String, byte[]> tests = new LinkedHashMap<>();
    for (String file : shelf.tests()) {
      shelf.bytes(file).ifPresent(bytes -> tests.put("rulesets/" + file, bytes));
    }
    return tests;
  }

  /** Reads the rulesets and says what is wrong with them. */
  @Command(
      name = "check",
      mixinStandardHelpOptions = true,
      header = "Say what is wrong with the rulesets",
      description = {
        "",
        "Reads the common rules with every profile of the program, and with profiles",
        "in files: names, units, sources, tables, prerequisites, and that no check",
        "says anything but hold before something is recorded. An overlay is read on",
        "top of every profile of the program.",
        ""
      },
      footer = {
        "",
        "For example:",
        "  mainsgate rules check",
        "  mainsgate rules check our-workshop.yaml",
        "",
        "Ends with 0 if all is well, 3 if not."
      })
  static final class RulesCheck implements Callable<Integer> {
    private final App app;

    @Parameters(paramLabel = "FILE", arity = "0..*", description = "profiles and overlays")
    List<Path> files = List.of();

    RulesCheck(App app) {
      this.app = app;
    }

    @Override
    public Integer call() {
      Complaints unread = new Complaints();
      Exit exit = Exit.PASS;
      Set<String> said = new HashSet<>();
      for (Map.Entry<String, Shelf.Choice> profile : profiles(files, unread).entrySet()) {
        exit = exit.worse(check(profile.getKey(), profile.getValue(), said));
      }
      app.err().print(unread.renderAll());
      return (unread.isEmpty() ? exit : Exit.UNUSABLE).code();
    }

    /** What was said under one profile is not said again under the next. */
    private Exit check(String name, Shelf.Choice choice, Set<String> said) {
      Complaints complaints = new Complaints();
      Optional<Rules> rules = Profiles.rules(new Shelf(), choice, complaints);
      if (said.add(complaints.renderAll())) {
        app.err().print(complaints.renderAll());
      }
      rules.ifPresent(found -> app.out().println(line(name, found)));
      return rules.isPresent() ? Exit.PASS : Exit.UNUSABLE;
    }

    private static String line(String name, Rules rules) {
      return name
          + ": "
          + rules.checks().size()
          + " checks, "
          + rules.limits().size()
          + " limits, "
          + rules.tables().size()
          + " tables; edition "
          + rules.edition()
          + ", rules "
          + rules.identity().substring(0, 16);
    }
  }

  /** Runs the rulesets' tests. */
  @Command(
      name = "test",
      mixinStandardHelpOptions = true,
      header = "Run the rulesets' own tests",
      description = {
        "",
        "Runs the rulesets' own tests: evidence in, findings out. Says which outcome of",
        "which check no test has seen, and which limit can be moved by a tenth without",
        "any test noticing. A profile FILE brings its tests in FILE.tests.yaml beside it,",
        "and so does an overlay; its tests name profiles such as `gb+our-workshop`.",
        ""
      },
      footer = {
        "",
        "For example:",
        "  mainsgate rules test",
        "  mainsgate rules test our-workshop.yaml",
        "",
        "Ends with 0 if all is well, 3 if not."
      })
  static final class RulesTest implements Callable<Integer> {
    private final App app;

    @Parameters(paramLabel = "FILE", arity = "0..*", description = "profiles and overlays")
    List<Path> files = List.of();

    RulesTest(App app) {
      this.app = app;
    }

    @Override
    public Integer call() {
      Complaints complaints = new Complaints();
      Map<String, Shelf.Choice> profiles = profiles(files, complaints);
      boolean all = files.isEmpty();
      Map<String, byte[]> tests = all ? shelfTests() : new LinkedHashMap<>();
      files.forEach(file -> fileTests(file, complaints).ifPresent(t -> tests.put(beside(file), t)));
      Optional<TrialReport> report =
          complaints.isEmpty()
              ? Trial.run(new Shelf(), profiles, tests, concern(all), complaints)
              : Optional.empty();
      app.err().print(complaints.renderAll());
      report.ifPresent(found -> app.out().print(TrialText.of(found)));
      boolean good = report.map(TrialReport::isGood).orElse(false);
      return (good ? Exit.PASS : Exit.UNUSABLE).code();
    }

    /** Of a file its own checks and values; its tests may start from the records of the program. */
    private Trial.Concern concern(boolean all) {
      Set<String> paths = new LinkedHashSet<>();
      files.forEach(file -> paths.add(file.toString()));
      return all ? Trial.Concern.ALL : new Trial.Concern(shelfTests(), paths);
    }

    private static String beside(Path file) {
      return base(file) + ".tests.yaml";
    }

    static Optional<byte[]> fileTests(Path file, Complaints complaints) {
      Path tests = file.resolveSibling(beside(file));
      try {
        return Optional.of(Files.readAllBytes(tests));
      } catch (IOException e) {
        complaints.add(
            new Position(tests.toString(), 1, 1),
            "this file can't be read",
            "the tests of `" + file + "`");
        return Optional.empty();
      }
    }
  }
}
