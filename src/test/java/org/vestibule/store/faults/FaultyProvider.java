package org.vestibule.store.faults;

import java.io.IOException;
import java.net.URI;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Tells the file system of each deed and then lets the real provider do it. */
final class FaultyProvider extends FileSystemProvider {

  private final FaultyFileSystem system;
  private final FileSystemProvider real;

  FaultyProvider(FaultyFileSystem system) {
    this.system = system;
    this.real = system.real.provider();
  }

  @Override
  public String getScheme() {
    return "faulty";
  }

  @Override
  public FileSystem newFileSystem(URI uri, Map<String, ?> settings) {
    throw new UnsupportedOperationException("made by its constructor");
  }

  @Override
  public FileSystem getFileSystem(URI uri) {
    return system;
  }

  @Override
  public Path getPath(URI uri) {
    return system.wrap(real.getPath(uri));
  }

  @Override
  public SeekableByteChannel newByteChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    tellOfOpening(path, options);
    return real.newByteChannel(FaultyPath.unwrap(path), options, attributes);
  }

  @Override
  public FileChannel newFileChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    if (Files.isDirectory(path)) {
      return new FaultyChannel(system, path, null);
    }
    tellOfOpening(path, options);
    return new FaultyChannel(
        system, path, real.newFileChannel(FaultyPath.unwrap(path), options, attributes));
  }

  private void tellOfOpening(Path path, Set<? extends OpenOption> options) throws IOException {
    boolean creates = options.contains(StandardOpenOption.CREATE_NEW);
    system.before(creates ? Deed.Kind.CREATE : Deed.Kind.OPEN, path);
  }

  @Override
  public DirectoryStream<Path> newDirectoryStream(
      Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
    system.before(Deed.Kind.LIST, folder);
    List<Path> paths = new ArrayList<>();
    try (DirectoryStream<Path> inside =
        real.newDirectoryStream(FaultyPath.unwrap(folder), entry -> true)) {
      for (Path path : inside) {
        Path ours = system.wrap(path);
        if (filter.accept(ours)) {
          paths.add(ours);
        }
      }
    }
    return new DirectoryStream<>() {
      @Override
      public Iterator<Path> iterator() {
        return paths.iterator();
      }

      @Override
      public void close() {}
    };
  }

  @Override
  public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
    real.createDirectory(FaultyPath.unwrap(folder), attributes);
  }

  @Override
  public void createLink(Path link, Path existing) throws IOException {
    system.before(Deed.Kind.LINK, link);
    real.createLink(FaultyPath.unwrap(link), FaultyPath.unwrap(existing));
  }

  @Override
  public void delete(Path path) throws IOException {
    system.before(Deed.Kind.DELETE, path);
    real.delete(FaultyPath.unwrap(path));
  }

  @Override
  public void copy(Path source, Path target, CopyOption... options) throws IOException {
    real.copy(FaultyPath.unwrap(source), FaultyPath.unwrap(target), options);
  }

  @Override
  public void move(Path source, Path target, CopyOption... options) throws IOException {
    system.before(Deed.Kind.MOVE, target);
    real.move(FaultyPath.unwrap(source), FaultyPath.unwrap(target), options);
  }

  @Override
  public boolean isSameFile(Path path, Path other) throws IOException {
    return real.isSameFile(FaultyPath.unwrap(path), FaultyPath.unwrap(other));
  }

  @Override
  public boolean isHidden(Path path) throws IOException {
    return real.isHidden(FaultyPath.unwrap(path));
  }

  @Override
  public FileStore getFileStore(Path path) throws IOException {
    return new TypedFileStore(real.getFileStore(FaultyPath.unwrap(path)), system.storeType());
  }

  @Override
  public void checkAccess(Path path, AccessMode... modes) throws IOException {
    real.checkAccess(FaultyPath.unwrap(path), modes);
  }

  @Override
  public <V extends FileAttributeView> @Nullable V getFileAttributeView(
      Path path, Class<V> type, LinkOption... options) {
    return real.getFileAttributeView(FaultyPath.unwrap(path), type, options);
  }

  @Override
  public <A extends BasicFileAttributes> A readAttributes(
      Path path, Class<A> type, LinkOption... options) throws IOException {
    return real.readAttributes(FaultyPath.unwrap(path), type, options);
  }

  @Override
  public Map<String, Object> readAttributes(Path path, String attributes, LinkOption... options)
      throws IOException {
    return real.readAttributes(FaultyPath.unwrap(path), attributes, options);
  }

  @Override
  public void setAttribute(Path path, String attribute, Object value, LinkOption... options)
      throws IOException {
    real.setAttribute(FaultyPath.unwrap(path), attribute, value, options);
  }
}
