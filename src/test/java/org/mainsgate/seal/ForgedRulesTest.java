package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Verdict;

/** The forger's own move: lax rules under a known name, sealed afresh. Consistency is not truth. */
class ForgedRulesTest {
  private static final String PROFILE = "rulesets/2026.1/profiles/gb.yaml";

  /**
   * NL-02 is held back by an earth that is too near its limit; here the limit is ten times as high.
   */
  private static Map<String, byte[]> lax() {
    byte[] file = Objects.requireNonNull(new Shelf().files(Shelf.Choice.named("gb")).get(PROFILE));
    String text = new String(file, StandardCharsets.UTF_8);
    String lax = text.replace("limit: 0.1 Ω", "limit: 1.0 Ω");
    assertFalse(lax.equals(text), "the limit is another one now");
    return Map.of(PROFILE, lax.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void laxRulesUnderAKnownNameAreUnknownAndOursAreShownBesideThem() throws Exception {
    Made forged = Made.of("NL-02", lax(), Terms.Purpose.RECORD, "0.1.0");
    Verification found = Made.verify(forged.sealed());
    assertEquals(List.of(), found.broken(), "everything in it fits together");
    assertEquals(Optional.empty(), found.rules().orElseThrow().known());
    Outcome ours = Outcome.HOLD;
    assertTrue(
        found.differences().stream()
            .anyMatch(
                difference ->
                    difference.theirs().equals(Optional.of(Outcome.PASS))
                        && difference.ours().equals(Optional.of(ours))),
        () -> found.differences().toString());
    assertEquals(Optional.of(Verdict.HOLD), found.ours().map(Verification.Judgement::verdict));
    assertEquals(Optional.of(Verdict.HOLD), found.verdict());
  }

  @Test
  void rulesThatAPersonHasComparedAreKnown() throws Exception {
    Made own = Made.of("NL-02", lax(), Terms.Purpose.RECORD, "0.1.0");
    String identity = Made.verify(own.sealed()).rules().orElseThrow().identity();
    TrustList trust =
        TrustList.NONE.with(new TrustList.Ruleset(identity, "our workshop's", Made.DAY));
    Verification found = Verifier.verify(own.sealed(), trust, Made.DAY, Made.PDF);
    assertEquals(Optional.of("our workshop's"), found.rules().orElseThrow().known());
  }

  @Test
  void rulesThatThisProgramCannotReadAreUnknownAndNoFaultOfTheFile() throws Exception {
    Made made = Made.of("NL-01");
    Map<String, byte[]> files = new TreeMap<>(made.record().files());
    String editions = new String(files.get("rulesets/editions.yaml"), StandardCharsets.UTF_8);
    files.put(
        "rulesets/editions.yaml",
        editions.replace("format: 1", "format: 2").getBytes(StandardCharsets.UTF_8));
    byte[] unsigned =
        Made.PDF.unsigned(
            made.record().sheet(made.judged(), made.terms()),
            Made.DAY,
            files,
            SealedRecord.fields());
    Verification found = Made.verify(Seal.certify(unsigned, Made.signing(false), Made.NOW));
    assertEquals(List.of(), found.broken());
    assertEquals(Optional.empty(), found.rules().orElseThrow().known());
    assertEquals(Optional.empty(), found.theirs());
    assertEquals(Optional.of(Verdict.PASS), found.ours().map(Verification.Judgement::verdict));
    assertEquals(1, found.notes().size());
  }

  @Test
  void aRecordThatIsSwappedAndSealedAfreshDoesNotFitItsPages() throws Exception {
    Made made = Made.of("NL-02");
    Map<String, byte[]> files = new TreeMap<>(made.record().files());
    String bench = new String(files.get("bench/bench.yaml"), StandardCharsets.UTF_8);
    files.put(
        "bench/bench.yaml",
        bench.replace("238.0 ± 2.0 V", "239.0 ± 2.0 V").getBytes(StandardCharsets.UTF_8));
    files.put(
        SealedRecord.FINDINGS,
        SealedRecord.findings(made.judged()).getBytes(StandardCharsets.UTF_8));
    byte[] unsigned =
        Made.PDF.unsigned(
            made.record().sheet(made.judged(), made.terms()),
            Made.DAY,
            files,
            SealedRecord.fields());
    Verification found = Made.verify(Seal.certify(unsigned, Made.signing(false), Made.NOW));
    assertEquals(List.of("page"), found.broken().stream().map(Broken::rule).toList());
  }

  @Test
  void anotherReleasesFindingsAreThoseOfItsRecordToTheNumber() throws Exception {
    Made made = Made.of("NL-02", Map.of(), Terms.Purpose.RECORD, "0.0.9");
    Map<String, byte[]> files = new TreeMap<>(made.record().files());
    String bench = new String(files.get("bench/bench.yaml"), StandardCharsets.UTF_8);
    files.put(
        "bench/bench.yaml",
        bench.replace("238.0 ± 2.0 V", "239.0 ± 2.0 V").getBytes(StandardCharsets.UTF_8));
    files.put(
        SealedRecord.FINDINGS,
        SealedRecord.findings(made.judged()).getBytes(StandardCharsets.UTF_8));
    byte[] unsigned =
        Made.PDF.unsigned(
            made.record().sheet(made.judged(), made.terms()),
            Made.DAY,
            files,
            SealedRecord.fields());
    Verification found = Made.verify(Seal.certify(unsigned, Made.signing(false), Made.NOW));
    assertEquals(List.of("page"), found.broken().stream().map(Broken::rule).toList());
  }

  @Test
  void anotherReleasesPagesSayTheVerdictOfItsRecord() throws Exception {
    Made made = Made.of("NL-01", Map.of(), Terms.Purpose.RECORD, "0.0.9");
    Made other = Made.of("NL-02", Map.of(), Terms.Purpose.RECORD, "0.0.9");
    Map<String, byte[]> files = new TreeMap<>(other.record().files());
    files.put(
        SealedRecord.FINDINGS,
        SealedRecord.findings(other.judged()).getBytes(StandardCharsets.UTF_8));
    byte[] unsigned =
        Made.PDF.unsigned(
            made.record().sheet(made.judged(), made.terms()),
            Made.DAY,
            files,
            SealedRecord.fields());
    Verification found = Made.verify(Seal.certify(unsigned, Made.signing(false), Made.NOW));
    assertEquals(List.of("page"), found.broken().stream().map(Broken::rule).toList());
  }

  @Test
  void whoSignsIsWhomThePagesName() throws Exception {
    byte[] other = Seal.certify(Made.of("NL-01").unsigned(), Made.signing(true), Made.NOW);
    assertEquals(List.of("page"), Made.verify(other).broken().stream().map(Broken::rule).toList());
  }
}
