package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.zone.ZoneRulesProvider;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.mainsgate.agenda.BenchDraft;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.NearestName;
import org.mainsgate.source.Position;
import org.mainsgate.store.BenchFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a new bench. */
@Command(
    name = "start",
    mixinStandardHelpOptions = true,
    header = "Make a new bench",
    description = {
      "",
      "Makes a folder with `bench.yaml` to fill in, `.gitattributes` and a folder for",
      "the instruments. Nothing is made up: what you do not say stands there as a",
      "comment, and `check` says what is missing. No file is ever written over.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate start my-bench --zone Europe/London --profile gb --by KC",
      "",
      "Ends with 0 if it was made, 3 if not."
    })
final class StartCommand implements Callable<Integer> {
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,31}");
  private static final Pattern INITIALS = Pattern.compile("[A-Za-z0-9]{1,8}");
  private static final int LONGEST = 200;

  private final App app;

  @Parameters(index = "0", paramLabel = "BENCH", description = "the new bench's folder")
  Path bench;

  @Option(names = "--title", paramLabel = "TEXT", description = "what this place is, in words")
  @Nullable String title;

  @Option(names = "--zone", paramLabel = "ZONE", description = "such as Europe/London")
  @Nullable String zone;

  @Option(names = "--profile", paramLabel = "NAME", description = "the rules to work under")
  @Nullable String profile;

  @Option(names = "--by", paramLabel = "INITIALS", description = "who works here")
  @Nullable String by;

  @Option(names = "--name", paramLabel = "TEXT", description = "that person, as to be printed")
  @Nullable String name;

  @Option(
      names = "--competence",
      paramLabel = "TEXT",
      description = "that person's competence, in own words")
  @Nullable String competence;

  StartCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Complaints complaints = new Complaints();
    Shelf shelf = new Shelf();
    options(shelf.profiles(), complaints);
    String rules = profile == null ? shelf.profiles().get(0) : profile;
    Optional<Rules> words =
        complaints.isEmpty() ? shelf.open(Shelf.Choice.named(rules), complaints) : Optional.empty();
    boolean made =
        words.isPresent()
            && BenchFolder.start(
                bench,
                draft().text(words.get(), shelf.profiles()),
                BenchDraft.ATTRIBUTES,
                complaints);
    app.err().print(complaints.renderAll());
    if (!made) {
      return Exit.UNUSABLE.code();
    }
    app.out().println("made: " + bench.resolve("bench.yaml"));
    app.out().println("Fill it in, then:  mainsgate check " + bench);
    return Exit.PASS.code();
  }

  private BenchDraft draft() {
    Path last = bench.toAbsolutePath().normalize().getFileName();
    String folder = last == null ? "" : last.toString();
    return new BenchDraft(
        NAME.matcher(folder).matches() ? folder : "bench",
        Optional.ofNullable(title),
        Optional.ofNullable(zone),
        Optional.ofNullable(profile),
        Optional.ofNullable(by),
        Optional.ofNullable(name),
        Optional.ofNullable(competence));
  }

  private void options(List<String> profiles, Complaints complaints) {
    Set<String> zones = ZoneRulesProvider.getAvailableZoneIds();
    if (zone != null && !zones.contains(zone)) {
      complaints.add(
          at("--zone"),
          "unknown time zone `" + zone + "`",
          "an IANA zone such as `Europe/London`",
          NearestName.of(zone, zones.stream().sorted().toList()).orElse(""));
    }
    if (profile != null && !profiles.contains(profile)) {
      complaints.addUnknown(at("--profile"), "profile", profile, profiles);
    }
    if (by != null && !INITIALS.matcher(by).matches()) {
      complaints.add(at("--by"), "`" + by + "` can't be initials", "1 to 8 letters or digits");
    }
    if (by == null && (name != null || competence != null)) {
      complaints.add(at("--name"), "a person without initials", "`--by` with them");
    }
    words("--title", title, complaints);
    words("--name", name, complaints);
    words("--competence", competence, complaints);
  }

  private static void words(String option, @Nullable String text, Complaints complaints) {
    if (text != null
        && (text.isBlank()
            || text.length() > LONGEST
            || text.chars().anyMatch(Character::isISOControl))) {
      complaints.add(
          at(option), "this text can't stand in a file", "1 to 200 characters on a line");
    }
  }

  private static Position at(String option) {
    return new Position(option, 1, 1);
  }
}
