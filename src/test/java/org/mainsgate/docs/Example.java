package org.mainsgate.docs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;

/**
 * A fenced block of a page.
 *
 * @param page the page's path
 * @param line the line of its fence, counted from 1
 * @param language what the fence says it holds, empty if nothing
 * @param text what stands in it, each line with its end
 */
@NullMarked
record Example(Path page, int line, String language, String text) {
  private static final Pattern FENCE = Pattern.compile("```([a-z]*)");

  /** The pages whose examples are held to what the program does. */
  static List<Path> pages() {
    try (Stream<Path> docs = Files.walk(Path.of("docs"))) {
      List<Path> pages = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
      docs.filter(path -> path.toString().endsWith(".md")).sorted().forEach(pages::add);
      return pages;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The fenced blocks of all pages that hold this. */
  static List<Example> all(String language) {
    return pages().stream()
        .flatMap(page -> of(page).stream())
        .filter(example -> example.language().equals(language))
        .toList();
  }

  /** The fenced blocks of a page in their order. */
  static List<Example> of(Path page) {
    List<Example> examples = new ArrayList<>();
    List<String> lines = read(page).lines().toList();
    for (int at = 0; at < lines.size(); at++) {
      Matcher fence = FENCE.matcher(lines.get(at));
      if (fence.matches()) {
        int end = at + 1;
        StringBuilder text = new StringBuilder();
        while (!lines.get(end).equals("```")) {
          text.append(lines.get(end++)).append('\n');
        }
        examples.add(new Example(page, at + 1, fence.group(1), text.toString()));
        at = end;
      }
    }
    return examples;
  }

  static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What its first line says it is, without the sign of a comment. */
  String marker() {
    String first = text.lines().findFirst().orElse("");
    return first.startsWith("# ") ? first.substring(2) : "";
  }

  String place() {
    return page + ":" + line;
  }

  /** The lines but the first, in pieces where a line says that something was left out. */
  List<String> pieces(String leftOut) {
    String rest = text.substring(text.indexOf('\n') + 1);
    return Stream.of(rest.split("(?m)^" + Pattern.quote(leftOut) + "\n", -1))
        .filter(piece -> !piece.isEmpty())
        .toList();
  }
}
