package org.vestibule.flow.phone;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;

/** Reads a piece of a file off a line that may break. */
final class PieceReader {

  private static final int BUFFER_BYTES = 1 << 16;

  private PieceReader() {}

  /** What came until the end, or until the line broke; the phone asks how much that was. */
  static byte[] read(InputStream piece, int mostBytes) {
    ByteArrayOutputStream read = new ByteArrayOutputStream();
    byte[] buffer = new byte[BUFFER_BYTES];
    for (int n = next(piece, buffer, mostBytes);
        n > 0;
        n = next(piece, buffer, mostBytes - read.size())) {
      read.write(buffer, 0, n);
    }
    return read.toByteArray();
  }

  private static int next(InputStream piece, byte[] buffer, int room) {
    try {
      return room == 0 ? 0 : piece.read(buffer, 0, Math.min(buffer.length, room));
    } catch (IOException brokenOff) {
      return -1;
    }
  }
}
