package org.vestibule.flow.phone;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.vestibule.store.ledger.UploadRow;

/** Files that are still growing, in a folder of their own. */
final class PartFiles {

  private static final String ENDING = ".part";

  /** A page lives for a day; what is older is never sent on. */
  private static final Duration KEPT = Duration.ofDays(3);

  private final Path folder;

  PartFiles(Path folder) {
    this.folder = folder;
  }

  Path of(UploadRow row) {
    return folder.resolve(row.id() + ENDING);
  }

  void create(UploadRow row) throws IOException {
    Files.createDirectories(folder);
    Files.createFile(of(row));
  }

  boolean isThere(UploadRow row) {
    return Files.exists(of(row));
  }

  /** How many bytes are here; 0 if it is gone. */
  long length(UploadRow row) {
    try {
      return Files.size(of(row));
    } catch (NoSuchFileException gone) {
      return 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  long freeBytes() throws IOException {
    return Files.getFileStore(Files.createDirectories(folder)).getUsableSpace();
  }

  /** Adds these bytes, up to the size that was said. */
  void add(UploadRow row, byte[] piece) throws IOException {
    long room = row.sizeBytes() - length(row);
    ByteBuffer bytes = ByteBuffer.wrap(piece, 0, (int) Math.min(piece.length, room));
    try (FileChannel file =
        FileChannel.open(of(row), StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      while (bytes.hasRemaining()) {
        file.write(bytes);
      }
    }
  }

  void sync(UploadRow row) throws IOException {
    try (FileChannel file = FileChannel.open(of(row), StandardOpenOption.WRITE)) {
      file.force(true);
    }
  }

  void remove(UploadRow row) throws IOException {
    Files.deleteIfExists(of(row));
  }

  List<String> ids() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> String.valueOf(file.getFileName()))
          .filter(name -> name.endsWith(ENDING))
          .map(name -> name.substring(0, name.length() - ENDING.length()))
          .toList();
    }
  }

  /** Removes what was left half sent days ago. */
  void forgetOld(Instant now) throws IOException {
    List<Path> old = new ArrayList<>();
    for (String id : ids()) {
      Path part = folder.resolve(id + ENDING);
      if (Files.getLastModifiedTime(part).toInstant().isBefore(now.minus(KEPT))) {
        old.add(part);
      }
    }
    for (Path part : old) {
      Files.deleteIfExists(part);
    }
  }
}
