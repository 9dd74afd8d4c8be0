package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.desk.Desk;
import org.mainsgate.evidence.Visit;
import org.mainsgate.report.Handover;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Picture;
import org.mainsgate.report.Release;
import org.mainsgate.report.Released;
import org.mainsgate.report.Screen;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.seal.Seal;
import org.mainsgate.seal.SealedRecord;
import org.mainsgate.signature.Fingerprint;
import org.mainsgate.signature.Signing;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.store.NewFile;
import org.mainsgate.store.NewFolder;
import org.mainsgate.store.Pack;
import org.mainsgate.store.RecordNumber;
import org.mainsgate.store.StoredFile;
import org.mainsgate.verdict.Verdict;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What `seal` and `handover` share: a record is packed, judged, printed, signed and kept. */
final class Sealing {
  /**
   * Until the next look, where nobody says otherwise: the custom of the trade, without a source.
   */
  @Parameters(index = "0", paramLabel = "BENCH", description = "the bench's folder")
  Path bench;

  @Parameters(index = "1", paramLabel = "TAG", description = "the instrument")
  String tag;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      required = true,
      description = "the new PDF; nothing is ever written over")
  Path out;

  @Mixin StageAndDay meant = new StageAndDay();

  @Mixin OwnKey key = new OwnKey();

  /**
   * What a record is made out for, as far as a command knows it.
   *
   * @param purpose what for
   * @param to who gets it
   * @param said what else was said
   * @param wentOut the record that it went out with
   */
  record Asked(
      Terms.Purpose purpose,
      Optional<String> to,
      Map<Terms.Saying, String> said,
      Optional<Terms.WentOut> wentOut) {}

  /** Seals; what is wrong goes to the error stream, and then nothing is written. */
  Exit seal(App app, Asked asked) throws IOException {
    Optional<OpenBench> open = OpenBench.open(app, bench, null);
    Optional<Stage> stage = open.flatMap(found -> Judging.stage(app, found, meant.stage));
    if (stage.isEmpty() || !canBeWritten(app)) {
      return Exit.UNUSABLE;
    }
    Optional<Signing> signing = key.open(app);
    return signing.isEmpty()
        ? Exit.UNUSABLE
        : seal(app, open.orElseThrow(), stage.get(), signing.get(), asked);
  }

  private boolean canBeWritten(App app) {
    if (Files.exists(out)) {
      app.err()
          .println("`" + out + "` is there already; nothing is written over, give another name");
      return false;
    }
    return true;
  }

  private Exit seal(App app, OpenBench open, Stage stage, Signing signing, Asked asked)
      throws IOException {
    BenchFolder folder = open.folder();
    Complaints complaints = new Complaints();
    if (!folder.has(tag)) {
      folder
          .instrument(tag, open.bench(), open.records())
          .complaints()
          .sorted()
          .forEach(
              found -> complaints.add(found.at(), found.what(), found.right(), found.nearest()));
      app.err().print(complaints.renderAll());
      return Exit.UNUSABLE;
    }
    if (hasDraft(app, open)) {
      return Exit.UNUSABLE;
    }
    // The number stands in what is signed, so it is taken before, and given back if nothing is.
    try (RecordNumber number = folder.nextRecord(tag)) {
      return seal(app, open, stage, signing, asked, number);
    }
  }

  private Exit seal(
      App app, OpenBench open, Stage stage, Signing signing, Asked asked, RecordNumber number)
      throws IOException {
    BenchFolder folder = open.folder();
    LocalDate day = open.day(meant.on);
    Complaints complaints = new Complaints();
    Map<String, String> pictures = new LinkedHashMap<>();
    Pack pack = withPictures(folder, folder.pack(tag, complaints), open, pictures);
    Terms terms =
        new Terms(
            Release.VERSION,
            tag,
            stage.id(),
            day,
            number.number(),
            asked.purpose(),
            signing.certified().name(),
            signing.certified().fingerprint().spoken(),
            asked.to(),
            asked.said(),
            pictures,
            asked.wentOut());
    SealedRecord record = SealedRecord.of(pack, rules(open), terms);
    Optional<Desk.Judged> judged = record.judged(terms, complaints);
    app.err().print(complaints.renderAll());
    if (judged.isEmpty()) {
      return Exit.UNUSABLE;
    }
    boolean uses = stage.uses() && judged.get().dossier().assessment().verdict() == Verdict.PASS;
    if (uses && terms.said(Terms.Saying.NEXT).isEmpty()) {
      terms = terms.saying(Terms.Saying.NEXT, day.plusMonths(Handover.MONTHS).toString());
      record = SealedRecord.of(pack, rules(open), terms);
    }
    Optional<byte[]> sealed = sealed(app, open, record, terms, judged.get(), signing);
    return sealed.isEmpty()
        ? Exit.UNUSABLE
        : written(app, number, terms, judged.get(), sealed.get());
  }

  /** What stands in a draft would not be judged: it could be what takes the pass away. */
  private boolean hasDraft(App app, OpenBench open) {
    List<Visit> drafts =
        open.folder().instrument(tag, open.bench(), open.records()).record().stream()
            .flatMap(record -> record.visits().stream())
            .filter(visit -> visit.closing().isEmpty())
            .toList();
    drafts.forEach(
        draft ->
            app.complain(
                tag
                    + ": the visit `"
                    + draft.id()
                    + "` is still a draft, and only closed visits are"
                    + " sealed; close it first: mainsgate close BENCH "
                    + tag));
    return !drafts.isEmpty();
  }

  /** The pictures as they are printed, without what a camera wrote beside them. */
  private Pack withPictures(
      BenchFolder folder, Pack pack, OpenBench open, Map<String, String> pictures) {
    Map<String, byte[]> files = new LinkedHashMap<>(pack.files());
    folder.instrument(tag, open.bench(), open.records()).record().stream()
        .flatMap(record -> record.instrument().photos().stream())
        .forEach(
            photo -> {
              String path = BenchFolder.photo(tag, photo);
              Optional<StoredFile> file = folder.file(path, new Complaints());
              Optional<Picture> picture = file.flatMap(found -> Picture.of(found.bytes()));
              if (picture.isEmpty()) {
                open.app().err().println("note: no picture `" + photo + "` that can be read");
              } else {
                files.put(path, picture.get().jpeg());
                pictures.put(path, file.orElseThrow().sha256());
              }
            });
    return new Pack(files);
  }

  /** The files of the rules that the program carries; those of the bench are in the pack. */
  private static Map<String, byte[]> rules(OpenBench open) {
    String profile = open.rules().profile();
    Shelf.Choice choice =
        open.rules().fromFile()
            ? Shelf.Choice.file(profile, new byte[0])
            : Shelf.Choice.named(profile);
    return new Shelf().files(choice);
  }

  private Optional<byte[]> sealed(
      App app,
      OpenBench open,
      SealedRecord record,
      Terms terms,
      Desk.Judged judged,
      Signing signing)
      throws IOException {
    List<String> wrong = record.handover(judged, terms).complaints();
    Optional<String> clock = clock(app, open, judged);
    Pdf pdf = new Pdf();
    List<String> unprintable = pdf.complaints(record.sheet(judged, terms));
    wrong.forEach(why -> app.complain(tag + ": " + why));
    clock.ifPresent(app::complain);
    unprintable.forEach(why -> app.complain(tag + ": " + why));
    if (!wrong.isEmpty() || clock.isPresent() || !unprintable.isEmpty()) {
      app.err().println("nothing was sealed");
      return Optional.empty();
    }
    Instant now = app.clock().instant();
    return Optional.of(Seal.certify(record.unsigned(judged, terms, pdf), signing, now));
  }

  /** A clock that is before what was recorded is wrong, and so would be the time of the seal. */
  private static Optional<String> clock(App app, OpenBench open, Desk.Judged judged) {
    LocalDate today = LocalDate.now(app.clock().withZone(open.bench().zone()));
    LocalDate day = judged.dossier().setting().on();
    Optional<String> ahead =
        Optional.of(
                "`--on "
                    + day
                    + "` is after today, "
                    + today
                    + ": a record is of a day that has been")
            .filter(why -> day.isAfter(today));
    return judged.record().visits().stream()
        .map(Visit::date)
        .filter(date -> date.isAfter(today))
        .findFirst()
        .map(
            date ->
                "the clock of this machine says "
                    + today
                    + ", and a visit has the date "
                    + date
                    + ": set the clock first")
        .or(() -> ahead);
  }

  private Exit written(App app, RecordNumber number, Terms terms, Desk.Judged judged, byte[] sealed)
      throws IOException {
    String name =
        String.format(
            Locale.ROOT, "%04d_%s_%s.pdf", terms.number(), terms.on(), terms.purpose().word());
    Complaints complaints = new Complaints();
    Optional<String> kept = number.keep(name, sealed, complaints);
    app.err().print(complaints.renderAll());
    if (kept.isEmpty()) {
      return Exit.UNUSABLE;
    }
    try {
      NewFolder.make(NewFolder.around(out));
      NewFile.write(out, sealed);
    } catch (NewFile.Unforced unsure) {
      app.complain(String.valueOf(unsure.getMessage()));
      app.complain("The record is sealed all the same, and kept in the bench: " + kept.get());
      return Exit.UNUSABLE;
    } catch (IOException full) {
      app.complain("`" + out + "` could not be written: " + full.getMessage());
      app.complain("The record is sealed all the same, and kept in the bench: " + kept.get());
      return Exit.UNUSABLE;
    }
    Screen screen = new Screen(app.palette());
    app.out()
        .print(
            screen.summary(
                judged.dossier().setting(),
                List.of(Screen.Verdicted.of(judged.dossier())),
                List.of()));
    List<Released> released = Released.in(judged.dossier().assessment());
    Released.limits(released).forEach(limit -> app.say("RESTRICTED. Only: " + limit));
    released.forEach(one -> app.say("by judgement: " + one.words()));
    app.out().println();
    app.out().println("sealed: " + out);
    app.out().println("  record " + terms.number() + " of " + tag + ", " + terms.purpose().words());
    app.out().println("  signed by " + terms.signer());
    app.out().println("  key " + terms.fingerprint());
    app.out().println("  SHA-256 " + Fingerprint.of(sealed).hex());
    judged.dossier().heads().forEach(head -> app.out().println("  latest visit " + head));
    app.out().println("  kept: " + kept.get());
    return Exit.of(judged.dossier().assessment().verdict());
  }

  /** The terms of a file that an instrument went out with, for a record of its return. */
  static Optional<Terms.WentOut> wentOut(Terms terms, List<String> heads, @Nullable String tag) {
    return terms.tag().equals(tag)
        ? Optional.of(new Terms.WentOut(terms.number(), terms.on(), heads))
        : Optional.empty();
  }
}
