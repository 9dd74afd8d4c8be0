package org.mainsgate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.function.Executable;

/**
 * Golden files: text that was looked at once by a person and must stay as it is.
 *
 * <p>They are {@code src/test/resources/golden/FOLDER/NAME.txt}. Where the text is another now, the
 * check fails with both and writes the new one to {@code target/golden/FOLDER/NAME.txt}; a person
 * looks at it and moves it. A file that no case stands for fails too, so each folder belongs to one
 * check.
 */
@NullMarked
public final class Golden {

  private static final Path KEPT = Path.of("src", "test", "resources", "golden");
  private static final Path NEW = Path.of("target", "golden");

  private Golden() {}

  /**
   * Checks all golden files of a folder at once.
   *
   * @param folder below {@code golden}, such as {@code source}
   * @param texts the text that each file should have, by its name without {@code .txt}
   */
  public static void check(String folder, Map<String, String> texts) {
    List<Executable> checks = new ArrayList<>();
    new TreeMap<>(texts).forEach((name, text) -> checks.add(() -> checkOne(folder, name, text)));
    checks.add(() -> checkOrphans(folder, texts));
    Assertions.assertAll("golden files of " + folder, checks);
  }

  private static void checkOne(String folder, String name, String text) {
    Path file = KEPT.resolve(folder).resolve(name + ".txt");
    String kept = Files.exists(file) ? read(file) : "";
    if (!kept.equals(text)) {
      Path written = NEW.resolve(folder).resolve(name + ".txt");
      write(written, text);
      assertEquals(kept, text, file + " is another now; the new text is in " + written);
    }
  }

  private static void checkOrphans(String folder, Map<String, String> texts) {
    try (Stream<Path> files = Files.list(KEPT.resolve(folder))) {
      TreeSet<String> orphans = new TreeSet<>();
      files
          .filter(Files::isRegularFile)
          .map(file -> file.getFileName().toString())
          .filter(
              name ->
                  !(name.endsWith(".txt")
                      && texts.containsKey(name.substring(0, name.length() - 4))))
          .forEach(orphans::add);
      assertEquals(new TreeSet<>(), orphans, "golden files that no case stands for");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void write(Path file, String text) {
    try {
      Files.createDirectories(file.getParent());
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
