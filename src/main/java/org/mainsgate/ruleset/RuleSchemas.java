package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mainsgate.quantity.TypedPattern;
import org.mainsgate.quantity.Units;
import org.mainsgate.source.RecordSchema;
import org.mainsgate.source.Schema;

/**
 * The schemas of rules, overlays and vocabularies, from the shapes of the files.
 *
 * <p>They refuse nothing that {@link Shelf} takes; what a formula means, and which names there are,
 * is for {@code rules check} to say.
 */
public final class RuleSchemas {
  private static final Schema YES_NO = Schema.words(List.of("yes", "no"));
  private static final Schema ONE = Schema.words(List.of("1"));

  /** One text, or a list of them. */
  private static final Schema TEXTS = Schema.either(List.of(Schema.TEXT, Schema.list(Schema.TEXT)));

  /** A number with its unit, or without one. */
  private static final Schema NUMBER = Schema.pattern(TypedPattern.stated());

  private final Map<String, Schema> told = new LinkedHashMap<>();

  /**
   * Schemas for rules in these words.
   *
   * @param checks the names of the checks that an editor offers
   * @param stages the names of the stages that an editor offers
   */
  public RuleSchemas(Vocabulary vocabulary, Collection<String> checks, Collection<String> stages) {
    List<String> listed = vocabulary.listedKinds().stream().map(Kind::name).toList();
    told.put("format", ONE);
    told.put("language", ONE);
    told.put("limits.value", NUMBER);
    told.put("standing", standings());
    told.put("row", Schema.words(TableReader.MODES.keySet().stream().sorted().toList()));
    told.put("tables.rows", row());
    told.put("checks.stage", stages(stages));
    told.put("checks.over", Schema.words(listed));
    told.put("checks.none", Schema.words(List.of("hold")));
    told.put("consequence", Schema.words(List.of("fail", "hold")));
    told.put("checks.judge", Schema.words(List.of(CheckReader.A_PERSON_MAY)));
    told.put("requires", Schema.offering(checks));
    told.put("until", Schema.offering(checks));
    told.put("depends.on", Schema.words(vocabulary.kinds().keySet()));
    told.put("depends.does", Schema.words(vocabulary.acts().keySet()));
    told.put("order.closes", Schema.words(listed));
    told.put("each_visit", YES_NO);
    Schema stated = Schema.strictly(TypedPattern.stated());
    told.put("functions.to", stated);
    told.put("functions.digit", stated);
    told.put("functions.accuracy", Schema.strictly(TypedPattern.accuracy()));
    told.put("parameters.unit", unit());
    told.put("parameters.columns", Schema.named(unit()));
    told.put("tables.columns", Schema.named(unit()));
  }

  /** Of a common ruleset or a profile. */
  public Schema rules() {
    return new RecordSchema(told, true).of("rules", RulesetFile.class);
  }

  /** Of an overlay. */
  public Schema overlay() {
    Map<String, Schema> more = new LinkedHashMap<>(told);
    more.put("overlay.overlay", Schema.pattern("^" + OverlayFile.NAME.pattern() + "$"));
    more.put("overlay.edition", Schema.pattern("^" + OverlayFile.EDITION.pattern() + "$"));
    return new RecordSchema(more, true).of("overlay", OverlayFile.class);
  }

  /** Of a vocabulary. */
  public Schema vocabulary() {
    Map<String, Schema> words = new LinkedHashMap<>();
    words.put("format", ONE);
    words.put("language", ONE);
    words.put("of", TEXTS);
    words.put("file", Schema.words(sorted(VocabularyReader.HOMES)));
    words.put("tier", Schema.words(sorted(VocabularyReader.TIERS)));
    words.put("nature", Schema.words(sorted(VocabularyReader.NATURES)));
    words.put("worst", Schema.words(sorted(VocabularyReader.WORST)));
    words.put("one", Schema.words(sorted(VocabularyReader.ONCE)));
    words.put("derived", Schema.words(List.of(Vocabulary.AGE)));
    words.put("units", unit());
    words.put("least", Schema.strictly(TypedPattern.stated()));
    words.put("leads", Schema.strictly(TypedPattern.stated()));
    words.put("seconds", Schema.pattern("^[1-9][0-9]{0,3}$"));
    for (String field : List.of("momentary", "designator", "ends")) {
      words.put(field, YES_NO);
    }
    words.put(
        "observations.values", Schema.either(List.of(Schema.TEXT, Schema.named(Schema.TEXT))));
    return new RecordSchema(words, true).of("vocabulary", RulesetFile.VocabularyFile.class);
  }

  private static List<String> sorted(Map<String, ?> words) {
    return words.keySet().stream().sorted().toList();
  }

  private static Schema standings() {
    return Schema.words(Arrays.stream(Standing.values()).map(Standing::words).toList());
  }

  /** A stage or several; a profile may have its own. */
  private static Schema stages(Collection<String> stages) {
    Schema one = Schema.offering(stages);
    return Schema.either(List.of(one, Schema.list(one)));
  }

  /** A unit as it is printed, or spelled otherwise. */
  private static Schema unit() {
    List<String> units = new ArrayList<>(Units.symbols());
    units.add(Wording.ONE.symbol());
    return Schema.offering(units);
  }

  /** A row: its key, its own citation, and a cell for each column. */
  private static Schema row() {
    RecordSchema words = new RecordSchema(Map.of(), true);
    Map<String, Schema> fields = new LinkedHashMap<>();
    for (String key : TableReader.OWN) {
      Schema schema =
          switch (key) {
            case "at" -> NUMBER;
            case "standing" -> standings();
            case TableReader.CONFIRMED ->
                new RecordSchema(Map.of(), true).of("confirmed", RulesetFile.ConfirmedEntry.class);
            default -> Schema.TEXT;
          };
      fields.put(key, words.described("rows." + key, schema));
    }
    return Schema.fields(fields, List.of())
        .with("additionalProperties", NUMBER.saying("The value in a column of the table."));
  }
}
