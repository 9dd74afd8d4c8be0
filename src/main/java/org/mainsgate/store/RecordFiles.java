package org.mainsgate.store;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.StrictYaml;

/** The files of a bench, by paths with `/` between their parts: on disk, or packed. */
interface RecordFiles {

  /** Whether there is a file or a folder. */
  boolean exists(String path);

  boolean isFolder(String path);

  /** Reads a file of at most so many bytes, or complains. */
  Optional<StoredFile> read(String path, int most, Complaints complaints);

  /** Reads a file of the record, or complains. */
  default Optional<StoredFile> read(String path, Complaints complaints) {
    return read(path, StrictYaml.MOST_BYTES, complaints);
  }

  /** The names in a folder in their order, none if the folder does not exist; or a complaint. */
  List<String> list(String path, Complaints complaints);

  /** What interrupted writes left in a folder, in words, one for each file. */
  List<String> leftovers(String path);

  /** Where a file would be written. */
  Path resolve(String path);
}
