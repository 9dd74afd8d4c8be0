package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.mainsgate.report.Terms;
import org.mainsgate.seal.Verification.PageSeen;
import org.mainsgate.signature.Signing;
import org.mainsgate.signature.StampingAuthority;
import org.mainsgate.verdict.Verdict;

/** Sealed, accepted, verified. */
class SealTest {
  @Test
  void theRevisionBeforeTheSealIsTheSameWheneverItIsMade() throws Exception {
    assertArrayEquals(Made.of("NL-01").unsigned(), Made.of("NL-01").unsigned());
  }

  @Test
  void aSealedRecordIsVerifiedAndJudgedAgain() throws Exception {
    Verification found = Made.verify(Made.of("NL-01").sealed());
    assertEquals(List.of(), found.broken());
    assertEquals("the restorer", found.signatures().get(0).certified().name());
    assertEquals(Made.NOW, found.signatures().get(0).claimed());
    assertEquals(PageSeen.SAME, found.page());
    assertTrue(found.rules().orElseThrow().known().isPresent());
    assertEquals(Optional.of(Verdict.PASS), found.verdict());
    assertEquals(List.of(), found.differences());
    assertEquals(0, found.acceptances());
    assertFalse(found.isSignerKnown(), "nobody has compared the key");
  }

  @Test
  void everyInstrumentOfTheDemonstrationBenchComesOutAgain() throws Exception {
    for (String tag : List.of("NL-02", "NL-04", "NL-06", "NL-09", "NL-12")) {
      Made made = Made.of(tag);
      Verification found = Made.verify(made.sealed());
      assertEquals(List.of(), found.broken(), tag);
      assertEquals(PageSeen.SAME, found.page(), tag);
      assertEquals(
          made.judged().dossier().assessment().verdict(), found.verdict().orElseThrow(), tag);
    }
  }

  @Test
  void fivePeopleAcceptItAndNoSixth() throws Exception {
    byte[] file = Made.of("NL-01").sealed();
    for (int accepted = 1; accepted <= Layout.ACCEPTANCES; accepted++) {
      file = Seal.accept(open(file), Made.signing(accepted % 2 == 1), Made.NOW).orElseThrow();
      Verification found = Made.verify(file);
      assertEquals(List.of(), found.broken());
      assertEquals(accepted, found.acceptances());
    }
    assertEquals(Optional.empty(), Seal.accept(open(file), Made.signing(true), Made.NOW));
  }

  @Test
  void anRsaKeySealsAsWell() throws Exception {
    Made made = Made.of("NL-04", Made.KEEPER);
    byte[] file = made.sealed();
    assertEquals(List.of(), Made.brokenIn(file));
    byte[] accepted = Seal.accept(open(file), Made.signing(false), Made.NOW).orElseThrow();
    assertEquals(List.of(), Made.brokenIn(accepted));
  }

  @Test
  void aTimeStampGoesWithTheSeal() throws Exception {
    StampingAuthority authority = new StampingAuthority();
    Signing stamping =
        new Signing(Made.RESTORER, Optional.of(authority), new java.security.SecureRandom());
    byte[] file = Seal.certify(Made.of("NL-01").unsigned(), stamping, Made.NOW);
    Verification found = Made.verify(file);
    assertEquals(List.of(), found.broken());
    assertEquals(
        Optional.of("2026-11-25T18:00:30Z by a clock for tests"),
        found.signatures().get(0).stamped());
  }

  @Test
  void theLastAcceptanceCanBeCutOffAndTheCountSaysWhatIsLeft() throws Exception {
    byte[] sealed = Made.of("NL-01").sealed();
    byte[] accepted = Seal.accept(open(sealed), Made.signing(false), Made.NOW).orElseThrow();
    Verification cut = Made.verify(Arrays.copyOf(accepted, sealed.length));
    assertEquals(List.of(), cut.broken());
    assertEquals(0, cut.acceptances());
  }

  @Test
  void aKeyThatSomebodyHasComparedIsKnown() throws Exception {
    TrustList trust =
        TrustList.NONE.with(
            new TrustList.Key("our restorer", Made.RESTORER.certified().fingerprint(), Made.DAY));
    Verification found = Verifier.verify(Made.of("NL-01").sealed(), trust, Made.DAY, Made.PDF);
    assertEquals(Optional.of("our restorer"), found.signatures().get(0).known());
  }

  @Test
  void aWeekLaterItsReadingsAreTooOldForAFirstConnection() throws Exception {
    byte[] file = Made.of("NL-01").sealed();
    Verification found = Verifier.verify(file, TrustList.NONE, Made.DAY.plusDays(8), Made.PDF);
    assertEquals(Optional.of(Verdict.PASS), found.verdict(), "what was sealed stays what it was");
    assertEquals(Optional.of(Verdict.HOLD), found.now().map(Verification.Judgement::verdict));
  }

  @Test
  void theRecordThatIsTakenOutIsTheOneThatWasPutIn() throws Exception {
    Made made = Made.of("NL-01");
    SealedFile file = open(made.sealed());
    made.record()
        .files()
        .forEach((path, bytes) -> assertArrayEquals(bytes, file.files().get(path), path));
    Path visit = Path.of("instruments/NL-01/visits/2026-11-20-RS-7f3a.yaml");
    assertArrayEquals(
        Files.readAllBytes(Path.of("demo-data/north-light").resolve(visit)),
        file.files().get("bench/" + visit));
  }

  @Test
  void noOtherInstrumentAndNoDraftGoesWithIt() throws Exception {
    for (String path : Made.of("NL-01").record().files().keySet()) {
      assertFalse(path.contains("draft"), path);
      assertTrue(!path.startsWith("bench/instruments/") || path.contains("/NL-01/"), path);
    }
  }

  @Test
  void pagesOfAnotherReleaseAreHeldAgainstTheRecordByTheirWords() throws Exception {
    Made made = Made.of("NL-01", java.util.Map.of(), Terms.Purpose.RECORD, "0.0.9");
    Verification found = Made.verify(made.sealed());
    assertEquals(List.of(), found.broken());
    assertEquals(PageSeen.OTHER_RELEASE, found.page());
  }

  private static SealedFile open(byte[] file) {
    List<Broken> broken = new ArrayList<>();
    SealedFile sealed = SealedFile.read(file, broken).orElseThrow();
    assertEquals(List.of(), broken);
    return sealed;
  }
}
