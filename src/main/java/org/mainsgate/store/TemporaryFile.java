package org.mainsgate.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.security.SecureRandom;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A file {@code .NAME.mainsgate-RANDOM.tmp} that becomes the file NAME beside it.
 *
 * <p>Its name is never used twice, so that no two programs share one. As long as its program writes
 * it, that program holds a lock on it, which the system takes back when the program ends, however
 * it ends. So what is not locked is left over, and may be swept. An age would not do: the store has
 * no clock, the clocks of two machines differ, and a program can be stopped for an hour and go on.
 * Where the disk knows no locks nothing can be told, and nothing is swept.
 *
 * <p>Sweeping one that is still written, if it ever came to that, loses nothing: the writer then
 * finds no file to name, and says so.
 */
final class TemporaryFile implements AutoCloseable {
  /** Narrow, since what matches is deleted: other programs have temporary files here too. */
  private static final Pattern NAME = Pattern.compile("\\..+\\.mainsgate-[0-9a-f]{16}\\.tmp");

  private static final int MOST_TRIES = 100;
  private static final SecureRandom CHANCE = new SecureRandom();

  private final Path path;
  private final FileChannel channel;

  private TemporaryFile(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /** Makes an empty one, locked. */
  static TemporaryFile beside(Path target, FileAttribute<?>... rights) throws IOException {
    for (int i = 0; i < MOST_TRIES; i++) {
      Path path = pathBeside(target);
      FileChannel channel =
          FileChannel.open(
              path, EnumSet.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), rights);
      TemporaryFile made = new TemporaryFile(path, channel);
      if (made.isOurs()) {
        return made;
      }
      made.close();
    }
    throw new IOException("other programs take away what is written beside " + target);
  }

  /**
   * An empty one of another name, locked where that can be.
   *
   * @throws java.nio.file.FileAlreadyExistsException if there is one of that name
   */
  static TemporaryFile at(Path path) throws IOException {
    FileChannel channel =
        FileChannel.open(path, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    TemporaryFile made = new TemporaryFile(path, channel);
    made.isOurs();
    return made;
  }

  /** A path for something that is made in another way and then moved to its place. */
  static Path pathBeside(Path target) {
    String random = String.format(Locale.ROOT, "%016x", CHANCE.nextLong());
    return target.resolveSibling("." + target.getFileName() + ".mainsgate-" + random + ".tmp");
  }

  /** Whether it is locked and still there: it may have been swept before it was locked. */
  private boolean isOurs() {
    try {
      return channel.tryLock() != null && Files.exists(path, LinkOption.NOFOLLOW_LINKS);
    } catch (OverlappingFileLockException held) {
      return false;
    } catch (IOException noLocks) {
      // Nobody can sweep it either.
      return true;
    }
  }

  Path path() {
    return path;
  }

  /** Writes the bytes, and makes them outlast a loss of power. */
  void fill(byte[] bytes) throws IOException {
    try {
      ByteBuffer rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      channel.force(true);
    } catch (IOException e) {
      // A full disk is told without saying where.
      throw new IOException(path + ": " + e.getMessage(), e);
    }
  }

  /** Takes it away, unless it was moved. */
  @Override
  public void close() {
    try (channel) {
      Files.deleteIfExists(path);
    } catch (IOException leftOver) {
      // It stays, is reported as left over, and swept by a later write. What was written is true.
    }
  }

  /** Whether it may be one by its name. */
  static boolean isName(String name) {
    return NAME.matcher(name).matches();
  }

  /** Whether no program writes it any more, or none can be asked. */
  static boolean isLeftOver(Path path) {
    if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
      return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
    }
    // A lock that is shared: reading changes nothing, and several may look.
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ);
        FileLock lock = channel.tryLock(0, Long.MAX_VALUE, true)) {
      return lock != null;
    } catch (NoSuchFileException finished) {
      return false;
    } catch (OverlappingFileLockException written) {
      return false;
    } catch (IOException unknown) {
      return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
    }
  }

  /** Takes away what no program writes any more in a folder; what can't be taken away stays. */
  static void sweep(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (DirectoryStream<Path> entries =
        Files.newDirectoryStream(folder, entry -> isName(String.valueOf(entry.getFileName())))) {
      for (Path entry : entries) {
        sweepOne(entry);
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }

  private static void sweepOne(Path path) {
    if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Set<StandardOpenOption> write = EnumSet.of(StandardOpenOption.WRITE);
    try (FileChannel channel = FileChannel.open(path, write);
        FileLock lock = channel.tryLock()) {
      if (lock != null) {
        Files.deleteIfExists(path);
      }
    } catch (OverlappingFileLockException | IOException stays) {
      // It is being written, or is no file that can be locked. Reading reports it if it is none.
    }
  }
}
