package org.vestibule.store.faults;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.WatchService;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.StreamSupport;

/** Another file system, whose deeds are recorded and can be made to fail. */
public final class FaultyFileSystem extends FileSystem {

  final FileSystem real;
  private final FaultyProvider provider;
  private final List<Deed> deeds = new ArrayList<>();
  private Faults faults = Faults.NONE;
  private int mostBytesAWrite = Integer.MAX_VALUE;
  private String storeType = "";

  public FaultyFileSystem(FileSystem real) {
    this.real = real;
    this.provider = new FaultyProvider(this);
  }

  /** From now on these deeds fail. */
  public void fail(Faults faults) {
    this.faults = faults;
  }

  /** From now on a write takes at most so many bytes, as the system call may. */
  public void writeAtMost(int bytes) {
    mostBytesAWrite = bytes;
  }

  /** From now on the file store says that it is of this type. */
  public void storeType(String type) {
    storeType = type;
  }

  String storeType() {
    return storeType;
  }

  int mostBytesAWrite() {
    return mostBytesAWrite;
  }

  /** What was done or tried so far, in words. */
  public List<String> deeds() {
    return deeds.stream().map(Deed::toString).toList();
  }

  public void forgetDeeds() {
    deeds.clear();
  }

  void before(Deed.Kind kind, Path file) throws IOException {
    Deed deed = new Deed(kind, file);
    deeds.add(deed);
    faults.before(deed);
  }

  Path wrap(Path path) {
    return new FaultyPath(this, path);
  }

  @Override
  public Path getPath(String first, String... more) {
    return wrap(real.getPath(first, more));
  }

  @Override
  public FileSystemProvider provider() {
    return provider;
  }

  @Override
  public void close() throws IOException {
    real.close();
  }

  @Override
  public boolean isOpen() {
    return real.isOpen();
  }

  @Override
  public boolean isReadOnly() {
    return real.isReadOnly();
  }

  @Override
  public String getSeparator() {
    return real.getSeparator();
  }

  @Override
  public Iterable<Path> getRootDirectories() {
    return StreamSupport.stream(real.getRootDirectories().spliterator(), false)
        .map(this::wrap)
        .toList();
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
  public PathMatcher getPathMatcher(String pattern) {
    PathMatcher matcher = real.getPathMatcher(pattern);
    return path -> matcher.matches(FaultyPath.unwrap(path));
  }

  @Override
  public UserPrincipalLookupService getUserPrincipalLookupService() {
    return real.getUserPrincipalLookupService();
  }

  @Override
  public WatchService newWatchService() {
    throw new UnsupportedOperationException("nothing watches this file system");
  }
}
