package org.mainsgate.laws;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;

/** The rules of the program, and others given by text. */
public final class Rulebook {
  private static final Rules GB = open(Shelf.Choice.named("gb"));
  private static final Rules EU = open(Shelf.Choice.named("eu"));
  private static final Map<String, String> PROFILES = profiles();
  private static final Map<String, Rules> EVERY = open(PROFILES);
  private static final Map<String, SecondOpinion> OPINIONS = opinions();

  private Rulebook() {}

  public static Rules gb() {
    return GB;
  }

  public static Rules eu() {
    return EU;
  }

  /** The profiles of the program. */
  public static List<Rules> all() {
    return List.copyOf(EVERY.values()).subList(0, new Shelf().profiles().size());
  }

  /** A profile of the program. */
  static Rules named(String profile) {
    return java.util.Objects.requireNonNull(EVERY.get(profile), profile);
  }

  /** All of these, one of values from memory, and one that uses the whole formula language. */
  static List<Rules> every() {
    return List.copyOf(EVERY.values());
  }

  /** A second opinion on one of them. */
  static SecondOpinion opinion(Rules rules) {
    return java.util.Objects.requireNonNull(OPINIONS.get(rules.profile()));
  }

  private static Map<String, String> profiles() {
    Map<String, String> profiles = new LinkedHashMap<>();
    new Shelf().profiles().forEach(name -> profiles.put(name, text("profiles/" + name + ".yaml")));
    profiles.put("forgetful.yaml", forgetful(text("profiles/gb.yaml")));
    String stage = GB.firstStage().id();
    String whole = resourceText("/laws/whole-language.yaml").replace("STAGE", stage);
    profiles.put("whole.yaml", withMore(text("profiles/gb.yaml"), whole));
    return profiles;
  }

  /** Every second value is from memory. */
  private static String forgetful(String profile) {
    String[] parts = profile.split("standing: [a-z]+( practice)?", -1);
    StringBuilder text = new StringBuilder(parts[0]);
    for (int i = 1; i < parts.length; i++) {
      text.append("standing: ").append(i % 2 == 0 ? "common practice" : "from memory");
      text.append(parts[i]);
    }
    return text.toString();
  }

  /** A profile with more limits, tables and checks; it has limits and tables already. */
  private static String withMore(String profile, String more) {
    int tables = more.indexOf("tables:\n");
    int checks = more.indexOf("checks:\n");
    String limits = more.substring(more.indexOf("limits:\n") + "limits:\n".length(), tables);
    String rows = more.substring(tables + "tables:\n".length(), checks);
    return changed(
            changed(profile, "\nlimits:\n", "\nlimits:\n" + limits),
            "\ntables:\n",
            "\ntables:\n" + rows)
        + "\n"
        + more.substring(checks);
  }

  private static Map<String, Rules> open(Map<String, String> profiles) {
    Map<String, Rules> opened = new LinkedHashMap<>();
    profiles.forEach(
        (name, text) -> {
          boolean own = name.endsWith(".yaml");
          byte[] bytes = text.getBytes(UTF_8);
          opened.put(name, open(own ? Shelf.Choice.file(name, bytes) : Shelf.Choice.named(name)));
        });
    return opened;
  }

  private static Map<String, SecondOpinion> opinions() {
    Map<String, SecondOpinion> opinions = new LinkedHashMap<>();
    EVERY.forEach(
        (name, rules) ->
            opinions.put(
                name, SecondOpinion.on(rules.vocabulary(), PROFILES.getOrDefault(name, ""))));
    return opinions;
  }

  /** The list of editions. */
  static String editions() {
    return resourceText("/rulesets/editions.yaml");
  }

  private static String resourceText(String path) {
    try (InputStream in = Rulebook.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalArgumentException("no " + path);
      }
      return new String(in.readAllBytes(), UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A file of the newest edition. */
  public static String text(String file) {
    return new String(new Shelf().bytes(file).orElseThrow(), UTF_8);
  }

  /** The rules with a profile that is given by text. */
  public static Rules of(String text) {
    return open(Shelf.Choice.file("own.yaml", text.getBytes(UTF_8)));
  }

  /** The rules with a profile of the program. */
  public static Rules profile(String name) {
    return open(Shelf.Choice.named(name));
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

  /** Rules with one check and those before it alone, where others may put more before it. */
  public static Rules cut(Rules rules, Rules others, String check) {
    Set<String> checks = new LinkedHashSet<>(Slice.closed(rules, List.of(check)));
    checks.addAll(Slice.closed(others, checks));
    return Slice.cut(rules, check, Slice.closed(rules, checks)).rules();
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
