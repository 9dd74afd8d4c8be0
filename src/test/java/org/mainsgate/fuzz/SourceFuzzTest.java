package org.mainsgate.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.DictionaryEntries;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.provider.MethodSource;
import org.mainsgate.report.Terms;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.Position;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/** Any bytes, read as strict YAML and bound to a record: only complaints, never an exception. */
class SourceFuzzTest {

  /** A record with components of every kind that the binder knows. */
  record Whole(
      Position at,
      Text format,
      @Nullable Text title,
      @Nullable Whole inner,
      List<Text> words,
      List<Whole> parts,
      List<List<Text>> rows,
      Map<String, Text> answers,
      Map<String, Whole> things,
      @Nullable Fields loose,
      @Nullable Items open,
      @Nullable Node any) {}

  @MethodSource("seeds")
  @DictionaryEntries({
    "format: 1\\x0A",
    "title: ",
    "inner: ",
    "words: ",
    "parts: ",
    "rows: ",
    "answers: ",
    "things: ",
    "loose: ",
    "open: ",
    "any: ",
    "\\x0A  ",
    "- ",
    "? ",
    ": ",
    "|\\x0A ",
    ">-\\x0A ",
    "---",
    "...",
    "%YAML",
    "<<: ",
    "&x ",
    "*x",
    "!t ",
    "[",
    "]",
    "{",
    "}",
    ", ",
    "\\x5Cu",
    "\\x5CU0010FFFF",
    "\\xC2\\x85",
    "\\xE2\\x80\\xAE"
  })
  @FuzzTest(maxDuration = "8m")
  void anyBytesAreReadOrComplainedOf(byte[] bytes) {
    Complaints complaints = new Complaints();
    Optional<Node> node = StrictYaml.read("f", bytes, complaints);
    assertTrue(node.isPresent() || !complaints.isEmpty());
    node.ifPresent(SourceFuzzTest::touch);
    rendered(complaints);

    Complaints ofBinder = new Complaints();
    Optional<Whole> whole =
        StrictYaml.readFields("f", bytes, ofBinder)
            .flatMap(fields -> Binder.bind(fields, Whole.class, ofBinder));
    assertTrue(whole.isPresent() || !ofBinder.isEmpty());
    rendered(ofBinder);

    Complaints ofTerms = new Complaints();
    assertTrue(Terms.read("f", bytes, ofTerms).isPresent() || !ofTerms.isEmpty());
    rendered(ofTerms);
  }

  private static void rendered(Complaints complaints) {
    assertEquals(complaints.isEmpty(), complaints.renderAll().isEmpty());
  }

  /** Every character of a text has a place, and none before the one it follows. */
  private static void touch(Node node) {
    if (node instanceof Items items) {
      items.items().forEach(SourceFuzzTest::touch);
    } else if (node instanceof Fields fields) {
      fields.fields().forEach(field -> touch(field.key()));
      fields.fields().forEach(field -> touch(field.value()));
    } else if (node instanceof Text text) {
      Position last = text.at();
      for (int i = 0; i <= text.value().length(); i++) {
        Position next = text.at(i);
        assertTrue(last.compareTo(next) <= 0, () -> "a place goes back in " + text.value());
        last = next;
      }
    }
  }

  /** The files that people are shown, none too long to be altered usefully. */
  static List<byte[]> seeds() throws IOException {
    List<byte[]> seeds = new ArrayList<>();
    for (String folder : List.of("demo-data", "rulesets")) {
      try (Stream<Path> files = Files.walk(Path.of(folder))) {
        files
            .filter(path -> path.toString().endsWith(".yaml"))
            .filter(path -> path.toFile().length() < 8000)
            .forEach(path -> seeds.add(bytes(path)));
      }
    }
    return seeds;
  }

  private static byte[] bytes(Path path) {
    try {
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
