package org.mainsgate.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;

/**
 * The making of a file so that it is there whole or not at all.
 *
 * <p>The bytes go to a {@link TemporaryFile} beside it and are forced to the disk; then the file
 * gets its name, and the folder is forced.
 */
public final class NewFile {
  private NewFile() {}

  /** A file that is there and whole, of which the disk did not say that it will stay. */
  public static final class Unforced extends IOException {
    private static final long serialVersionUID = 1L;

    Unforced(Path path, IOException cause) {
      super(
          path
              + " is there, but the disk failed to confirm it: it may not outlast a loss of power ("
              + cause.getMessage()
              + ")",
          cause);
    }
  }

  /**
   * Makes a file, never in place of another.
   *
   * @param rights who may read it, as for {@link Files#createFile}
   * @throws FileAlreadyExistsException if there is one of that name; it is left as it is
   * @throws Unforced if the file is there, but may not outlast a loss of power
   * @throws IOException if the disk is full or fails; then there is no such file
   */
  public static void write(Path target, byte[] bytes, FileAttribute<?>... rights)
      throws IOException {
    try (TemporaryFile temporary = TemporaryFile.beside(target, rights)) {
      temporary.fill(bytes);
      name(temporary.path(), target);
    }
    confirm(target);
  }

  /**
   * Makes a file, or puts it in the place of the one that is there.
   *
   * @param rights who may read it, as for {@link Files#createFile}
   * @throws Unforced if the new file is there, but may not outlast a loss of power
   * @throws IOException if the disk is full or fails; then what was there is as it was
   */
  public static void replace(Path target, byte[] bytes, FileAttribute<?>... rights)
      throws IOException {
    try (TemporaryFile temporary = TemporaryFile.beside(target, rights)) {
      temporary.fill(bytes);
      Files.move(
          temporary.path(),
          target,
          StandardCopyOption.ATOMIC_MOVE,
          StandardCopyOption.REPLACE_EXISTING);
    }
    confirm(target);
  }

  /** Takes away what interrupted writes left in a folder and no program writes any more. */
  public static void sweep(Path folder) throws IOException {
    TemporaryFile.sweep(folder);
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

  /** Makes the name of a file that has just been made outlast a loss of power. */
  static void confirm(Path made) throws IOException {
    try {
      NewFolder.force(NewFolder.around(made));
    } catch (IOException e) {
      throw new Unforced(made, e);
    }
  }
}
