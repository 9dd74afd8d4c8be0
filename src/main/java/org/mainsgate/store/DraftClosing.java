package org.mainsgate.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
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
    TemporaryFile.sweep(folder.reader().resolve(folder.visits()));
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
    Optional<Closed> closed = writeVisit(id.get(), bytes.get(), contents.files());
    if (closed.isPresent()) {
      writeSidecar(closed.get(), contents.files());
      deleteDraft(closed.get(), contents.files());
    }
    return closed.filter(done -> complaints.isEmpty());
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

  /** Makes the closed visit; what another program has made of the same draft will do as well. */
  private Optional<Closed> writeVisit(String id, byte[] bytes, VisitFiles files)
      throws IOException {
    Closed closed = closed(id, bytes);
    if (files.closed().containsKey(id)) {
      return Optional.of(closed);
    }
    try {
      NewFile.write(path(id + VisitFiles.CLOSED), bytes);
      return Optional.of(closed);
    } catch (FileAlreadyExistsException faster) {
      return folder
          .reader()
          .read(closed.path(), complaints)
          .filter(there -> isOfDraft(there, draft(id, files)))
          .map(there -> closed(id, there.bytes()));
    }
  }

  private boolean isOfDraft(StoredFile there, StoredFile draft) {
    boolean same = ClosingLines.isMadeOf(there.bytes(), draft.bytes());
    if (!same) {
      complaints.add(
          FolderReader.start(draft.path()),
          "a draft of a visit that is closed",
          "another name for it; a closed visit is never changed");
    }
    return same;
  }

  private static StoredFile draft(String id, VisitFiles files) {
    StoredFile draft = files.drafts().getOrDefault(id, files.interrupted().get(id));
    if (draft == null) {
      throw new IllegalStateException("no draft " + id);
    }
    return draft;
  }

  private void writeSidecar(Closed closed, VisitFiles files) throws IOException {
    if (files.hasSidecar(closed.visit())) {
      return;
    }
    String name = closed.visit() + VisitFiles.CLOSED;
    Sidecar sidecar = new Sidecar(closed.hash(), name);
    try {
      NewFile.write(path(name + Sidecar.ENDING), sidecar.bytes());
    } catch (FileAlreadyExistsException faster) {
      String path = closed.path() + Sidecar.ENDING;
      Optional<StoredFile> there = folder.reader().read(path, complaints);
      if (there.flatMap(file -> Sidecar.parse(file.bytes())).filter(sidecar::equals).isEmpty()) {
        complaints.add(
            FolderReader.start(path), "this contradicts the closed visit", VisitFiles.TAKE_BACK);
      }
    }
  }

  /** What somebody typed into the draft since it was read is not lost with it. */
  private void deleteDraft(Closed closed, VisitFiles files) throws IOException {
    StoredFile draft = draft(closed.visit(), files);
    Complaints gone = new Complaints();
    Optional<StoredFile> now = folder.reader().read(draft.path(), gone);
    if (now.isPresent() && !now.get().sha256().equals(draft.sha256())) {
      complaints.add(
          FolderReader.start(draft.path()),
          "this draft was changed while it was closed; it is closed as it was before",
          "another name for the draft; a closed visit is never changed");
      return;
    }
    Files.deleteIfExists(path(closed.visit() + VisitFiles.DRAFT));
    NewFile.confirm(path(closed.visit() + VisitFiles.CLOSED));
  }
}
