package org.mainsgate.judges;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A sealed record to judge. Its name says what it has to be: {@code …-accepted-2.pdf} has three
 * signatures, and those of {@code time-stamped-…} are stamped.
 *
 * @param file where it is
 * @param acceptances how many signatures follow the first
 * @param stamped whether each signature has a time-stamp
 */
record Sealed(Path file, int acceptances, boolean stamped) {
  private static final Pattern NAME = Pattern.compile("(time-stamped-)?.*accepted-([0-5])\\.pdf");

  /** The folder of the records and of the certificates that are to be trusted. */
  static final Path FOLDER = Path.of(System.getProperty("reports"), "sealed");

  /** The same of records by chance: a dozen, or a thousand where the tests were told to. */
  private static final Path RANDOM = FOLDER.resolveSibling("random");

  /** All that there are; none is a fault of whoever asks. */
  static List<Sealed> all() throws IOException {
    List<Sealed> all = new ArrayList<>(in(FOLDER));
    all.addAll(in(RANDOM));
    return all;
  }

  /** The certificates that stand beside it. */
  List<Path> certificates() throws IOException {
    try (Stream<Path> files = Files.list(file.toAbsolutePath().getParent())) {
      return files.filter(found -> found.toString().endsWith(".cer")).sorted().toList();
    }
  }

  private static List<Sealed> in(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new IOException("no folder " + folder + ": run the tests of the program first");
    }
    try (Stream<Path> files = Files.list(folder)) {
      List<Sealed> all =
          files
              .filter(file -> file.toString().endsWith(".pdf"))
              .sorted()
              .map(Sealed::named)
              .toList();
      if (all.isEmpty()) {
        throw new IOException("no sealed record in " + folder);
      }
      return all;
    }
  }

  /** The record of this name. */
  static Sealed named(String name) {
    return named(FOLDER.resolve(name));
  }

  private static Sealed named(Path file) {
    Matcher matcher = NAME.matcher(file.getFileName().toString());
    if (!matcher.matches()) {
      throw new IllegalArgumentException("the name of " + file + " does not say what it is");
    }
    return new Sealed(file, Integer.parseInt(matcher.group(2)), matcher.group(1) != null);
  }

  /** The fields that are signed, in their order. */
  List<String> fields() {
    return Stream.concat(
            Stream.of("certify"),
            IntStream.rangeClosed(1, acceptances).mapToObj(i -> "accept-" + i))
        .toList();
  }

  String name() {
    return file.getFileName().toString();
  }
}
