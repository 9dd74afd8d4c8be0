package org.mainsgate.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.mainsgate.source.Complaints;

/** The making of folders with new files in them, never in place of a file that is there. */
final class NewFolder {
  private NewFolder() {}

  /**
   * Makes a new file, and the folders that it stands in.
   *
   * @param name the file as complaints name it
   * @return whether it was made; else there is a complaint
   * @throws IOException if the disk is full or fails
   */
  static boolean file(Path target, String name, String text, Complaints complaints)
      throws IOException {
    return file(target, name, text.getBytes(StandardCharsets.UTF_8), complaints);
  }

  /** The same of any bytes. */
  static boolean file(Path target, String name, byte[] bytes, Complaints complaints)
      throws IOException {
    try {
      Path folder = target.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        throw new FileAlreadyExistsException(target.toString());
      }
      NewFile.write(target, bytes);
      return true;
    } catch (FileAlreadyExistsException e) {
      boolean itself = Files.isRegularFile(target);
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
