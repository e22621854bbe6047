package org.vestibule.store.faults;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.ProviderMismatchException;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A path of a {@link FaultyFileSystem}. */
final class FaultyPath implements Path {

  private final FaultyFileSystem system;
  final Path real;

  FaultyPath(FaultyFileSystem system, Path real) {
    this.system = system;
    this.real = real;
  }

  static Path unwrap(Path path) {
    if (path instanceof FaultyPath ours) {
      return ours.real;
    }
    throw new ProviderMismatchException("this path belongs to another file system");
  }

  private @Nullable Path wrap(@Nullable Path path) {
    return path == null ? null : system.wrap(path);
  }

  @Override
  public FileSystem getFileSystem() {
    return system;
  }

  @Override
  public boolean isAbsolute() {
    return real.isAbsolute();
  }

  @Override
  public @Nullable Path getRoot() {
    return wrap(real.getRoot());
  }

  @Override
  public @Nullable Path getFileName() {
    return wrap(real.getFileName());
  }

  @Override
  public @Nullable Path getParent() {
    return wrap(real.getParent());
  }

  @Override
  public int getNameCount() {
    return real.getNameCount();
  }

  @Override
  public Path getName(int index) {
    return system.wrap(real.getName(index));
  }

  @Override
  public Path subpath(int from, int to) {
    return system.wrap(real.subpath(from, to));
  }

  @Override
  public boolean startsWith(Path other) {
    return real.startsWith(unwrap(other));
  }

  @Override
  public boolean endsWith(Path other) {
    return real.endsWith(unwrap(other));
  }

  @Override
  public Path normalize() {
    return system.wrap(real.normalize());
  }

  @Override
  public Path resolve(Path other) {
    return system.wrap(real.resolve(unwrap(other)));
  }

  @Override
  public Path relativize(Path other) {
    return system.wrap(real.relativize(unwrap(other)));
  }

  @Override
  public URI toUri() {
    return real.toUri();
  }

  @Override
  public Path toAbsolutePath() {
    return system.wrap(real.toAbsolutePath());
  }

  @Override
  public Path toRealPath(LinkOption... options) throws IOException {
    return system.wrap(real.toRealPath(options));
  }

  @Override
  public WatchKey register(
      WatchService watcher, WatchEvent.Kind<?>[] events, WatchEvent.Modifier... modifiers) {
    throw new UnsupportedOperationException("nothing watches this file system");
  }

  @Override
  public int compareTo(Path other) {
    return real.compareTo(unwrap(other));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FaultyPath path && path.system == system && path.real.equals(real);
  }

  @Override
  public int hashCode() {
    return Objects.hash(real);
  }

  @Override
  public String toString() {
    return real.toString();
  }
}
