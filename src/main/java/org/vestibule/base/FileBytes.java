package org.vestibule.base;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Reads files of some megabytes straight into one array. {@link Files#readAllBytes} goes by pieces
 * that it puts together, which takes three times as long.
 */
public final class FileBytes {

  private static final int PIECE = 1 << 20;

  private FileBytes() {}

  /** All bytes of a file that nobody writes to. */
  public static byte[] all(Path file) throws IOException {
    return upTo(file, Files.size(file));
  }

  /** True if a file holds these bytes and no others; it is read in pieces that are not kept. */
  public static boolean areIn(Path file, byte[] bytes) throws IOException {
    byte[] piece = new byte[Math.min(PIECE, bytes.length + 1)];
    int same = 0;
    try (InputStream in = Files.newInputStream(file)) {
      for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
        if (read > bytes.length - same
            || !Arrays.equals(piece, 0, read, bytes, same, same + read)) {
          return false;
        }
        same += read;
      }
    }
    return same == bytes.length;
  }

  /**
   * A file's bytes, and one more if it is longer than it should be.
   *
   * @param sizeBytes how long it should be
   * @return fewer bytes if it is shorter
   */
  public static byte[] upTo(Path file, long sizeBytes) throws IOException {
    byte[] bytes = new byte[Math.toIntExact(sizeBytes)];
    try (InputStream in = Files.newInputStream(file)) {
      int read = in.readNBytes(bytes, 0, bytes.length);
      int further = read < bytes.length ? -1 : in.read();
      if (further < 0) {
        return read < bytes.length ? Arrays.copyOf(bytes, read) : bytes;
      }
      byte[] longer = Arrays.copyOf(bytes, Math.addExact(read, 1));
      longer[read] = (byte) further;
      return longer;
    }
  }
}
