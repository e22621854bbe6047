package org.vestibule.flow.keeping;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Synced;

/** Writes files on another disk whole or not at all, and reads back what was written. */
final class SafeCopy {

  static final String PART = ".part";

  private static final String UNLIKE =
      "the disk gave back other bytes than were written to it; don't use this disk";

  private SafeCopy() {}

  /**
   * Writes a file, in place of an older one of that name if there is one.
   *
   * @throws IOException if the disk fails or gives back other bytes; then nothing of it is left
   */
  static void write(Path target, byte[] bytes) throws IOException {
    Path folder = parent(target);
    Files.createDirectories(folder);
    Path part = Files.createTempFile(folder, target.getFileName() + "-", PART);
    try {
      fill(part, bytes);
      if (!ContentHash.of(part).equals(ContentHash.of(bytes))) {
        throw new IOException(UNLIKE);
      }
      rename(part, target);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /**
   * Copies a file of any length, in place of an older one of that name if there is one. If others
   * write into it meanwhile, the copy is what was read.
   *
   * @throws IOException as {@link #write} does
   */
  static void file(Path from, Path target) throws IOException {
    Path folder = parent(target);
    Files.createDirectories(folder);
    MessageDigest digest = ContentHash.sha256();
    Path part = Files.createTempFile(folder, target.getFileName() + "-", PART);
    try {
      try (InputStream in = new DigestInputStream(Files.newInputStream(from), digest)) {
        Files.copy(in, part, StandardCopyOption.REPLACE_EXISTING);
      }
      Synced.file(part);
      if (!ContentHash.of(part).hex().equals(HexFormat.of().formatHex(digest.digest()))) {
        throw new IOException(UNLIKE);
      }
      rename(part, target);
      Synced.folder(folder);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static void fill(Path part, byte[] bytes) throws IOException {
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      channel.force(true);
    }
  }

  /** Gives a file or folder its final name, in one step where the disk can. */
  static void rename(Path part, Path target) throws IOException {
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  static Path parent(Path file) {
    Path parent = file.toAbsolutePath().getParent();
    if (parent == null) {
      throw new IllegalArgumentException("a file lies in a folder");
    }
    return parent;
  }
}
