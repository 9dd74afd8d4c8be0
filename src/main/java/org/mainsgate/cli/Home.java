package org.mainsgate.cli;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.mainsgate.seal.TrustList;
import org.mainsgate.source.Complaints;
import org.mainsgate.store.NewFile;
import org.mainsgate.store.NewFolder;

/**
 * The folder of a person's key and of what they know: {@code MAINSGATE_HOME}, else {@code
 * .mainsgate} in the home folder. Nobody else may read it, where the disk knows such a thing.
 */
record Home(Path folder) {
  private static final String KEY = "identity.p12";
  private static final String TRUSTED = "trusted.yaml";

  /** An empty file that stays: taking it away would take the lock from whoever waits for it. */
  private static final String LOCK = ".trusted.lock";

  private static final Set<StandardOpenOption> LOCKED =
      Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE);
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
   * @throws java.nio.file.FileAlreadyExistsException if there is one; it is never written over
   */
  void writeKey(byte[] bytes) throws IOException {
    prepare();
    NewFile.write(keyFile(), bytes, rights("rw-------"));
  }

  /** Keys and rules that are known; complaints where the file can't be understood. */
  Optional<TrustList> trusted(Complaints complaints) throws IOException {
    Optional<byte[]> file = bytes(folder.resolve(TRUSTED));
    return file.isEmpty()
        ? Optional.of(TrustList.NONE)
        : TrustList.read(folder.resolve(TRUSTED).toString(), file.get(), complaints);
  }

  /**
   * Writes down what is known from now on, beside what is known already.
   *
   * <p>The file is read and written under a lock, so that of two programs at once none takes away
   * what the other has written down.
   *
   * @return whether it was written; else there are complaints of the file that is there
   * @throws IOException if the disk is full or fails, or knows no locks; then nothing was written
   */
  boolean trust(UnaryOperator<TrustList> more, Complaints complaints) throws IOException {
    prepare();
    // Within one program a lock is refused rather than waited for.
    synchronized (Home.class) {
      try (FileChannel channel =
              FileChannel.open(folder.resolve(LOCK), LOCKED, rights("rw-------"));
          FileLock lock = channel.lock()) {
        Optional<TrustList> before = trusted(complaints);
        if (before.isEmpty() || !lock.isValid()) {
          return false;
        }
        byte[] text = more.apply(before.get()).written().getBytes(StandardCharsets.UTF_8);
        NewFile.replace(folder.resolve(TRUSTED), text, rights("rw-------"));
        return true;
      }
    }
  }

  private void prepare() throws IOException {
    NewFolder.make(folder, rights("rwx------"));
    NewFile.sweep(folder);
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
