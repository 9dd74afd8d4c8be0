package org.mainsgate.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.mainsgate.desk.Desk;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Screen;
import org.mainsgate.report.Setting;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.verdict.Verdict;

/** A bench that is judged, one instrument after the other. */
final class Judging {
  private final OpenBench desk;
  private final Setting setting;
  private final List<String> tags;
  private final List<Screen.Verdicted> judged = new ArrayList<>();
  private final List<String> unreadable = new ArrayList<>();

  private Judging(OpenBench desk, Setting setting, List<String> tags) {
    this.desk = desk;
    this.setting = setting;
    this.tags = desk.folder().wanted(tags);
  }

  /** Opens what was asked for; empty if nothing can be judged at all, after complaints. */
  static Optional<Judging> of(App app, BenchOptions asked) {
    return OpenBench.open(app, asked.bench, asked.profile)
        .flatMap(desk -> stage(app, desk, asked).map(stage -> of(desk, asked, stage)));
  }

  private static Judging of(OpenBench desk, BenchOptions asked, Stage stage) {
    Setting setting =
        new Setting(
            desk.bench(), desk.rules(), asked.profile != null, stage, desk.day(asked.meant.on));
    return new Judging(desk, setting, asked.tags);
  }

  /** What came of one instrument. */
  private record Looked<T>(Screen.Verdicted line, T seen) {}

  /**
   * Judges them all.
   *
   * @param look what is wanted of each; asked for several at the same time
   * @param each is told that, in the order of the tags
   */
  <T> void each(Desk.Pictures pictures, Function<Dossier, T> look, Consumer<T> each) {
    desk.<Looked<T>>each(
        tags,
        setting,
        pictures,
        dossier -> new Looked<>(Screen.Verdicted.of(dossier), look.apply(dossier)),
        looked -> {
          judged.add(looked.line());
          each.accept(looked.seen());
        },
        unreadable::add);
  }

  Setting setting() {
    return setting;
  }

  /** The tags of those that could not be read. */
  List<String> unreadable() {
    return List.copyOf(unreadable);
  }

  List<Verdict> verdicts() {
    return judged.stream().map(Screen.Verdicted::verdict).toList();
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

  /** An instrument on the screen: in full where it is the only one. */
  String onScreen(Screen screen, Dossier dossier) {
    return tags.size() > 1 ? screen.oneOfSeveral(dossier) : screen.instrument(dossier);
  }

  /** What stands below them all. */
  String summary(Screen screen) {
    return screen.summary(setting, judged, unreadable);
  }

  /** The worst of all. */
  Exit exit() {
    Exit worst = unreadable.isEmpty() ? Exit.PASS : Exit.UNUSABLE;
    for (Verdict verdict : verdicts()) {
      worst = worst.worse(Exit.of(verdict));
    }
    return worst;
  }
}
