package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.mainsgate.ruleset.RulesetFile.CheckEntry;
import org.mainsgate.ruleset.RulesetFile.ConditionEntry;
import org.mainsgate.ruleset.RulesetFile.ConfirmedEntry;
import org.mainsgate.ruleset.RulesetFile.LimitEntry;
import org.mainsgate.ruleset.RulesetFile.SourceEntry;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Position;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/** An overlay as it is written, before its names and formulas are understood. */
record OverlayFile(
    Text format,
    Text overlay,
    Text title,
    Text edition,
    Text language,
    Text for_,
    Map<String, SourceEntry> sources,
    Map<String, LimitEntry> limits,
    Map<String, ConfirmedEntry> confirm,
    Map<String, AmendEntry> amend,
    Map<String, CheckEntry> checks,
    List<RelaxEntry> relaxes,
    Position at) {

  /** What an overlay may do, to be read after the word "expected". */
  static final String MAY = "a tighter limit, an addition to a check, or a new check";

  static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,31}");
  static final Pattern EDITION = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,31}");
  private static final String ADDITIONS =
      "`requirement`, `provided`, `requires`, `consequence: fail` or `caution`, which only add";
  private static final Set<String> NOT_OURS =
      Set.of(
          "ruleset",
          "profile",
          "parameters",
          "tables",
          "steps",
          "statements",
          "stages",
          "depends",
          "meter_kinds");
  private static final Set<String> NOT_AMENDED =
      Set.of(
          "title",
          "protects",
          "stage",
          "over",
          "none",
          "applies",
          "steps",
          "judge",
          "plausible",
          "notes",
          "remedy",
          "source");

  /** What is added to a check. */
  record AmendEntry(
      @Nullable Text requirement,
      List<ConditionEntry> provided,
      List<Text> requires,
      @Nullable Text consequence,
      @Nullable Text caution,
      Position at) {}

  /** A person's word for something that is less strict. */
  record RelaxEntry(Text what, Text because, Text by) {}

  /** The overlay in a file's bytes, if it is written for this program and edition. */
  static Optional<OverlayFile> read(
      String path, byte[] bytes, String edition, Complaints complaints) {
    int before = complaints.count();
    Optional<OverlayFile> file =
        StrictYaml.readFields(path, bytes, complaints)
            .map(fields -> lawful(fields, complaints))
            .flatMap(fields -> Binder.bind(fields, OverlayFile.class, complaints));
    file.ifPresent(found -> found.verifyHead(edition, complaints));
    return file.filter(found -> complaints.count() == before);
  }

  /** The fields without those that belong to rulesets alone, after complaints about these. */
  private static Fields lawful(Fields fields, Complaints complaints) {
    Fields left = refused(fields, List.of(), NOT_OURS, MAY, complaints);
    if (fields.get("amend").orElse(fields) instanceof Fields amend && amend != fields) {
      for (Fields.Field check : amend.fields()) {
        left =
            refused(
                left, List.of("amend", check.key().value()), NOT_AMENDED, ADDITIONS, complaints);
      }
    }
    return left;
  }

  private static Fields refused(
      Fields whole, List<String> path, Set<String> names, String right, Complaints complaints) {
    Fields inner = whole;
    for (String step : path) {
      if (!(inner.get(step).orElse(inner) instanceof Fields deeper) || deeper == inner) {
        return whole;
      }
      inner = deeper;
    }
    Fields left = whole;
    for (Fields.Field field : inner.fields()) {
      String name = field.key().value();
      if (names.contains(name)) {
        complaints.add(field.key(), "an overlay can't say `" + name + "` here", right);
        List<String> full = new ArrayList<>(path);
        full.add(name);
        left = left.without(full).orElse(left);
      }
    }
    return left;
  }

  private void verifyHead(String ofRules, Complaints complaints) {
    if (!NAME.matcher(overlay.value()).matches()) {
      complaints.add(
          overlay, "this can't be an overlay's name", "1 to 32 of `a` to `z`, `0` to `9`, `-`");
    }
    if (!EDITION.matcher(edition.value()).matches()) {
      complaints.add(edition, "this can't be an edition", "one word such as `own` or `2026-11`");
    }
    Shelf.speaksOurLanguage(format, language, for_, ofRules, complaints);
    for (RelaxEntry relaxed : relaxes) {
      if (relaxed.because().value().isBlank() || relaxed.by().value().isBlank()) {
        complaints.add(relaxed.what(), "relaxed without a reason and a name", "`because` and `by`");
      }
    }
  }

  /** What it adds to a check. */
  Optional<AmendEntry> amendment(String check) {
    return Optional.ofNullable(amend.get(check));
  }
}
