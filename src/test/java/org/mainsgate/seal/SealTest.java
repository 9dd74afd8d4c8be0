package org.mainsgate.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SealTest {
  @Test
  void aRecordIsSealedAndAccepted() throws Exception {
    Made made = Made.of("NL-01");
    byte[] sealed = made.sealed();
    Files.write(Path.of("target/sealed.pdf"), sealed);
    List<Broken> broken = new ArrayList<>();
    SealedFile file = SealedFile.read(sealed, broken).orElseThrow(() -> new AssertionError(broken));
    assertEquals(List.of(), broken);
    for (int i = 1; i <= 5; i++) {
      sealed = Seal.accept(file, made.other(), Made.NOW).orElseThrow();
      Files.write(Path.of("target/accepted-" + i + ".pdf"), sealed);
      file = SealedFile.read(sealed, broken).orElseThrow(() -> new AssertionError(broken));
      assertEquals(List.of(), broken);
    }
  }
}
