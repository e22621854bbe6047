package org.vestibule.store.objects;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import org.vestibule.base.Synced;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/**
 * Makes a new file whole or not at all: temporary file in the same folder, fsync, a name that is
 * never taken from another file, fsync of the folder.
 */
final class SafeWriter {

  private final WriteSteps steps;

  SafeWriter(WriteSteps steps) {
    this.steps = steps;
  }

  /**
   * Writes the file.
   *
   * @return false if the name was already taken; the file there is untouched
   */
  boolean write(Path target, byte[] bytes) throws IOException {
    Path folder = folderOf(target);
    createFolder(folder);
    Path temporary =
        Files.createTempFile(folder, target.getFileName() + "-", ObjectPaths.INTERRUPTED);
    boolean named;
    try {
      steps.reached(WriteStep.OBJECT_TEMP_CREATED);
      fill(temporary, bytes);
      named = name(temporary, target);
      if (named) {
        steps.reached(WriteStep.OBJECT_NAMED);
        Synced.folder(folder);
      }
    } catch (IOException | RuntimeException e) {
      remove(temporary).ifPresent(e::addSuppressed);
      throw e;
    }
    // One that stays held is a leftover like that of an interrupted write; the object is whole.
    remove(temporary);
    return named;
  }

  private static Optional<IOException> remove(Path temporary) {
    try {
      HeldFile.retry(temporary, () -> Files.deleteIfExists(temporary));
      return Optional.empty();
    } catch (IOException held) {
      return Optional.of(held);
    }
  }

  private static Path folderOf(Path target) {
    Path folder = target.getParent();
    if (folder == null) {
      throw new IllegalArgumentException("an object lies in a folder");
    }
    return folder;
  }

  private static void createFolder(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      Files.createDirectories(folder);
      Path parent = folder.getParent();
      if (parent != null) {
        Synced.folder(parent);
      }
    }
  }

  private void fill(Path temporary, byte[] bytes) throws IOException {
    try (FileChannel channel = FileChannel.open(temporary, StandardOpenOption.WRITE)) {
      int half = bytes.length / 2;
      writeAll(channel, ByteBuffer.wrap(bytes, 0, half));
      steps.reached(WriteStep.OBJECT_HALF_WRITTEN);
      writeAll(channel, ByteBuffer.wrap(bytes, half, bytes.length - half));
      steps.reached(WriteStep.OBJECT_WRITTEN);
      channel.force(true);
    }
    steps.reached(WriteStep.OBJECT_SYNCED);
  }

  private static void writeAll(FileChannel channel, ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  /** Names the file, again after a pause where another program (a virus scanner) has it open. */
  private boolean name(Path temporary, Path target) throws IOException {
    return HeldFile.retry(
        target,
        () -> {
          steps.reached(WriteStep.OBJECT_NAMING);
          return link(temporary, target);
        });
  }

  /**
   * A hard link never replaces a file, while an atomic move does on most systems; so the move is
   * only for file systems without links, and after looking.
   */
  private static boolean link(Path temporary, Path target) throws IOException {
    try {
      Files.createLink(target, temporary);
      return true;
    } catch (FileAlreadyExistsException taken) {
      return false;
    } catch (UnsupportedOperationException | FileSystemException noLinks) {
      return move(temporary, target);
    }
  }

  private static boolean move(Path temporary, Path target) throws IOException {
    if (Files.exists(target)) {
      return false;
    }
    try {
      Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      throw new IOException("the objects folder lies where files can't be renamed in one step", e);
    }
    return true;
  }
}
