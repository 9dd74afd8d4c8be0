package org.mainsgate.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Screen;
import org.mainsgate.report.Sheet;
import org.mainsgate.store.NewFile;
import org.mainsgate.store.NewFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Judges instruments and writes a PDF for each. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    header = "Judge them and write a PDF for each",
    description = {
      "",
      "Judges the instruments of a bench, prints the verdicts, and writes one PDF",
      "for each instrument. A report of the same instrument and day is replaced.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate report demo-data/north-light -o reports",
      "",
      "Ends like `check`, so that a fail is never taken for done."
    })
final class ReportCommand implements Callable<Integer> {
  private final App app;

  @Mixin BenchOptions bench = new BenchOptions();

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FOLDER",
      required = true,
      description = "the folder for the PDFs; made if it is not there")
  Path folder;

  ReportCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Optional<Judging> judging = Judging.of(app, bench);
    return (judging.isPresent() ? write(judging.get()) : Exit.UNUSABLE).code();
  }

  private Exit write(Judging judging) throws IOException {
    Screen screen = new Screen(app.palette());
    List<Dossier> dossiers = new ArrayList<>();
    judging.each(
        Desk.Pictures.SHOWN,
        dossier -> dossier,
        dossier -> {
          app.out().print(judging.onScreen(screen, dossier));
          dossiers.add(dossier);
        });
    app.out().print(judging.summary(screen));
    Exit worst = judging.exit();
    NewFolder.make(folder);
    NewFile.sweep(folder);
    Pdf pdf = new Pdf();
    for (Dossier dossier : dossiers) {
      worst = worst.worse(write(pdf, dossier, judging));
    }
    return worst;
  }

  private Exit write(Pdf pdf, Dossier dossier, Judging judging) throws IOException {
    Sheet sheet = Sheet.of(dossier);
    List<String> complaints = pdf.complaints(sheet);
    if (!complaints.isEmpty()) {
      complaints.forEach(found -> app.err().println(dossier.instrument().tag() + ": " + found));
      return Exit.UNUSABLE;
    }
    ByteArrayOutputStream page = new ByteArrayOutputStream();
    pdf.write(sheet, judging.setting().on(), page);
    Path file = folder.resolve(dossier.instrument().tag() + "_" + judging.setting().on() + ".pdf");
    new PageFile(file).replace(page.toByteArray());
    app.out().println("written: " + file);
    return Exit.PASS;
  }
}
