package org.vestibule.store.faults;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * A channel whose writes and forces are told of first. A folder's channel, as Unix has it and
 * in-memory file systems don't, can only be forced.
 */
final class FaultyChannel extends FileChannel {

  private final FaultyFileSystem system;
  private final Path path;
  private final @Nullable FileChannel real;

  FaultyChannel(FaultyFileSystem system, Path path, @Nullable FileChannel real) {
    this.system = system;
    this.path = path;
    this.real = real;
  }

  private FileChannel file() throws IOException {
    if (real == null) {
      throw new IOException("is a folder");
    }
    return real;
  }

  @Override
  public int write(ByteBuffer source) throws IOException {
    system.before(Deed.Kind.WRITE, path);
    int wanted = Math.min(source.remaining(), system.mostBytesAWrite());
    ByteBuffer part = source.slice(source.position(), wanted);
    int written = file().write(part);
    source.position(source.position() + written);
    return written;
  }

  @Override
  public void force(boolean metadata) throws IOException {
    system.before(Deed.Kind.FORCE, path);
    if (real != null) {
      real.force(metadata);
    }
  }

  @Override
  public int read(ByteBuffer target) throws IOException {
    return file().read(target);
  }

  @Override
  public long read(ByteBuffer[] targets, int offset, int length) throws IOException {
    return file().read(targets, offset, length);
  }

  @Override
  public int read(ByteBuffer target, long position) throws IOException {
    return file().read(target, position);
  }

  @Override
  public long write(ByteBuffer[] sources, int offset, int length) throws IOException {
    return file().write(sources, offset, length);
  }

  @Override
  public int write(ByteBuffer source, long position) throws IOException {
    return file().write(source, position);
  }

  @Override
  public long position() throws IOException {
    return file().position();
  }

  @Override
  public FileChannel position(long position) throws IOException {
    file().position(position);
    return this;
  }

  @Override
  public long size() throws IOException {
    return file().size();
  }

  @Override
  public FileChannel truncate(long size) throws IOException {
    file().truncate(size);
    return this;
  }

  @Override
  public long transferTo(long position, long count, WritableByteChannel to) throws IOException {
    return file().transferTo(position, count, to);
  }

  @Override
  public long transferFrom(ReadableByteChannel from, long position, long count) throws IOException {
    return file().transferFrom(from, position, count);
  }

  @Override
  public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
    return file().map(mode, position, size);
  }

  @Override
  public FileLock lock(long position, long size, boolean shared) throws IOException {
    return file().lock(position, size, shared);
  }

  @Override
  public FileLock tryLock(long position, long size, boolean shared) throws IOException {
    return file().tryLock(position, size, shared);
  }

  @Override
  protected void implCloseChannel() throws IOException {
    if (real != null) {
      real.close();
    }
  }
}
