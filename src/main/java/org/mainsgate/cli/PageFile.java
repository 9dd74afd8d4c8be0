package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A file for a page, which holds the old page or the new one, never half of one. */
record PageFile(Path path) {

  /** Puts these bytes in the place of whatever was there; makes the folder if it is not there. */
  void replace(byte[] bytes) throws IOException {
    Path parent = path.toAbsolutePath().getParent();
    if (parent == null) {
      throw new IOException(path + ": this is no file");
    }
    Files.createDirectories(parent);
    Path temporary = Files.createTempFile(parent, ".page", ".tmp");
    try {
      Files.write(temporary, bytes);
      Files.move(
          temporary, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }
}
