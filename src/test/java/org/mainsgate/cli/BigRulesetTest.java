package org.mainsgate.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mainsgate.laws.Rulebook;

/** Rules with thousands of checks: read where they fit into a file, refused where they do not. */
class BigRulesetTest {
  @TempDir Path folder;

  private Path profile(int checks) throws IOException {
    StringBuilder text = new StringBuilder(Rulebook.text("profiles/gb.yaml")).append("\nchecks:\n");
    for (int i = 0; i < checks; i++) {
      text.append(
              "  c" + i + ": {title: t, protects: from x, stage: cold, requirement: class is I,")
          .append(" consequence: fail, source: {of: practice, standing: common practice}}\n");
    }
    Path file = folder.resolve("big.yaml");
    Files.writeString(file, text);
    return file;
  }

  @Test
  void tenThousandChecksAreMoreThanAFileMayHold() throws IOException {
    Run run = Run.of("rules", "check", profile(10_000));
    assertEquals(3, run.code());
    assertTrue(run.err().contains("too large"), run.err());
  }

  @Test
  void threeThousandAreRead() throws IOException {
    Run run = Run.of("rules", "check", profile(3_000));
    assertEquals(0, run.code(), run.err());
    int all = Rulebook.gb().checks().size() + 3_000;
    assertTrue(run.out().contains("big: " + all + " checks"), run.out());
  }

  @Test
  void tenThousandInSeveralFilesAreRead() throws IOException {
    Path bench = Run.smallBench(folder);
    StringBuilder named = new StringBuilder();
    for (int part = 0; part < 4; part++) {
      String name = "rules/part-" + part + ".yaml";
      named.append(part == 0 ? "" : ", ").append(name);
      Files.createDirectories(bench.resolve("rules"));
      Files.writeString(bench.resolve(name), overlay(part, 2_500));
    }
    Path file = bench.resolve("bench.yaml");
    String text = Files.readString(file);
    Files.writeString(
        file, text.replace("profile: gb\n", "profile: gb\noverlays: [" + named + "]\n"));
    Run run = Run.of("check", bench, "--json");
    assertEquals("", run.err());
    assertTrue(run.out().contains("\"check\": \"c3-2499\""), "the last check of the last file");
  }

  private static String overlay(int part, int checks) {
    StringBuilder text =
        new StringBuilder("format: 1\noverlay: part-" + part + "\ntitle: one of four\n")
            .append("edition: own\nlanguage: 1\nfor: \"2026.1\"\nchecks:\n");
    for (int i = 0; i < checks; i++) {
      text.append("  c" + part + "-" + i + ": {title: t, protects: from x, stage: cold,")
          .append(" requirement: class is I, consequence: fail,")
          .append(" source: {of: practice, standing: common practice}}\n");
    }
    return text.toString();
  }
}
