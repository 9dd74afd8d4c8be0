package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.mainsgate.desk.Profiles;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.source.StrictYaml;

/** A profile that is named on the command line. */
final class GivenProfile {
  private static final String FILE = ".yaml";

  private GivenProfile() {}

  /** A profile given on the command line: a name inside the program, or the path of a file. */
  static Optional<Shelf.Choice> of(String name, Complaints complaints) {
    Position at = new Position("--profile", 1, 1);
    return name.endsWith(FILE)
        ? file(Path.of(name), complaints)
        : Profiles.named(name, at, new Shelf(), complaints);
  }

  /** A profile in a file. */
  static Optional<Shelf.Choice> file(Path path, Complaints complaints) {
    Position at = new Position(path.toString(), 1, 1);
    try {
      if (Files.size(path) > StrictYaml.MOST_BYTES) {
        complaints.add(at, "the file is too large", "at most 1 MiB");
        return Optional.empty();
      }
      return Optional.of(Shelf.Choice.file(path.toString(), Files.readAllBytes(path)));
    } catch (IOException e) {
      complaints.add(at, "this file can't be read", "a profile's file, ending in `.yaml`");
      return Optional.empty();
    }
  }
}
