package org.mainsgate.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Text files that can be made again at any time, written into a folder. */
final class Written {
  private Written() {}

  /** Writes every text under its name, in place of what is there, and says how many. */
  static void all(Path folder, Map<String, String> texts, PrintStream out) throws IOException {
    Files.createDirectories(folder);
    for (Map.Entry<String, String> text : texts.entrySet()) {
      Files.writeString(folder.resolve(text.getKey()), text.getValue(), StandardCharsets.UTF_8);
    }
    out.println("written: " + texts.size() + " files in " + folder);
  }
}
