package org.mainsgate.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.evidence.Visit;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Position;
import org.mainsgate.source.StrictYaml;

/**
 * The closing of a draft.
 *
 * <p>Three steps, each of which is done whole or not at all: the closed visit is made, its sidecar
 * is made, the draft is deleted. Wherever it stops, the record says the same as before or after,
 * and closing again goes on from there.
 */
final class DraftClosing {
  private final InstrumentFolder folder;
  private final Bench bench;
  private final RecordReader records;
  private final Complaints complaints;

  DraftClosing(InstrumentFolder folder, Bench bench, RecordReader records, Complaints complaints) {
    this.folder = folder;
    this.bench = bench;
    this.records = records;
    this.complaints = complaints;
  }

  /** Closes the named draft, or the only one; see {@link BenchFolder#close}. */
  Optional<Closed> close(Optional<String> named, LocalDate on) throws IOException {
    sweep();
    InstrumentFolder.Contents contents = folder.contents(bench, records, complaints);
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> id = choose(contents.files(), named);
    if (id.isEmpty()) {
      return Optional.empty();
    }
    Optional<byte[]> bytes = bytes(id.get(), contents, on);
    if (bytes.isEmpty()) {
      return Optional.empty();
    }
    Closed closed = closed(id.get(), bytes.get());
    writeVisit(closed, contents.files(), bytes.get());
    writeSidecar(closed, contents.files());
    deleteDraft(id.get());
    return Optional.of(closed);
  }

  private void sweep() throws IOException {
    for (String name : folder.reader().list(folder.visits(), complaints)) {
      if (NewFile.isLeftover(name)) {
        Files.deleteIfExists(path(name));
      }
    }
  }

  private Path path(String name) {
    return folder.reader().resolve(folder.visits() + "/" + name);
  }

  private Optional<String> choose(VisitFiles files, Optional<String> named) {
    Map<String, StoredFile> drafts = new TreeMap<>(files.drafts());
    drafts.putAll(files.interrupted());
    if (named.isEmpty() && drafts.size() == 1) {
      return drafts.keySet().stream().findFirst();
    }
    if (named.isPresent() && drafts.containsKey(named.get())) {
      return named;
    }
    if (named.isPresent()) {
      complaints.addUnknown(start(), "draft", named.get(), drafts.keySet());
    } else {
      complaints.add(
          start(),
          drafts.isEmpty() ? "there is no draft to close" : "there are several drafts",
          drafts.isEmpty()
              ? "a file that ends in `.draft.yaml`"
              : "the name of " + Complaints.oneOf(drafts.keySet()));
    }
    return Optional.empty();
  }

  private Position start() {
    return FolderReader.start(folder.visits());
  }

  /** The bytes of the closed visit: those that are there already, or the draft with its lines. */
  private Optional<byte[]> bytes(String id, InstrumentFolder.Contents contents, LocalDate on) {
    StoredFile there = contents.files().closed().get(id);
    if (there != null) {
      return Optional.of(there.bytes());
    }
    StoredFile draft = contents.files().drafts().get(id);
    Visit visit = contents.visits().get(id);
    if (draft == null || visit == null) {
      throw new IllegalStateException("no draft " + id);
    }
    RecordReader.notAfter(visit, on, complaints);
    byte[] bytes = ClosingLines.append(draft.bytes(), on, contents.headsUpTo(visit.date()));
    if (complaints.isEmpty() && !saysTheSame(visit, draft, bytes, contents.instrument())) {
      complaints.add(
          FolderReader.start(draft.path()),
          "this draft can't be closed: lines added at its end would change it",
          "fields that each start a line of their own, not `{...}`, and nothing after the last");
    }
    return complaints.isEmpty() ? Optional.of(bytes) : Optional.empty();
  }

  private boolean saysTheSame(
      Visit draft, StoredFile file, byte[] bytes, Optional<Instrument> instrument) {
    Complaints none = new Complaints();
    String hash = StoredFile.sha256(bytes);
    Optional<Fields> fields = StrictYaml.readFields(file.path(), bytes, none);
    Optional<Visit> read =
        fields.flatMap(
            f ->
                records.visit(
                    f, draft.id(), Optional.of(hash), bench, instrument.orElseThrow(), none));
    return none.isEmpty() && read.map(Visit::opened).filter(draft::equals).isPresent();
  }

  private Closed closed(String id, byte[] bytes) {
    String name = id + VisitFiles.CLOSED;
    return new Closed(id, folder.visits() + "/" + name, StoredFile.sha256(bytes));
  }

  void writeVisit(Closed closed, VisitFiles files, byte[] bytes) throws IOException {
    if (!files.closed().containsKey(closed.visit())) {
      NewFile.write(path(closed.visit() + VisitFiles.CLOSED), bytes);
    }
  }

  void writeSidecar(Closed closed, VisitFiles files) throws IOException {
    if (!files.hasSidecar(closed.visit())) {
      String name = closed.visit() + VisitFiles.CLOSED;
      NewFile.write(path(name + Sidecar.ENDING), new Sidecar(closed.hash(), name).bytes());
    }
  }

  private void deleteDraft(String id) throws IOException {
    Files.deleteIfExists(path(id + VisitFiles.DRAFT));
    NewFile.force(folder.reader().resolve(folder.visits()));
  }
}
