package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.mainsgate.store.NewFile;
import org.mainsgate.store.NewFolder;

/** The files of a sealed record, taken out into a new folder. */
final class Extracted {
  private Extracted() {}

  /**
   * Writes the files into a folder that is there with all of them or not at all.
   *
   * <p>They are written into a folder beside it, which then gets the name. If this is stopped, that
   * other folder stays; its name starts with a point and ends in `.tmp`.
   *
   * @throws IOException if a name leads out of the folder, or the disk is full or fails
   */
  static void into(Path folder, Map<String, byte[]> files) throws IOException {
    NewFolder.whole(
        folder,
        root -> {
          for (Map.Entry<String, byte[]> entry : files.entrySet()) {
            Path target = root.resolve(entry.getKey()).normalize();
            if (!target.startsWith(root)) {
              throw new IOException("an attached file would leave the folder: " + entry.getKey());
            }
            NewFolder.make(NewFolder.around(target));
            NewFile.write(target, entry.getValue());
          }
        });
  }
}
