package org.mainsgate.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.regex.Pattern;

/**
 * The making of a new file so that it is there whole or not at all, and never in place of another.
 *
 * <p>The bytes go to a file {@code .NAME.N.tmp} beside it and are forced to the disk; then the file
 * gets its name, and the folder is forced.
 */
public final class NewFile {
  private static final int MOST_LEFTOVERS = 100;

  /** Narrow, since what matches is deleted: other programs have temporary files here too. */
  private static final Pattern LEFTOVER =
      Pattern.compile("\\..+\\.yaml(\\.sha256)?\\.[0-9]{1,2}\\.tmp");

  private NewFile() {}

  /**
   * Makes a file.
   *
   * @throws FileAlreadyExistsException if there is one of that name; it is left as it is
   * @throws IOException if the disk is full or fails; then there is no such file
   */
  public static void write(Path target, byte[] bytes) throws IOException {
    Path temporary = temporary(target);
    try {
      fill(temporary, bytes);
      name(temporary, target);
    } finally {
      Files.deleteIfExists(temporary);
    }
    force(folderOf(target));
  }

  /** Whether a file is what an interrupted write of ours left behind. */
  static boolean isLeftover(String name) {
    return LEFTOVER.matcher(name).matches();
  }

  private static Path temporary(Path target) throws IOException {
    for (int number = 0; number < MOST_LEFTOVERS; number++) {
      Path path = target.resolveSibling("." + target.getFileName() + "." + number + ".tmp");
      if (!Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
        return Files.createFile(path);
      }
    }
    throw new IOException("too many leftovers of interrupted writes beside " + target);
  }

  private static void fill(Path temporary, byte[] bytes) throws IOException {
    try (FileChannel channel = FileChannel.open(temporary, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      channel.force(true);
    } catch (IOException e) {
      // A full disk is told without saying where.
      throw new IOException(temporary + ": " + e.getMessage(), e);
    }
  }

  /** A second name for the same file can't replace another file, as a move can. */
  private static void name(Path temporary, Path target) throws IOException {
    try {
      Files.createLink(target, temporary);
    } catch (FileAlreadyExistsException e) {
      throw e;
    } catch (UnsupportedOperationException | IOException e) {
      // Some disks know no second names. Then it is a move that looks first.
      if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        throw new FileAlreadyExistsException(target.toString());
      }
      Files.move(temporary, target);
    }
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

  private static Path folderOf(Path target) {
    Path folder = target.toAbsolutePath().getParent();
    if (folder == null) {
      throw new IllegalArgumentException("no file can be at " + target);
    }
    return folder;
  }
}
