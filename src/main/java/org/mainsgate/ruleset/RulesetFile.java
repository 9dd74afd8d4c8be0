package org.mainsgate.ruleset;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Node;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;

/** A ruleset or profile file as it is written, before its names and formulas are understood. */
record RulesetFile(
    Text format,
    @Nullable Text ruleset,
    @Nullable Text profile,
    @Nullable Text title,
    Text edition,
    Text language,
    Map<String, SourceEntry> sources,
    Map<String, ParameterEntry> parameters,
    Map<String, LimitEntry> limits,
    Map<String, TableEntry> tables,
    Map<String, StepEntry> steps,
    Map<String, StepEntry> statements,
    Map<String, MeterKindEntry> meterKinds,
    Map<String, StageEntry> stages,
    List<DependsEntry> depends,
    Map<String, WorkStepEntry> order,
    Map<String, CheckEntry> checks,
    Position at) {

  record SourceEntry(Text title, @Nullable Text edition) {}

  record ParameterEntry(
      Text title,
      @Nullable Text unit,
      @Nullable Text key,
      @Nullable Text row,
      Map<String, Text> columns,
      Position at) {}

  record LimitEntry(
      Text value,
      @Nullable Text title,
      Text source,
      @Nullable Text edition,
      @Nullable Text clause,
      Text standing,
      @Nullable Text note,
      @Nullable ConfirmedEntry confirmed,
      Position at) {}

  record ConfirmedEntry(Text by, Text on, Text edition, Position at) {}

  record TableEntry(
      @Nullable Text title,
      @Nullable Text key,
      @Nullable Text row,
      Map<String, Text> columns,
      List<Text> without,
      @Nullable Text source,
      @Nullable Text edition,
      @Nullable Text clause,
      @Nullable Text standing,
      @Nullable Text note,
      @Nullable ConfirmedEntry confirmed,
      List<Fields> rows,
      Position at) {}

  record StepEntry(Text title, Text is) {}

  record MeterKindEntry(Text title, Text standing, Map<String, List<RangeEntry>> functions) {}

  record RangeEntry(Text to, Text digit, Text accuracy) {}

  record StageEntry(
      Text title,
      Text clears,
      Text says,
      Text pass,
      Text hold,
      Text fail,
      List<Text> cautions,
      @Nullable Text uses,
      List<Text> never,
      List<Text> goesWith) {}

  record DependsEntry(Text on, List<Text> does, List<Text> voids) {}

  record WorkStepEntry(
      Text title,
      @Nullable Text says,
      List<Text> asks,
      List<Text> closes,
      @Nullable Text caution,
      @Nullable Text eachVisit,
      List<Text> after,
      @Nullable StopEntry stop) {}

  record StopEntry(Text title, List<Text> until, Text says) {}

  record CheckEntry(
      Text title,
      Text protects,
      Node stage,
      @Nullable Text over,
      @Nullable Text none,
      @Nullable Text applies,
      List<Text> requires,
      Map<String, StepEntry> steps,
      Text requirement,
      Text consequence,
      @Nullable Text judge,
      List<ConditionEntry> provided,
      List<ConditionEntry> plausible,
      List<NoteEntry> notes,
      List<RemedyEntry> remedy,
      @Nullable Text caution,
      CitationEntry source,
      Position at) {}

  record ConditionEntry(Text that, Text otherwise) {}

  record NoteEntry(Text when, Text says, @Nullable Text shows) {}

  record RemedyEntry(@Nullable Text when, Text says) {}

  record CitationEntry(
      Text of,
      @Nullable Text edition,
      @Nullable Text clause,
      Text standing,
      @Nullable Text note,
      Position at) {}

  /** The vocabulary as it is written. */
  record VocabularyFile(
      Text format,
      Text vocabulary,
      Text edition,
      Text language,
      Map<String, KindEntry> kinds,
      Map<String, QuantityEntry> quantities,
      Map<String, ObservationEntry> observations,
      Map<String, PointerEntry> references,
      Map<String, Map<String, Text>> valueLists,
      Map<String, ActEntry> acts,
      Map<String, Text> withdrawalReasons) {}

  record KindEntry(
      Text title,
      @Nullable Text plural,
      @Nullable Text one,
      @Nullable Text designator,
      @Nullable Text seconds) {}

  record QuantityEntry(
      Node of,
      @Nullable Text file,
      Text title,
      Text nature,
      List<Text> units,
      @Nullable Text function,
      @Nullable Text least,
      @Nullable Text worst,
      @Nullable Text leads,
      @Nullable Text derived,
      @Nullable Text momentary,
      Text tier,
      @Nullable Text seconds,
      @Nullable Text method,
      @Nullable Text caution,
      @Nullable Text retired,
      Position at) {}

  record ObservationEntry(
      Node of,
      @Nullable Text file,
      Text title,
      Node values,
      @Nullable Text momentary,
      Text tier,
      @Nullable Text seconds,
      @Nullable Text method,
      @Nullable Text caution,
      @Nullable Text retired,
      Position at) {}

  record PointerEntry(Node of, Text title, Text to) {}

  record ActEntry(Text title, @Nullable Text ends) {}
}
