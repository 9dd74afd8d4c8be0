package org.mainsgate.seal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mainsgate.signature.Fingerprint;
import org.mainsgate.source.Binder;
import org.mainsgate.source.CalendarDate;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/**
 * Whom and what a person has decided to know: keys by their fingerprints, and rules by their
 * identities.
 *
 * @param keys the keys
 * @param rules the rules that the program does not carry
 */
public record TrustList(List<Key> keys, List<Ruleset> rules) {
  /** Nobody and nothing. */
  public static final TrustList NONE = new TrustList(List.of(), List.of());

  /** Keeps the lists as they are. */
  public TrustList {
    keys = List.copyOf(keys);
    rules = List.copyOf(rules);
  }

  /**
   * A key that a person knows.
   *
   * @param name whose it is, in that person's words
   * @param fingerprint the key's
   * @param since the day from which on it is known
   */
  public record Key(String name, Fingerprint fingerprint, LocalDate since) {}

  /**
   * Rules that a person knows.
   *
   * @param identity of the rules, in hex
   * @param because why
   * @param since the day from which on they are known
   */
  public record Ruleset(String identity, String because, LocalDate since) {}

  record File(Text format, List<KeyFile> keys, List<RulesFile> rules) {}

  record KeyFile(Text name, Text fingerprint, Text since) {}

  record RulesFile(Text identity, Text because, Text since) {}

  /** Whose key it is, if a person knows it. */
  public Optional<String> nameOf(Fingerprint fingerprint) {
    return keys.stream()
        .filter(key -> key.fingerprint().equals(fingerprint))
        .map(Key::name)
        .findFirst();
  }

  /** Why a person knows these rules, if they do. */
  public Optional<String> reasonFor(String identity) {
    return rules.stream()
        .filter(known -> known.identity().equals(identity))
        .map(Ruleset::because)
        .findFirst();
  }

  /** The same with one more key, in the place of an entry for the same one. */
  public TrustList with(Key key) {
    List<Key> more = new ArrayList<>(keys);
    more.removeIf(known -> known.fingerprint().equals(key.fingerprint()));
    more.add(key);
    return new TrustList(more, rules);
  }

  /** The same with more rules, in the place of an entry for the same ones. */
  public TrustList with(Ruleset ruleset) {
    List<Ruleset> more = new ArrayList<>(rules);
    more.removeIf(known -> known.identity().equals(ruleset.identity()));
    more.add(ruleset);
    return new TrustList(keys, more);
  }

  /** The list as a file. */
  public String written() {
    StringBuilder out = new StringBuilder();
    out.append(
        "# Keys and rules that were compared and are known here. A line taken out is no longer known.\n");
    out.append("format: 1\n");
    if (!keys.isEmpty()) {
      out.append("keys:\n");
      keys.forEach(
          key ->
              out.append("  - {name: ")
                  .append(quoted(key.name()))
                  .append(", fingerprint: ")
                  .append(quoted(key.fingerprint().hex()))
                  .append(", since: ")
                  .append(key.since())
                  .append("}\n"));
    }
    if (!rules.isEmpty()) {
      out.append("rules:\n");
      rules.forEach(
          known ->
              out.append("  - {identity: ")
                  .append(quoted(known.identity()))
                  .append(", because: ")
                  .append(quoted(known.because()))
                  .append(", since: ")
                  .append(known.since())
                  .append("}\n"));
    }
    return out.toString();
  }

  private static String quoted(String value) {
    return "\"" + value.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  /** The list in a file's bytes, or complaints. */
  public static Optional<TrustList> read(String path, byte[] bytes, Complaints complaints) {
    int before = complaints.count();
    return StrictYaml.readFields(path, bytes, complaints)
        .flatMap(fields -> Binder.bind(fields, File.class, complaints))
        .map(file -> of(file, complaints))
        .filter(found -> complaints.count() == before);
  }

  private static TrustList of(File file, Complaints complaints) {
    if (!file.format().value().equals("1")) {
      complaints.add(file.format(), "a format that this program does not know", "`1`");
    }
    List<Key> keys = new ArrayList<>();
    for (KeyFile key : file.keys()) {
      if (is(key.fingerprint(), "[0-9a-f]{64}", complaints) && isDay(key.since(), complaints)) {
        keys.add(
            new Key(
                key.name().value(),
                new Fingerprint(key.fingerprint().value()),
                LocalDate.parse(key.since().value())));
      }
    }
    List<Ruleset> rules = new ArrayList<>();
    for (RulesFile known : file.rules()) {
      if (is(known.identity(), "[0-9a-f]{64}", complaints) && isDay(known.since(), complaints)) {
        rules.add(
            new Ruleset(
                known.identity().value(),
                known.because().value(),
                LocalDate.parse(known.since().value())));
      }
    }
    return new TrustList(keys, rules);
  }

  private static boolean is(Text text, String shape, Complaints complaints) {
    if (!text.value().matches(shape)) {
      complaints.add(
          text, "`" + text.value() + "` is no SHA-256", "64 digits of `0` to `9` and `a` to `f`");
      return false;
    }
    return true;
  }

  private static boolean isDay(Text text, Complaints complaints) {
    if (!CalendarDate.Check.isDate(text.value())) {
      complaints.add(
          text,
          "`" + text.value() + "` is not a calendar date",
          "year-month-day, such as `2026-11-25`");
      return false;
    }
    return true;
  }
}
