package org.mainsgate.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.cli.App;
import org.mainsgate.report.Palette;
import org.mainsgate.ruleset.Limit;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.source.Complaints;

/** The author's guide, done as it says: each of its examples, in its order, with the commands. */
class WritingRulesTest {
  private static final Path PAGE = Path.of("docs/writing-rules.md");

  @TempDir Path folder;
  private Path overlay = Path.of("");
  private Path tests = Path.of("");
  private Path profile = Path.of("");

  @BeforeEach
  void files() throws IOException {
    Files.createDirectories(folder.resolve("rules"));
    overlay = folder.resolve("rules/our-workshop.yaml");
    tests = folder.resolve("rules/our-workshop.tests.yaml");
    profile = folder.resolve("our-profile.yaml");
  }

  @Test
  void theOverlayIsRightAndWellTestedAfterEachStep() throws IOException {
    Files.writeString(overlay, example("rules/our-workshop.yaml"));
    assertGood("rules", "check", overlay.toString());
    Files.writeString(tests, example("rules/our-workshop.tests.yaml"));
    assertGood("rules", "test", overlay.toString());
    Files.writeString(
        overlay, added(Files.readString(overlay), example("added to rules/our-workshop.yaml")));
    assertGood("rules", "check", overlay.toString());
    assertFalse(
        run("rules", "test", overlay.toString()).isEmpty(), "a check without tests is noticed");
    Files.writeString(
        tests, added(Files.readString(tests), example("added to rules/our-workshop.tests.yaml")));
    assertGood("rules", "test", overlay.toString());
    assertGood("rules", "show", "lead-length", "--profile", overlay.toString());
    assertGood("rules", "pages", "-o", folder + "/pages", "--profile", overlay.toString());
    assertTrue(Files.exists(folder.resolve("pages/lead-length.md")));
  }

  @Test
  void theProfileIsACopyWithAnotherHeadAndAnotherValue() throws IOException {
    String gb = Example.read(Path.of("rulesets/2026.1/profiles/gb.yaml"));
    String head = example("our-profile.yaml begins so");
    Files.writeString(profile, head + gb.substring(gb.indexOf("\nlimits:")));
    assertGood("rules", "check", profile.toString());
    Files.writeString(
        profile,
        replaced(
            Files.readString(profile), example("our-profile.yaml, in place of what stands there")));
    assertGood("rules", "check", profile.toString());
    assertEquals("200 mA", limit(Files.readString(profile)).text());
  }

  @Test
  void aConfirmedValueIsFromMemoryNoMore() {
    String before = Example.read(Path.of("rulesets/2026.1/profiles/new-equipment.yaml"));
    assertTrue(limit(before).citation().isUnconfirmed());
    String after = replaced(before, example("in a copy of the profile new-equipment"));
    assertFalse(limit(after).citation().isUnconfirmed());
  }

  private static Limit limit(String profile) {
    Complaints complaints = new Complaints();
    Optional<Rules> rules =
        new Shelf()
            .open(
                Shelf.Choice.file("copy.yaml", profile.getBytes(StandardCharsets.UTF_8)),
                complaints);
    assertEquals("", complaints.renderAll());
    return Optional.ofNullable(rules.orElseThrow().limits().get("earth_test_current"))
        .orElseThrow();
  }

  private static String example(String marker) {
    return Example.of(PAGE).stream()
        .filter(found -> found.marker().equals(marker))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no example " + marker))
        .text();
  }

  /** A file with more under its own heads, and with heads of its own. */
  private static String added(String file, String more) {
    String all = file;
    for (String block : more.substring(more.indexOf('\n') + 1).split("(?m)^(?=[a-z])", -1)) {
      String head = block.substring(0, block.indexOf('\n') + 1);
      all =
          all.contains("\n" + head)
              ? all.replace("\n" + head, "\n" + block)
              : all.stripTrailing() + "\n" + block;
    }
    return all;
  }

  /** A file with the limits of an example in place of its own of these names. */
  private static String replaced(String file, String example) {
    String all = file;
    Matcher name = Pattern.compile("(?m)^  ([a-z_]+):").matcher(example);
    while (name.find()) {
      all = all.replaceFirst("(?m)^  " + name.group(1) + ":.*\n(?:    .*\n)*", "");
    }
    return added(all, example);
  }

  private static void assertGood(String... arguments) {
    assertEquals("", run(arguments), () -> String.join(" ", arguments));
  }

  /** Everything that a command says if it does not end well. */
  private static String run(String... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
    Clock clock = Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC);
    int code = new App(stream, stream, clock, Palette.NONE).run(arguments);
    return code == 0 ? "" : List.of(arguments) + "\n" + out.toString(StandardCharsets.UTF_8);
  }
}
