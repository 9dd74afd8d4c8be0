package org.mainsgate.judges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Every report in the folder, and in the folders in it, is PDF/A-3a and PDF/UA-1, says veraPDF. */
class ReportConformanceTest {

  private static final Path REPORTS = Path.of(System.getProperty("reports"));

  @BeforeAll
  static void start() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  @Test
  void thereIsSomethingToJudge() throws IOException {
    assertFalse(reports().isEmpty(), () -> "no report in " + REPORTS);
  }

  @TestFactory
  Stream<DynamicTest> everyReportIsPdfA3a() throws IOException {
    return judged(PDFAFlavour.PDFA_3_A);
  }

  @TestFactory
  Stream<DynamicTest> everyReportIsPdfUa1() throws IOException {
    return judged(PDFAFlavour.PDFUA_1);
  }

  private static Stream<DynamicTest> judged(PDFAFlavour flavour) throws IOException {
    return reports().stream()
        .map(
            report ->
                DynamicTest.dynamicTest(
                    REPORTS.relativize(report).toString(),
                    () -> assertEquals(List.of(), violations(report, flavour))));
  }

  private static List<String> violations(Path report, PDFAFlavour flavour) throws Exception {
    try (InputStream in = Files.newInputStream(report);
        PDFAParser parser = Foundries.defaultInstance().createParser(in, flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      ValidationResult result = validator.validate(parser);
      List<String> violations =
          result.getTestAssertions().stream()
              .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
              .map(a -> a.getRuleId().getClause() + ": " + a.getMessage())
              .distinct()
              .toList();
      // No assertion and no compliance would be a judge that saw nothing.
      return result.isCompliant() || !violations.isEmpty() ? violations : List.of("not compliant");
    }
  }

  private static List<Path> reports() throws IOException {
    try (Stream<Path> files = Files.walk(REPORTS)) {
      return files.filter(file -> file.toString().endsWith(".pdf")).sorted().toList();
    }
  }
}
