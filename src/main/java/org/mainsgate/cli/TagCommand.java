package org.mainsgate.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.TagSheet;
import org.mainsgate.seal.Broken;
import org.mainsgate.seal.SealedFile;
import org.mainsgate.seal.Tags;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints tags for sealed records. */
@Command(
    name = "tag",
    mixinStandardHelpOptions = true,
    header = "Print tags to tie to the plug end of the lead",
    description = {
      "",
      "Writes a tag for each sealed record: what it is, the verdict and the stage in",
      "words, when to look again, and a square code with the digest of the file and the",
      "key. Eight to an A4 sheet, or one label of 62 by 40 mm each with `--small`.",
      ""
    },
    footer = {"", "For example:", "  mainsgate tag NL-01.pdf NL-04.pdf -o tags.pdf"})
final class TagCommand implements Callable<Integer> {
  private final App app;

  @Parameters(index = "0..*", paramLabel = "FILE", arity = "1..*", description = "sealed records")
  List<Path> files = List.of();

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      required = true,
      description = "the PDF to write, in place of what is there")
  Path out;

  @Option(names = "--small", description = "one small label for each")
  boolean small;

  TagCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    List<TagSheet.Tag> tags = new ArrayList<>();
    Exit exit = Exit.PASS;
    for (Path file : files) {
      List<Broken> broken = new ArrayList<>();
      Optional<TagSheet.Tag> tag = Tags.of(BoundedFile.read(file, SealedFile.MOST_BYTES), broken);
      broken.forEach(found -> app.err().println(file + ": " + found.words()));
      tag.ifPresent(tags::add);
      exit = tag.isPresent() ? exit : exit.worse(Exit.ALTERED);
    }
    if (exit == Exit.PASS) {
      exit = write(new TagSheet(small ? TagSheet.Form.SMALL : TagSheet.Form.SHEET, tags));
    } else {
      app.err().println("nothing was written");
    }
    return exit.code();
  }

  private Exit write(TagSheet sheet) throws IOException {
    Pdf pdf = new Pdf();
    List<String> complaints = pdf.complaints(sheet);
    complaints.forEach(app.err()::println);
    if (!complaints.isEmpty()) {
      return Exit.UNUSABLE;
    }
    ByteArrayOutputStream page = new ByteArrayOutputStream();
    pdf.write(sheet, LocalDate.now(app.clock().withZone(ZoneOffset.UTC)), page);
    new PageFile(out).replace(page.toByteArray());
    app.out().println("written: " + out);
    return Exit.PASS;
  }
}
