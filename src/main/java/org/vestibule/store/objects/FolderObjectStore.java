package org.vestibule.store.objects;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.vestibule.base.FileBytes;
import org.vestibule.base.Outcome;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** An object store in one folder of a file system. */
public final class FolderObjectStore implements ObjectStore {

  private final Path root;
  private final ObjectPaths paths;
  private final SafeWriter writer;
  private final WriteSteps steps;

  /** A store below this folder, which is made with the first object. */
  public FolderObjectStore(Path root, WriteSteps steps) {
    this.root = root;
    this.paths = new ObjectPaths(root);
    this.writer = new SafeWriter(steps);
    this.steps = steps;
  }

  @Override
  public Outcome<Put> putIfAbsent(String uid, byte[] bytes) throws IOException {
    Path target = paths.of(uid);
    boolean written = !Files.exists(target) && writer.write(target, bytes);
    if (!FileBytes.areIn(target, bytes)) {
      return written ? damaged(target) : Outcome.done(Put.TAKEN);
    }
    steps.reached(WriteStep.OBJECT_PROVED);
    return Outcome.done(written ? Put.WRITTEN : Put.ADOPTED);
  }

  /** It was made just now and never kept, so its name is given up again. */
  private static Outcome<Put> damaged(Path target) throws IOException {
    HeldFile.retry(target, () -> Files.deleteIfExists(target));
    return Outcome.refused(
        Outcome.Kind.DAMAGE,
        "an object read back from the disk is not what was written",
        "don't use this disk: check it, then run again; the photograph itself is untouched");
  }

  @Override
  public Optional<byte[]> get(String uid) throws IOException {
    try {
      return Optional.of(FileBytes.all(paths.of(uid)));
    } catch (NoSuchFileException absent) {
      return Optional.empty();
    }
  }

  @Override
  public Optional<Path> path(String uid) {
    return Optional.of(paths.of(uid));
  }

  @Override
  public OptionalLong size(String uid) throws IOException {
    try {
      return OptionalLong.of(Files.size(paths.of(uid)));
    } catch (NoSuchFileException absent) {
      return OptionalLong.empty();
    }
  }

  @Override
  public List<String> list() throws IOException {
    return files().stream().flatMap(file -> paths.uidAt(file).stream()).sorted().toList();
  }

  @Override
  public List<String> strays() throws IOException {
    return files().stream()
        .filter(file -> paths.uidAt(file).isEmpty())
        .map(paths::below)
        .sorted()
        .toList();
  }

  @Override
  public boolean isInterrupted(String stray) {
    return paths.isInterrupted(root.resolve(stray));
  }

  @Override
  public int clearInterrupted() throws IOException {
    int cleared = 0;
    for (Path file : files()) {
      if (paths.isInterrupted(file)) {
        HeldFile.retry(file, () -> Files.deleteIfExists(file));
        cleared++;
      }
    }
    return cleared;
  }

  private List<Path> files() throws IOException {
    if (!Files.exists(root)) {
      return List.of();
    }
    try (Stream<Path> walk = Files.walk(root)) {
      return walk.filter(file -> !Files.isDirectory(file)).toList();
    } catch (UncheckedIOException e) {
      throw new IOException("the objects folder could not be read", e.getCause());
    }
  }
}
