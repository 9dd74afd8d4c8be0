package org.mainsgate.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.Optional;
import java.util.stream.Stream;
import org.mainsgate.source.Complaints;

/** The making of folders that outlast a loss of power, and of new files in them. */
public final class NewFolder {
  private NewFolder() {}

  /**
   * Makes a folder, and those that it stands in, as far as they are not there.
   *
   * @param rights who may read those that are made, as for {@link Files#createDirectory}
   * @throws NewFile.Unforced if one is there, but may not outlast a loss of power
   * @throws IOException if the disk is full or fails; then some of them may be there, empty
   */
  public static void make(Path folder, FileAttribute<?>... rights) throws IOException {
    Deque<Path> missing = new ArrayDeque<>();
    Path there = folder.toAbsolutePath();
    while (!Files.isDirectory(there)) {
      missing.push(there);
      there = around(there);
    }
    // The one that an interrupted program made last may not have been forced.
    confirm(there);
    for (Path each : missing) {
      try {
        Files.createDirectory(each, rights);
      } catch (FileAlreadyExistsException e) {
        // Another program was faster, unless it is a file.
        if (!Files.isDirectory(each)) {
          throw e;
        }
      }
      NewFile.confirm(each);
    }
  }

  /** What is written into a folder. */
  @FunctionalInterface
  public interface Filling {
    /** Writes into it. */
    void fill(Path folder) throws IOException;
  }

  /**
   * Makes a folder with all that is written into it, or none.
   *
   * <p>It is filled under another name beside it, which stays if the program is stopped.
   *
   * @throws NewFile.Unforced if it is there, but may not outlast a loss of power
   * @throws IOException if something fails; then there is no such folder
   */
  public static void whole(Path folder, Filling filling) throws IOException {
    Path target = folder.toAbsolutePath().normalize();
    Path temporary = TemporaryFile.pathBeside(target);
    make(temporary);
    try {
      filling.fill(temporary);
      if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        throw new FileAlreadyExistsException(target.toString());
      }
      Files.move(temporary, target);
    } catch (IOException e) {
      takeAway(temporary);
      throw e;
    }
    NewFile.confirm(target);
  }

  private static void takeAway(Path folder) throws IOException {
    try (Stream<Path> inside = Files.walk(folder)) {
      for (Path each : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(each);
      }
    } catch (UncheckedIOException e) {
      throw new IOException(folder + " could not be taken away again", e);
    }
  }

  /** A folder that was there before may stand where nobody may look. */
  private static void confirm(Path there) throws IOException {
    Path outer = there.getParent();
    if (outer != null && Files.isReadable(outer)) {
      NewFile.confirm(there);
    }
  }

  /** The folder that a file stands in. */
  public static Path around(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null) {
      throw new IllegalArgumentException("no file can be at " + file);
    }
    return folder;
  }

  /** Makes what happened to the names in a folder outlast a loss of power. */
  static void force(Path folder) throws IOException {
    // Where a folder can't be opened as a file, the system itself orders such changes.
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
        channel.force(true);
      }
    }
  }

  /**
   * Makes a new file, and the folders that it stands in; nothing that is there is written over.
   *
   * @param name the file as complaints name it
   * @return whether it was made; else there is a complaint
   * @throws NewFile.Unforced if it was made, but may not outlast a loss of power
   * @throws IOException if the disk is full or fails
   */
  static boolean file(Path target, String name, String text, Complaints complaints)
      throws IOException {
    return file(target, name, text.getBytes(StandardCharsets.UTF_8), complaints);
  }

  /** The same of any bytes. */
  static boolean file(Path target, String name, byte[] bytes, Complaints complaints)
      throws IOException {
    Making making =
        () -> {
          make(around(target));
          TemporaryFile.sweep(around(target));
          if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            throw new FileAlreadyExistsException(target.toString());
          }
          NewFile.write(target, bytes);
        };
    return isMade(making, Optional.of(target), name, complaints);
  }

  /** Makes a folder as {@link #make} does; whether it is there, else there is a complaint. */
  static boolean folder(Path folder, String name, Complaints complaints) throws IOException {
    return isMade(() -> make(folder), Optional.empty(), name, complaints);
  }

  /** Takes a folder away if there is nothing in it. */
  static void unmake(Path folder) {
    try {
      Files.delete(folder);
    } catch (IOException used) {
      // Another program has written into it.
    }
  }

  /** What may be refused. */
  private interface Making {
    void make() throws IOException;
  }

  private static boolean isMade(
      Making making, Optional<Path> file, String name, Complaints complaints) throws IOException {
    try {
      making.make();
      return true;
    } catch (FileAlreadyExistsException e) {
      boolean itself = file.filter(Files::isRegularFile).isPresent();
      complaints.add(
          FolderReader.start(name),
          itself ? "this file is there already" : "a file stands where a folder is due",
          "another place; nothing is ever written over a file");
    } catch (AccessDeniedException e) {
      complaints.add(
          FolderReader.start(name), "no permission to write this", "a folder of your own");
    } catch (FileSystemException e) {
      complaints.add(
          FolderReader.start(name),
          "this can't be written: " + (e.getReason() == null ? "it is refused" : e.getReason()),
          "a folder that can be written to");
    }
    return false;
  }
}
