package org.mainsgate.trial;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mainsgate.evidence.RecordSchemas;
import org.mainsgate.source.RecordSchema;
import org.mainsgate.source.Schema;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;

/** The schema of a ruleset's tests. */
public final class TestSchema {
  /** Before the name of a file of the record, so that it is never that of a property. */
  private static final String FILE = "file-";

  private final RecordSchemas records;
  private final Collection<String> profiles;
  private final Collection<String> stages;

  /**
   * A schema of tests.
   *
   * @param records the schemas of the pieces of a record; they demand nothing, since a test may
   *     take fields away and put others over
   * @param profiles the names of profiles that an editor offers
   * @param stages the names of stages that an editor offers
   */
  public TestSchema(RecordSchemas records, Collection<String> profiles, Collection<String> stages) {
    this.records = records;
    this.profiles = List.copyOf(profiles);
    this.stages = List.copyOf(stages);
  }

  /** The schema of the file. */
  public Schema tests() {
    Map<String, Schema> told = new LinkedHashMap<>();
    told.put("records", record());
    told.put("tests.change", record());
    told.put("tests.profiles", Schema.offering(profiles));
    told.put("tests.stage", Schema.offering(stages));
    told.put("tests.on", Schema.DATE);
    told.put("tests.expect", Schema.named(outcome()));
    return new RecordSchema(told, true).of("tests", TestFile.class);
  }

  /** What it uses: the three files of a record, and what these use. */
  public Map<String, Schema> defined() {
    Map<String, Schema> defined = new LinkedHashMap<>();
    defined.put(FILE + "bench", records.bench());
    defined.put(FILE + "instrument", records.instrument());
    defined.put(FILE + "visit", records.visit());
    defined.putAll(records.defined());
    return defined;
  }

  /** The parts of a record; other fields of it are not looked at. */
  private static Schema record() {
    Map<String, Schema> parts = new LinkedHashMap<>();
    for (String part : List.of("bench", "instrument", "visit")) {
      parts.put(part, Schema.defined(FILE + part));
    }
    return Schema.fields(parts, List.of()).with("additionalProperties", true);
  }

  private static Schema outcome() {
    List<String> outcomes =
        new ArrayList<>(Arrays.stream(Outcome.values()).map(Outcome::word).toList());
    List<String> reasons = Arrays.stream(Reason.values()).map(Reason::words).toList();
    reasons.forEach(reason -> outcomes.add("hold: " + reason));
    // Any blanks after the colon will do, but an editor offers one.
    String spaced = "^hold:\\s*(?:" + String.join("|", reasons) + ")$";
    return Schema.either(List.of(Schema.words(outcomes), Schema.strictly(spaced)));
  }
}
