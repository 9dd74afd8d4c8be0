package org.mainsgate.store;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.mainsgate.source.Complaints;

/** The files of a pack, read as if they lay in a folder; nothing can be written there. */
record PackedFiles(Pack pack) implements RecordFiles {

  @Override
  public boolean exists(String path) {
    return pack.files().containsKey(path) || isFolder(path);
  }

  @Override
  public boolean isFolder(String path) {
    return pack.files().keySet().stream().anyMatch(name -> name.startsWith(path + "/"));
  }

  @Override
  public Optional<StoredFile> read(String path, int most, Complaints complaints) {
    byte[] bytes = pack.files().get(path);
    if (bytes == null) {
      complaints.add(FolderReader.start(path), "this does not exist");
      return Optional.empty();
    }
    if (bytes.length > most) {
      complaints.add(
          FolderReader.start(path),
          "a file of " + bytes.length + " bytes",
          "at most " + most + " bytes");
      return Optional.empty();
    }
    return Optional.of(new StoredFile(path, bytes.clone()));
  }

  @Override
  public List<String> list(String path, Complaints complaints) {
    String inside = path + "/";
    return pack.files().keySet().stream()
        .filter(name -> name.startsWith(inside))
        .map(name -> name.substring(inside.length()).replaceFirst("/.*", ""))
        .distinct()
        .sorted()
        .toList();
  }

  @Override
  public List<String> leftovers(String path) {
    return List.of();
  }

  @Override
  public Path resolve(String path) {
    throw new IllegalStateException("a pack is never written to: " + path);
  }
}
