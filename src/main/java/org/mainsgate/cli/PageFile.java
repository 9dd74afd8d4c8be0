package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.mainsgate.store.NewFile;
import org.mainsgate.store.NewFolder;

/** A file for a page, which holds the old page or the new one, never half of one. */
record PageFile(Path path) {

  /** Puts these bytes in the place of whatever was there; makes the folder if it is not there. */
  void replace(byte[] bytes) throws IOException {
    NewFolder.make(NewFolder.around(path));
    NewFile.replace(path, bytes);
  }
}
