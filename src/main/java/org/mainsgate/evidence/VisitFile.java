package org.mainsgate.evidence;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.CalendarDate;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Position;
import org.mainsgate.source.Text;

/** The file of a visit in its shape, before its words are looked up. */
record VisitFile(
    @Pattern(regexp = Wording.FORMAT_IS, message = Wording.FORMAT) Text format,
    @CalendarDate Text date,
    @Pattern(regexp = Wording.INITIALS_ARE, message = Wording.INITIALS) Text by,
    @Nullable @Size(max = Wording.LONG, message = Wording.LONG_TEXT) Text note,
    @Nullable Fields found,
    List<@Valid WorkEntry> work,
    @Nullable Fields left,
    List<@Valid JudgementEntry> judged,
    List<@Valid WithdrawalEntry> withdrawn,
    @Nullable @Valid ClosingEntry closed) {

  /** Something that was done. */
  record WorkEntry(
      Text act,
      Text on,
      @Nullable @Size(max = Wording.LONG, message = Wording.LONG_TEXT) Text note,
      Position at) {}

  /** A decision. */
  record JudgementEntry(
      Text check,
      Text item,
      @Pattern(regexp = "accepted", message = "unknown decision {typed}|`accepted`") Text decision,
      Text by,
      @Size(min = 1, max = Wording.LONG, message = Wording.LONG_TEXT) Text because,
      @Nullable @Size(max = Wording.LONG, message = Wording.LONG_TEXT) Text restriction,
      Position at) {}

  /** An entry taken back. */
  record WithdrawalEntry(
      Text entry,
      Text reason,
      @Nullable @Size(max = Wording.LONG, message = Wording.LONG_TEXT) Text note,
      Position at) {}

  /** How the visit was closed. */
  record ClosingEntry(
      @CalendarDate Text on,
      List<@Pattern(regexp = Wording.HASH_IS, message = Wording.HASH) Text> after) {}
}
