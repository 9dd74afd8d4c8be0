package org.mainsgate.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.mainsgate.source.Complaints;

/**
 * The number of a sealed record that is being made; no other record of the instrument gets it.
 *
 * <p>An empty file {@code .NUMBER.number} holds it until the record is kept: its name can be made
 * once only, on every disk. Whoever has made it looks again whether a record of this number or a
 * higher one is kept, since another program may have been through with it by then. So the file of a
 * number can be taken away, and is by the next program, as soon as a record of this number or a
 * higher one is kept, whether its program still runs or not. A program that was stopped before that
 * leaves a number out.
 */
public final class RecordNumber implements AutoCloseable {
  private static final Pattern KEPT = Pattern.compile("([0-9]{4,6})_.*\\.pdf");
  private static final Pattern TAKEN = Pattern.compile("\\.([0-9]{1,6})\\.number");

  private final RecordFiles files;
  private final String folder;
  private final int number;
  private final TemporaryFile held;

  private RecordNumber(RecordFiles files, String folder, int number) throws IOException {
    this.files = files;
    this.folder = folder;
    this.number = number;
    // Locked, so that whoever looks does not take it for left over.
    this.held = TemporaryFile.at(file(number));
  }

  /** Takes the next number: one more than the highest that is kept or taken. */
  static RecordNumber next(RecordFiles files, String folder) throws IOException {
    while (true) {
      NewFolder.make(files.resolve(folder));
      int number = Math.max(highest(files, folder, KEPT), highest(files, folder, TAKEN)) + 1;
      Optional<RecordNumber> taken = taken(files, folder, number);
      if (taken.isPresent()) {
        return taken.get();
      }
    }
  }

  private static Optional<RecordNumber> taken(RecordFiles files, String folder, int number)
      throws IOException {
    RecordNumber taken;
    try {
      taken = new RecordNumber(files, folder, number);
    } catch (FileAlreadyExistsException | NoSuchFileException faster) {
      return Optional.empty();
    }
    boolean kept = true;
    try {
      kept = highest(files, folder, KEPT) >= number;
    } finally {
      if (kept) {
        taken.close();
      }
    }
    return kept ? Optional.empty() : Optional.of(taken);
  }

  private static int highest(RecordFiles files, String folder, Pattern kind) throws IOException {
    return numbers(files, folder, kind).stream().reduce(0, Math::max);
  }

  private static List<Integer> numbers(RecordFiles files, String folder, Pattern kind)
      throws IOException {
    Complaints complaints = new Complaints();
    List<String> names = files.list(folder, complaints);
    if (!complaints.isEmpty()) {
      throw new IOException(folder + ": " + complaints.sorted().get(0).what());
    }
    return names.stream()
        .map(kind::matcher)
        .filter(Matcher::matches)
        .map(name -> Integer.parseInt(name.group(1)))
        .toList();
  }

  /** Whether a file holds a number. */
  static boolean isName(String name) {
    return TAKEN.matcher(name).matches();
  }

  private Path file(int taken) {
    return files.resolve(folder + "/." + taken + ".number");
  }

  /** The number, from 1. */
  public int number() {
    return number;
  }

  /**
   * Keeps the record beside the instrument; nothing that is there is written over.
   *
   * @param name of its file: the number with four digits, `_`, and words that end in `.pdf`
   * @return its path inside the bench's folder; empty after a complaint
   * @throws NewFile.Unforced if it is kept, but may not outlast a loss of power
   * @throws IOException if the disk is full or fails; then it is not kept
   */
  public Optional<String> keep(String name, byte[] bytes, Complaints complaints)
      throws IOException {
    Matcher kept = KEPT.matcher(name);
    if (!kept.matches() || Integer.parseInt(kept.group(1)) != number) {
      throw new IllegalArgumentException(name + " is not the name of record " + number);
    }
    for (int taken : numbers(files, folder, TAKEN)) {
      if (taken <= highest(files, folder, KEPT)) {
        Files.deleteIfExists(file(taken));
      }
    }
    String path = folder + "/" + name;
    return NewFolder.file(files.resolve(path), path, bytes, complaints)
        ? Optional.of(path)
        : Optional.empty();
  }

  /** Gives the number back, or what held it while the record was made. */
  @Override
  public void close() {
    // If it stays, the next record gets the next number, and it is swept once that is kept.
    held.close();
    NewFolder.unmake(files.resolve(folder));
  }
}
