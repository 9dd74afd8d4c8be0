package org.mainsgate.seal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mainsgate.desk.Desk;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Handover;
import org.mainsgate.report.TagSheet;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.signature.Fingerprint;
import org.mainsgate.source.Complaints;
import org.mainsgate.verdict.Verdict;

/** What a tag says of a sealed record. */
public final class Tags {
  private static final int GROUPS = 4;

  private Tags() {}

  /**
   * The tag of a sealed record.
   *
   * @param bytes the file
   * @param broken where it is told what is wrong; then there is no tag
   */
  public static Optional<TagSheet.Tag> of(byte[] bytes, List<Broken> broken) {
    Optional<SealedFile> sealed = SealedFile.read(bytes, broken);
    Complaints complaints = new Complaints();
    Optional<TagSheet.Tag> tag =
        sealed.flatMap(
            file -> {
              SealedRecord record = SealedRecord.in(file);
              return record
                  .terms(complaints)
                  .flatMap(
                      terms ->
                          record
                              .judged(terms, complaints)
                              .map(judged -> tag(file, record, terms, judged)));
            });
    complaints
        .sorted()
        .forEach(found -> broken.add(new Broken("record", found.at() + ": " + found.what())));
    return broken.isEmpty() ? tag : Optional.empty();
  }

  private static TagSheet.Tag tag(
      SealedFile file, SealedRecord record, Terms terms, Desk.Judged judged) {
    Dossier dossier = judged.dossier();
    boolean passes = dossier.assessment().verdict() == Verdict.PASS;
    String stage = dossier.assessment().stage().title();
    String digest = Fingerprint.of(file.bytes()).hex();
    String key = signer(file);
    Handover handover = record.handover(judged, terms);
    return new TagSheet.Tag(
        terms.tag(),
        what(dossier.instrument()),
        passes ? headline(dossier, handover) : Handover.NOT_FOR_CONNECTION,
        passes,
        stage
            + ": "
            + dossier.assessment().verdict().word()
            + ", "
            + terms.on()
            + ", profile "
            + dossier.setting().rules().profile(),
        terms.said(Terms.Saying.NEXT).orElse(""),
        String.valueOf(terms.number()),
        terms.fingerprint(),
        groups(digest),
        handover.inShort(),
        "mainsgate 1 " + terms.tag() + " " + terms.number() + " " + digest + " " + key);
  }

  /** Only a stage that speaks of use says on a tag that it was passed. */
  private static String headline(Dossier dossier, Handover handover) {
    Stage stage = dossier.assessment().stage();
    String limited = handover.isRestricted() ? ", restricted" : "";
    return (stage.uses() ? stage.title() + ": pass" : Handover.FIRST_CONNECTION_ONLY) + limited;
  }

  private static String signer(SealedFile file) {
    return file.signatures().stream()
        .findFirst()
        .flatMap(signed -> signed.judged().signer())
        .map(certified -> certified.fingerprint().hex())
        .orElse("");
  }

  private static String what(Instrument instrument) {
    return instrument.serial().isEmpty()
        ? instrument.what()
        : instrument.what() + ", serial number " + instrument.serial();
  }

  /** The start of a hash, in groups that can be read out. */
  private static String groups(String hex) {
    List<String> groups = new ArrayList<>();
    for (int i = 0; i < GROUPS; i++) {
      groups.add(hex.substring(4 * i, 4 * i + 4));
    }
    return String.join(" ", groups);
  }
}
