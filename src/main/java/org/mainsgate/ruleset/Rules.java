package org.mainsgate.ruleset;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Table;
import org.mainsgate.source.Position;

/**
 * The rules that a bench works under: the common rules, with the values of one profile and the
 * local rules laid over them.
 *
 * @param profile the profile's name, or the path of its file
 * @param title the profile's title
 * @param edition the edition
 * @param identity SHA-256 over the names, editions and hashes of everything it is made of, in hex
 * @param vocabulary the words of the record
 * @param stages by id
 * @param checks by id, in the order in which they are printed
 * @param limits by name
 * @param tables by name
 * @param dependencies what stops being true when something is worked on
 * @param meterKinds by name
 * @param overlays the local rules, in the order in which they were laid
 * @param order the steps of the work at an instrument; empty where the rules name none
 */
public record Rules(
    String profile,
    String title,
    String edition,
    String identity,
    Vocabulary vocabulary,
    Map<String, Stage> stages,
    Map<String, Check> checks,
    Map<String, Limit> limits,
    Map<String, CitedTable> tables,
    List<Dependency> dependencies,
    Map<String, MeterKind> meterKinds,
    List<Overlay> overlays,
    List<WorkStep> order) {

  /** Keeps the collections as they are, in their order. */
  public Rules {
    stages = ordered(stages);
    checks = ordered(checks);
    limits = ordered(limits);
    tables = ordered(tables);
    dependencies = List.copyOf(dependencies);
    meterKinds = ordered(meterKinds);
    overlays = List.copyOf(overlays);
    order = List.copyOf(order);
  }

  private static <T> Map<String, T> ordered(Map<String, T> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  /**
   * A table, and where each of its rows comes from.
   *
   * @param table the table
   * @param citations by the row's id
   * @param texts each row as it is printed, by its id
   * @param at where it stands
   */
  public record CitedTable(
      Table table, Map<String, Citation> citations, Map<String, String> texts, Position at) {

    /** Keeps the maps as they are. */
    public CitedTable {
      Map<String, Citation> cited = Map.copyOf(citations);
      citations = cited;
      texts = Map.copyOf(texts);
      if (!table.rows().stream().allMatch(row -> cited.containsKey(row.id()))) {
        throw new IllegalArgumentException("a row of " + table.name() + " without a source");
      }
    }

    /** Where a row comes from. */
    public Citation citation(String row) {
      Citation citation = citations.get(row);
      if (citation == null) {
        throw new IllegalArgumentException("no row " + row);
      }
      return citation;
    }
  }

  /** The checks of a stage, in order. */
  public List<Check> checksOf(Stage stage) {
    return checks.values().stream().filter(check -> check.stages().contains(stage.id())).toList();
  }

  /** The stage of this id. */
  public Optional<Stage> stage(String id) {
    return Optional.ofNullable(stages.get(id));
  }

  /** Where local rules are less strict than the rules below them, and on whose word. */
  public List<Overlay.Relaxation> relaxations() {
    return overlays.stream().flatMap(overlay -> overlay.relaxations().stream()).toList();
  }

  /** The values from memory that local rules confirm, and on whose word. */
  public List<Overlay.Confirmation> confirmations() {
    return overlays.stream().flatMap(overlay -> overlay.confirmations().stream()).toList();
  }

  /** Whether the profile is a file, not one that the program carries. */
  public boolean fromFile() {
    return profile.endsWith(".yaml");
  }

  /** The first stage: the one that is judged unless another is asked for. */
  public Stage firstStage() {
    return stages.values().iterator().next();
  }
}
