package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.mainsgate.evidence.RecordSchemas;
import org.mainsgate.ruleset.RuleSchemas;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Schema;
import org.mainsgate.trial.TestSchema;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes what an editor needs to help while somebody types. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    header = "Write schemas, so that an editor helps while you type",
    description = {
      "",
      "Writes a JSON Schema for each kind of file: an editor that knows YAML then",
      "offers the words, says how to measure, and marks what can't be understood.",
      "Schemas of the same name are replaced.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate rules schema -o docs/schema",
      "",
      "Ends with 0, or 3 if the rules can't be read."
    })
final class RulesSchema implements Callable<Integer> {
  private final App app;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FOLDER",
      required = true,
      description = "the folder for the schemas; made if it is not there")
  Path folder;

  RulesSchema(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Complaints complaints = new Complaints();
    Map<String, Rules> rules = RulesShow.rules(List.of(), complaints);
    app.err().print(complaints.renderAll());
    if (!complaints.isEmpty()) {
      return Exit.UNUSABLE.code();
    }
    Written.all(folder, files(rules), app.out());
    return Exit.PASS.code();
  }

  private static Map<String, String> files(Map<String, Rules> rules) {
    Map<String, String> files = new LinkedHashMap<>();
    RecordSchemas records = records(rules, true);
    put(files, "bench", "A bench: its supply, people and meters", records.bench(), records);
    put(files, "instrument", "An instrument and its things", records.instrument(), records);
    put(files, "visit", "A visit to an instrument", records.visit(), records);
    Rules first = rules.values().iterator().next();
    RuleSchemas schemas =
        new RuleSchemas(first.vocabulary(), checks(rules), first.stages().keySet());
    put(files, "rules", "A ruleset or profile", schemas.rules(), Map.of());
    put(files, "overlay", "An overlay of local rules", schemas.overlay(), Map.of());
    put(files, "vocabulary", "A vocabulary", schemas.vocabulary(), Map.of());
    TestSchema tests =
        new TestSchema(records(rules, false), new Shelf().profiles(), first.stages().keySet());
    put(files, "tests", "Tests of rules", tests.tests(), tests.defined());
    return files;
  }

  private static void put(
      Map<String, String> files, String kind, String title, Schema schema, RecordSchemas records) {
    put(files, kind, title, schema, records.defined());
  }

  private static void put(
      Map<String, String> files,
      String kind,
      String title,
      Schema schema,
      Map<String, Schema> defined) {
    files.put(kind + ".schema.json", Schema.file(title, schema, defined));
  }

  private static RecordSchemas records(Map<String, Rules> rules, boolean whole) {
    Rules first = rules.values().iterator().next();
    return new RecordSchemas(
        first.vocabulary(), first.meterKinds(), checks(rules), new Shelf().profiles(), whole);
  }

  private static Set<String> checks(Map<String, Rules> rules) {
    Set<String> checks = new LinkedHashSet<>();
    rules.values().forEach(found -> checks.addAll(found.checks().keySet()));
    return checks;
  }
}
