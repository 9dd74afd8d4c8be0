package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.mainsgate.report.Terms.Saying.PLUG;
import static org.mainsgate.report.Terms.Saying.PLUG_BY;
import static org.mainsgate.report.Terms.Saying.SELLER;
import static org.mainsgate.report.Terms.Saying.USE;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.security.cert.Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Handover;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Picture;
import org.mainsgate.report.Release;
import org.mainsgate.report.Terms;
import org.mainsgate.report.Terms.Purpose;
import org.mainsgate.report.Terms.Saying;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.signature.Identity;
import org.mainsgate.signature.Signing;
import org.mainsgate.signature.Stores;
import org.mainsgate.signature.TimeStampAuthority;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.store.Pack;

/**
 * Sealed records of every kind that there is, left for judges from outside, with the certificates
 * that these have to trust.
 *
 * <p>The name of a file says what is in it: who certified, whether the signatures are time-stamped,
 * and how many accepted it, in turn with a key of the other kind.
 */
class SealedSamplesTest {
  /** Where an independent judge looks for sealed records to judge. */
  private static final Path SEALED = Path.of("target/reports/sealed");

  private static final BenchFolder BENCH = bench();
  private static final Pdf PDF = new Pdf();

  /** Names beyond ASCII: a signature carries the name of its signer. */
  private static final Identity EC = key("restaurētāja", Identity.Kind.EC_P256);

  private static final Identity RSA = key("Хранитель", Identity.Kind.RSA_3072);

  /** Brought in, with the certificates of two offices above it. */
  private static final Identity CHAINED = chained("secp256r1");

  private static final Identity P384 = chained("secp384r1");
  private static final StampingOffice OFFICE =
      new StampingOffice("the stamping office", Made.DAY, Made.NOW);

  @BeforeAll
  static void leaveTheCertificates() throws Exception {
    Files.createDirectories(SEALED);
    // What an earlier run left is signed with keys that are no longer there.
    try (Stream<Path> earlier = Files.list(SEALED)) {
      for (Path file : earlier.toList()) {
        Files.delete(file);
      }
    }
    Files.write(SEALED.resolve("ec.cer"), Made.certificateOf(EC));
    Files.write(SEALED.resolve("rsa.cer"), Made.certificateOf(RSA));
    Files.write(SEALED.resolve("chain.cer"), rootOf(CHAINED));
    Files.write(SEALED.resolve("p384.cer"), rootOf(P384));
    Files.write(SEALED.resolve("tsa.cer"), OFFICE.certificate());
  }

  @Test
  void aRecordCertifiedWithAnEcKeyAndAcceptedUpToFiveTimes() throws IOException {
    leave("certified-by-ec", sealed(terms(EC, "NL-01"), EC, Optional.empty()), RSA, EC, 5);
  }

  @Test
  void aRecordCertifiedWithAnRsaKeyAndAcceptedUpToFiveTimes() throws IOException {
    leave("certified-by-rsa", sealed(terms(RSA, "NL-01"), RSA, Optional.empty()), EC, RSA, 5);
  }

  @Test
  void aRecordCertifiedWithAKeyThatHasAChain() throws IOException {
    leave(
        "certified-by-chain",
        sealed(terms(CHAINED, "NL-01"), CHAINED, Optional.empty()),
        P384,
        EC,
        1);
  }

  @Test
  void aRecordOfWhatIsSoldAndNotForConnection() throws IOException {
    Terms terms =
        terms(
            EC,
            "NL-04",
            Purpose.SOLD,
            Optional.of("a collector"),
            Map.of(SELLER, "private", USE, "display", PLUG, "cut-off", PLUG_BY, "restaurētāja"));
    SealedRecord record = record(terms);
    Handover handover = record.handover(judged(record, terms), terms);
    assertEquals(List.of(), handover.complaints());
    assertEquals(Handover.NOT_FOR_CONNECTION, handover.page(Optional.empty()).headline());
    leave("not-for-connection-sold", sealed(terms, EC, Optional.empty()), RSA, EC, 1);
  }

  @Test
  void aRecordWhoseSignaturesAreTimeStamped() throws IOException {
    byte[] sealed = sealed(terms(EC, "NL-01"), EC, Optional.of(OFFICE));
    Optional<TimeStampAuthority> office = Optional.of(OFFICE);
    SealedFile file = leave("time-stamped-accepted-0", sealed, 1);
    byte[] accepted =
        Seal.accept(file, signing(RSA, office), Made.NOW.plus(Duration.ofMinutes(1))).orElseThrow();
    SealedFile last = leave("time-stamped-accepted-1", accepted, 2);
    for (SealedFile.Signed signed : last.signatures()) {
      assertEquals(Made.NOW, signed.judged().stamped().orElseThrow().at());
    }
  }

  private static Identity key(String name, Identity.Kind kind) {
    return Identity.create(name, kind, Made.DAY, new SecureRandom());
  }

  private static Identity chained(String curve) {
    char[] password = {};
    try {
      return Identity.open(Stores.chained("хранительница", curve, password), password);
    } catch (Identity.Unusable e) {
      throw new AssertionError(e);
    }
  }

  private static byte[] rootOf(Identity identity) throws Exception {
    Certificate[] chain = Made.chainOf(identity);
    return chain[chain.length - 1].getEncoded();
  }

  private static BenchFolder bench() {
    return BenchFolder.open(Path.of("demo-data/north-light"), new Complaints()).orElseThrow();
  }

  private static Signing signing(Identity identity, Optional<TimeStampAuthority> office) {
    return new Signing(identity, office, new SecureRandom());
  }

  private static Terms terms(Identity signer, String tag) throws IOException {
    return terms(signer, tag, Purpose.RECORD, Optional.empty(), Map.of());
  }

  private static Terms terms(
      Identity signer, String tag, Purpose purpose, Optional<String> to, Map<Saying, String> said)
      throws IOException {
    Map<String, String> pictures = new LinkedHashMap<>();
    pictures.put(photo(tag), BENCH.file(photo(tag), new Complaints()).orElseThrow().sha256());
    return new Terms(
        Release.VERSION,
        tag,
        "cold",
        Made.DAY,
        1,
        purpose,
        signer.certified().name(),
        signer.certified().fingerprint().spoken(),
        to,
        said,
        pictures,
        Optional.empty());
  }

  private static String photo(String tag) {
    return BenchFolder.photo(tag, "photos/front.jpg");
  }

  private static SealedRecord record(Terms terms) throws IOException {
    Map<String, byte[]> files =
        new LinkedHashMap<>(BENCH.pack(terms.tag(), new Complaints()).files());
    byte[] photo = BENCH.file(photo(terms.tag()), new Complaints()).orElseThrow().bytes();
    files.put(photo(terms.tag()), Picture.of(photo).orElseThrow().jpeg());
    return SealedRecord.of(new Pack(files), new Shelf().files(Shelf.Choice.named("gb")), terms);
  }

  private static Desk.Judged judged(SealedRecord record, Terms terms) {
    Complaints complaints = new Complaints();
    return record
        .judged(terms, complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  private static byte[] sealed(Terms terms, Identity signer, Optional<TimeStampAuthority> office)
      throws IOException {
    SealedRecord record = record(terms);
    byte[] unsigned = record.unsigned(judged(record, terms), terms, PDF);
    return Seal.certify(unsigned, signing(signer, office), Made.NOW);
  }

  /** Leaves a file as it is sealed, and after each acceptance by the one and the other in turn. */
  private static void leave(String name, byte[] sealed, Identity odd, Identity even, int times)
      throws IOException {
    SealedFile file = leave(name + "-accepted-0", sealed, 1);
    for (int i = 1; i <= times; i++) {
      Signing signing = signing(i % 2 == 1 ? odd : even, Optional.empty());
      Instant minutesLater = Made.NOW.plus(Duration.ofMinutes(i));
      byte[] accepted = Seal.accept(file, signing, minutesLater).orElseThrow();
      file = leave(name + "-accepted-" + i, accepted, i + 1);
    }
  }

  private static SealedFile leave(String name, byte[] bytes, int signatures) throws IOException {
    Files.write(SEALED.resolve(name + ".pdf"), bytes);
    List<Broken> broken = new ArrayList<>();
    SealedFile file = SealedFile.read(bytes, broken).orElseThrow();
    assertEquals(List.of(), broken);
    assertEquals(signatures, file.signatures().size());
    if (signatures == 1) {
      isAsThisReleaseMakesIt(bytes);
    }
    return file;
  }

  /** A judge of a sample that no command would write would judge nothing. */
  private static void isAsThisReleaseMakesIt(byte[] bytes) {
    Verification verification = Verifier.verify(bytes, TrustList.NONE, Made.DAY, PDF);
    assertEquals(List.of(), verification.broken());
    assertEquals(Verification.PageSeen.SAME, verification.page());
  }
}
