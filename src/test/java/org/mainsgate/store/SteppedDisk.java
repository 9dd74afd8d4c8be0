package org.mainsgate.store;

import java.io.IOException;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.spi.FileSystemProvider;
import java.util.Iterator;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.NullMarked;
import org.jspecify.annotations.Nullable;

/**
 * A disk as one program sees it: the real one, where something may happen before each step.
 *
 * <p>A step is what reaches the disk: a look at a file, a list, an opening, a write, a new name.
 * What is forced is only counted, since no loss of power is played here.
 */
@NullMarked
final class SteppedDisk extends FileSystemProvider {

  /** What happens before each step. */
  interface Steps {
    /**
     * Waits, or fails, or does nothing.
     *
     * @param step what is done, such as {@code createLink}
     * @param file where, if it has a name
     */
    void before(String step, String file) throws IOException;
  }

  private final FileSystemProvider real;
  private final FileSystem system;
  private final Steps steps;

  private SteppedDisk(FileSystem real, Steps steps) {
    this.real = real.provider();
    this.system = SteppedSystem.of(real, this);
    this.steps = steps;
  }

  /** A path whose every use is a step. */
  static Path path(Path real, Steps steps) {
    return new SteppedDisk(real.getFileSystem(), steps).wrap(real);
  }

  private Path wrap(Path path) {
    InvocationHandler handler = new Wrapped(this, path);
    return (Path)
        Proxy.newProxyInstance(Path.class.getClassLoader(), new Class<?>[] {Path.class}, handler);
  }

  /** The real path behind one of ours. */
  private static @Nullable Object bare(@Nullable Object object) {
    return object != null
            && Proxy.isProxyClass(object.getClass())
            && Proxy.getInvocationHandler(object) instanceof Wrapped wrapped
        ? wrapped.path()
        : object;
  }

  private static Path bare(Path path) {
    Object found = bare((Object) path);
    if (found instanceof Path real) {
      return real;
    }
    throw new IllegalStateException("no path");
  }

  private record Wrapped(SteppedDisk disk, Path path) implements InvocationHandler {
    @Override
    public @Nullable Object invoke(Object proxy, Method method, Object @Nullable [] given)
        throws Throwable {
      if (method.getName().equals("getFileSystem")) {
        return disk.system;
      }
      if (method.getName().equals("toRealPath")) {
        disk.steps.before("toRealPath", path.toString());
      }
      Object[] arguments = given == null ? new Object[0] : given.clone();
      for (int i = 0; i < arguments.length; i++) {
        Object real = bare(arguments[i]);
        if (real != null) {
          arguments[i] = real;
        }
      }
      try {
        Object found = method.invoke(path, arguments);
        return found instanceof Path next ? disk.wrap(next) : found;
      } catch (InvocationTargetException e) {
        throw e.getCause();
      }
    }
  }

  private Path step(String what, Path path) throws IOException {
    Path bare = bare(path);
    steps.before(what, bare.toString());
    return bare;
  }

  @Override
  public String getScheme() {
    return "stepped";
  }

  @Override
  public FileSystem newFileSystem(URI uri, Map<String, ?> environment) {
    throw new UnsupportedOperationException();
  }

  @Override
  public FileSystem getFileSystem(URI uri) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Path getPath(URI uri) {
    throw new UnsupportedOperationException();
  }

  @Override
  public SeekableByteChannel newByteChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    return real.newByteChannel(step("open", path), options, attributes);
  }

  @Override
  public FileChannel newFileChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    Path bare = step("open", path);
    return new SteppedChannel(real.newFileChannel(bare, options, attributes), bare, steps);
  }

  @Override
  public DirectoryStream<Path> newDirectoryStream(
      Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
    Path bare = step("list", folder);
    DirectoryStream<Path> found =
        real.newDirectoryStream(bare, entry -> filter.accept(wrap(entry)));
    return new DirectoryStream<>() {
      @Override
      public Iterator<Path> iterator() {
        Iterator<Path> entries = found.iterator();
        return new Iterator<>() {
          @Override
          public boolean hasNext() {
            return entries.hasNext();
          }

          @Override
          public Path next() {
            return wrap(entries.next());
          }
        };
      }

      @Override
      public void close() throws IOException {
        found.close();
      }
    };
  }

  @Override
  public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
    real.createDirectory(step("createDirectory", folder), attributes);
  }

  @Override
  public void createLink(Path link, Path existing) throws IOException {
    real.createLink(step("createLink", link), bare(existing));
  }

  @Override
  public void delete(Path path) throws IOException {
    real.delete(step("delete", path));
  }

  @Override
  public boolean deleteIfExists(Path path) throws IOException {
    return real.deleteIfExists(step("delete", path));
  }

  @Override
  public void copy(Path source, Path target, CopyOption... options) throws IOException {
    real.copy(step("copy", source), bare(target), options);
  }

  @Override
  public void move(Path source, Path target, CopyOption... options) throws IOException {
    real.move(step("move", source), bare(target), options);
  }

  @Override
  public boolean isSameFile(Path one, Path other) throws IOException {
    return real.isSameFile(step("look", one), bare(other));
  }

  @Override
  public boolean isHidden(Path path) throws IOException {
    return real.isHidden(bare(path));
  }

  @Override
  public FileStore getFileStore(Path path) throws IOException {
    return real.getFileStore(bare(path));
  }

  @Override
  public void checkAccess(Path path, AccessMode... modes) throws IOException {
    real.checkAccess(step("look", path), modes);
  }

  @Override
  public <V extends FileAttributeView> @Nullable V getFileAttributeView(
      Path path, Class<V> type, LinkOption... options) {
    return real.getFileAttributeView(bare(path), type, options);
  }

  @Override
  public <A extends BasicFileAttributes> A readAttributes(
      Path path, Class<A> type, LinkOption... options) throws IOException {
    return real.readAttributes(step("look", path), type, options);
  }

  @Override
  public Map<String, Object> readAttributes(Path path, String names, LinkOption... options)
      throws IOException {
    return real.readAttributes(step("look", path), names, options);
  }

  @Override
  public void setAttribute(Path path, String name, @Nullable Object value, LinkOption... options)
      throws IOException {
    real.setAttribute(step("setAttribute", path), name, value, options);
  }
}
