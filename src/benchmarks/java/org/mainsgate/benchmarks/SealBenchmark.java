package org.mainsgate.benchmarks;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Release;
import org.mainsgate.report.Sheet;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.seal.Seal;
import org.mainsgate.seal.SealedFile;
import org.mainsgate.seal.SealedRecord;
import org.mainsgate.seal.TrustList;
import org.mainsgate.seal.Verifier;
import org.mainsgate.signature.Identity;
import org.mainsgate.signature.Signing;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;

/** A report, the same sealed, and what a reader does with it, warm and on one thread. */
public final class SealBenchmark {
  private static final LocalDate ON = LocalDate.of(2026, 11, 25);
  private static final Instant NOW = Instant.parse("2026-11-25T18:00:00Z");
  private static final Pdf PDF = new Pdf();

  private SealBenchmark() {}

  private interface Step {
    byte[] bytes() throws IOException;
  }

  /**
   * Runs it.
   *
   * @param arguments the folder of a bench, and a tag
   */
  public static void main(String[] arguments) throws IOException {
    Complaints complaints = new Complaints();
    BenchFolder folder = BenchFolder.open(Path.of(arguments[0]), complaints).orElseThrow();
    String tag = arguments[1];
    Identity key =
        Identity.create("a restorer", Identity.Kind.EC_P256, ON, new SecureRandom());
    Signing signing = new Signing(key, Optional.empty(), new SecureRandom());
    Terms terms = terms(tag, key);
    SealedRecord record =
        SealedRecord.of(
            folder.pack(tag, complaints), new Shelf().files(Shelf.Choice.named("gb")), terms);
    Desk.Judged judged = record.judged(terms, complaints).orElseThrow();
    byte[] unsigned = record.unsigned(judged, terms, PDF);
    byte[] sealed = Seal.certify(unsigned, signing, NOW);
    new Paired()
        .with("report alone", () -> length(() -> report(judged)))
        .with("report and record, unsigned", () -> length(() -> record.unsigned(judged, terms, PDF)))
        .with("signing it", () -> length(() -> Seal.certify(unsigned, signing, NOW)))
        .with("taking it apart", () -> apart(sealed))
        .with(
            "verifying it, pages made again",
            () -> Verifier.verify(sealed, TrustList.NONE, ON, PDF).broken().size())
        .measure(15, 31, 1, "file", System.out);
    System.out.println("bytes sealed " + sealed.length);
  }

  private static Terms terms(String tag, Identity key) {
    return new Terms(
        Release.VERSION,
        tag,
        "cold",
        ON,
        1,
        Terms.Purpose.RECORD,
        key.certified().name(),
        key.certified().fingerprint().spoken(),
        Optional.empty(),
        Map.of(),
        Map.of(),
        Optional.empty());
  }

  private static byte[] report(Desk.Judged judged) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PDF.write(Sheet.of(judged.dossier()), ON, out);
    return out.toByteArray();
  }

  private static long apart(byte[] sealed) {
    return SealedFile.read(sealed, new ArrayList<>()).isPresent() ? 1 : 0;
  }

  private static long length(Step step) {
    try {
      return step.bytes().length;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
