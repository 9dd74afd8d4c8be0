package org.mainsgate.cli;

import java.io.Console;
import java.nio.file.Path;
import java.util.Optional;

/** The machine that the program runs on. */
final class Machine implements Surroundings {

  @Override
  public Optional<String> variable(String name) {
    return Optional.ofNullable(System.getenv(name));
  }

  // On Java 17 there is none where nobody sits at a terminal; later ones read an empty password.
  @SuppressWarnings("SystemConsoleNull")
  @Override
  public Optional<char[]> ask(String prompt) {
    Console console = System.console();
    return console == null
        ? Optional.empty()
        : Optional.ofNullable(console.readPassword("%s", prompt));
  }

  @Override
  public Path userHome() {
    return Path.of(System.getProperty("user.home", "."));
  }
}
