package org.mainsgate.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;

/**
 * The reader of what lies inside one folder, by paths with `/` between their parts.
 *
 * <p>Whatever leads out of the folder, is no regular file or is too large is complained of and not
 * read.
 */
final class FolderReader implements RecordFiles {
  private final Path folder;
  private final Path real;

  private FolderReader(Path folder, Path real) {
    this.folder = folder;
    this.real = real;
  }

  /**
   * The reader of a folder.
   *
   * @throws IOException if the folder does not exist or can't be followed
   */
  static FolderReader of(Path folder) throws IOException {
    return new FolderReader(folder, folder.toRealPath());
  }

  @Override
  public Path resolve(String path) {
    return folder.resolve(path);
  }

  @Override
  public boolean exists(String path) {
    return Files.exists(folder.resolve(path), LinkOption.NOFOLLOW_LINKS);
  }

  @Override
  public boolean isFolder(String path) {
    return Files.isDirectory(folder.resolve(path));
  }

  @Override
  public Optional<StoredFile> read(String path, int most, Complaints complaints) {
    try {
      Path file = folder.resolve(path).toRealPath();
      BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
      if (!file.startsWith(real)) {
        return refuse(
            path, "a link that leads out of the bench's folder", "the file itself", complaints);
      }
      if (!attributes.isRegularFile()) {
        return refuse(path, "this is no file", "a regular file", complaints);
      }
      if (attributes.size() > most) {
        return refuse(path, "a file of " + attributes.size() + " bytes", atMost(most), complaints);
      }
      return bytes(file, path, most, complaints);
    } catch (IOException e) {
      complaints.add(start(path), fault(e));
      return Optional.empty();
    }
  }

  private static Optional<StoredFile> bytes(Path file, String path, int most, Complaints complaints)
      throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(most + 1);
      return bytes.length > most
          ? refuse(path, "a file that grows", atMost(most), complaints)
          : Optional.of(new StoredFile(path, bytes));
    }
  }

  private static String atMost(int most) {
    return "at most " + most + " bytes";
  }

  @Override
  public List<String> list(String path, Complaints complaints) {
    if (!exists(path)) {
      return List.of();
    }
    Path inside = folder.resolve(path);
    try {
      if (!inside.toRealPath().startsWith(real)) {
        refuse(
            path, "a link that leads out of the bench's folder", "the folder itself", complaints);
        return List.of();
      }
      if (!Files.isDirectory(inside)) {
        refuse(path, "this is no folder", "a folder", complaints);
        return List.of();
      }
      return names(inside);
    } catch (IOException e) {
      complaints.add(start(path), fault(e));
      return List.of();
    }
  }

  @Override
  public List<String> leftovers(String path) {
    return list(path, new Complaints()).stream()
        .filter(name -> TemporaryFile.isName(name) || RecordNumber.isName(name))
        .map(name -> path.isEmpty() ? name : path + "/" + name)
        .filter(name -> TemporaryFile.isLeftOver(folder.resolve(name)))
        .map(name -> "left over from an interrupted write: " + name)
        .toList();
  }

  private static List<String> names(Path inside) throws IOException {
    List<String> names = new ArrayList<>();
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(inside)) {
      for (Path entry : entries) {
        names.add(entry.getFileName().toString());
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    names.sort(null);
    return names;
  }

  private static <T> Optional<T> refuse(
      String path, String what, String right, Complaints complaints) {
    complaints.add(start(path), what, right);
    return Optional.empty();
  }

  /** Where a complaint about a whole file stands. */
  static Position start(String path) {
    return new Position(path, 1, 1);
  }

  private static String fault(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "this does not exist";
    }
    return e instanceof AccessDeniedException ? "no permission to read this" : "this can't be read";
  }
}
