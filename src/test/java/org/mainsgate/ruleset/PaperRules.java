package org.mainsgate.ruleset;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mainsgate.laws.Rulebook;
import org.mainsgate.ruleset.RulesetFile.VocabularyFile;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/**
 * Rules on paper: the words and common rules of the newest edition with the profile for Britain,
 * and fields given by text put over its vocabulary, its stages, its meters or its profile.
 */
public final class PaperRules {
  private static final List<String> COMMON = common();

  private PaperRules() {}

  /** The rules with these fields put over vocabulary and profile. */
  public static Rules with(String vocabulary, String profile) {
    Complaints complaints = new Complaints();
    return read(vocabulary, profile, "", complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  /** The same under an overlay. */
  public static Rules under(String vocabulary, String profile, String overlay) {
    Complaints complaints = new Complaints();
    return read(vocabulary, profile, overlay, complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }

  /** What is complained of; empty if nothing. */
  public static String complaints(String vocabulary, String profile) {
    return complaints(vocabulary, profile, "");
  }

  /** What is complained of, with an overlay. */
  public static String complaints(String vocabulary, String profile, String overlay) {
    Complaints complaints = new Complaints();
    read(vocabulary, profile, overlay, complaints);
    return complaints.renderAll();
  }

  private static Optional<Rules> read(
      String vocabulary, String profile, String overlay, Complaints complaints) {
    Optional<VocabularyFile> words =
        Binder.bind(over("vocabulary.yaml", vocabulary), VocabularyFile.class, complaints);
    List<RulesetFile> common = new ArrayList<>();
    for (String file : COMMON) {
      Binder.bind(over(file, ""), RulesetFile.class, complaints).ifPresent(common::add);
    }
    Optional<RulesetFile> own =
        Binder.bind(over("profiles/gb.yaml", profile), RulesetFile.class, complaints);
    List<OverlayFile> laid = new ArrayList<>();
    if (!overlay.isEmpty()) {
      OverlayFile.read("own.yaml", overlay.getBytes(UTF_8), "2026.1", complaints)
          .ifPresent(laid::add);
    }
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    Vocabulary read = new VocabularyReader(words.orElseThrow(), complaints).read();
    return new RulesReader(read, common, own.orElseThrow(), laid, Adjustment.NONE, complaints)
        .read("gb", "0".repeat(64));
  }

  /** The names of the common files. */
  private static List<String> common() {
    try (InputStream in = Shelf.class.getResourceAsStream("/rulesets/editions.yaml")) {
      if (in == null) {
        throw new AssertionError("no editions");
      }
      Complaints complaints = new Complaints();
      Shelf.EditionsFile editions =
          Binder.bind(
                  fields("editions.yaml", new String(in.readAllBytes(), UTF_8)),
                  Shelf.EditionsFile.class,
                  complaints)
              .orElseThrow();
      return editions.editions().values().stream()
          .reduce((a, b) -> b)
          .orElseThrow()
          .common()
          .stream()
          .map(Text::value)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Fields over(String file, String text) {
    Fields whole = fields(file, Rulebook.text(file));
    return text.isEmpty() ? whole : whole.overlaid(fields("own.yaml", text));
  }

  private static Fields fields(String name, String text) {
    Complaints complaints = new Complaints();
    return StrictYaml.readFields(name, text.getBytes(UTF_8), complaints)
        .orElseThrow(() -> new AssertionError(complaints.renderAll()));
  }
}
