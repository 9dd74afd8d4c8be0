package org.mainsgate.docs;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.mainsgate.cli.App;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Units;
import org.mainsgate.report.Palette;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.trial.Trial;
import org.mainsgate.trial.TrialReport;
import org.mainsgate.verdict.Reason;

/**
 * The examples in the pages for people, held to what the program does.
 *
 * <p>The first line of a YAML example says what it is, and with that how it is tried.
 */
class ExamplesTest {
  static final String PROGRAM = "$ java -jar target/mainsgate.jar ";
  private static final Path FORMAT = Path.of("docs/record-format.md");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#:]+)(#[^)]*)?\\)");
  private static final Pattern CODE = Pattern.compile("`([^`]+)`");
  private static final String HEAD = "format: 1\ndate: 2026-11-25\nby: RS\n";
  private static final String GB = text(new Shelf().bytes("profiles/gb.yaml").orElseThrow());
  private static final Rules RULES = rules(GB, "gb.yaml", new Complaints()).orElseThrow();
  private static final RecordReader READER = RecordReader.of(RULES);

  @TestFactory
  Stream<DynamicTest> everyYamlExampleIsAccepted() {
    return Example.all("yaml").stream()
        .filter(example -> !GuideTest.isFile(example))
        .map(example -> DynamicTest.dynamicTest(example.place(), () -> accept(example)));
  }

  private static void accept(Example example) throws Exception {
    String marker = example.marker();
    if (marker.startsWith("from ")) {
      standsIn(Path.of(marker.substring("from ".length())), example);
    } else if (marker.startsWith("formulas over ")) {
      formulas(example, marker.substring("formulas over ".length()));
    } else if (marker.startsWith("refused formulas over ")) {
      refused(example, marker.substring("refused formulas over ".length()));
    } else {
      acceptWhole(example, marker);
    }
  }

  private static void acceptWhole(Example example, String marker) {
    switch (marker) {
      case "bench.yaml" -> assertNotNull(bench(example.text()));
      case "instrument.yaml" -> assertNotNull(instrument(example.text()));
      case "visit" -> assertNotNull(visit(example.text()));
      case "in a visit" -> assertNotNull(visit(HEAD + example.text()));
      case "in bench.yaml" -> assertNotNull(bench(withLines(first("bench.yaml"), example.text())));
      case "overlay" -> assertEquals("", overlaid(example.text()));
      case "added to the overlay" -> assertEquals("", overlaid(relaxed(example.text())));
      case "added to a profile" -> open(added(GB, example.text()));
      case "tests" -> passes(example.text());
      default -> throw new AssertionError(example.place() + " does not say what it is");
    }
  }

  private static void standsIn(Path file, Example example) {
    String all = Example.read(file);
    int from = 0;
    for (String piece : example.pieces("# ...")) {
      int at = all.indexOf(piece, from);
      assertTrue(at >= 0, () -> file + " does not have, in this order:\n" + piece);
      from = at + piece.length();
    }
  }

  private static Bench bench(String text) {
    return read(text, READER::bench);
  }

  private static Instrument instrument(String text) {
    Bench bench = bench(first("bench.yaml"));
    return read(text, (fields, complaints) -> READER.instrument(fields, bench, complaints));
  }

  private static Visit visit(String text) {
    Bench bench = bench(first("bench.yaml"));
    Instrument instrument = instrument(first("instrument.yaml"));
    String id = "2026-11-25-RS-7f3a";
    return read(
        text,
        (fields, complaints) ->
            READER.visit(fields, id, Optional.empty(), bench, instrument, complaints));
  }

  private static String first(String marker) {
    return Example.of(FORMAT).stream()
        .filter(example -> example.marker().equals(marker))
        .findFirst()
        .orElseThrow()
        .text();
  }

  private interface Reading<T> {
    Optional<T> of(Fields fields, Complaints complaints);
  }

  private static <T> T read(String text, Reading<T> reading) {
    Complaints complaints = new Complaints();
    Optional<T> read =
        StrictYaml.readFields("example.yaml", text.getBytes(UTF_8), complaints)
            .flatMap(fields -> reading.of(fields, complaints));
    assertEquals("", complaints.renderAll());
    return read.orElseThrow();
  }

  private static Optional<Rules> rules(String profile, String name, Complaints complaints) {
    return new Shelf().open(Shelf.Choice.file(name, profile.getBytes(UTF_8)), complaints);
  }

  /** What is complained of under any profile of the program. */
  private static String overlaid(String overlay) {
    Complaints complaints = new Complaints();
    Map<String, byte[]> laid = Map.of("overlay.yaml", overlay.getBytes(UTF_8));
    for (String name : new Shelf().profiles()) {
      new Shelf().open(Shelf.Choice.named(name).under(laid), complaints);
    }
    return complaints.renderAll();
  }

  /** The overlay of the page with a limit of its own value, and more. */
  private static String relaxed(String more) {
    String overlay =
        Example.of(Path.of("docs/overlays.md")).stream()
            .filter(example -> example.marker().equals("overlay"))
            .findFirst()
            .orElseThrow()
            .text();
    return added(overlay.replaceAll("(?m)^  short_lead: .*\n", ""), more);
  }

  /** The bench with its profile's line taken for these lines. */
  private static String withLines(String bench, String lines) {
    return bench.replaceFirst("(?m)^profile: .*\n", "") + lines;
  }

  private static Rules open(String profile) {
    Complaints complaints = new Complaints();
    Optional<Rules> rules = rules(profile, "example.yaml", complaints);
    assertEquals("", complaints.renderAll());
    return rules.orElseThrow();
  }

  /** A profile with more under its fields, and with more fields. */
  static String added(String profile, String more) {
    String all = profile;
    for (String block : more.substring(more.indexOf('\n') + 1).split("(?m)^(?=[a-z])", -1)) {
      String head = block.substring(0, block.indexOf('\n') + 1);
      all =
          all.contains("\n" + head)
              ? all.replace("\n" + head, "\n" + block)
              : all.stripTrailing() + "\n" + block;
    }
    return all;
  }

  /** A profile with a check for each formula. */
  private static String withChecks(List<String> formulas, String over) {
    StringBuilder checks = new StringBuilder("# checks\nchecks:\n");
    for (int i = 0; i < formulas.size(); i++) {
      checks
          .append("  example-" + i + ":\n    title: an example\n    protects: from nothing\n")
          .append("    stage: cold\n    over: " + over + "\n    consequence: hold\n")
          .append("    source: {of: practice, standing: common practice}\n")
          .append("    requirement: >\n      " + formulas.get(i) + "\n");
    }
    return added(GB, checks.toString());
  }

  private static void formulas(Example example, String over) {
    List<String> formulas = new ArrayList<>();
    for (String line : example.pieces("# ...").get(0).lines().toList()) {
      String formula = line.substring("- ".length());
      boolean quoted = formula.startsWith("\"");
      formulas.add(quoted ? formula.substring(1, formula.length() - 1) : formula);
    }
    Rules rules = open(withChecks(formulas, over));
    assertEquals(formulas.size(), rules.checks().size() - RULES.checks().size());
  }

  private static void refused(Example example, String over) {
    Map<String, String> refused = new LinkedHashMap<>();
    read(example.text(), (fields, complaints) -> Optional.of(fields))
        .fields()
        .forEach(field -> refused.put(field.key().value(), field.value().toString()));
    refused.forEach(
        (formula, why) -> {
          Complaints complaints = new Complaints();
          rules(withChecks(List.of(formula), over), "example.yaml", complaints);
          List<String> said = complaints.sorted().stream().map(found -> found.what()).toList();
          assertEquals(List.of(why), said, formula);
        });
  }

  private static void passes(String tests) {
    Map<String, Shelf.Choice> profiles = new TreeMap<>();
    new Shelf().profiles().forEach(name -> profiles.put(name, Shelf.Choice.named(name)));
    Complaints complaints = new Complaints();
    Optional<TrialReport> report =
        Trial.run(
            new Shelf(),
            profiles,
            Map.of("example.tests.yaml", tests.getBytes(UTF_8)),
            new Trial.Concern(Map.of(), Set.of("none")),
            complaints);
    assertEquals("", complaints.renderAll());
    assertEquals(List.of(), report.orElseThrow().failures());
  }

  @TestFactory
  Stream<DynamicTest> everyScreenIsWhatTheProgramPrintsNow() {
    return Example.all("console").stream()
        .filter(example -> !example.page().equals(GuideTest.GUIDE))
        .map(example -> DynamicTest.dynamicTest(example.place(), () -> prints(example)));
  }

  private static void prints(Example example) {
    String command = example.text().lines().findFirst().orElse("");
    assertTrue(command.startsWith(PROGRAM), command);
    String printed = run(command.substring(PROGRAM.length()).split(" ", -1));
    int from = 0;
    for (String piece : example.pieces("...")) {
      int at = printed.indexOf(piece, from);
      assertTrue(at >= 0, () -> "expected, in this order:\n" + piece + "\nin:\n" + printed);
      from = at + piece.length();
    }
  }

  /** What a command prints on both streams; it must be one that writes no file. */
  static String run(String... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, UTF_8);
    Clock clock = Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC);
    new App(stream, stream, clock, Palette.NONE, new java.util.Random(1958)).run(arguments);
    return out.toString(UTF_8);
  }

  @Test
  void theReadmeStartsWithTwoCommandsAndShowsAVerdict() {
    Example first = Example.of(Path.of("README.md")).get(0);
    List<String> commands = first.text().lines().toList();
    assertEquals(2, commands.size());
    assertTrue(commands.get(0).contains("java -jar target/mainsgate.jar report demo-data/"));
    assertTrue(commands.get(1).matches("mvn .*verify"));
    assertTrue(Example.all("console").stream().anyMatch(e -> e.page().endsWith("README.md")));
  }

  @Test
  void theRecordsPageNamesEveryWordOfTheVocabulary() {
    String page = Example.read(FORMAT);
    List<String> missing = new ArrayList<>();
    for (String word : words(RULES.vocabulary())) {
      if (!page.contains("`" + word + "`")) {
        missing.add(word);
      }
    }
    assertEquals(List.of(), missing);
  }

  private static List<String> words(Vocabulary vocabulary) {
    List<String> words = new ArrayList<>(vocabulary.kinds().keySet());
    words.addAll(vocabulary.properties().keySet());
    for (Property property : vocabulary.properties().values()) {
      if (property instanceof Property.Observation observation) {
        words.addAll(observation.values().values());
      }
    }
    words.addAll(vocabulary.acts().keySet());
    words.addAll(vocabulary.withdrawalReasons().keySet());
    words.addAll(RULES.meterKinds().keySet());
    vocabulary.listedKinds().stream().map(Kind::name).forEach(words::add);
    return words;
  }

  @TestFactory
  Stream<DynamicTest> everyLinkLeadsToAFile() {
    return Example.pages().stream()
        .map(page -> DynamicTest.dynamicTest(page.toString(), () -> links(page)));
  }

  private static void links(Path page) {
    Matcher link = LINK.matcher(Example.read(page));
    while (link.find()) {
      Path target = page.resolveSibling(link.group(1));
      assertTrue(Files.exists(target), () -> page + " leads to " + target);
    }
  }

  @Test
  void everyFormOfAQuantityInTheTableIsRead() {
    List<String> forms = new ArrayList<>();
    section("## Quantities")
        .lines()
        .filter(line -> line.startsWith("| `"))
        .forEach(
            line ->
                CODE.matcher(line.split("\\|", 3)[1])
                    .results()
                    .forEach(code -> forms.add(code.group(1))));
    assertTrue(forms.size() > 7, () -> "too few: " + forms);
    for (String form : forms) {
      assertInstanceOf(Typed.class, Typed.parse(form), form);
    }
  }

  @Test
  void theRecordsPageNamesEveryUnit() {
    String units = section("## Quantities").replace('(', ' ').replace(')', ' ');
    for (String symbol : Units.symbols()) {
      Pattern word = Pattern.compile("(?m)(^|[ `])" + Pattern.quote(symbol) + "[ `]");
      assertTrue(word.matcher(units).find(), symbol);
    }
  }

  private static String section(String head) {
    String page = Example.read(FORMAT);
    int start = page.indexOf(head + "\n");
    return page.substring(start, page.indexOf("\n## ", start + 1));
  }

  @Test
  void theIndexNamesEveryPage() {
    String all = Example.read(Path.of("docs/README.md"));
    for (Path page : Example.pages()) {
      String name = String.valueOf(page.getFileName());
      Path own = page.resolveSibling("README.md");
      String index = Files.exists(own) ? Example.read(own) : all;
      assertTrue(
          name.equals("README.md") || index.contains(name) || all.contains(name),
          () -> page + " is not named");
    }
  }

  @Test
  void theWordsPageNamesEveryReasonForAHold() {
    String page = Example.read(Path.of("docs/words.md"));
    for (Reason reason : Reason.values()) {
      assertTrue(page.contains("| " + reason.words() + " |"), () -> reason.words());
    }
  }

  @Test
  void anExampleThatIsWrongIsNoticed() {
    Example wrong = new Example(FORMAT, 1, "yaml", "# in a visit\nfound: {case: {weight: 1 kg}}\n");
    assertThrows(AssertionError.class, () -> accept(wrong));
  }

  private static String text(byte[] bytes) {
    return new String(bytes, UTF_8);
  }
}
