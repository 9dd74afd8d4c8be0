package org.mainsgate.store;

import java.util.List;
import java.util.Optional;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.source.Complaints;

/**
 * What was found on disk of one instrument.
 *
 * @param tag its tag
 * @param record its record; empty if there are complaints
 * @param complaints of its files
 * @param altered whether a closed visit was changed, removed, renamed or put into another order
 * @param files all files that were read, by path
 * @param heads the hashes of the latest closed visits, those that no other visit names, sorted
 * @param notes what a person should know, such as leftovers of an interrupted write
 */
public record StoredInstrument(
    String tag,
    Optional<InstrumentRecord> record,
    Complaints complaints,
    boolean altered,
    List<StoredFile> files,
    List<String> heads,
    List<String> notes) {

  /** Keeps the lists as they are. */
  public StoredInstrument {
    files = List.copyOf(files);
    heads = List.copyOf(heads);
    notes = List.copyOf(notes);
  }
}
