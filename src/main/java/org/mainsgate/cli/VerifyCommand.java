package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Setting;
import org.mainsgate.report.Terms;
import org.mainsgate.seal.SealedFile;
import org.mainsgate.seal.TrustList;
import org.mainsgate.seal.Verification;
import org.mainsgate.seal.VerificationText;
import org.mainsgate.seal.Verifier;
import org.mainsgate.source.Complaints;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Judges a sealed record that somebody handed over. */
@Command(
    name = "verify",
    mixinStandardHelpOptions = true,
    header = "Check a sealed record, and judge it again",
    description = {
      "",
      "Says of a file apart: is it unchanged; who signed, and is that key known; are",
      "the rules known; do the pages say what the record says; does the verdict come",
      "out again, under its own rules and under ours; how many have accepted it; is",
      "there anything later. It asks nobody, and needs no set-up.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate verify NL-01.pdf",
      "",
      "Ends with 30 if it was changed or never sealed, 32 if nobody here knows the",
      "rules, 31 if nobody here knows the key, 20 a fail, 10 a hold, 0 a pass; 3 if the",
      "file can't be read. The first that fits counts."
    })
final class VerifyCommand implements Callable<Integer> {
  private final App app;

  @Parameters(index = "0", paramLabel = "FILE", description = "the sealed record")
  Path file;

  @Option(names = "--json", description = "print the answers as JSON, for other programs")
  boolean json;

  @Option(
      names = "--extract",
      paramLabel = "FOLDER",
      description = "write the attached record into a new folder")
  @Nullable Path extract;

  @Option(
      names = "--bench",
      paramLabel = "BENCH",
      description = "the bench that it is of, to see whether there are later visits")
  @Nullable Path bench;

  VerifyCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    byte[] bytes = BoundedFile.read(file, SealedFile.MOST_BYTES);
    Home home = Home.of(app);
    Complaints complaints = new Complaints();
    Optional<TrustList> trusted = home.trusted(complaints);
    app.err().print(complaints.renderAll());
    Verification found =
        Verifier.verify(bytes, trusted.orElse(TrustList.NONE), app.today(), new Pdf());
    Later later = later(found);
    Exit exit = exit(found).worse(later.exit());
    if (json) {
      app.out().print(VerificationText.json(found, later.said(), exit.code()));
    } else {
      app.out().print(VerificationText.screen(file.toString(), found, later.said()));
    }
    if (extract != null) {
      exit = exit.worse(extracted(bytes, extract));
    }
    return exit.code();
  }

  /** How a verification ends. */
  static Exit exit(Verification found) {
    if (!found.broken().isEmpty() || found.terms().isEmpty()) {
      return Exit.ALTERED;
    }
    Exit exit = found.verdict().map(Exit::of).orElse(Exit.HOLD);
    if (!found.isSignerKnown()) {
      exit = exit.worse(Exit.SIGNER_UNKNOWN);
    }
    boolean known = found.rules().flatMap(Verification.RulesSeen::known).isPresent();
    return known ? exit : exit.worse(Exit.RULES_UNKNOWN);
  }

  /**
   * What the bench says that the file does not know.
   *
   * @param exit a hold where the record is not the last word of that bench
   */
  private record Later(List<String> said, Exit exit) {}

  private Later later(Verification found) {
    if (bench == null || found.terms().isEmpty()) {
      return new Later(List.of(), Exit.PASS);
    }
    Terms terms = found.terms().get();
    Optional<OpenBench> open = OpenBench.open(app, bench, null);
    if (open.isEmpty()) {
      return new Later(List.of("the bench can't be read"), Exit.UNUSABLE);
    }
    OpenBench here = open.get();
    Setting setting =
        new Setting(here.bench(), here.rules(), false, here.rules().firstStage(), here.day(null));
    List<Desk.Sighting> sightings = List.of(here.desk().sight(terms.tag(), setting));
    Set<String> heads = new HashSet<>();
    Set<String> all = new HashSet<>();
    sightings.forEach(
        sighting -> {
          heads.addAll(sighting.stored().heads());
          sighting
              .judged()
              .ifPresent(
                  judged ->
                      judged
                          .record()
                          .visits()
                          .forEach(
                              visit ->
                                  visit.closing().ifPresent(closing -> all.add(closing.hash()))));
        });
    if (!all.containsAll(found.heads())) {
      return new Later(
          List.of(
              "the bench does not know all visits of the record: one of them was changed or taken"
                  + " away, or it is another bench"),
          Exit.HOLD);
    } else if (!heads.equals(new HashSet<>(found.heads()))) {
      return new Later(
          List.of(
              "there are later visits of " + terms.tag() + " on the bench; ask for a new record"),
          Exit.HOLD);
    }
    return new Later(List.of("the bench has no later visit"), Exit.PASS);
  }

  private Exit extracted(byte[] bytes, Path folder) throws IOException {
    Optional<SealedFile> sealed = SealedFile.read(bytes, new ArrayList<>());
    if (sealed.isEmpty()) {
      app.err().println("there is nothing to take out");
      return Exit.UNUSABLE;
    }
    if (Files.exists(folder)) {
      app.err()
          .println("`" + folder + "` is there already; nothing is written over, give another name");
      return Exit.UNUSABLE;
    }
    Extracted.into(folder, sealed.get().files());
    app.out().println("taken out: " + sealed.get().files().size() + " files in " + folder);
    return Exit.PASS;
  }
}
