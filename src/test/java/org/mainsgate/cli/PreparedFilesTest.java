package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.BenchFolder;

/** What start and add prepare, once a person has filled it in. */
class PreparedFilesTest {
  private static final Path PHOTO =
      Path.of("demo-data/north-light/instruments/NL-01/photos/front.jpg");
  private static final Pattern TO_FILL_IN = Pattern.compile("(?m)^( *)# ");
  private static final Pattern ABOUT = Pattern.compile("(?m) +# .*$");
  private static final Pattern CHOICE = Pattern.compile("\\w[\\w-]*( \\| \\w[\\w-]*)+");
  private static final Pattern WITH_A_MULTIMETER = Pattern.compile("meter: [^,}]*multimeter[^,}]*");
  private static final Pattern PROPERTY = Pattern.compile("(?m)^ {4,6}# (\\w+): ");
  private static final Pattern CLOSED = Pattern.compile("(?m)^ {4}(\\w+): \\[\\w");

  /** What a person chooses where there are several values. */
  enum Pick {
    FIRST,
    LAST
  }

  @TempDir Path folder;

  static List<String> profiles() {
    return new Shelf().profiles();
  }

  @ParameterizedTest
  @MethodSource("profiles")
  void underEachProfileEveryLineThatIsFilledInIsUnderstood(String profile) throws IOException {
    everyLineIsUnderstood(profile, Pick.FIRST);
  }

  @ParameterizedTest
  @EnumSource(Pick.class)
  void everyLineIsUnderstoodWhateverIsChosen(Pick pick) throws IOException {
    everyLineIsUnderstood("gb", pick);
  }

  private void everyLineIsUnderstood(String profile, Pick pick) throws IOException {
    Rules rules = new Shelf().open(Shelf.Choice.named(profile), new Complaints()).orElseThrow();
    Path bench = started(profile);
    rewrite(bench.resolve("bench.yaml"), text -> filled(text, pick, List.of()));
    Path instrument = bench.resolve("instruments/XY-1");
    rewrite(instrument.resolve("instrument.yaml"), text -> filled(text, pick, List.of()));
    Files.createDirectories(instrument.resolve("photos"));
    Files.copy(PHOTO, instrument.resolve("photos/front.jpg"));
    Files.copy(PHOTO, instrument.resolve("photos/plate.jpg"));
    assertEquals(0, Run.of("add", bench, "XY-1").code());
    Path draft = draft(instrument);
    assertUnderstood(Run.of("check", bench));

    String prepared = Files.readString(draft);
    rewrite(draft, text -> filled(text, pick, unlisted(rules, text)));
    assertUnderstood(Run.of("check", bench));
    Visit visit = read(bench, rules);
    assertEquals(properties(rules, prepared), found(visit));
    assertEquals(
        rules.vocabulary().listedKinds().stream().map(Kind::name).sorted().toList(),
        visit.foundLists().stream().map(Visit.Looked::kind).sorted().toList());
    assertEquals(1, visit.work().size());
    assertEquals(0, Run.of("close", bench, "XY-1").code());
  }

  @Test
  void whatIsTheSameForSeveralThingsIsAskedOnce() throws IOException {
    Path bench = started("gb");
    Path instrument = bench.resolve("instruments/XY-1");
    list(instrument, "case", "handle");
    Run.of("add", bench, "XY-1");
    String text = Files.readString(draft(instrument));
    assertEquals(1, count(text, "# part_path: "), text);
    assertTrue(text.contains("    exposed_part:"), text);
    assertEquals(2, count(text, "# earth_resistance: "), text);
    assertEquals(1, count(text, "worst_of"), text);
  }

  @Test
  void ofOneThingNothingIsSaidOnceForAll() throws IOException {
    Path bench = started("gb");
    Path instrument = bench.resolve("instruments/XY-1");
    list(instrument, "case");
    Run.of("add", bench, "XY-1");
    String text = Files.readString(draft(instrument));
    assertEquals(1, count(text, "# part_path: "), text);
    assertFalse(text.contains("every:"), text);
    assertFalse(text.contains("worst_of"), text);
  }

  @Test
  void aDraftForANewInstrumentIsReadInOneSitting() throws IOException {
    Path bench = started("gb");
    Path instrument = bench.resolve("instruments/XY-1");
    list(instrument, "mains-lead", "front-panel", "case", "handle", "fuse-1");
    Run.of("add", bench, "XY-1");
    String text = Files.readString(draft(instrument));
    assertTrue(text.lines().count() < 150, text.lines().count() + " lines");
  }

  @Test
  void nothingIsSaidByAPreparedDraft() throws IOException {
    Path bench = started("gb");
    list(bench.resolve("instruments/XY-1"), "mains-lead", "case", "handle");
    Run.of("add", bench, "XY-1");
    Rules rules = new Shelf().open(Shelf.Choice.named("gb"), new Complaints()).orElseThrow();
    Visit visit = read(bench, rules);
    assertEquals(List.of(), visit.found());
    assertEquals(List.of(), visit.foundLists());
    assertEquals(List.of(), visit.work());
    assertEquals("", visit.note());
  }

  @Test
  void aReadingThatNoMeterOfTheBenchTakesIsMarked() throws IOException {
    Path bench = started("gb");
    Path instrument = bench.resolve("instruments/XY-1");
    Run.of("add", bench, "XY-1");
    String missing = "insulation from the supply to the chassis; no meter of the bench measures it";
    assertTrue(Files.readString(draft(instrument)).contains(missing));
    Files.delete(draft(instrument));
    rewrite(
        bench.resolve("bench.yaml"),
        text ->
            text.replace("# insulation-tester:", "insulation-tester:")
                .replace("YEAR-MONTH-DAY", "2026-11-20"));
    Run.of("add", bench, "XY-1");
    assertFalse(Files.readString(draft(instrument)).contains(missing));
  }

  @Test
  void noDesignatorIsMadeUp() throws IOException {
    Path bench = started("gb");
    list(bench.resolve("instruments/XY-1"), "ht-capacitor-1");
    Run check = Run.of("check", bench);
    assertEquals(3, check.code());
    assertTrue(check.err().contains("`C?` can't be a designator"), check.err());
  }

  private Path started(String profile) {
    Path bench = folder.resolve("my-bench");
    List<Object> start = new ArrayList<>(List.of("start", bench, "--profile", profile));
    start.addAll(List.of("--zone", "Europe/London", "--title", "T"));
    start.addAll(List.of("--by", "KC", "--name", "K", "--competence", "none"));
    assertEquals(0, Run.of(start.toArray()).code());
    assertEquals(0, Run.of("add", bench, "XY-1").code());
    return bench;
  }

  private static void list(Path instrument, String... ids) throws IOException {
    rewrite(
        instrument.resolve("instrument.yaml"),
        text -> {
          String listed = text;
          for (String id : ids) {
            assertTrue(listed.contains("  # " + id + ": "), listed);
            listed = listed.replace("  # " + id + ": ", "  " + id + ": ");
          }
          return listed;
        });
  }

  /** The text with all signs taken away and something sound in each place. */
  private static String filled(String text, Pick pick, List<String> none) {
    String open = ABOUT.matcher(TO_FILL_IN.matcher(text).replaceAll("$1")).replaceAll("");
    String chosen =
        CHOICE
            .matcher(WITH_A_MULTIMETER.matcher(open).replaceAll("meter: multimeter"))
            .replaceAll(
                match -> {
                  String[] values = match.group().split(" \\| ", -1);
                  return Matcher.quoteReplacement(
                      pick == Pick.FIRST ? values[0] : values[values.length - 1]);
                });
    return chosen
        .replace("none: [...]", "none: [" + String.join(", ", none) + "]")
        .replace("YEAR-MONTH-DAY", "2026-11-20")
        .replace("C?", "C1")
        .replace("...", "1");
  }

  /** The kinds that no line of the draft closes. */
  private static List<String> unlisted(Rules rules, String draft) {
    Set<String> kinds = new TreeSet<>();
    rules.vocabulary().listedKinds().forEach(kind -> kinds.add(kind.name()));
    CLOSED
        .matcher(TO_FILL_IN.matcher(draft).replaceAll("$1"))
        .results()
        .forEach(match -> kinds.remove(match.group(1)));
    return List.copyOf(kinds);
  }

  private static Set<String> properties(Rules rules, String draft) {
    Set<String> names = new TreeSet<>();
    PROPERTY.matcher(draft).results().forEach(match -> names.add(match.group(1)));
    names.retainAll(rules.vocabulary().properties().keySet());
    assertTrue(names.size() > 20, names.toString());
    return names;
  }

  private static Set<String> found(Visit visit) {
    Set<String> names = new TreeSet<>();
    visit.found().forEach(entry -> names.add(entry.property()));
    return names;
  }

  private static Visit read(Path bench, Rules rules) {
    RecordReader reader = RecordReader.of(rules);
    BenchFolder files = BenchFolder.open(bench, new Complaints()).orElseThrow();
    Bench read = files.bench(reader, new Complaints()).orElseThrow();
    return files.instrument("XY-1", read, reader).record().orElseThrow().visits().get(0);
  }

  private static void assertUnderstood(Run check) {
    assertEquals("", check.err());
    assertTrue(Set.of(0, 10, 20).contains(check.code()), "ends with " + check.code());
  }

  private static Path draft(Path instrument) throws IOException {
    try (Stream<Path> files = Files.list(instrument.resolve("visits"))) {
      return files.findFirst().orElseThrow();
    }
  }

  private static int count(String text, String part) {
    return text.split(Pattern.quote(part), -1).length - 1;
  }

  private interface Change {
    String of(String text);
  }

  private static void rewrite(Path file, Change change) throws IOException {
    Files.writeString(file, change.of(Files.readString(file)));
  }
}
