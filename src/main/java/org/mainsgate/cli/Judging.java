package org.mainsgate.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Palette;
import org.mainsgate.report.Screen;
import org.mainsgate.report.Setting;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;

/**
 * A bench that has been judged.
 *
 * @param setting what it was judged under
 * @param dossiers the instruments that could be read
 * @param unreadable the tags of those that could not
 */
record Judging(Setting setting, List<Dossier> dossiers, List<String> unreadable) {

  /** Keeps the dossiers as they are. */
  Judging {
    dossiers = List.copyOf(dossiers);
    unreadable = List.copyOf(unreadable);
  }

  /** Judges what was asked for; empty if nothing could be judged at all, after complaints. */
  static Optional<Judging> of(App app, BenchOptions asked) {
    return OpenBench.open(app, asked.bench, asked.profile)
        .flatMap(desk -> stage(app, desk, asked).map(stage -> judge(desk, asked, stage)));
  }

  private static Judging judge(OpenBench desk, BenchOptions asked, Stage stage) {
    Setting setting =
        new Setting(
            desk.bench(), desk.rules(), asked.profile != null, stage, desk.day(asked.meant.on));
    List<String> unreadable = new ArrayList<>();
    List<Dossier> dossiers = desk.dossiers(asked.tags, setting, unreadable::add);
    return new Judging(setting, dossiers, unreadable);
  }

  private static Optional<Stage> stage(App app, OpenBench desk, BenchOptions asked) {
    return stage(app, desk, asked.meant.stage);
  }

  /** The stage of this id, the first if none is given; empty after a complaint. */
  static Optional<Stage> stage(App app, OpenBench desk, @Nullable String id) {
    if (id == null) {
      return Optional.of(desk.rules().firstStage());
    }
    Optional<Stage> stage = desk.rules().stage(id);
    if (stage.isEmpty()) {
      Complaints complaints = new Complaints();
      complaints.addUnknown(
          new Position("--stage", 1, 1), "stage", id, desk.rules().stages().keySet());
      app.err().print(complaints.renderAll());
    }
    return stage;
  }

  /** The screen: each instrument, then all of them. */
  String screen(Palette palette) {
    Screen screen = new Screen(palette);
    StringBuilder text = new StringBuilder();
    boolean several = dossiers.size() > 1;
    dossiers.forEach(
        dossier ->
            text.append(several ? screen.oneOfSeveral(dossier) : screen.instrument(dossier)));
    return text.append(screen.summary(setting, dossiers, unreadable)).toString();
  }

  /** The worst of all. */
  Exit exit() {
    Exit worst = unreadable.isEmpty() ? Exit.PASS : Exit.UNUSABLE;
    for (Dossier dossier : dossiers) {
      worst = worst.worse(Exit.of(dossier.assessment().verdict()));
    }
    return worst;
  }
}
