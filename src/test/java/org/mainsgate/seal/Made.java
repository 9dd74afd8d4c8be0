package org.mainsgate.seal;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.signature.Identity;
import org.mainsgate.signature.Signing;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.store.Pack;

/**
 * A sealed record of an instrument of the demonstration bench, and the keys that it is made with.
 */
final class Made {
  private final SealedRecord record;
  private final Terms terms;
  private final Desk.Judged judged;
  private final byte[] unsigned;

  private Made(SealedRecord record, Terms terms, Desk.Judged judged, byte[] unsigned) {
    this.record = record;
    this.terms = terms;
    this.judged = judged;
    this.unsigned = unsigned;
  }

  SealedRecord record() {
    return record;
  }

  Terms terms() {
    return terms;
  }

  Desk.Judged judged() {
    return judged;
  }

  byte[] unsigned() {
    return unsigned.clone();
  }

  static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  static final Instant NOW = Instant.parse("2026-11-25T18:00:00Z");
  static final Identity RESTORER =
      Identity.create("the restorer", Identity.Kind.EC_P256, DAY, new SecureRandom());
  static final Identity KEEPER =
      Identity.create(
          "the keeper of the collection", Identity.Kind.RSA_3072, DAY, new SecureRandom());
  static final Pdf PDF = new Pdf();

  static Made of(String tag) throws IOException {
    Complaints complaints = new Complaints();
    BenchFolder folder =
        BenchFolder.open(Path.of("demo-data/north-light"), complaints).orElseThrow();
    Pack pack = folder.pack(tag, complaints);
    Map<String, byte[]> rules = new Shelf().files(Shelf.Choice.named("gb"));
    Terms terms =
        new Terms(
            "0.1.0",
            tag,
            "cold",
            DAY,
            1,
            Terms.Purpose.RECORD,
            "the restorer",
            RESTORER.certified().fingerprint().spoken(),
            Optional.empty(),
            Map.of(),
            Map.of(),
            Optional.empty());
    SealedRecord record = SealedRecord.of(pack, rules, terms);
    Desk.Judged judged =
        record
            .judged(terms, complaints)
            .orElseThrow(() -> new AssertionError(complaints.renderAll()));
    byte[] u = record.unsigned(judged, terms, PDF);
    java.nio.file.Files.write(Path.of("target/u.pdf"), u);
    return new Made(record, terms, judged, u);
  }

  Signing signing() {
    return new Signing(RESTORER, Optional.empty(), new SecureRandom());
  }

  Signing other() {
    return new Signing(KEEPER, Optional.empty(), new SecureRandom());
  }

  byte[] sealed() throws IOException {
    return Seal.certify(unsigned, signing(), NOW);
  }
}
