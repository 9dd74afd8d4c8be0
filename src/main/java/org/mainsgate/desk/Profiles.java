package org.mainsgate.desk;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.verdict.Engine;

/** Finds the profile that is meant, and opens its rules. */
public final class Profiles {
  private static final String FILE = ".yaml";

  private Profiles() {}

  /** The bench's own profile: a name inside the program, or a file of the bench's folder. */
  static Optional<Shelf.Choice> ofBench(BenchFolder folder, Shelf shelf, Complaints complaints) {
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
    return named(name, profile.get().at(), shelf, complaints);
  }

  /** The same profile under the overlays that the bench names; empty after a complaint. */
  public static Optional<Shelf.Choice> underOverlays(
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

  /** A profile of the shelf by its name, or a complaint. */
  public static Optional<Shelf.Choice> named(
      String name, Position at, Shelf shelf, Complaints complaints) {
    if (shelf.profiles().contains(name)) {
      return Optional.of(Shelf.Choice.named(name));
    }
    complaints.addUnknown(at, "profile", name, shelf.profiles());
    return Optional.empty();
  }

  /** The rules of a profile, if nothing is wrong with them. */
  public static Optional<Rules> rules(Shelf shelf, Shelf.Choice choice, Complaints complaints) {
    Optional<Rules> rules = shelf.open(choice, complaints);
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
