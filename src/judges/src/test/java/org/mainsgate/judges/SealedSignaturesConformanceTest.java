package org.mainsgate.judges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eu.europa.esig.dss.diagnostic.DiagnosticData;
import eu.europa.esig.dss.diagnostic.PDFRevisionWrapper;
import eu.europa.esig.dss.diagnostic.SignatureWrapper;
import eu.europa.esig.dss.enumerations.CertificationPermission;
import eu.europa.esig.dss.enumerations.Indication;
import eu.europa.esig.dss.enumerations.SignatureLevel;
import eu.europa.esig.dss.enumerations.SubIndication;
import eu.europa.esig.dss.model.InMemoryDocument;
import eu.europa.esig.dss.simplereport.SimpleReport;
import eu.europa.esig.dss.spi.DSSUtils;
import eu.europa.esig.dss.spi.validation.CommonCertificateVerifier;
import eu.europa.esig.dss.spi.x509.CommonTrustedCertificateSource;
import eu.europa.esig.dss.validation.SignedDocumentValidator;
import eu.europa.esig.dss.validation.reports.Reports;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Date;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every signature of every sealed record is a PAdES signature of baseline level B, or T where it is
 * stamped, and nothing came later that the first one forbids, says DSS.
 */
class SealedSignaturesConformanceTest {
  /** A day after the samples claim to be signed; a judge that looks at a clock judges the clock. */
  private static final Instant THEN = Instant.parse("2026-11-26T18:00:00Z");

  private static final String ONCE = "certified-by-ec-accepted-0.pdf";
  private static final String TWICE = "certified-by-ec-accepted-1.pdf";

  /**
   * Of a key with a chain: nobody is asked whether its certificate was revoked, and each
   * certificate of the chain is referred to, so that no byte of it is left uncovered.
   */
  private static final List<String> OF_A_CHAIN =
      List.of(
          "error: The certificate validation is not conclusive!",
          "error: No revocation data found for the certificate!",
          "warning: The authority info access is not present!",
          "warning: The revocation info access is not present!",
          "warning: The signed attribute: 'signing-certificate' is present more than once!");

  @TestFactory
  Stream<DynamicTest> everySignatureIsSoundAndOfItsLevel() throws IOException {
    return Sealed.all().stream()
        .map(sample -> DynamicTest.dynamicTest(sample.name(), () -> soundAndOfItsLevel(sample)));
  }

  private static void soundAndOfItsLevel(Sealed sealed) throws IOException {
    Reports reports = judged(Files.readAllBytes(sealed.file()), sealed.certificates());
    List<SignatureWrapper> signatures = signatures(reports);
    assertEquals(sealed.fields(), signatures.stream().map(s -> field(s)).toList());
    SimpleReport simple = reports.getSimpleReport();
    for (SignatureWrapper signature : signatures) {
      String id = signature.getId();
      assertEquals(
          sealed.stamped() ? SignatureLevel.PAdES_BASELINE_T : SignatureLevel.PAdES_BASELINE_B,
          signature.getSignatureFormat());
      assertTrue(signature.isSignatureIntact());
      assertTrue(signature.isSignatureValid());
      assertTrue(signature.isStructuralValidationValid(), () -> structure(signature));
      boolean chained = !signature.getSigningCertificate().isSelfSigned();
      assertEquals(chained ? OF_A_CHAIN : List.of(), said(simple, id));
      assertEquals(
          chained ? Indication.INDETERMINATE : Indication.TOTAL_PASSED, simple.getIndication(id));
      dictionary(signature);
      nothingForbiddenCameLater(signature);
      assertEquals(sealed.stamped() ? 1 : 0, signature.getTimestampList().size());
      assertTrue(
          signature.getTimestampList().stream()
              .allMatch(stamp -> stamp.isSignatureValid() && stamp.isMessageImprintDataIntact()));
    }
  }

  private static void dictionary(SignatureWrapper signature) {
    PDFRevisionWrapper revision = signature.getPDFRevision();
    assertTrue(revision.isSignatureByteRangeValid());
    assertTrue(revision.isPdfSignatureDictionaryConsistent());
    assertEquals("ETSI.CAdES.detached", revision.getSubFilter());
    assertEquals(signature.getSigningCertificate().getCommonName(), revision.getSignerName());
    if (field(signature).equals("certify")) {
      assertEquals(
          CertificationPermission.MINIMAL_CHANGES_PERMITTED, revision.getDocMDPPermissions());
    } else {
      assertNull(revision.getDocMDPPermissions());
    }
  }

  private static void nothingForbiddenCameLater(SignatureWrapper signature) {
    PDFRevisionWrapper revision = signature.getPDFRevision();
    assertFalse(revision.arePdfModificationsDetected());
    assertEquals(List.of(), revision.getPdfAnnotationChanges());
    assertEquals(List.of(), revision.getPdfUndefinedChanges());
  }

  @Test
  void aChangedByteIsNoticed() throws IOException {
    byte[] bytes = Files.readAllBytes(Sealed.named(TWICE).file());
    bytes[bytes.length / 2] ^= 1;
    Reports reports = judged(bytes);
    for (SignatureWrapper signature : signatures(reports)) {
      assertFalse(signature.isSignatureIntact());
      assertEquals(
          SubIndication.HASH_FAILURE,
          reports.getSimpleReport().getSubIndication(signature.getId()));
    }
  }

  @Test
  void aSignatureOfSomebodyUnknownIsNotTrusted() throws IOException {
    Reports reports =
        judged(
            Files.readAllBytes(Sealed.named(ONCE).file()),
            List.of(Sealed.FOLDER.resolve("rsa.cer")));
    SignatureWrapper signature = signatures(reports).get(0);
    assertTrue(signature.isSignatureIntact());
    assertNotEquals(
        Indication.TOTAL_PASSED, reports.getSimpleReport().getIndication(signature.getId()));
  }

  @Test
  void aLaterChangeOfTheCatalogIsNoticed() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(Files.readAllBytes(Sealed.named(ONCE).file()))) {
      COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
      catalog.setString(COSName.LANG, "la");
      catalog.setNeedToBeUpdated(true);
      document.saveIncremental(out);
    }
    SignatureWrapper signature = signatures(judged(out.toByteArray())).get(0);
    assertTrue(signature.isSignatureIntact());
    assertNotEquals(List.of(), signature.getPDFRevision().getPdfUndefinedChanges());
  }

  private static Reports judged(byte[] bytes) throws IOException {
    return judged(bytes, Sealed.named(ONCE).certificates());
  }

  private static Reports judged(byte[] bytes, List<Path> trusted) throws IOException {
    CommonTrustedCertificateSource trust = new CommonTrustedCertificateSource();
    for (Path file : trusted) {
      trust.addCertificate(DSSUtils.loadCertificate(Files.readAllBytes(file)));
    }
    CommonCertificateVerifier verifier = new CommonCertificateVerifier();
    verifier.setTrustedCertSources(trust);
    // Asks nobody: the records come with all that there is to know of their signers.
    verifier.setAIASource(null);
    SignedDocumentValidator validator =
        SignedDocumentValidator.fromDocument(new InMemoryDocument(bytes));
    validator.setCertificateVerifier(verifier);
    validator.setValidationTime(Date.from(THEN));
    return validator.validateDocument();
  }

  /** The signatures in the order in which they were made. */
  private static List<SignatureWrapper> signatures(Reports reports) {
    DiagnosticData data = reports.getDiagnosticData();
    return data.getSignatures().stream()
        .sorted(
            Comparator.comparing(
                signature -> signature.getPDFRevision().getSignatureByteRange().get(1)))
        .toList();
  }

  private static String field(SignatureWrapper signature) {
    return signature.getFirstFieldName();
  }

  private static String structure(SignatureWrapper signature) {
    return String.join("; ", signature.getStructuralValidationMessages());
  }

  /** What the judge has to say against a signature, or warns of. */
  private static List<String> said(SimpleReport report, String id) {
    List<String> said = new ArrayList<>();
    report.getAdESValidationErrors(id).forEach(message -> said.add("error: " + message.getValue()));
    report
        .getAdESValidationWarnings(id)
        .forEach(message -> said.add("warning: " + message.getValue()));
    return said;
  }
}
