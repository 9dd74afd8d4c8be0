package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.verdict.Engine;

/** Finds the profile that is meant, and opens its rules. */
final class Profiles {
  private static final String FILE = ".yaml";

  private Profiles() {}

  /** The bench's own profile: a name inside the program, or a file of the bench's folder. */
  static Optional<Shelf.Choice> ofBench(BenchFolder folder, Complaints complaints) {
    Optional<Text> profile = folder.profile();
    if (profile.isEmpty()) {
      complaints.add(folder.start(), "the bench names no profile", "`profile: gb` or another");
      return Optional.empty();
    }
    String name = profile.get().value();
    if (name.endsWith(FILE)) {
      return folder
          .file(name, complaints)
          .map(file -> Shelf.Choice.file(file.path(), file.bytes()));
    }
    return named(name, profile.get().at(), complaints);
  }

  /** The same profile under the overlays that the bench names; empty after a complaint. */
  static Optional<Shelf.Choice> underOverlays(
      BenchFolder folder, Shelf.Choice choice, Complaints complaints) {
    Map<String, byte[]> overlays = new LinkedHashMap<>();
    int before = complaints.count();
    for (Text path : folder.overlays()) {
      Complaints unread = new Complaints();
      folder.file(path.value(), unread).ifPresent(file -> overlays.put(file.path(), file.bytes()));
      unread
          .sorted()
          .forEach(
              found ->
                  complaints.add(
                      path,
                      "no overlay `" + path.value() + "`: " + found.what(),
                      "the path of a file inside the bench's folder"));
    }
    return complaints.count() == before ? Optional.of(choice.under(overlays)) : Optional.empty();
  }

  /** A profile given on the command line: a name inside the program, or the path of a file. */
  static Optional<Shelf.Choice> given(String name, Complaints complaints) {
    Position at = new Position("--profile", 1, 1);
    return name.endsWith(FILE) ? file(Path.of(name), complaints) : named(name, at, complaints);
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

  private static Optional<Shelf.Choice> named(String name, Position at, Complaints complaints) {
    if (new Shelf().profiles().contains(name)) {
      return Optional.of(Shelf.Choice.named(name));
    }
    complaints.addUnknown(at, "profile", name, new Shelf().profiles());
    return Optional.empty();
  }

  /** The rules of a profile, if nothing is wrong with them. */
  static Optional<Rules> rules(Shelf.Choice choice, Complaints complaints) {
    Optional<Rules> rules = new Shelf().open(choice, complaints);
    rules.ifPresent(
        found ->
            new Engine(found)
                .blind()
                .forEach(
                    blind ->
                        complaints.add(
                            blind.check().at(),
                            "`"
                                + blind.check().id()
                                + "` says "
                                + blind.outcome().word()
                                + " before anything is recorded",
                            "a requirement that rests on evidence")));
    return rules.filter(found -> complaints.isEmpty());
  }
}
