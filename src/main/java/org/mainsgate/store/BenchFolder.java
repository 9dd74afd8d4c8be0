package org.mainsgate.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.RecordReader;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Fields;
import org.mainsgate.source.Items;
import org.mainsgate.source.NearestName;
import org.mainsgate.source.Position;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/**
 * A bench on disk: {@code bench.yaml}, and one folder for each instrument.
 *
 * <p>Reading never writes. All names of files, in complaints too, are paths inside the bench's
 * folder.
 */
public final class BenchFolder {
  private static final String BENCH = "bench.yaml";
  private static final String ATTRIBUTES = ".gitattributes";
  private static final String INSTRUMENTS = "instruments";
  private static final int MOST_BYTES = 16 << 20;
  private static final Pattern TAG = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,31}");

  private static final String TAG_IS =
      "1 to 32 of `A` to `Z`, `a` to `z`, `0` to `9`, `.`, `_`, `-`, a letter or digit first";

  private final RecordFiles reader;
  private final StoredFile file;
  private final Fields fields;
  private final List<String> tags;
  private final Map<String, List<String>> bySmallLetters;
  private final List<String> notes;

  private BenchFolder(
      RecordFiles reader, StoredFile file, Fields fields, List<String> tags, List<String> notes) {
    this.reader = reader;
    this.file = file;
    this.fields = fields;
    this.tags = List.copyOf(tags);
    this.bySmallLetters =
        tags.stream().collect(Collectors.groupingBy(tag -> tag.toLowerCase(Locale.ROOT)));
    this.notes = List.copyOf(notes);
  }

  /** Opens the bench in a folder, or complains. */
  public static Optional<BenchFolder> open(Path folder, Complaints complaints) {
    try {
      if (!Files.isRegularFile(folder.resolve(BENCH))) {
        String missing = folder.resolve(BENCH) + "` does not exist";
        complaints.add(FolderReader.start(BENCH), "no bench here: `" + missing);
        return Optional.empty();
      }
      return open(FolderReader.of(folder), complaints);
    } catch (IOException e) {
      complaints.add(FolderReader.start(BENCH), "no bench here: `" + folder + "` can't be read");
      return Optional.empty();
    }
  }

  /** Opens a bench that was packed, or complains; nothing can be written to it. */
  public static Optional<BenchFolder> open(Pack pack, Complaints complaints) {
    return open(new PackedFiles(pack), complaints);
  }

  /**
   * Makes a new bench in a folder: {@code bench.yaml}, {@code .gitattributes} and the folder of the
   * instruments.
   *
   * @param attributes the line that {@code .gitattributes} has to have
   * @return whether it was made; else there are complaints, and what was there is as it was
   * @throws IOException if the disk is full or fails
   */
  public static boolean start(Path folder, String bench, String attributes, Complaints complaints)
      throws IOException {
    if (Files.exists(folder.resolve(BENCH), LinkOption.NOFOLLOW_LINKS)) {
      return NewFolder.file(folder.resolve(BENCH), BENCH, bench, complaints);
    }
    // What makes it a bench comes last: whatever stops this, no bench is there without the others.
    if (!NewFolder.folder(folder, BENCH, complaints)
        || !keepsBytes(folder.resolve(ATTRIBUTES), attributes, complaints)) {
      return false;
    }
    NewFolder.make(folder.resolve(INSTRUMENTS));
    return NewFolder.file(folder.resolve(BENCH), BENCH, bench, complaints);
  }

  private static boolean keepsBytes(Path file, String line, Complaints complaints)
      throws IOException {
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      Complaints refused = new Complaints();
      if (NewFolder.file(file, ATTRIBUTES, line + "\n", refused)) {
        return true;
      }
      // Unless another program that makes the same bench was faster.
      if (!Files.isRegularFile(file)) {
        complaints.addAll(refused);
        return false;
      }
    }
    boolean keeps = Files.isRegularFile(file) && Files.readString(file).contains(line);
    if (!keeps) {
      complaints.add(
          FolderReader.start(ATTRIBUTES),
          "this file is there already, without the line `" + line + "`",
          "that line in it, so that the bytes of closed visits stay as they are");
    }
    return keeps;
  }

  /** Whether there is an instrument of this tag. */
  public boolean has(String tag) {
    return alike(tag).contains(tag) && reader.exists(instrumentFile(tag));
  }

  private static String instrumentFile(String tag) {
    return INSTRUMENTS + "/" + tag + "/instrument.yaml";
  }

  /**
   * Makes the file of a new instrument.
   *
   * @return its path inside the folder; empty after a complaint
   * @throws IOException if the disk is full or fails
   */
  public Optional<String> add(String tag, String text, Complaints complaints) throws IOException {
    String path = instrumentFile(tag);
    String folder = INSTRUMENTS + "/" + tag;
    if (!TAG.matcher(tag).matches()) {
      complaints.add(FolderReader.start(INSTRUMENTS), "`" + tag + "` can't be a tag", TAG_IS);
    } else if (isToldApart(tag, complaints)
        && NewFolder.folder(reader.resolve(folder), folder, complaints)) {
      // Another program may have made the other one in between. Each looks after it has made its
      // own, so at least one of them sees both.
      if (!isToldApart(tag, complaints)) {
        NewFolder.unmake(reader.resolve(folder));
      } else if (NewFolder.file(reader.resolve(path), path, text, complaints)) {
        return Optional.of(path);
      }
    }
    return Optional.empty();
  }

  /** Whether no other folder, as they are now, differs from this tag in capitals alone. */
  private boolean isToldApart(String tag, Complaints complaints) {
    int before = complaints.count();
    reader.list(INSTRUMENTS, complaints).stream()
        .filter(other -> other.equalsIgnoreCase(tag) && !other.equals(tag))
        .limit(1)
        .forEach(
            other ->
                complaints.add(
                    FolderReader.start(instrumentFile(tag)),
                    "there is `" + other + "`, which differs in capitals alone",
                    "a tag that is told apart on every disk"));
    return complaints.count() == before;
  }

  /**
   * Makes a new draft of a visit.
   *
   * @param id the visit's, as in the name of its file
   * @return its path inside the folder; empty after a complaint
   * @throws IOException if the disk is full or fails
   */
  public Optional<String> draft(String tag, String id, String text, Complaints complaints)
      throws IOException {
    String path = folder(tag).visits() + "/" + id + VisitFiles.DRAFT;
    return NewFolder.file(reader.resolve(path), path, text, complaints)
        ? Optional.of(path)
        : Optional.empty();
  }

  private static Optional<BenchFolder> open(RecordFiles reader, Complaints complaints) {
    int before = complaints.count();
    Optional<StoredFile> file = reader.read(BENCH, complaints);
    Optional<Fields> fields =
        file.flatMap(f -> StrictYaml.readFields(f.path(), f.bytes(), complaints));
    List<String> tags = new ArrayList<>();
    List<String> notes = new ArrayList<>(reader.leftovers(""));
    for (String name : reader.list(INSTRUMENTS, complaints)) {
      if (isUnfinished(name, reader)) {
        notes.add(
            "no instrument yet, an `add` was stopped: give it again, or take the folder away: "
                + INSTRUMENTS
                + "/"
                + name);
      } else if (reader.isFolder(INSTRUMENTS + "/" + name)) {
        tags.add(name);
      } else if (!name.startsWith(".")) {
        notes.add("not a part of the record: " + INSTRUMENTS + "/" + name);
      }
    }
    return complaints.count() > before
        ? Optional.empty()
        : Optional.of(
            new BenchFolder(reader, file.orElseThrow(), fields.orElseThrow(), tags, notes));
  }

  /** Whether this is the folder of an instrument that was not made: there is nothing in it. */
  private static boolean isUnfinished(String name, RecordFiles reader) {
    String folder = INSTRUMENTS + "/" + name;
    Complaints unread = new Complaints();
    return reader.isFolder(folder)
        && !reader.exists(instrumentFile(name))
        && reader.list(folder, unread).stream().allMatch(TemporaryFile::isName)
        && unread.isEmpty();
  }

  /** What the bench names as its profile, as written, before anything else of it is understood. */
  public Optional<Text> profile() {
    return fields.get("profile").filter(Text.class::isInstance).map(Text.class::cast);
  }

  /** The paths of the bench's overlays, as written, before anything else of it is understood. */
  public List<Text> overlays() {
    return fields.get("overlays").filter(Items.class::isInstance).stream()
        .flatMap(list -> ((Items) list).items().stream())
        .filter(Text.class::isInstance)
        .map(Text.class::cast)
        .toList();
  }

  /** Where {@code bench.yaml} starts. */
  public Position start() {
    return fields.at();
  }

  /**
   * Reads any file of the bench, such as a picture, by its path inside the folder, or complains.
   *
   * @return empty if there is no such file, it leads out of the folder, or has more than 16 MiB
   */
  public Optional<StoredFile> file(String path, Complaints complaints) {
    return reader.read(path, MOST_BYTES, complaints);
  }

  /** {@code bench.yaml} as it was read. */
  public StoredFile benchFile() {
    return file;
  }

  /** The tags of the instruments, sorted: the names of their folders. */
  public List<String> tags() {
    return tags;
  }

  /** The path of an instrument's picture, as its file names it. */
  public static String photo(String tag, String path) {
    return INSTRUMENTS + "/" + tag + "/" + path;
  }

  /** Whether this is no folder but a pack. */
  public boolean isPacked() {
    return reader instanceof PackedFiles;
  }

  /**
   * Takes the number of the next sealed record of an instrument: one more than the highest kept.
   *
   * @return what keeps the record; to be closed, whether it was kept or not
   * @throws IOException if the disk is full or fails
   */
  public RecordNumber nextRecord(String tag) throws IOException {
    return RecordNumber.next(reader, folder(tag).reports());
  }

  /** What a person should know of the folder itself. */
  public List<String> notes() {
    return notes;
  }

  /** Reads the bench, or complains. */
  public Optional<Bench> bench(RecordReader records, Complaints complaints) {
    return records.bench(fields, complaints);
  }

  /** The tags that are meant, each once, in their order: those named, all if none is. */
  public List<String> wanted(Collection<String> named) {
    return named.isEmpty() ? tags : named.stream().sorted().distinct().toList();
  }

  /** Reads one instrument. */
  public StoredInstrument instrument(String tag, Bench bench, RecordReader records) {
    Complaints complaints = new Complaints();
    return isTag(tag, complaints)
        ? folder(tag).read(bench, records, complaints)
        : new StoredInstrument(
            tag, Optional.empty(), complaints, false, List.of(), List.of(), List.of());
  }

  /**
   * Closes a draft of a visit: from then on it is never changed.
   *
   * <p>What an earlier closing left unfinished is finished. Nothing is written if anything of the
   * instrument's record is complained of.
   *
   * @param draft the id of the draft; empty for the one that there is
   * @param on the date of closing
   * @return empty if there are complaints
   * @throws IOException if the disk is full or fails; then the draft is still there, and closing
   *     again goes on from there
   */
  public Optional<Closed> close(
      String tag,
      Optional<String> draft,
      LocalDate on,
      Bench bench,
      RecordReader records,
      Complaints complaints)
      throws IOException {
    return isTag(tag, complaints)
        ? new DraftClosing(folder(tag), bench, records, complaints).close(draft, on)
        : Optional.empty();
  }

  /**
   * Packs what the verdict on one instrument needs: the bench's file without the people and meters
   * that nothing names, the instrument, its closed visits with their sidecars, the profile and the
   * overlays that are files of the bench. Drafts stay here.
   *
   * @param tag of an instrument that can be read
   */
  public Pack pack(String tag, Complaints complaints) {
    Map<String, byte[]> files = new TreeMap<>();
    VisitFiles visits = VisitFiles.read(folder(tag).visits(), reader, complaints);
    reader.read(instrumentFile(tag), complaints).ifPresent(f -> files.put(f.path(), f.bytes()));
    visits.sealed().forEach(f -> files.put(f.path(), f.bytes()));
    List<Fields> record = new ArrayList<>();
    files.forEach(
        (path, bytes) -> {
          if (path.endsWith(VisitFiles.CLOSED)) {
            StrictYaml.readFields(path, bytes, complaints).ifPresent(record::add);
          }
        });
    files.put(BENCH, Extract.of(file.bytes(), record));
    rulesFiles().forEach(path -> file(path, complaints).ifPresent(f -> files.put(path, f.bytes())));
    return new Pack(files);
  }

  /** The paths of the profile and the overlays, as far as they are files of the bench. */
  private List<String> rulesFiles() {
    return Stream.concat(
            profile().stream().filter(name -> name.value().endsWith(".yaml")), overlays().stream())
        .map(Text::value)
        .toList();
  }

  private InstrumentFolder folder(String tag) {
    return new InstrumentFolder(tag, INSTRUMENTS + "/" + tag, reader);
  }

  private boolean isTag(String tag, Complaints complaints) {
    int before = complaints.count();
    String path = INSTRUMENTS + "/" + tag;
    List<String> alike = alike(tag);
    if (!alike.contains(tag)) {
      complaints.add(
          FolderReader.start(path),
          "no instrument `" + tag + "` on this bench",
          tags.isEmpty() ? "a folder for it" : Complaints.oneOf(tags),
          NearestName.of(tag, tags).orElse(""));
    } else if (!TAG.matcher(tag).matches()) {
      complaints.add(FolderReader.start(path), "`" + tag + "` can't be a tag", TAG_IS);
    } else if (alike.size() > 1) {
      complaints.add(
          FolderReader.start(path),
          "two tags that differ in capitals alone: " + String.join(", ", alike),
          "tags that are told apart on every disk");
    }
    return complaints.count() == before;
  }

  /** The tags here that differ from this one in capitals at most. */
  private List<String> alike(String tag) {
    return bySmallLetters.getOrDefault(tag.toLowerCase(Locale.ROOT), List.of());
  }
}
