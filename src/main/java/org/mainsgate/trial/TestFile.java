package org.mainsgate.trial;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;

/**
 * A ruleset's test file as it is written: records, and what is expected of them and of small
 * changes to them.
 */
record TestFile(Text format, Map<String, Fields> records, List<TestEntry> tests, Position at) {

  /**
   * A test.
   *
   * @param name what it shows, as a sentence
   * @param record the record that it starts from
   * @param profiles the profiles that it runs under
   * @param remove paths of fields that are taken out of the record
   * @param change fields that are put over the record
   * @param stage the stage that is judged; the first if not said
   * @param on the day that is asked about; the visit's own if not said
   * @param expect by {@code check} or {@code check/thing}, or {@code stage}: the outcome, with
   *     {@code hold: reason} where the reason matters
   * @param says by {@code check} or {@code check/thing}: words that a hold, a remark or a remedy of
   *     it must have
   * @param silent words that none of them may have
   */
  record TestEntry(
      Text name,
      Text record,
      List<Text> profiles,
      List<Text> remove,
      @Nullable Fields change,
      @Nullable Text stage,
      @Nullable Text on,
      Map<String, Text> expect,
      Map<String, Text> says,
      Map<String, Text> silent,
      Position at) {}
}
