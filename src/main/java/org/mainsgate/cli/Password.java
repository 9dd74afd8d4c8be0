package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the password of a key comes from: never from the command line itself. */
final class Password {
  private static final String VARIABLE = "MAINSGATE_PASSWORD";

  @Option(
      names = "--password-file",
      paramLabel = "FILE",
      description =
          "a file whose first line is the key's password; else MAINSGATE_PASSWORD, else you are"
              + " asked")
  @Nullable Path file;

  /** The password of a key that is there; empty after a complaint. */
  Optional<char[]> given(App app, String question) throws IOException {
    Optional<char[]> found = fromFile();
    if (found.isEmpty()) {
      found = app.around().variable(VARIABLE).map(String::toCharArray);
    }
    if (found.isEmpty()) {
      found = app.around().ask(question);
    }
    if (found.isEmpty() || found.get().length == 0) {
      app.complain(
          "no password: name a file with `--password-file`, set "
              + VARIABLE
              + ", or call this"
              + " from a terminal");
      return Optional.empty();
    }
    return found;
  }

  /** The password of a new key, asked for twice where it is asked for. */
  Optional<char[]> chosen(App app) throws IOException {
    Optional<char[]> first = given(app, "password for the new key: ");
    boolean asked = file == null && app.around().variable(VARIABLE).isEmpty();
    if (first.isPresent() && asked) {
      Optional<char[]> second = app.around().ask("the same again: ");
      if (second.isEmpty() || !Arrays.equals(first.get(), second.get())) {
        app.complain("the two are not the same; nothing was made");
        return Optional.empty();
      }
    }
    if (first.isPresent() && first.get().length < 8) {
      app.complain(
          "a password of at least eight characters, or better a sentence; nothing was made");
      return Optional.empty();
    }
    return first;
  }

  private Optional<char[]> fromFile() throws IOException {
    if (file == null) {
      return Optional.empty();
    }
    List<String> lines = Files.readAllLines(file);
    return Optional.of((lines.isEmpty() ? "" : lines.get(0)).toCharArray());
  }
}
