package org.mainsgate.laws;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;

/** The rules of the program, and others given by text. */
public final class Rulebook {
  private static final Rules GB = open(Shelf.Choice.named("gb"));
  private static final Rules EU = open(Shelf.Choice.named("eu"));

  private Rulebook() {}

  public static Rules gb() {
    return GB;
  }

  public static Rules eu() {
    return EU;
  }

  /** Both profiles of the program. */
  public static List<Rules> all() {
    return List.of(GB, EU);
  }

  /** A file of the newest edition. */
  public static String text(String file) {
    return new String(new Shelf().bytes(file).orElseThrow(), UTF_8);
  }

  /** The rules with a profile that is given by text. */
  public static Rules of(String text) {
    return open(Shelf.Choice.file("own.yaml", text.getBytes(UTF_8)));
  }

  /** The rules with a profile of the test resources. */
  public static Rules resource(String name) {
    try (InputStream in = Rulebook.class.getResourceAsStream("/profiles/" + name + ".yaml")) {
      if (in == null) {
        throw new IllegalArgumentException("no profile " + name);
      }
      return open(Shelf.Choice.file(name + ".yaml", in.readAllBytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What is complained of when a profile is given by text; empty if nothing. */
  public static String complaints(String text) {
    Complaints complaints = new Complaints();
    new Shelf().open(Shelf.Choice.file("own.yaml", text.getBytes(UTF_8)), complaints);
    return complaints.renderAll();
  }

  /** The rules of a profile of the program under overlays that are given by text, in this order. */
  public static Rules under(String profile, String... overlays) {
    return open(Shelf.Choice.named(profile).under(files(overlays)));
  }

  /** The same, if the overlays are accepted. */
  public static Optional<Rules> ifAccepted(String profile, String... overlays) {
    return new Shelf().open(Shelf.Choice.named(profile).under(files(overlays)), new Complaints());
  }

  /** What is complained of when overlays are given by text; empty if nothing. */
  public static String overlayComplaints(String profile, String... overlays) {
    Complaints complaints = new Complaints();
    new Shelf().open(Shelf.Choice.named(profile).under(files(overlays)), complaints);
    return complaints.renderAll();
  }

  private static Map<String, byte[]> files(String... overlays) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String text : overlays) {
      files.put(
          files.isEmpty() ? "own.yaml" : "own-" + files.size() + ".yaml", text.getBytes(UTF_8));
    }
    return files;
  }

  /** A text with one passage changed; it must stand there exactly once. */
  public static String changed(String text, String from, String to) {
    int first = text.indexOf(from);
    if (first < 0 || text.indexOf(from, first + 1) >= 0) {
      throw new IllegalArgumentException("`" + from + "` does not stand there once");
    }
    return text.replace(from, to);
  }

  private static Rules open(Shelf.Choice choice) {
    Complaints complaints = new Complaints();
    return new Shelf()
        .open(choice, complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }
}
