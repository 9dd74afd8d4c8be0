package org.mainsgate.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Phrases;
import org.mainsgate.report.Release;
import org.mainsgate.report.Released;
import org.mainsgate.report.Sheet;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.seal.Verification.Difference;
import org.mainsgate.seal.Verification.Judgement;
import org.mainsgate.seal.Verification.PageSeen;
import org.mainsgate.seal.Verification.RulesSeen;
import org.mainsgate.seal.Verification.Signer;
import org.mainsgate.signature.Certified;
import org.mainsgate.source.Complaint;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;

/**
 * Judges a file that claims to be a sealed record: whether it is unchanged, who signed it, and
 * whether the verdict comes out again. It never throws on any bytes, and asks nobody.
 */
public final class Verifier {
  private final TrustList trust;
  private final LocalDate today;
  private final Pdf pdf;

  private final List<Broken> broken = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private Optional<Terms> terms = Optional.empty();
  private List<Signer> signers = List.of();
  private Optional<RulesSeen> rules = Optional.empty();
  private PageSeen page = PageSeen.UNKNOWN;
  private Optional<Desk.Judged> theirs = Optional.empty();
  private Optional<Desk.Judged> ours = Optional.empty();
  private Optional<Desk.Judged> now = Optional.empty();

  private Verifier(TrustList trust, LocalDate today, Pdf pdf) {
    this.trust = trust;
    this.today = today;
    this.pdf = pdf;
  }

  /**
   * What is to be said of a file.
   *
   * @param bytes any bytes
   * @param trust which keys and rules are known here
   * @param today the day on which it is asked whether the record is still current
   * @param pdf the press that the pages are made again with
   */
  public static Verification verify(byte[] bytes, TrustList trust, LocalDate today, Pdf pdf) {
    Verifier verifier = new Verifier(trust, today, pdf);
    SealedFile.read(bytes, verifier.broken).ifPresent(verifier::look);
    return verifier.said();
  }

  private Verification said() {
    return new Verification(
        broken,
        terms,
        theirs.map(judged -> judged.dossier().instrument().inWords()),
        signers,
        rules,
        page,
        theirs.map(Verifier::judgement),
        ours.map(Verifier::judgement),
        now.map(Verifier::judgement),
        differences(),
        theirs.map(judged -> Released.in(judged.dossier().assessment())).orElse(List.of()),
        theirs.map(judged -> judged.dossier().heads()).orElse(List.of()),
        notes);
  }

  private void look(SealedFile sealed) {
    signers = sealed.signatures().stream().flatMap(signed -> signer(signed).stream()).toList();
    times();
    SealedRecord record = SealedRecord.in(sealed);
    Complaints complaints = new Complaints();
    terms = record.terms(complaints);
    broken("record", complaints);
    terms.ifPresent(found -> look(sealed, record, found));
  }

  private Optional<Signer> signer(SealedFile.Signed signed) {
    return signed
        .judged()
        .signer()
        .map(
            certified ->
                new Signer(
                    Layout.FIELDS.get(signed.revision().index()),
                    certified,
                    signed.revision().claimed(),
                    signed.judged().stamped().map(stamp -> stamp.at() + " by " + stamp.by().name()),
                    trust.nameOf(certified.fingerprint())));
  }

  /** Times that a signer claims and that can't be. */
  private void times() {
    Instant before = Instant.MIN;
    for (Signer signer : signers) {
      LocalDate day = LocalDate.ofInstant(signer.claimed(), ZoneOffset.UTC);
      signer
          .certified()
          .complaintOn(day)
          .ifPresent(
              why ->
                  broken.add(
                      new Broken(
                          "signature",
                          "signature `"
                              + signer.field()
                              + "`: "
                              + why
                              + ", and it claims "
                              + day)));
      if (signer.claimed().isBefore(before)) {
        notes.add(
            "the signature `"
                + signer.field()
                + "` claims a time before the one that it follows: a clock was wrong");
      }
      before = signer.claimed();
    }
  }

  private void broken(String rule, Complaints complaints) {
    for (Complaint found : complaints.sorted()) {
      broken.add(new Broken(rule, "in the attached record, " + found.at() + ": " + found.what()));
    }
  }

  private void look(SealedFile sealed, SealedRecord record, Terms found) {
    named(found);
    Complaints complaints = new Complaints();
    Optional<Desk> desk = record.desk(complaints);
    theirs = desk.flatMap(open -> SealedRecord.judged(open, found, complaints));
    rules = theirs.map(judged -> seen(judged.dossier().setting().rules()));
    if (theirs.isEmpty()) {
      unread(complaints);
    } else {
      page = page(sealed, record, found, theirs.get());
    }
    ours(record, desk, found);
  }

  /** Whether the pages name who signed. */
  private void named(Terms found) {
    signers.stream()
        .findFirst()
        .map(Signer::certified)
        .filter(
            who ->
                !who.name().equals(found.signer())
                    || !who.fingerprint().spoken().equals(found.fingerprint()))
        .ifPresent(
            who ->
                broken.add(
                    new Broken(
                        "page",
                        "the pages name another signer than the one who signed: "
                            + found.signer())));
    signers.stream()
        .findFirst()
        .filter(
            who ->
                LocalDate.ofInstant(who.claimed(), ZoneOffset.UTC)
                    .isBefore(found.on().minusDays(1)))
        .ifPresent(
            who ->
                notes.add("it was signed, by the signer's clock, before the day of its verdict"));
  }

  /**
   * The record can't be judged by its own rules: they may be newer than this program, which is no
   * fault of the file.
   */
  private void unread(Complaints complaints) {
    List<Complaint> all = complaints.sorted();
    boolean newer = all.stream().allMatch(found -> found.at().file().startsWith("rulesets/"));
    if (newer && !all.isEmpty()) {
      rules =
          Optional.of(new RulesSeen("", "rules that this program can't read", Optional.empty()));
      notes.add(
          "its rules can't be read by this release, "
              + Release.VERSION
              + ": "
              + all.get(0).at()
              + ": "
              + all.get(0).what());
    } else {
      broken("record", complaints);
    }
  }

  private RulesSeen seen(Rules used) {
    Optional<String> shipped =
        Optional.ofNullable(new Shelf().identities().get(used.identity()))
            .map(name -> "carried by this program: " + name);
    return new RulesSeen(
        used.identity(),
        used.profile() + ", edition " + used.edition() + overlays(used),
        shipped.or(() -> trust.reasonFor(used.identity())));
  }

  private static String overlays(Rules used) {
    List<String> names = used.overlays().stream().map(overlay -> overlay.name()).toList();
    return names.isEmpty() ? "" : ", under local rules " + String.join(", ", names);
  }

  private PageSeen page(SealedFile sealed, SealedRecord record, Terms found, Desk.Judged judged) {
    byte[] findings = sealed.files().getOrDefault(SealedRecord.FINDINGS, new byte[0]);
    String again = SealedRecord.findings(judged);
    boolean sameRelease = found.program().equals(Release.VERSION);
    try {
      if (sameRelease) {
        byte[] made = record.unsigned(judged, found, pdf);
        if (!Arrays.equals(made, sealed.unsigned()) && !SameObjects.in(made, sealed.unsigned())) {
          broken.add(
              new Broken("page", "the pages are not those that follow from the attached record"));
          return PageSeen.DIFFERS;
        }
        return PageSeen.SAME;
      }
    } catch (IOException | IllegalArgumentException unprintable) {
      broken.add(
          new Broken("page", "the attached record makes no pages: " + unprintable.getMessage()));
      return PageSeen.DIFFERS;
    }
    return otherRelease(sealed, record.sheet(judged, found), findings, again);
  }

  private PageSeen otherRelease(SealedFile sealed, Sheet sheet, byte[] findings, String again) {
    boolean same =
        FindingsFile.outcomes(findings)
            .equals(FindingsFile.outcomes(again.getBytes(StandardCharsets.UTF_8)));
    List<String> forbidden = Forbidden.in(sealed.unsigned());
    forbidden.forEach(what -> broken.add(new Broken("content", "the pages hold " + what)));
    boolean says = pdf.says(sealed.unsigned(), sheet);
    if (!same || !says) {
      broken.add(
          new Broken(
              "page",
              same
                  ? "the words on the pages are not those of the attached record"
                  : "the attached findings are not those that follow from the attached record"));
      return PageSeen.DIFFERS;
    }
    return PageSeen.OTHER_RELEASE;
  }

  /**
   * The same evidence under the newest rules of this program, where there is a profile of the name.
   */
  private void ours(SealedRecord record, Optional<Desk> theirDesk, Terms found) {
    Complaints complaints = new Complaints();
    Optional<Text> profile =
        BenchFolder.open(record.pack(), complaints).flatMap(BenchFolder::profile);
    Shelf shelf = new Shelf();
    if (profile.isPresent() && shelf.profiles().contains(profile.get().value())) {
      Shelf.Choice choice = Shelf.Choice.named(profile.get().value());
      Optional<Desk> desk =
          theirDesk
              .filter(open -> open.rules().identity().equals(shelf.identity(choice)))
              .or(() -> record.desk(shelf, choice, complaints));
      ours = desk.flatMap(open -> SealedRecord.judged(open, found, complaints));
      now = desk.flatMap(open -> SealedRecord.judged(open, found.on(today), new Complaints()));
      if (ours.isEmpty()) {
        notes.add("the record can't be judged under the rules of this program");
      }
    } else {
      notes.add("this program has no rules of the name that the record's bench works under");
    }
  }

  private static Judgement judgement(Desk.Judged judged) {
    Rules used = judged.dossier().setting().rules();
    return new Judgement(
        judged.dossier().assessment().verdict(),
        judged.dossier().assessment().stage().title(),
        judged.dossier().assessment().stage().uses(),
        used.profile() + ", edition " + used.edition() + overlays(used));
  }

  private List<Difference> differences() {
    if (theirs.isEmpty() || ours.isEmpty()) {
      return List.of();
    }
    Map<String, Finding> their = byName(theirs.get());
    Map<String, Finding> our = byName(ours.get());
    List<Difference> differences = new ArrayList<>();
    List<String> all = new ArrayList<>(their.keySet());
    our.keySet().stream().filter(name -> !their.containsKey(name)).forEach(all::add);
    for (String name : all) {
      Optional<Finding> one = Optional.ofNullable(their.get(name));
      Optional<Finding> other = Optional.ofNullable(our.get(name));
      Optional<Outcome> says = one.map(Finding::outcome);
      Optional<Outcome> said = other.map(Finding::outcome);
      if (!says.equals(said)) {
        differences.add(
            new Difference(Phrases.title(one.or(() -> other).orElseThrow()), says, said));
      }
    }
    return differences;
  }

  private static Map<String, Finding> byName(Desk.Judged judged) {
    Map<String, Finding> found = new LinkedHashMap<>();
    judged
        .dossier()
        .assessment()
        .findings()
        .forEach(finding -> found.put(finding.check().id() + " " + finding.thing(), finding));
    return found;
  }

  /** What a certificate says, for whoever wants to know the key. */
  public static Optional<Certified> signerOf(byte[] bytes) {
    List<Broken> broken = new ArrayList<>();
    return SealedFile.read(bytes, broken)
        .filter(found -> broken.isEmpty())
        .flatMap(found -> found.signatures().stream().findFirst())
        .flatMap(signed -> signed.judged().signer());
  }
}
