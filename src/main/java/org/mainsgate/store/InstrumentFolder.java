package org.mainsgate.store;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.Node;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/**
 * The folder of one instrument.
 *
 * @param tag its name
 * @param path its path inside the bench's folder
 * @param reader of the bench's folder
 */
record InstrumentFolder(String tag, String path, RecordFiles reader) {

  /** The path of the visits inside the bench's folder. */
  String visits() {
    return path + "/visits";
  }

  /** The path of the sealed records inside the bench's folder. */
  String reports() {
    return path + "/reports";
  }

  /** Reads the record, and complains of what can't be understood. */
  StoredInstrument read(Bench bench, RecordReader records, Complaints complaints) {
    return contents(bench, records, complaints).stored(tag, complaints);
  }

  /**
   * All that the folder holds, as far as it can be understood.
   *
   * @param visits by id, closed ones and drafts
   * @param altered whether the visits contradict each other
   * @param notes what a person should know
   */
  record Contents(
      Optional<StoredFile> file,
      Optional<Instrument> instrument,
      VisitFiles files,
      Map<String, Visit> visits,
      Bench bench,
      boolean altered,
      List<String> notes) {

    private List<Visit> closed() {
      return visits.values().stream().filter(visit -> visit.closing().isPresent()).toList();
    }

    /** The hashes of the latest closed visits. */
    List<String> heads() {
      return VisitGraph.heads(closed());
    }

    /** The same of those that a visit of this date can have known. */
    List<String> headsUpTo(LocalDate date) {
      return VisitGraph.heads(
          closed().stream().filter(visit -> !visit.date().isAfter(date)).toList());
    }

    private StoredInstrument stored(String tag, Complaints complaints) {
      List<StoredFile> all = new ArrayList<>();
      file.ifPresent(all::add);
      all.addAll(files.all());
      Optional<InstrumentRecord> whole = instrument.map(this::record);
      whole.ifPresent(found -> found.check(complaints));
      return new StoredInstrument(
          tag,
          whole.filter(found -> complaints.isEmpty()),
          complaints,
          altered || files.altered(),
          all,
          heads(),
          notes);
    }

    private InstrumentRecord record(Instrument found) {
      List<Visit> order = new ArrayList<>(VisitGraph.inOrder(closed()));
      visits.values().stream().filter(v -> v.closing().isEmpty()).forEach(order::add);
      return new InstrumentRecord(bench, found, order);
    }
  }

  /** Reads everything in the folder. */
  Contents contents(Bench bench, RecordReader records, Complaints complaints) {
    Optional<StoredFile> file = reader.read(path + "/instrument.yaml", complaints);
    Optional<Fields> fields =
        file.flatMap(f -> StrictYaml.readFields(f.path(), f.bytes(), complaints));
    fields.ifPresent(f -> checkTag(f, complaints));
    Optional<Instrument> instrument = fields.flatMap(f -> records.instrument(f, bench, complaints));
    VisitFiles files = VisitFiles.read(visits(), reader, complaints);
    Map<String, Visit> visits = new TreeMap<>();
    Map<Visit, Fields> sources = new HashMap<>();
    if (instrument.isPresent()) {
      Reading reading = new Reading(records, bench, instrument.get(), complaints);
      files
          .closed()
          .forEach((id, f) -> reading.visit(id, f, Optional.of(f.sha256()), visits, sources));
      files.drafts().forEach((id, f) -> reading.visit(id, f, Optional.empty(), visits, sources));
    }
    boolean altered = checkGraph(files, sources, complaints);
    List<String> notes = new ArrayList<>(files.notes());
    for (String each : List.of(path, visits(), reports())) {
      notes.addAll(reader.leftovers(each));
    }
    return new Contents(file, instrument, files, visits, bench, altered, notes);
  }

  private void checkTag(Fields fields, Complaints complaints) {
    Optional<Node> node = fields.get("tag");
    if (node.isPresent()
        && node.get() instanceof Text text
        && !text.isBlank()
        && !text.value().equals(tag)) {
      complaints.add(text, "`" + text.value() + "` is not the name of the folder", "`" + tag + "`");
    }
  }

  private record Reading(
      RecordReader records, Bench bench, Instrument instrument, Complaints complaints) {
    void visit(
        String id,
        StoredFile file,
        Optional<String> hash,
        Map<String, Visit> visits,
        Map<Visit, Fields> sources) {
      Optional<Fields> fields = StrictYaml.readFields(file.path(), file.bytes(), complaints);
      Optional<Visit> visit =
          fields.flatMap(f -> records.visit(f, id, hash, bench, instrument, complaints));
      if (visit.isPresent()) {
        visits.put(id, visit.get());
        sources.put(visit.get(), fields.orElseThrow());
      }
    }
  }

  private static boolean checkGraph(
      VisitFiles files, Map<Visit, Fields> sources, Complaints complaints) {
    Map<String, String> ids = new HashMap<>();
    files.closed().forEach((id, file) -> ids.put(file.sha256(), id));
    Map<String, Visit> visits = new HashMap<>();
    sources.keySet().forEach(visit -> visits.put(visit.id(), visit));
    boolean altered = false;
    for (Map.Entry<Visit, Fields> entry : sources.entrySet()) {
      for (Text hash : after(entry.getValue())) {
        String id = ids.get(hash.value());
        if (id == null) {
          complaints.add(
              hash,
              "this visit was closed after one that is gone or was changed",
              VisitFiles.TAKE_BACK);
          altered = true;
        } else if (isBefore(entry.getKey(), visits.get(id))) {
          complaints.add(
              entry.getKey().at(),
              "this visit has an earlier date than `" + id + "`, which it was closed after",
              VisitFiles.TAKE_BACK);
          altered = true;
        }
      }
    }
    return altered;
  }

  private static boolean isBefore(Visit visit, @Nullable Visit predecessor) {
    return predecessor != null && visit.date().isBefore(predecessor.date());
  }

  private static List<Text> after(Fields visit) {
    Optional<Node> closed = visit.get("closed");
    Optional<Node> after =
        closed.isPresent() && closed.get() instanceof Fields fields
            ? fields.get("after")
            : Optional.empty();
    return after.isPresent() && after.get() instanceof Items items
        ? items.items().stream().filter(Text.class::isInstance).map(Text.class::cast).toList()
        : List.of();
  }
}
