package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.SecureRandom;
import java.security.cert.Certificate;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
public final class Made {
  private final SealedRecord record;
  private final Terms terms;
  private final Desk.Judged judged;
  private final byte[] unsigned;
  private final Identity signer;

  private Made(
      SealedRecord record, Terms terms, Desk.Judged judged, byte[] unsigned, Identity signer) {
    this.record = record;
    this.terms = terms;
    this.judged = judged;
    this.unsigned = unsigned;
    this.signer = signer;
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

  public byte[] unsigned() {
    return unsigned.clone();
  }

  public static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  public static final Instant NOW = Instant.parse("2026-11-25T18:00:00Z");
  static final Identity RESTORER =
      Identity.create("the restorer", Identity.Kind.EC_P256, DAY, new SecureRandom());
  static final Identity KEEPER =
      Identity.create(
          "the keeper of the collection", Identity.Kind.RSA_3072, DAY, new SecureRandom());
  static final Pdf PDF = new Pdf();

  /** A plain record of the cold stage. */
  public static Made of(String tag) throws IOException {
    return of(tag, RESTORER);
  }

  static Made of(String tag, Identity signer) throws IOException {
    return of(tag, Map.of(), Terms.Purpose.RECORD, "0.1.0", signer);
  }

  static Made of(String tag, Map<String, byte[]> others, Terms.Purpose purpose, String program)
      throws IOException {
    return of(tag, others, purpose, program, RESTORER);
  }

  /** A record under rules some of whose files are others. */
  static Made of(
      String tag,
      Map<String, byte[]> others,
      Terms.Purpose purpose,
      String program,
      Identity signer)
      throws IOException {
    Complaints complaints = new Complaints();
    BenchFolder folder =
        BenchFolder.open(Path.of("demo-data/north-light"), complaints).orElseThrow();
    Pack pack = folder.pack(tag, complaints);
    Map<String, byte[]> rules = new TreeMap<>(new Shelf().files(Shelf.Choice.named("gb")));
    rules.putAll(others);
    Terms terms =
        new Terms(
            program,
            tag,
            "cold",
            DAY,
            1,
            purpose,
            signer.certified().name(),
            signer.certified().fingerprint().spoken(),
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
    return new Made(record, terms, judged, u, signer);
  }

  /** The certificate of a key, in DER. */
  static byte[] certificateOf(Identity identity) throws GeneralSecurityException, IOException {
    return chainOf(identity)[0].getEncoded();
  }

  /** The certificates of a key, its own first. */
  static Certificate[] chainOf(Identity identity) throws GeneralSecurityException, IOException {
    char[] password = {};
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(new ByteArrayInputStream(identity.pkcs12(password)), password);
    return store.getCertificateChain(store.aliases().nextElement());
  }

  /** Signing by the restorer, or by the keeper. */
  public static Signing signing(boolean keeper) {
    return new Signing(keeper ? KEEPER : RESTORER, Optional.empty(), new SecureRandom());
  }

  /** What is wrong with a file, if anything is. */
  public static List<Broken> brokenIn(byte[] file) {
    List<Broken> broken = new ArrayList<>();
    Optional<SealedFile> read = SealedFile.read(file, broken);
    assertTrue(read.isPresent() || !broken.isEmpty(), "neither taken apart nor complained of");
    return broken.isEmpty() ? verify(file).broken() : broken;
  }

  public static Verification verify(byte[] file) {
    return Verifier.verify(file, TrustList.NONE, DAY, PDF);
  }

  public byte[] sealed() throws IOException {
    return Seal.certify(unsigned, new Signing(signer, Optional.empty(), new SecureRandom()), NOW);
  }
}
