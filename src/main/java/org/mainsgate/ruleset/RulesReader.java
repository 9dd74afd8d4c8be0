package org.mainsgate.ruleset;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.mainsgate.formula.Formula;
import org.mainsgate.formula.Meaning;
import org.mainsgate.formula.Table;
import org.mainsgate.quantity.Dimension;
import org.mainsgate.quantity.MeterRange;
import org.mainsgate.quantity.Typed;
import org.mainsgate.quantity.Unit;
import org.mainsgate.ruleset.OverlayFile.AmendEntry;
import org.mainsgate.ruleset.RulesetFile.CheckEntry;
import org.mainsgate.ruleset.RulesetFile.DependsEntry;
import org.mainsgate.ruleset.RulesetFile.LimitEntry;
import org.mainsgate.ruleset.RulesetFile.MeterKindEntry;
import org.mainsgate.ruleset.RulesetFile.ParameterEntry;
import org.mainsgate.ruleset.RulesetFile.RangeEntry;
import org.mainsgate.ruleset.RulesetFile.StageEntry;
import org.mainsgate.ruleset.RulesetFile.TableEntry;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;

/**
 * Makes rules of the files of an edition, of one profile and of the overlays: first everything that
 * has a name, then the formulas that use the names.
 */
final class RulesReader {
  private final Vocabulary vocabulary;
  private final List<RulesetFile> common;
  private final RulesetFile profile;
  private final List<RulesetFile> all;
  private final List<OverlayFile> overlays;
  private final Adjustment adjustment;
  private final Complaints complaints;
  private final Wording wording;
  private final Citations citations;
  private final Map<String, ParameterEntry> parameters = new LinkedHashMap<>();
  private final Map<String, Limit> limits = new LinkedHashMap<>();
  private final Map<String, Rules.CitedTable> tables = new LinkedHashMap<>();
  private final Map<String, Meaning> steps = new LinkedHashMap<>();
  private final Map<String, Stage> stages = new LinkedHashMap<>();
  private final Map<String, MeterKind> meterKinds = new LinkedHashMap<>();
  private final Map<String, Check> checks = new LinkedHashMap<>();
  private final Set<String> ids = new LinkedHashSet<>();
  private final List<Dependency> dependencies = new ArrayList<>();
  private final List<OverlayFile> laid = new ArrayList<>();

  RulesReader(
      Vocabulary vocabulary,
      List<RulesetFile> common,
      RulesetFile profile,
      List<OverlayFile> overlays,
      Adjustment adjustment,
      Complaints complaints) {
    this.vocabulary = vocabulary;
    this.common = common;
    this.profile = profile;
    this.all = Stream.concat(common.stream(), Stream.of(profile)).toList();
    this.overlays = overlays;
    this.adjustment = adjustment;
    this.complaints = complaints;
    this.wording = new Wording(complaints);
    this.citations = new Citations(complaints);
  }

  /** The rules, if nothing was complained about. */
  Optional<Rules> read(String name, String identity) {
    all.forEach(file -> citations.declare(file.sources()));
    common.forEach(
        file ->
            file.parameters()
                .forEach((given, e) -> putOnce(parameters, given, e, "parameter", e.at())));
    all.forEach(this::readValues);
    parameters.forEach((given, entry) -> demandValue(given, entry));
    if (!complaints.isEmpty()) {
      // Formulas that use a name without a value would be complained about for nothing.
      return Optional.empty();
    }
    all.forEach(file -> ids.addAll(file.checks().keySet()));
    all.stream().flatMap(file -> file.stages().values().stream()).forEach(this::verifyNever);
    readFormulas();
    new Order(checks, complaints).verify();
    List<Overlay> overlaid = new ArrayList<>();
    for (OverlayFile overlay : overlays) {
      if (complaints.isEmpty()) {
        new OverlayReader(overlay, this, citations, wording, complaints)
            .read()
            .ifPresent(overlaid::add);
      }
    }
    List<WorkStep> order = new WorkOrder(vocabulary, checks, wording, complaints).read(all);
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    Rules rules =
        new Rules(
            name,
            Wording.orEmpty(profile.title()),
            profile.edition().value(),
            identity,
            vocabulary,
            stages,
            checks,
            limits,
            tables,
            dependencies,
            meterKinds,
            overlaid,
            order);
    return Optional.of(rules);
  }

  /** Reads every formula under the values as they are now. */
  private void readFormulas() {
    steps.clear();
    checks.clear();
    all.forEach(this::readSteps);
    all.forEach(file -> file.checks().forEach(this::readCheck));
    laid.forEach(overlay -> overlay.checks().forEach(this::readCheck));
  }

  /** The limits and checks as they are now; what is laid over them later does not change these. */
  record Snapshot(
      Map<String, Limit> limits, Map<String, Check> checks, Map<String, Rules.CitedTable> tables) {}

  Snapshot snapshot() {
    return new Snapshot(
        new LinkedHashMap<>(limits), new LinkedHashMap<>(checks), new LinkedHashMap<>(tables));
  }

  Map<String, MeterKind> meterKinds() {
    return meterKinds;
  }

  /** Whether a name means something already, in any formula. */
  boolean means(String name) {
    boolean word =
        vocabulary.properties().values().stream()
            .anyMatch(p -> p instanceof Property.Observation o && o.titles().containsKey(name));
    boolean step =
        Stream.concat(all.stream().map(RulesetFile::checks), laid.stream().map(OverlayFile::checks))
            .anyMatch(
                entries ->
                    entries.values().stream().anyMatch(check -> check.steps().containsKey(name)));
    return word || step || Formula.isReserved(name) || scope(Optional.empty()).knows(name);
  }

  /** Lays an overlay's limits and checks over the rules, and reads every formula again. */
  void lay(OverlayFile overlay) {
    laid.add(overlay);
    ids.addAll(overlay.checks().keySet());
    overlay.limits().forEach(this::overlayLimit);
    readFormulas();
    if (complaints.isEmpty()) {
      new Order(checks, complaints).verify();
    }
  }

  /** Puts a limit or a table in the place of the one of the same name, but for its sources. */
  void confirm(Limit limit) {
    limits.put(limit.name(), limit);
  }

  void confirm(Rules.CitedTable table) {
    tables.put(table.table().name(), table);
  }

  private void overlayLimit(String name, LimitEntry entry) {
    Optional<Limit> before = Optional.ofNullable(limits.get(name));
    limit(name, entry, before.map(limit -> limit.unit().dimension()), before.map(Limit::title))
        .ifPresent(limit -> limits.put(name, limit));
  }

  private <T> void putOnce(Map<String, T> into, String name, T entry, String what, Position at) {
    if (into.putIfAbsent(name, entry) != null) {
      complaints.add(at, "the " + what + " `" + name + "` is given twice", "one of them");
    }
  }

  private void readValues(RulesetFile file) {
    file.limits().forEach(this::readLimit);
    file.tables().forEach(this::readTable);
    file.stages()
        .forEach((id, entry) -> putOnce(stages, id, stage(id, entry), "stage", entry.title().at()));
    file.meterKinds().forEach(this::readMeterKind);
    file.depends().forEach(this::readDependency);
  }

  private void readLimit(String name, LimitEntry entry) {
    Optional<ParameterEntry> parameter = Optional.ofNullable(parameters.get(name));
    Optional<Text> unit = parameter.map(ParameterEntry::unit);
    Optional<Dimension> dimension = unit.flatMap(wording::unit).map(Unit::dimension);
    if (unit.isPresent() && dimension.isEmpty()) {
      return;
    }
    limit(name, entry, dimension, parameter.map(found -> found.title().value()))
        .ifPresent(limit -> putOnce(limits, name, limit, "limit", entry.at()));
  }

  /** A limit of this dimension, if one is said, and of this title, unless it has its own. */
  private Optional<Limit> limit(
      String name, LimitEntry entry, Optional<Dimension> dimension, Optional<String> title) {
    Optional<Wording.Value> value =
        dimension
            .map(found -> wording.value(entry.value(), found))
            .orElseGet(() -> wording.value(entry.value()));
    Optional<Citation> citation = citations.of(entry);
    if (value.isEmpty() || citation.isEmpty()) {
      return Optional.empty();
    }
    String own = Wording.orEmpty(entry.title());
    return Optional.of(
        new Limit(
            name,
            own.isEmpty() ? title.orElse(name) : own,
            adjustment.apply(name, value.get().si()),
            value.get().unit(),
            entry.value().value(),
            citation.get(),
            entry.at()));
  }

  private void readTable(String name, TableEntry entry) {
    new TableReader(vocabulary, citations, wording, adjustment, complaints)
        .read(name, entry, Optional.ofNullable(parameters.get(name)))
        .ifPresent(table -> putOnce(tables, name, table, "table", entry.at()));
  }

  /** A profile leaves no parameter of the common rules without a value. */
  private void demandValue(String name, ParameterEntry entry) {
    boolean isLimit = entry.key() == null;
    boolean given =
        all.stream()
            .anyMatch(
                file ->
                    isLimit ? file.limits().containsKey(name) : file.tables().containsKey(name));
    if (!given) {
      complaints.add(
          profile.at(),
          "no value for `" + name + "` (" + entry.title().value() + ")",
          "`" + name + (isLimit ? "` under `limits`" : "` under `tables`"));
    }
  }

  private void verifyNever(StageEntry entry) {
    entry.never().forEach(text -> wording.oneOf("check", text, ids));
  }

  private Stage stage(String id, StageEntry entry) {
    entry
        .goesWith()
        .forEach(text -> wording.oneOf("property", text, vocabulary.properties().keySet()));
    Optional<Text> uses = Optional.ofNullable(entry.uses());
    uses.ifPresent(text -> wording.oneOf("word", text, List.of("yes", "no")));
    return new Stage(
        id,
        entry.title().value(),
        entry.clears().value(),
        entry.says().value().strip(),
        entry.pass().value().strip(),
        entry.hold().value().strip(),
        entry.fail().value().strip(),
        entry.cautions().stream().map(text -> text.value().strip()).toList(),
        uses.filter(text -> text.value().equals("yes")).isPresent(),
        entry.never().stream().map(Text::value).toList(),
        entry.goesWith().stream().map(Text::value).toList());
  }

  private void readMeterKind(String name, MeterKindEntry entry) {
    Map<String, List<MeterRange>> functions = new LinkedHashMap<>();
    entry.functions().forEach((function, ranges) -> functions.put(function, ranges(ranges)));
    Standing standing = citations.standing(entry.standing()).orElse(Standing.COMMON_PRACTICE);
    putOnce(
        meterKinds,
        name,
        new MeterKind(name, entry.title().value(), standing, functions),
        "kind of meter",
        entry.title().at());
  }

  private List<MeterRange> ranges(List<RangeEntry> entries) {
    List<MeterRange> ranges = new ArrayList<>();
    for (RangeEntry entry : entries) {
      range(entry.to(), entry.digit(), entry.accuracy(), wording).ifPresent(ranges::add);
    }
    return ranges;
  }

  /** A range of a meter from its three texts; a bench file writes it the same way. */
  static Optional<MeterRange> range(Text to, Text digit, Text accuracy, Wording wording) {
    Optional<Typed> end = wording.typed(to);
    Optional<Unit> unit = end.flatMap(Typed::unit);
    return unit.flatMap(
        found ->
            wording
                .point(digit, found.dimension())
                .flatMap(Typed::nominal)
                .flatMap(
                    step ->
                        wording
                            .accuracy(accuracy)
                            .flatMap(
                                error ->
                                    end.flatMap(Typed::nominal)
                                        .map(top -> new MeterRange(top, step, error, found)))));
  }

  private void readDependency(DependsEntry entry) {
    Optional<String> on = wording.oneOf("kind of thing", entry.on(), vocabulary.kinds().keySet());
    List<String> valid = new ArrayList<>(vocabulary.properties().keySet());
    valid.addAll(vocabulary.listedKinds().stream().map(Kind::name).toList());
    List<String> voids = new ArrayList<>();
    entry.voids().forEach(text -> wording.oneOf("property", text, valid).ifPresent(voids::add));
    List<String> does = new ArrayList<>();
    entry
        .does()
        .forEach(
            text -> wording.oneOf("act", text, vocabulary.acts().keySet()).ifPresent(does::add));
    on.ifPresent(kind -> dependencies.add(new Dependency(kind, does, voids)));
  }

  private void readSteps(RulesetFile file) {
    CheckScope scope = scope(Optional.empty());
    file.steps()
        .forEach(
            (name, entry) ->
                CheckReader.step(name, entry, scope, complaints)
                    .ifPresent(step -> putOnce(steps, name, step, "step", entry.is().at())));
    CheckScope wider = scope(Optional.empty());
    file.statements()
        .forEach(
            (name, entry) ->
                CheckReader.statement(name, entry, wider, complaints)
                    .ifPresent(step -> putOnce(steps, name, step, "statement", entry.is().at())));
  }

  private void readCheck(String id, CheckEntry entry) {
    Optional<String> over =
        Optional.ofNullable(entry.over())
            .flatMap(
                text ->
                    wording.oneOf(
                        "list of things",
                        text,
                        vocabulary.listedKinds().stream().map(Kind::name).toList()));
    stages(entry.stage());
    entry.requires().forEach(text -> wording.oneOf("check", text, ids));
    new CheckReader(scope(over), citations, wording, complaints)
        .read(id, entry, over, amendments(id))
        .ifPresent(check -> putOnce(checks, id, check, "check", entry.at()));
  }

  /** The stages of a check: one, or a list of different ones. */
  private void stages(Node node) {
    List<String> named = new ArrayList<>();
    for (Node one : node instanceof Items items ? items.items() : List.of(node)) {
      if (!(one instanceof Text text)) {
        complaints.add(one, "not the name of a stage", Complaints.oneOf(stages.keySet()));
      } else if (named.contains(text.value())) {
        complaints.add(text, "`" + text.value() + "` stands twice", "each stage once");
      } else {
        named.add(text.value());
        wording.oneOf("stage", text, stages.keySet());
      }
    }
    if (names(node).isEmpty()) {
      complaints.add(node, "no stage", "the id of a stage, or a list of them");
    }
  }

  /** The names that stand in one place: one, or a list of them. */
  static List<String> names(Node node) {
    return texts(node).stream().map(Text::value).toList();
  }

  private static List<Text> texts(Node node) {
    List<Node> all = node instanceof Items items ? items.items() : List.of(node);
    return all.stream().filter(Text.class::isInstance).map(Text.class::cast).toList();
  }

  private List<AmendEntry> amendments(String id) {
    return laid.stream().flatMap(overlay -> overlay.amendment(id).stream()).toList();
  }

  private CheckScope scope(Optional<String> over) {
    Map<String, Table> plain = new LinkedHashMap<>();
    tables.forEach((name, cited) -> plain.put(name, cited.table()));
    return new CheckScope(vocabulary, limits, plain, steps, over);
  }
}
