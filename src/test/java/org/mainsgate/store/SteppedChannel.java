package org.mainsgate.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Path;
import org.jspecify.annotations.NullMarked;
import org.jspecify.annotations.Nullable;

/** An open file of a {@link SteppedDisk}. A program that ends closes it without a step. */
@NullMarked
final class SteppedChannel extends FileChannel {
  private final FileChannel real;
  private final Path path;
  private final SteppedDisk.Steps steps;

  SteppedChannel(FileChannel real, Path path, SteppedDisk.Steps steps) {
    this.real = real;
    this.path = path;
    this.steps = steps;
  }

  private void step(String what) throws IOException {
    steps.before(what, path.toString());
  }

  @Override
  public int read(ByteBuffer to) throws IOException {
    return real.read(to);
  }

  @Override
  public long read(ByteBuffer[] to, int from, int count) throws IOException {
    return real.read(to, from, count);
  }

  @Override
  public int read(ByteBuffer to, long position) throws IOException {
    return real.read(to, position);
  }

  /** Half of it at a time, so that a program can be stopped in between. */
  @Override
  public int write(ByteBuffer from) throws IOException {
    step("write");
    ByteBuffer half = from.duplicate();
    half.limit(from.position() + (from.remaining() + 1) / 2);
    int written = real.write(half);
    from.position(from.position() + written);
    return written;
  }

  @Override
  public long write(ByteBuffer[] from, int first, int count) throws IOException {
    step("write");
    return real.write(from, first, count);
  }

  @Override
  public int write(ByteBuffer from, long position) throws IOException {
    step("write");
    return real.write(from, position);
  }

  @Override
  public long position() throws IOException {
    return real.position();
  }

  @Override
  public FileChannel position(long position) throws IOException {
    real.position(position);
    return this;
  }

  @Override
  public long size() throws IOException {
    return real.size();
  }

  @Override
  public FileChannel truncate(long size) throws IOException {
    step("truncate");
    real.truncate(size);
    return this;
  }

  @Override
  public void force(boolean metaData) throws IOException {
    step("force");
  }

  @Override
  public long transferTo(long position, long count, WritableByteChannel to) throws IOException {
    return real.transferTo(position, count, to);
  }

  @Override
  public long transferFrom(ReadableByteChannel from, long position, long count) throws IOException {
    step("write");
    return real.transferFrom(from, position, count);
  }

  @Override
  public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
    return real.map(mode, position, size);
  }

  @Override
  public FileLock lock(long position, long size, boolean shared) throws IOException {
    step("lock");
    return real.lock(position, size, shared);
  }

  @Override
  public @Nullable FileLock tryLock(long position, long size, boolean shared) throws IOException {
    step("lock");
    return real.tryLock(position, size, shared);
  }

  @Override
  protected void implCloseChannel() throws IOException {
    real.close();
  }
}
