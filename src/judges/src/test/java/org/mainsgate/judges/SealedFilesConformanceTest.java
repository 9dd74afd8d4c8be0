package org.mainsgate.judges;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every sealed record is sound to two programs that share no code with ours: pdfsig (poppler) finds
 * each signature valid and nothing after the last, and qpdf finds no fault in the file.
 *
 * <p>Where such a program is not installed, its tests are skipped and say so.
 */
class SealedFilesConformanceTest {
  private static final String VALID = "Signature Validation: Signature is Valid.";
  private static final String WHOLE = "Total document signed";
  private static final String PART = "Not total document signed";
  private static final String UNSIGNED = "The signature form field is not signed.";
  private static final int FIELDS = 6;

  @TempDir Path folder;

  @TestFactory
  Stream<DynamicTest> pdfsigFindsEachSignatureValidAndTheLastOverAllOfTheFile() throws IOException {
    installed("pdfsig");
    return Sealed.all().stream()
        .map(sample -> DynamicTest.dynamicTest(sample.name(), () -> pdfsig(sample)));
  }

  private static void pdfsig(Sealed sealed) {
    List<String> expected = new ArrayList<>();
    for (String field : sealed.fields()) {
      boolean last = field.equals(sealed.fields().get(sealed.acceptances()));
      expected.addAll(List.of("field " + field, last ? WHOLE : PART, VALID));
    }
    for (int i = sealed.acceptances() + 1; i < FIELDS; i++) {
      expected.addAll(List.of("field accept-" + i, UNSIGNED));
    }
    assertEquals(expected, seen(sealed.file()));
  }

  @TestFactory
  Stream<DynamicTest> qpdfFindsNoFault() throws IOException {
    installed("qpdf");
    return Sealed.all().stream()
        .map(
            sample ->
                DynamicTest.dynamicTest(
                    sample.name(),
                    () -> {
                      Said said = said("qpdf", "--check", sample.file().toString());
                      assertEquals(0, said.code(), said.text());
                      assertFalse(said.text().contains("WARNING"), said.text());
                    }));
  }

  @Test
  void pdfsigNoticesAChangedByte() throws IOException {
    installed("pdfsig");
    byte[] bytes = Files.readAllBytes(Sealed.named("certified-by-ec-accepted-0.pdf").file());
    bytes[bytes.length / 2] ^= 1;
    Path changed = Files.write(folder.resolve("changed.pdf"), bytes);
    assertFalse(seen(changed).contains(VALID));
  }

  @Test
  void pdfsigNoticesABytePutAfterTheLastSignature() throws IOException {
    installed("pdfsig");
    byte[] bytes = Files.readAllBytes(Sealed.named("certified-by-ec-accepted-0.pdf").file());
    Path longer = Files.write(folder.resolve("longer.pdf"), Arrays.copyOf(bytes, bytes.length + 1));
    List<String> seen = seen(longer);
    assertTrue(seen.contains(PART) && !seen.contains(WHOLE), seen::toString);
  }

  @Test
  void qpdfNoticesATableThatIsMoved() throws IOException {
    installed("qpdf");
    byte[] bytes = Files.readAllBytes(Sealed.named("certified-by-ec-accepted-0.pdf").file());
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    int at = text.lastIndexOf("startxref\n") + "startxref\n".length();
    bytes[at] = (byte) (bytes[at] == '1' ? '2' : '1');
    Path moved = Files.write(folder.resolve("moved.pdf"), bytes);
    Said said = said("qpdf", "--check", moved.toString());
    assertTrue(said.code() != 0, said.text());
  }

  /** What pdfsig says of each field: its name, how much of the file it covers, and whether well. */
  private static List<String> seen(Path file) {
    // Trust in a certificate is another question, and pdfsig would look for a store of its own.
    return said("pdfsig", "-nocert", file.toString())
        .text()
        .lines()
        .map(line -> line.strip().replaceFirst("^- ", ""))
        .map(line -> line.replaceFirst("^Signature Field Name: ", "field "))
        .filter(
            line ->
                line.startsWith("field ")
                    || line.startsWith("Signature Validation: ")
                    || List.of(WHOLE, PART, UNSIGNED).contains(line))
        .toList();
  }

  /**
   * What a program answers.
   *
   * @param code its exit code
   * @param text all that it wrote
   */
  private record Said(int code, String text) {}

  private static Said said(String... command) {
    try {
      ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
      builder.environment().put("LC_ALL", "C.UTF-8");
      Process process = builder.start();
      process.getOutputStream().close();
      String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return new Said(process.waitFor(), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while a judge was at work", e);
    }
  }

  private static void installed(String program) {
    boolean found =
        Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
            .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
    assumeTrue(found, () -> program + " is not installed");
  }
}
