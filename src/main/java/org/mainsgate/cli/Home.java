package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.Set;
import org.mainsgate.seal.TrustList;
import org.mainsgate.source.Complaints;

/**
 * The folder of a person's key and of what they know: {@code MAINSGATE_HOME}, else {@code
 * .mainsgate} in the home folder. Nobody else may read it, where the disk knows such a thing.
 */
record Home(Path folder) {
  private static final String KEY = "identity.p12";
  private static final String TRUSTED = "trusted.yaml";
  private static final int MOST = 1 << 20;

  static Home of(App app) {
    return new Home(
        app.around()
            .variable("MAINSGATE_HOME")
            .filter(path -> !path.isBlank())
            .map(Path::of)
            .orElseGet(() -> app.around().userHome().resolve(".mainsgate")));
  }

  Path keyFile() {
    return folder.resolve(KEY);
  }

  /** The file of keys, if there is one. */
  Optional<byte[]> key() throws IOException {
    return bytes(keyFile());
  }

  private static Optional<byte[]> bytes(Path file) throws IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    if (Files.size(file) > MOST) {
      throw new IOException("`" + file + "` is too large for what it should be");
    }
    return Optional.of(Files.readAllBytes(file));
  }

  /** Whether others may read the file of keys. */
  boolean isKeyOpen() throws IOException {
    return isPosix()
        && Files.exists(keyFile())
        && Files.getPosixFilePermissions(keyFile()).stream()
            .anyMatch(
                right ->
                    right != PosixFilePermission.OWNER_READ
                        && right != PosixFilePermission.OWNER_WRITE);
  }

  /**
   * Writes a new file of keys.
   *
   * @throws FileAlreadyExistsException if there is one; it is never written over
   */
  void writeKey(byte[] bytes) throws IOException {
    if (Files.exists(keyFile())) {
      throw new FileAlreadyExistsException(keyFile().toString());
    }
    write(keyFile(), bytes);
  }

  /** Keys and rules that are known; complaints where the file can't be understood. */
  Optional<TrustList> trusted(Complaints complaints) throws IOException {
    Optional<byte[]> file = bytes(folder.resolve(TRUSTED));
    return file.isEmpty()
        ? Optional.of(TrustList.NONE)
        : TrustList.read(folder.resolve(TRUSTED).toString(), file.get(), complaints);
  }

  void trust(TrustList list) throws IOException {
    write(
        folder.resolve(TRUSTED), list.written().getBytes(java.nio.charset.StandardCharsets.UTF_8));
  }

  private void write(Path file, byte[] bytes) throws IOException {
    Files.createDirectories(folder, rights("rwx------"));
    Path temporary = Files.createTempFile(folder, ".new", ".tmp", rights("rw-------"));
    try {
      Files.write(temporary, bytes, StandardOpenOption.SYNC, StandardOpenOption.WRITE);
      Files.move(
          temporary, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }

  private static FileAttribute<?>[] rights(String rights) {
    return isPosix()
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : new FileAttribute<?>[0];
  }

  private static boolean isPosix() {
    Set<String> views = FileSystems.getDefault().supportedFileAttributeViews();
    return views.contains("posix");
  }
}
