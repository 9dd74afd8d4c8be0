package org.mainsgate.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * A bench of as many instruments as wanted: those of the demonstration bench over and over, under
 * new tags, without pictures. Drafts stay drafts.
 */
final class GeneratedBench {
  private GeneratedBench() {}

  public static void main(String[] arguments) throws IOException {
    make(Path.of(arguments[0]), Path.of(arguments[1]), Integer.parseInt(arguments[2]));
  }

  static void make(Path like, Path folder, int instruments) throws IOException {
    Files.createDirectories(folder.resolve("instruments"));
    Files.copy(like.resolve("bench.yaml"), folder.resolve("bench.yaml"));
    List<Path> models = children(like.resolve("instruments"));
    for (int i = 0; i < instruments; i++) {
      instrument(models.get(i % models.size()), folder.resolve("instruments"), i);
    }
  }

  private static List<Path> children(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.sorted().toList();
    }
  }

  private static void instrument(Path model, Path instruments, int number) throws IOException {
    String tag = String.format(Locale.ROOT, "G-%06d", number);
    Path folder = Files.createDirectories(instruments.resolve(tag));
    String text = Files.readString(model.resolve("instrument.yaml"));
    Files.writeString(
        folder.resolve("instrument.yaml"),
        text.replace("tag: " + model.getFileName(), "tag: " + tag)
            .replaceAll("(uid: .{24}).*", String.format(Locale.ROOT, "$1%012x", number))
            .replaceAll("(plate_)?photo: .*\n", ""));
    Path visits = Files.createDirectories(folder.resolve("visits"));
    for (Path visit : children(model.resolve("visits"))) {
      Files.copy(visit, visits.resolve(visit.getFileName().toString()));
    }
  }
}
