package org.mainsgate.cli;

import java.nio.file.Path;
import java.util.Optional;

/** What the program finds around it: variables, a person at a console, a home folder. */
public interface Surroundings {

  /** Nothing at all: for a test that needs none of it. */
  Surroundings NONE =
      new Surroundings() {
        @Override
        public Optional<String> variable(String name) {
          return Optional.empty();
        }

        @Override
        public Optional<char[]> ask(String prompt) {
          return Optional.empty();
        }

        @Override
        public Path userHome() {
          return Path.of("no-home");
        }
      };

  /** A variable of the environment. */
  Optional<String> variable(String name);

  /** Asks a person for a password, without showing it; empty where nobody sits at a console. */
  Optional<char[]> ask(String prompt);

  /** The person's home folder. */
  Path userHome();
}
