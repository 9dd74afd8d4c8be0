package org.mainsgate.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A stranger's file, of which no more than so much is read. */
final class BoundedFile {
  private BoundedFile() {}

  /**
   * The bytes of a file.
   *
   * @throws IOException if there is no such file, or it is larger
   */
  static byte[] read(Path file, int most) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException("`" + file + "` is a folder, not a file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(most + 1);
      if (bytes.length > most) {
        throw new IOException(
            "`" + file + "` is larger than " + (most >> 20) + " MiB; no sealed record is");
      }
      return bytes;
    }
  }
}
