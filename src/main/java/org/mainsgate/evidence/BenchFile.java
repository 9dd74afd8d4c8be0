package org.mainsgate.evidence;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.CalendarDate;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Name;
import org.mainsgate.source.Text;

/** The file {@code bench.yaml} in its shape, before its words are looked up. */
record BenchFile(
    @Pattern(regexp = Wording.FORMAT_IS, message = Wording.FORMAT) Text format,
    @Name Text bench,
    @Size(min = 1, max = Wording.SHORT, message = Wording.SHORT_TEXT) Text title,
    Text zone,
    Text profile,
    List<Text> overlays,
    @Nullable Fields site,
    Map<String, @Valid PersonEntry> people,
    Map<String, @Valid MeterEntry> meters,
    @Nullable Fields methods) {

  /** Somebody at the bench, by initials. */
  record PersonEntry(
      @Size(min = 1, max = Wording.SHORT, message = Wording.SHORT_TEXT) Text name,
      @Size(min = 1, max = Wording.SHORT, message = Wording.SHORT_TEXT) Text competence) {}

  /** A meter, by name. */
  record MeterEntry(
      @Size(min = 1, max = Wording.SHORT, message = Wording.SHORT_TEXT) Text title,
      @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text serial,
      Text kind,
      List<@Valid MeterDataEntry> history) {}

  /** What is known of a meter from a day on. */
  record MeterDataEntry(
      @CalendarDate Text from,
      @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text calibrated,
      @Nullable @CalendarDate Text due,
      Map<String, List<RangeEntry>> functions) {}

  /** One range of a meter. */
  record RangeEntry(Text to, Text digit, Text accuracy) {}
}
