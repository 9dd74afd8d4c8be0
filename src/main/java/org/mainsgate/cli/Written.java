package org.mainsgate.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.mainsgate.store.NewFile;
import org.mainsgate.store.NewFolder;

/** Text files that can be made again at any time, written into a folder. */
final class Written {
  private Written() {}

  /**
   * Writes every text under its name, each whole, in place of what is there, and says how many.
   *
   * @throws IOException if the disk is full or fails; then some may be the new ones, others not
   */
  static void all(Path folder, Map<String, String> texts, PrintStream out) throws IOException {
    NewFolder.make(folder);
    NewFile.sweep(folder);
    for (Map.Entry<String, String> text : texts.entrySet()) {
      byte[] bytes = text.getValue().getBytes(StandardCharsets.UTF_8);
      NewFile.replace(folder.resolve(text.getKey()), bytes);
    }
    out.println("written: " + texts.size() + " files in " + folder);
  }
}
