package org.mainsgate.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.mainsgate.source.Complaints;

/**
 * The files in the folder of an instrument's visits, sorted out, and the closed ones held against
 * their sidecars.
 */
final class VisitFiles {
  static final String CLOSED = ".yaml";
  static final String DRAFT = ".draft.yaml";
  static final String TAKE_BACK =
      "take the file back from your version history; a closed visit is never changed: write a new"
          + " visit that corrects it";

  private static final int MOST_LOOKS = 20;

  private static final Pattern ID =
      Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}-[A-Za-z0-9]{1,8}-[0-9a-z]{4}");

  private final String folder;
  private final RecordFiles reader;
  private final Complaints complaints;
  private final Map<String, StoredFile> closed = new TreeMap<>();
  private final Map<String, StoredFile> drafts = new TreeMap<>();
  private final Map<String, StoredFile> sidecars = new TreeMap<>();
  private final Map<String, StoredFile> interrupted = new TreeMap<>();
  private final List<String> notes = new ArrayList<>();
  private boolean altered;

  private VisitFiles(String folder, RecordFiles reader, Complaints complaints) {
    this.folder = folder;
    this.reader = reader;
    this.complaints = complaints;
  }

  /**
   * Reads the files, and complains of each that is not what it should be.
   *
   * <p>The names are looked at before and after, and all is read again if they differ: another
   * program may be closing a visit, and whoever sees its closed file but not yet its sidecar would
   * take it for altered. A closing makes names before it takes one away, so two equal lists with
   * nothing in between have missed none.
   */
  static VisitFiles read(String folder, RecordFiles reader, Complaints complaints) {
    for (int i = 0; i < MOST_LOOKS; i++) {
      Complaints found = new Complaints();
      List<String> before = names(folder, reader, found);
      VisitFiles files = new VisitFiles(folder, reader, found);
      before.forEach(files::sort);
      files.check();
      if (names(folder, reader, new Complaints()).equals(before)) {
        complaints.addAll(found);
        return files;
      }
    }
    complaints.add(
        FolderReader.start(folder),
        "the visits change all the time while they are read",
        "the same command again, once no other program writes here");
    return new VisitFiles(folder, reader, complaints);
  }

  private static List<String> names(String folder, RecordFiles reader, Complaints complaints) {
    return reader.list(folder, complaints).stream()
        .filter(name -> !TemporaryFile.isName(name))
        .toList();
  }

  private void check() {
    setInterruptedAside();
    closed.keySet().forEach(this::checkSidecar);
    sidecars.keySet().forEach(this::checkClosed);
    checkCopies();
  }

  /** The closed visits by id. */
  Map<String, StoredFile> closed() {
    return closed;
  }

  /** The drafts by id, without those whose closing was interrupted. */
  Map<String, StoredFile> drafts() {
    return drafts;
  }

  /** Drafts whose closed visit is there already, by id. */
  Map<String, StoredFile> interrupted() {
    return interrupted;
  }

  boolean hasSidecar(String id) {
    return sidecars.containsKey(id);
  }

  /** All files that were read, by path. */
  List<StoredFile> all() {
    Map<String, StoredFile> all = new TreeMap<>();
    for (Map<String, StoredFile> some : List.of(closed, drafts, sidecars, interrupted)) {
      some.values().forEach(file -> all.put(file.path(), file));
    }
    return List.copyOf(all.values());
  }

  /** The closed visits and their sidecars. */
  List<StoredFile> sealed() {
    return Stream.of(closed, sidecars).flatMap(some -> some.values().stream()).toList();
  }

  List<String> notes() {
    return notes;
  }

  boolean altered() {
    return altered;
  }

  private void sort(String name) {
    if (name.endsWith(CLOSED + Sidecar.ENDING)) {
      take(name, CLOSED + Sidecar.ENDING, sidecars);
    } else if (name.endsWith(DRAFT)) {
      take(name, DRAFT, drafts);
    } else if (name.endsWith(CLOSED)) {
      take(name, CLOSED, closed);
    } else if (!name.startsWith(".")) {
      notes.add("not a part of the record: " + path(name));
    }
  }

  private void take(String name, String ending, Map<String, StoredFile> files) {
    String id = name.substring(0, name.length() - ending.length());
    if (!ID.matcher(id).matches()) {
      complaints.add(
          FolderReader.start(path(name)),
          "`" + name + "` is not the name of a visit",
          "date, initials and four more, such as `2026-11-25-AR-7f3a" + ending + "`");
      return;
    }
    reader.read(path(name), complaints).ifPresent(file -> files.put(id, file));
  }

  private String path(String name) {
    return folder + "/" + name;
  }

  private void setInterruptedAside() {
    for (String id : List.copyOf(drafts.keySet())) {
      StoredFile draft = drafts.get(id);
      StoredFile twin = closed.get(id);
      if (draft != null && twin != null) {
        drafts.remove(id);
        interrupted.put(id, draft);
        if (ClosingLines.isMadeOf(twin.bytes(), draft.bytes())) {
          notes.add("the closing of this visit is not finished, close it again: " + draft.path());
        } else {
          complaints.add(
              FolderReader.start(draft.path()),
              "a draft of a visit that is closed",
              "another name for it; a closed visit is never changed");
        }
      }
    }
  }

  private void checkSidecar(String id) {
    StoredFile visit = closed.get(id);
    StoredFile sidecar = sidecars.get(id);
    if (visit == null || (sidecar == null && interrupted.containsKey(id))) {
      return;
    }
    if (sidecar == null) {
      altered(
          path(id + CLOSED), "a closed visit without its `" + id + CLOSED + Sidecar.ENDING + "`");
      return;
    }
    Optional<Sidecar> said = Sidecar.parse(sidecar.bytes());
    if (said.isEmpty()) {
      altered(sidecar.path(), "this is not the SHA-256 of a file and its name");
    } else if (!said.get().name().equals(id + CLOSED)) {
      altered(visit.path(), "this closed visit had the name `" + said.get().name() + "`");
    } else if (!said.get().hash().equals(visit.sha256())) {
      altered(visit.path(), "this closed visit was changed after it was closed");
    }
  }

  private void checkClosed(String id) {
    if (!closed.containsKey(id)) {
      altered(path(id + CLOSED + Sidecar.ENDING), "the closed visit `" + id + CLOSED + "` is gone");
    }
  }

  private void checkCopies() {
    Map<String, String> firsts = new TreeMap<>();
    closed.forEach(
        (id, file) -> {
          String first = firsts.putIfAbsent(file.sha256(), id);
          if (first != null) {
            altered(file.path(), "a copy of the closed visit `" + first + CLOSED + "`");
          }
        });
  }

  /** Complains of a closed visit that is not what it was. */
  private void altered(String path, String what) {
    altered = true;
    complaints.add(FolderReader.start(path), what, TAKE_BACK);
  }
}
