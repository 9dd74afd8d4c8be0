package org.mainsgate.store;

import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.WatchService;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.Set;
import org.jspecify.annotations.NullMarked;

/** The file system of a {@link SteppedDisk}: the real one under another provider. */
@NullMarked
final class SteppedSystem extends FileSystem {
  private final FileSystem real;
  private final FileSystemProvider provider;

  private SteppedSystem(FileSystem real, FileSystemProvider provider) {
    this.real = real;
    this.provider = provider;
  }

  static FileSystem of(FileSystem real, FileSystemProvider provider) {
    return new SteppedSystem(real, provider);
  }

  @Override
  public FileSystemProvider provider() {
    return provider;
  }

  @Override
  public void close() {
    throw new UnsupportedOperationException();
  }

  @Override
  public boolean isOpen() {
    return true;
  }

  @Override
  public boolean isReadOnly() {
    return false;
  }

  @Override
  public String getSeparator() {
    return real.getSeparator();
  }

  @Override
  public Iterable<Path> getRootDirectories() {
    return real.getRootDirectories();
  }

  @Override
  public Iterable<FileStore> getFileStores() {
    return real.getFileStores();
  }

  @Override
  public Set<String> supportedFileAttributeViews() {
    return real.supportedFileAttributeViews();
  }

  @Override
  public Path getPath(String first, String... more) {
    throw new UnsupportedOperationException();
  }

  @Override
  public PathMatcher getPathMatcher(String pattern) {
    throw new UnsupportedOperationException();
  }

  @Override
  public UserPrincipalLookupService getUserPrincipalLookupService() {
    return real.getUserPrincipalLookupService();
  }

  @Override
  public WatchService newWatchService() {
    throw new UnsupportedOperationException();
  }
}
