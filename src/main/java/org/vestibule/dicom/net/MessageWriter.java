package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Cuts messages into P-DATA-TF PDUs no longer than the other side takes (PS3.8 9.3.5, annex E).
 *
 * <p>An object goes from disk to the connection through one block of fixed size, headers beside it,
 * so that its bytes are copied by nobody but the kernel.
 */
final class MessageWriter {

  private static final int BLOCK_BYTES = 1 << 18;
  private static final int VALUE_HEADER_BYTES = 6;
  private static final int HEADER_BYTES = Pdu.HEADER_BYTES + VALUE_HEADER_BYTES;
  private static final int LEAST_BODY_BYTES = VALUE_HEADER_BYTES + 2;
  private static final int COMMAND = 1;
  private static final int LAST = 2;

  private final Connection connection;
  private final int fragmentBytes;
  private final Duration silence;
  private final List<ByteBuffer> parts = new ArrayList<>();
  private final ByteBuffer headers;
  private final ByteBuffer block;

  /**
   * @param mostBodyBytes the longest PDU body that the other side takes; 0 for any
   * @param silence how long one write may stand still
   */
  MessageWriter(Connection connection, long mostBodyBytes, Duration silence) throws NetFailure {
    this.connection = connection;
    this.silence = silence;
    if (mostBodyBytes != 0 && mostBodyBytes < LEAST_BODY_BYTES) {
      throw NetFailure.broken(
          NetFailure.Abort.INVALID_PARAMETER,
          connection.peer()
              + " takes PDUs of "
              + mostBodyBytes
              + " bytes only, fewer than any has");
    }
    long body = mostBodyBytes == 0 ? BLOCK_BYTES : Math.min(mostBodyBytes, BLOCK_BYTES);
    this.fragmentBytes = (int) (body - VALUE_HEADER_BYTES) & ~1;
    this.block = ByteBuffer.allocateDirect(BLOCK_BYTES);
    this.headers = ByteBuffer.allocateDirect((BLOCK_BYTES / fragmentBytes + 2) * HEADER_BYTES);
  }

  /** Queues a command; it goes out with the data behind it or by {@link #flush}. */
  void command(int contextId, CommandSet command) throws IOException {
    bytes(contextId, COMMAND, command.toBytes());
  }

  /** Writes a data set that lies in memory. */
  void data(int contextId, byte[] bytes) throws IOException {
    bytes(contextId, 0, bytes);
  }

  private void bytes(int contextId, int kind, byte[] bytes) throws IOException {
    int at = 0;
    do {
      flushIfFull();
      int length = Math.min(fragmentBytes, bytes.length - at);
      ByteBuffer copy = ByteBuffer.allocateDirect(length).put(bytes, at, length).flip();
      at += length;
      fragment(contextId, kind | (at == bytes.length ? LAST : 0), copy);
    } while (at < bytes.length);
  }

  /**
   * Writes a data set as it comes.
   *
   * @param bytes its length, at least 1
   * @throws SourceFailed if it can't be read or has become shorter
   */
  void data(int contextId, ReadableByteChannel source, long bytes) throws IOException {
    long done = 0;
    int blockBytes = Math.max(1, BLOCK_BYTES / fragmentBytes) * fragmentBytes;
    while (done < bytes) {
      int length = (int) Math.min(blockBytes, bytes - done);
      fill(source, length);
      for (int at = 0; at < length; at += fragmentBytes) {
        int part = Math.min(fragmentBytes, length - at);
        boolean last = done + at + part == bytes;
        flushIfFull();
        fragment(contextId, last ? LAST : 0, block.slice(at, part));
      }
      done += length;
      flush(); // the block is read into again
    }
  }

  private void fill(ReadableByteChannel source, int length) throws SourceFailed {
    block.clear().limit(length);
    try {
      while (block.hasRemaining()) {
        if (source.read(block) < 0) {
          throw new SourceFailed(null);
        }
      }
    } catch (SourceFailed shorter) {
      throw shorter;
    } catch (IOException disk) {
      throw new SourceFailed(disk);
    }
    block.flip();
  }

  private void fragment(int contextId, int kind, ByteBuffer value) {
    ByteBuffer header = headers.slice(headers.position(), HEADER_BYTES);
    headers.position(headers.position() + HEADER_BYTES);
    header.put((byte) Pdu.DATA).put((byte) 0).putInt(value.remaining() + VALUE_HEADER_BYTES);
    header.putInt(value.remaining() + 2).put((byte) contextId).put((byte) kind).flip();
    parts.add(header);
    parts.add(value);
  }

  private void flushIfFull() throws IOException {
    if (headers.remaining() < HEADER_BYTES) {
      flush();
    }
  }

  /** Sends what is queued. */
  void flush() throws IOException {
    if (!parts.isEmpty()) {
      connection.allow(silence);
      connection.write(parts.toArray(new ByteBuffer[0]));
      parts.clear();
    }
    headers.clear();
  }

  /** The object can't be read, or is shorter than was said when the sending began. */
  static final class SourceFailed extends IOException {
    private static final long serialVersionUID = 1L;

    SourceFailed(@Nullable IOException disk) {
      super("the object failed while it was sent", disk);
    }
  }
}
