package org.mainsgate.evidence;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Name;
import org.mainsgate.source.Text;

/** The file {@code instrument.yaml} in its shape, before its words are looked up. */
record InstrumentFile(
    @Pattern(regexp = Wording.FORMAT_IS, message = Wording.FORMAT) Text format,
    @Name Text tag,
    @Pattern(regexp = Wording.UID_IS, message = Wording.UID) Text uid,
    @Size(min = 1, max = Wording.SHORT, message = Wording.SHORT_TEXT) Text what,
    @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text maker,
    @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text model,
    @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text serial,
    @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text made,
    @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text photo,
    @Nullable @Size(max = Wording.SHORT, message = Wording.SHORT_TEXT) Text platePhoto,
    @Nullable Fields plate,
    Map<String, @Valid ThingEntry> things) {

  /** A thing on the instrument, by id. */
  record ThingEntry(
      Text kind,
      @Nullable Text designator,
      @Nullable @Size(min = 1, max = Wording.SHORT, message = Wording.SHORT_TEXT) Text title) {}
}
