package org.mainsgate.ruleset;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/**
 * The rulesets that the program carries, by edition. A profile's name is looked up here and nowhere
 * else.
 */
public final class Shelf {
  private static final String ROOT = "rulesets/";
  private static final String EDITIONS = ROOT + "editions.yaml";
  private static final String LANGUAGE = "1";
  private static final String FORMAT = "1";

  private final Function<String, Optional<byte[]>> files;
  private final Adjustment adjustment;

  private Shelf(Function<String, Optional<byte[]>> files, Adjustment adjustment) {
    this.files = files;
    this.adjustment = adjustment;
  }

  /** The shelf of this program. */
  public Shelf() {
    this(Shelf::resource, Adjustment.NONE);
  }

  /**
   * Somebody else's shelf.
   *
   * @param files the bytes of its files by path, as {@link #files} gives them
   */
  public static Shelf of(Map<String, byte[]> files) {
    return new Shelf(path -> Optional.ofNullable(files.get(path)), Adjustment.NONE);
  }

  /** The same shelf with one value moved, to see whether the ruleset's tests notice. */
  public Shelf moving(Adjustment moved) {
    return new Shelf(files, moved);
  }

  record EditionsFile(Text format, Text newest, Map<String, EditionEntry> editions) {}

  record EditionEntry(
      Text released, Text vocabulary, List<Text> common, List<Text> profiles, List<Text> tests) {}

  /**
   * A profile to work under: one of the shelf's, or a file's.
   *
   * @param name the profile's name, or the file's path
   * @param bytes the file's bytes; empty for a profile of the shelf
   * @param overlays the bytes of the overlays to lay over it, by path, in their order
   */
  public record Choice(String name, Optional<byte[]> bytes, Map<String, byte[]> overlays) {

    /** Keeps the overlays as they are, in their order. */
    public Choice {
      overlays = Collections.unmodifiableMap(new LinkedHashMap<>(overlays));
    }

    /** A profile of the shelf. */
    public static Choice named(String name) {
      return new Choice(name, Optional.empty(), Map.of());
    }

    /** A profile in a file. */
    public static Choice file(String path, byte[] bytes) {
      return new Choice(path, Optional.of(bytes), Map.of());
    }

    /** The same profile under these overlays. */
    public Choice under(Map<String, byte[]> laid) {
      return new Choice(name, bytes, laid);
    }
  }

  /** Whether a file is an overlay rather than a profile: whether it has a field {@code overlay}. */
  public static boolean isOverlay(byte[] file) {
    return StrictYaml.readFields("", file, new Complaints())
        .map(fields -> fields.get("overlay").isPresent())
        .orElse(false);
  }

  /** Whether its list of editions can be read; else there are complaints. */
  public boolean isReadable(Complaints complaints) {
    return editions(complaints).isPresent();
  }

  /** The names of the newest edition's profiles. */
  public List<String> profiles() {
    return newest(new Complaints())
        .map(entry -> entry.profiles().stream().map(Text::value).toList())
        .orElse(List.of());
  }

  /** The file that a profile of the newest edition stands in, as complaints name it. */
  public String fileOf(String profile) {
    String edition = editions(new Complaints()).map(found -> found.newest().value()).orElse("");
    return "rulesets/" + edition + "/profiles/" + profile + ".yaml";
  }

  /** The names of the newest edition's test files. */
  public List<String> tests() {
    return newest(new Complaints())
        .map(entry -> entry.tests().stream().map(Text::value).toList())
        .orElse(List.of());
  }

  /** The bytes of a file of the newest edition, if there is such a file. */
  public Optional<byte[]> bytes(String file) {
    return editions(new Complaints())
        .flatMap(found -> files.apply(ROOT + found.newest().value() + "/" + file));
  }

  /**
   * The rules of the newest edition under a profile; everything that is wrong with them is
   * complained about.
   */
  public Optional<Rules> open(Choice choice, Complaints complaints) {
    Optional<EditionsFile> editions = editions(complaints);
    if (editions.isEmpty()) {
      return Optional.empty();
    }
    String edition = editions.get().newest().value();
    return newest(complaints).flatMap(entry -> open(edition, entry, choice, complaints));
  }

  private Optional<Rules> open(
      String edition, EditionEntry entry, Choice choice, Complaints complaints) {
    Identity identity = new Identity();
    Optional<RulesetFile.VocabularyFile> words =
        read(
            edition,
            entry.vocabulary().value(),
            RulesetFile.VocabularyFile.class,
            identity,
            complaints);
    List<RulesetFile> common = new ArrayList<>();
    for (Text file : entry.common()) {
      read(edition, file.value(), RulesetFile.class, identity, complaints).ifPresent(common::add);
    }
    Optional<RulesetFile> profile = profile(edition, choice, identity, complaints);
    List<OverlayFile> overlays = overlays(edition, choice, identity, complaints);
    boolean complete =
        common.size() == entry.common().size() && overlays.size() == choice.overlays().size();
    if (words.isEmpty() || profile.isEmpty() || !complete) {
      return Optional.empty();
    }
    Vocabulary vocabulary = new VocabularyReader(words.get(), complaints).read();
    return new RulesReader(vocabulary, common, profile.get(), overlays, adjustment, complaints)
        .read(choice.name(), identity.hex());
  }

  private static List<OverlayFile> overlays(
      String edition, Choice choice, Identity identity, Complaints complaints) {
    Map<String, OverlayFile> overlays = new LinkedHashMap<>();
    choice
        .overlays()
        .forEach(
            (path, bytes) ->
                OverlayFile.read(path, bytes, edition, complaints)
                    .ifPresent(
                        file -> {
                          String name = file.overlay().value();
                          identity.add("overlay " + name + " " + file.edition().value(), bytes);
                          if (overlays.putIfAbsent(name, file) != null) {
                            complaints.add(
                                file.overlay(), "a second overlay of this name", "another name");
                          }
                        }));
    return List.copyOf(overlays.values());
  }

  private Optional<RulesetFile> profile(
      String edition, Choice choice, Identity identity, Complaints complaints) {
    if (choice.bytes().isEmpty()) {
      return read(
          edition, "profiles/" + choice.name() + ".yaml", RulesetFile.class, identity, complaints);
    }
    identity.add("profile", choice.bytes().get());
    return bind(choice.name(), choice.bytes().get(), RulesetFile.class, complaints)
        .filter(
            file ->
                speaksOurLanguage(
                    file.format(), file.language(), file.edition(), edition, complaints));
  }

  /** Whether a file that the program does not carry is written for it, and for this edition. */
  static boolean speaksOurLanguage(
      Text format, Text language, Text writtenFor, String edition, Complaints complaints) {
    boolean understood = true;
    if (!format.value().equals(FORMAT)) {
      complaints.add(format, "a format that this program does not know", "`1`");
      understood = false;
    }
    if (!language.value().equals(LANGUAGE)) {
      complaints.add(language, "a rule language that this program does not know", "`1`");
      understood = false;
    }
    if (!writtenFor.value().equals(edition)) {
      complaints.add(
          writtenFor,
          "written for edition `" + writtenFor.value() + "` of the common rules",
          "`" + edition + "`");
      understood = false;
    }
    return understood;
  }

  private <T extends Record> Optional<T> read(
      String edition, String file, Class<T> type, Identity identity, Complaints complaints) {
    String name = ROOT + edition + "/" + file;
    Optional<byte[]> bytes = files.apply(name);
    if (bytes.isEmpty()) {
      complaints.add(new Position(name, 1, 1), "this ruleset is not there");
      return Optional.empty();
    }
    identity.add(name, bytes.get());
    return bind(name, bytes.get(), type, complaints);
  }

  private static <T extends Record> Optional<T> bind(
      String name, byte[] bytes, Class<T> type, Complaints complaints) {
    return StrictYaml.readFields(name, bytes, complaints)
        .flatMap(fields -> Binder.bind(fields, type, complaints));
  }

  private Optional<EditionEntry> newest(Complaints complaints) {
    return editions(complaints).map(found -> found.editions().get(found.newest().value()));
  }

  private Optional<EditionsFile> editions(Complaints complaints) {
    Optional<byte[]> bytes = files.apply(EDITIONS);
    if (bytes.isEmpty()) {
      complaints.add(new Position(EDITIONS, 1, 1), "there are no rulesets");
      return Optional.empty();
    }
    return StrictYaml.readFields(EDITIONS, bytes.get(), complaints)
        .flatMap(fields -> Binder.bind(fields, EditionsFile.class, complaints))
        .filter(found -> understood(found, complaints));
  }

  private static boolean understood(EditionsFile editions, Complaints complaints) {
    if (!editions.format().value().equals(FORMAT)) {
      complaints.add(editions.format(), "a format that this program does not know", "`1`");
      return false;
    }
    if (!editions.editions().containsKey(editions.newest().value())) {
      complaints.addUnknown(
          editions.newest().at(),
          "edition",
          editions.newest().value(),
          editions.editions().keySet());
      return false;
    }
    return true;
  }

  /**
   * The bytes of all files that a profile of the newest edition is made of, by path; a profile in a
   * file and overlays are not among them.
   */
  public Map<String, byte[]> files(Choice choice) {
    Map<String, byte[]> found = new TreeMap<>();
    editions(new Complaints())
        .ifPresent(
            list -> {
              String edition = list.newest().value();
              EditionEntry entry = Objects.requireNonNull(list.editions().get(edition));
              put(found, EDITIONS);
              paths(edition, entry, choice).forEach(path -> put(found, path));
            });
    return found;
  }

  private void put(Map<String, byte[]> found, String path) {
    files.apply(path).ifPresent(bytes -> found.put(path, bytes));
  }

  /** The paths of the edition's files under a profile, in the order of the identity. */
  private static List<String> paths(String edition, EditionEntry entry, Choice choice) {
    List<String> paths = new ArrayList<>();
    paths.add(entry.vocabulary().value());
    entry.common().forEach(file -> paths.add(file.value()));
    if (choice.bytes().isEmpty()) {
      paths.add("profiles/" + choice.name() + ".yaml");
    }
    return paths.stream().map(path -> ROOT + edition + "/" + path).toList();
  }

  /** The rules that this shelf has, without any overlay: `edition, profile` by identity. */
  public Map<String, String> identities() {
    Map<String, String> known = new TreeMap<>();
    editions(new Complaints())
        .ifPresent(
            list ->
                list.editions()
                    .forEach(
                        (edition, entry) ->
                            entry
                                .profiles()
                                .forEach(
                                    profile ->
                                        known.put(
                                            identity(edition, entry, Choice.named(profile.value())),
                                            profile.value() + ", edition " + edition))));
    return known;
  }

  /** The identity that the rules of a profile of the newest edition have, without opening them. */
  public String identity(Choice named) {
    return editions(new Complaints())
        .map(list -> list.newest().value())
        .flatMap(edition -> newest(new Complaints()).map(entry -> identity(edition, entry, named)))
        .orElse("");
  }

  private String identity(String edition, EditionEntry entry, Choice named) {
    Identity identity = new Identity();
    for (String path : paths(edition, entry, named)) {
      files.apply(path).ifPresent(bytes -> identity.add(path, bytes));
    }
    return identity.hex();
  }

  private static Optional<byte[]> resource(String path) {
    try (InputStream in = Shelf.class.getResourceAsStream("/" + path)) {
      return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** SHA-256 over a line for each file, in order: its name and the hash of its bytes. */
  private static final class Identity {
    private final StringBuilder list = new StringBuilder();

    void add(String name, byte[] bytes) {
      list.append(name).append(' ').append(sha256(bytes)).append('\n');
    }

    String hex() {
      return sha256(list.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static String sha256(byte[] bytes) {
      try {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java has SHA-256", e);
      }
    }
  }
}
