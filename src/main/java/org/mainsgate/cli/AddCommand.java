package org.mainsgate.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.mainsgate.agenda.InstrumentDraft;
import org.mainsgate.agenda.VisitDraft;
import org.mainsgate.evidence.Visit;
import org.mainsgate.report.Outlook;
import org.mainsgate.report.Setting;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes the files for an instrument to fill in. */
@Command(
    name = "add",
    mixinStandardHelpOptions = true,
    header = "Make the files of an instrument to fill in",
    description = {
      "",
      "For a tag that is new, makes `instrument.yaml`, in which you list what is on the",
      "instrument. For one that is there, makes a draft of a visit with exactly what is",
      "still open, each a line to take the `#` away from and to fill in.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate add my-bench NL-06 --what \"signal generator\"",
      "  mainsgate add my-bench NL-06 --by KC",
      "",
      "Ends with 0 if a file was made or nothing is open, 3 if not: where there is a",
      "draft already, it is left as it is."
    })
final class AddCommand implements Callable<Integer> {
  private static final String UNNAMED = "not named yet";
  private static final String LETTERS = "0123456789abcdefghijklmnopqrstuvwxyz";
  private static final int FOUR = 4;
  private static final int LONGEST = 200;

  private final App app;

  @Parameters(index = "0", paramLabel = "BENCH", description = "the bench's folder")
  Path bench;

  @Parameters(index = "1", paramLabel = "TAG", description = "the instrument")
  String tag;

  @Option(names = "--what", paramLabel = "TEXT", description = "what a new instrument is, in words")
  @Nullable String what;

  @Option(
      names = "--by",
      paramLabel = "INITIALS",
      description = "whose visit it is; needed where the bench has several people")
  @Nullable String by;

  @Mixin StageAndDay meant = new StageAndDay();

  AddCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Optional<OpenBench> desk = OpenBench.open(app, bench, null);
    if (desk.isEmpty()) {
      return Exit.UNUSABLE.code();
    }
    return (desk.get().folder().has(tag) ? visit(desk.get()) : instrument(desk.get())).code();
  }

  private Exit instrument(OpenBench desk) throws IOException {
    Complaints complaints = new Complaints();
    String named = what == null ? UNNAMED : what;
    if (named.isBlank()
        || named.length() > LONGEST
        || named.chars().anyMatch(Character::isISOControl)) {
      complaints.add(
          at("--what"), "this text can't stand in a file", "1 to 200 characters on a line");
    }
    Optional<String> made = Optional.empty();
    if (complaints.isEmpty()) {
      String text = InstrumentDraft.of(desk.rules().vocabulary(), tag, uid(), named);
      made = desk.folder().add(tag, text, complaints);
    }
    app.err().print(complaints.renderAll());
    made.ifPresent(
        path -> {
          app.out().println("made: " + path);
          app.out().println("List in it what is on the instrument; then the same command again");
          app.out().println("makes a draft of a visit.");
        });
    return made.isPresent() ? Exit.PASS : Exit.UNUSABLE;
  }

  private Exit visit(OpenBench desk) throws IOException {
    Optional<String> who = person(desk);
    Optional<Outlook> outlook =
        who.flatMap(initials -> Judging.stage(app, desk, meant.stage))
            .map(found -> new Setting(desk.bench(), desk.rules(), false, found, desk.day(meant.on)))
            .flatMap(setting -> desk.outlook(tag, setting));
    if (who.isEmpty() || outlook.isEmpty()) {
      return Exit.UNUSABLE;
    }
    Optional<Visit> draft =
        outlook.get().dossier().visits().stream()
            .filter(visit -> visit.closing().isEmpty())
            .findFirst();
    if (draft.isPresent()) {
      app.err().println(tag + ": there is a draft already, and it is left as it is");
      app.err().println("  " + draft.get().at().file());
      return Exit.UNUSABLE;
    }
    if (outlook.get().agenda().isEmpty()) {
      app.out().println(tag + ": nothing is open, so no draft was made");
      return Exit.PASS;
    }
    return draft(desk, outlook.get(), who.get());
  }

  private Exit draft(OpenBench desk, Outlook outlook, String who) throws IOException {
    LocalDate day = outlook.dossier().setting().on();
    String text = VisitDraft.of(desk.rules(), outlook.evidence(), outlook.agenda(), tag, day, who);
    Complaints complaints = new Complaints();
    Optional<String> made =
        desk.folder().draft(tag, day + "-" + who + "-" + four(), text, complaints);
    app.err().print(complaints.renderAll());
    made.ifPresent(path -> app.out().println("made: " + path));
    return made.isPresent() ? Exit.PASS : Exit.UNUSABLE;
  }

  /** Whose visit it is; empty after a complaint. */
  private Optional<String> person(OpenBench desk) {
    List<String> people = List.copyOf(desk.bench().people().keySet());
    if (by == null && people.size() == 1) {
      return Optional.of(people.get(0));
    }
    Complaints complaints = new Complaints();
    if (people.isEmpty()) {
      complaints.add(
          at("bench.yaml"), "nobody is among the `people` of the bench", "whose visit it is");
    } else if (by == null) {
      complaints.add(at("--by"), "several people work here", Complaints.oneOf(people));
    } else if (!people.contains(by)) {
      complaints.addUnknown(at("--by"), "person", by, people);
    }
    app.err().print(complaints.renderAll());
    return complaints.isEmpty() ? Optional.ofNullable(by) : Optional.empty();
  }

  private String four() {
    StringBuilder four = new StringBuilder();
    for (int i = 0; i < FOUR; i++) {
      four.append(LETTERS.charAt(app.chance().nextInt(LETTERS.length())));
    }
    return four.toString();
  }

  /** A random identity of version 4, after RFC 9562 section 5.4. */
  private String uid() {
    byte[] bytes = new byte[16];
    app.chance().nextBytes(bytes);
    bytes[6] = (byte) ((bytes[6] & 0x0f) | 0x40);
    bytes[8] = (byte) ((bytes[8] & 0x3f) | 0x80);
    ByteBuffer halves = ByteBuffer.wrap(bytes);
    return new UUID(halves.getLong(), halves.getLong()).toString();
  }

  private static Position at(String place) {
    return new Position(place, 1, 1);
  }
}
