package org.mainsgate.judges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import eu.europa.esig.dss.diagnostic.DiagnosticData;
import eu.europa.esig.dss.diagnostic.SignatureWrapper;
import eu.europa.esig.dss.enumerations.SignatureLevel;
import eu.europa.esig.dss.model.FileDocument;
import eu.europa.esig.dss.model.x509.CertificateToken;
import eu.europa.esig.dss.spi.DSSUtils;
import eu.europa.esig.dss.spi.validation.CommonCertificateVerifier;
import eu.europa.esig.dss.spi.x509.CommonTrustedCertificateSource;
import eu.europa.esig.dss.validation.SignedDocumentValidator;
import eu.europa.esig.dss.validation.reports.Reports;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What others say of sealed files: DSS, pdfsig and qpdf. The name of a file says how many have
 * accepted it: {@code ec-3.pdf} has the seal and three more signatures.
 */
class SealedFilesTest {
  private static final Path SEALED = Path.of(System.getProperty("reports")).resolve("sealed");

  private static List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(SEALED)) {
      return files.filter(file -> file.toString().endsWith(".pdf")).sorted().toList();
    }
  }

  private static int signatures(Path file) {
    String name = file.getFileName().toString();
    return 1 + Integer.parseInt(name.replaceAll(".*-([0-9]+)\\.pdf", "$1"));
  }

  @Test
  void thereAreFilesWithNoneToFiveAcceptances() throws IOException {
    assertTrue(files().size() >= 8, () -> "too few in " + SEALED);
  }

  @TestFactory
  Stream<DynamicTest> dssSaysBaseline() throws IOException {
    return files().stream()
        .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> baseline(file)));
  }

  private static void baseline(Path file) throws IOException {
    boolean stamped = file.getFileName().toString().startsWith("stamped");
    Reports reports = judged(file, new CommonTrustedCertificateSource());
    DiagnosticData data = reports.getDiagnosticData();
    CommonTrustedCertificateSource trusted = new CommonTrustedCertificateSource();
    data.getSignatures()
        .forEach(
            signature ->
                trusted.addCertificate(
                    new CertificateToken(
                        certificate(signature))));
    if (stamped) {
      Path authority = file.resolveSibling(file.getFileName().toString().replace(".pdf", ".cer"));
      trusted.addCertificate(DSSUtils.loadCertificate(authority.toFile()));
    }
    DiagnosticData known = judged(file, trusted).getDiagnosticData();
    assertEquals(signatures(file), known.getSignatures().size());
    for (SignatureWrapper signature : known.getSignatures()) {
      assertEquals(
          stamped ? SignatureLevel.PAdES_BASELINE_T : SignatureLevel.PAdES_BASELINE_B,
          signature.getSignatureFormat());
      assertTrue(signature.isSignatureIntact(), signature::getId);
      assertTrue(signature.isSignatureValid(), signature::getId);
      assertTrue(signature.arePdfModificationsDetected() == false, signature::getId);
    }
    SignatureWrapper seal = known.getSignatures().get(0);
    assertEquals("MINIMAL_CHANGES_PERMITTED", String.valueOf(seal.getDocMDPPermissions()));
    for (SignatureWrapper signature : known.getSignatures()) {
      assertEquals(List.of(), signature.getPdfUndefinedChanges(), "changes that DSS can't place");
      assertEquals(List.of(), signature.getPdfAnnotationChanges());
    }
  }

  private static java.security.cert.X509Certificate certificate(SignatureWrapper signature) {
    byte[] der = signature.getSigningCertificate().getBinaries();
    return DSSUtils.loadCertificate(der).getCertificate();
  }

  private static Reports judged(Path file, CommonTrustedCertificateSource trusted) {
    CommonCertificateVerifier verifier = new CommonCertificateVerifier();
    verifier.setTrustedCertSources(trusted);
    SignedDocumentValidator validator =
        SignedDocumentValidator.fromDocument(new FileDocument(file.toFile()));
    validator.setCertificateVerifier(verifier);
    validator.setTokenExtractionStrategy(
        eu.europa.esig.dss.enumerations.TokenExtractionStrategy.EXTRACT_CERTIFICATES_ONLY);
    return validator.validateDocument();
  }

  @TestFactory
  Stream<DynamicTest> pdfsigSaysValid() throws IOException {
    return files().stream()
        .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> pdfsig(file)));
  }

  private static void pdfsig(Path file) throws Exception {
    assumeTrue(isThere("pdfsig"), "pdfsig is not installed");
    String said = run("pdfsig", "-nocert", file.toString());
    assertEquals(signatures(file), count(said, "Signature is Valid"), said);
    assertEquals(1, count(said, "- Total document signed"), said);
  }

  @TestFactory
  Stream<DynamicTest> qpdfFindsNothing() throws IOException {
    return files().stream()
        .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> qpdf(file)));
  }

  private static void qpdf(Path file) throws Exception {
    assumeTrue(isThere("qpdf"), "qpdf is not installed");
    String said = run("qpdf", "--check", file.toString());
    assertTrue(said.contains("No syntax or stream encoding errors found"), said);
    assertFalse(said.contains("WARNING"), said);
  }

  private static boolean isThere(String program) {
    return Stream.of(System.getenv("PATH").split(":"))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
  }

  private static int count(String text, String words) {
    return text.split(java.util.regex.Pattern.quote(words), -1).length - 1;
  }

  private static String run(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return said;
  }
}
