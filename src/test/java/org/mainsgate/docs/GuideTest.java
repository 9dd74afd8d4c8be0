package org.mainsgate.docs;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.ruleset.Shelf;

/**
 * The author's guide, followed from its first line to its last: its files are written into an empty
 * folder, and its commands are run there.
 */
class GuideTest {
  static final Path GUIDE = Path.of("docs/writing-rules.md");

  private static final Pattern COPY =
      Pattern.compile("(?:without (\\w+) )?in a copy of ([a-z/-]+\\.yaml): (\\S+\\.yaml)");
  private static final Pattern SCALAR = Pattern.compile("(?m)^( *)([a-z_]+): .*\n");

  @TempDir Path folder;

  @Test
  void theGuideWorksAsItIsWritten() throws IOException {
    int files = 0;
    int screens = 0;
    for (Example example : Example.of(GUIDE)) {
      if (example.language().equals("console")) {
        prints(example);
        screens++;
      } else if (isFile(example)) {
        write(example);
        files++;
      }
    }
    assertTrue(files > 5 && screens > 5, files + " files, " + screens + " screens");
  }

  /** Whether an example is a file of the guide, or a change to one. */
  static boolean isFile(Example example) {
    return example.page().equals(GUIDE)
        && example.language().equals("yaml")
        && !example.marker().equals("in bench.yaml");
  }

  private void write(Example example) throws IOException {
    String marker = example.marker();
    Matcher copy = COPY.matcher(marker);
    if (copy.matches()) {
      String from = new String(new Shelf().bytes(copy.group(2)).orElseThrow(), UTF_8);
      String left = copy.group(1) == null ? from : without(from, copy.group(1));
      Files.writeString(folder.resolve(copy.group(3)), changed(left, example.text()));
    } else if (marker.startsWith("added to ")) {
      Path file = folder.resolve(marker.substring("added to ".length()));
      Files.writeString(file, ExamplesTest.added(Files.readString(file), example.text()));
    } else {
      assertTrue(marker.matches("\\S+\\.yaml"), () -> example.place() + " names no file");
      Files.writeString(folder.resolve(marker), example.text());
    }
  }

  /** A profile without a value. */
  private static String without(String profile, String name) {
    String less = profile.replaceFirst("(?m)^  " + name + ":.*\n(?:   .*\n)*", "");
    assertTrue(!less.equals(profile), name + " is not there");
    return less;
  }

  /** A profile with a name, title and values of its own in the place of its old ones. */
  private static String changed(String profile, String changes) {
    String all = profile;
    String added = "#\n";
    for (String block : changes.substring(changes.indexOf('\n') + 1).split("(?m)^(?=[a-z])", -1)) {
      Matcher scalar = SCALAR.matcher(block);
      if (scalar.matches()) {
        all =
            all.replaceFirst("(?m)^" + scalar.group(2) + ": .*\n", Matcher.quoteReplacement(block));
      } else {
        for (String name : names(block)) {
          all = all.replaceFirst("(?m)^  " + name + ":.*\n(?:   .*\n)*", "");
        }
        added += block;
      }
    }
    return ExamplesTest.added(all, added);
  }

  private static List<String> names(String block) {
    return block.lines().filter(line -> line.matches("  [a-z].*")).map(GuideTest::name).toList();
  }

  private static String name(String line) {
    return line.strip().split(":", 2)[0];
  }

  private void prints(Example example) {
    String command = example.text().lines().findFirst().orElse("");
    assertTrue(command.startsWith(ExamplesTest.PROGRAM), command);
    String[] arguments =
        Stream.of(command.substring(ExamplesTest.PROGRAM.length()).split(" ", -1))
            .map(word -> word.endsWith(".yaml") ? folder.resolve(word).toString() : word)
            .toArray(String[]::new);
    String printed = flowing(ExamplesTest.run(arguments).replace(folder + "/", ""));
    int from = 0;
    List<String> pieces = example.pieces("...");
    assertTrue(!pieces.isEmpty(), () -> example.place() + " shows nothing");
    for (String piece : pieces) {
      int at = printed.indexOf(flowing(piece), from);
      assertTrue(
          at >= 0,
          () -> example.place() + " expects, in this order:\n" + piece + "\nin:\n" + printed);
      from = at + flowing(piece).length();
    }
  }

  /**
   * A text whose lines may be broken elsewhere, since the folder's name is long; how many checks
   * there are is not what the guide is about.
   */
  private static String flowing(String text) {
    return text.lines()
        .map(String::strip)
        .collect(Collectors.joining(" "))
        .replaceAll(" +", " ")
        .replaceAll("[0-9]+ checks\\b", "N checks");
  }

  @Test
  void aScreenThatTheProgramDoesNotPrintIsNoticed() {
    Example wrong =
        new Example(
            GUIDE, 1, "console", ExamplesTest.PROGRAM + "rules show witness\nno such line\n");
    assertThrows(AssertionError.class, () -> prints(wrong));
  }

  @Test
  void aCopyHasTheNewValueOnce() {
    String copy =
        changed(
            "title: old\nlimits:\n  a: 1\n  b:\n    value: 2\n",
            "# x\ntitle: new\nlimits:\n  b: 3\n");
    assertEquals("title: new\nlimits:\n  b: 3\n  a: 1\n", copy);
  }

  /** The schemas that there are, and no others, are what an editor is told of. */
  @Test
  void thePageOnEditorsNamesEverySchema() throws IOException {
    String settings =
        Example.of(Path.of("docs/editor.md")).stream()
            .filter(example -> example.language().equals("json"))
            .findFirst()
            .orElseThrow()
            .text();
    Set<String> named = new TreeSet<>();
    Matcher schema = Pattern.compile("docs/schema/[a-z]+\\.schema\\.json").matcher(settings);
    while (schema.find()) {
      named.add(schema.group());
    }
    try (Stream<Path> files = Files.list(Path.of("docs/schema"))) {
      assertEquals(files.map(Path::toString).collect(Collectors.toCollection(TreeSet::new)), named);
    }
  }
}
