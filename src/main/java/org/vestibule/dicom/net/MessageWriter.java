package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * Cuts messages into P-DATA-TF PDUs no longer than the other side takes (PS3.8 9.3.5, annex E).
 *
 * <p>An object goes from disk to the connection through one block of fixed size, headers beside it,
 * so that its bytes are copied by nobody but the kernel.
 */
final class MessageWriter {

  private static final int LEAST_BODY_BYTES = PduBlock.VALUE_HEADER_BYTES + 2;
  private static final int COMMAND = 1;
  private static final int LAST = 2;

  /** What one write moves at first: the slowest line takes it before it counts as silent. */
  private static final int LEAST_PIECE_BYTES = 1 << 16;

  /** What one write moves where the other side is quick: each write costs both sides a waking. */
  private static final int MOST_PIECE_BYTES = 1 << 20;

  private static final long QUICK_NANOS = 50_000_000;

  private final Connection connection;
  private final int fragmentBytes;
  private final Duration silence;

  /** Made for the first object, since much that is said over an association needs none. */
  private @Nullable PduBlock block;

  /** Of an object, the other side must take so much in a second, on the whole. */
  private static final long SLOWEST_BYTES_PER_SECOND = 8 << 10;

  /** Until when an object must be taken, however often the other side takes a little of it. */
  private @Nullable Deadline end;

  private int pieceBytes = LEAST_PIECE_BYTES;

  /** PDUs of messages that lie in memory; what is here goes out with the next write. */
  private ByteBuffer waiting = ByteBuffer.allocateDirect(4096);

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
    long body =
        mostBodyBytes == 0
            ? PduBlock.MOST_BODY_BYTES
            : Math.min(mostBodyBytes, PduBlock.MOST_BODY_BYTES);
    this.fragmentBytes = (int) (body - PduBlock.VALUE_HEADER_BYTES) & ~1;
  }

  /** Queues a command; it goes out with the data behind it or by {@link #flush}. */
  void command(int contextId, CommandSet command) {
    bytes(contextId, COMMAND, command.toBytes());
  }

  /** Queues a data set that lies in memory. */
  void data(int contextId, byte[] bytes) {
    bytes(contextId, 0, bytes);
  }

  private void bytes(int contextId, int kind, byte[] bytes) {
    int at = 0;
    do {
      int length = Math.min(fragmentBytes, bytes.length - at);
      int end = at + length;
      makeRoom(Pdu.HEADER_BYTES + PduBlock.VALUE_HEADER_BYTES + length);
      waiting.put((byte) Pdu.DATA).put((byte) 0).putInt(length + PduBlock.VALUE_HEADER_BYTES);
      waiting.putInt(length + 2).put((byte) contextId);
      waiting.put((byte) (kind | (end == bytes.length ? LAST : 0)));
      waiting.put(bytes, at, length);
      at = end;
    } while (at < bytes.length);
  }

  private void makeRoom(int count) {
    if (waiting.remaining() < count) {
      int needed = Math.addExact(waiting.position(), count);
      waiting = ByteBuffer.allocateDirect(Math.multiplyExact(needed, 2)).put(waiting.flip());
    }
  }

  /**
   * Writes a data set as it comes.
   *
   * @param bytes its length, at least 1
   * @throws PduBlock.SourceFailed if it can't be read or has become shorter
   */
  void data(int contextId, ReadableByteChannel source, long bytes) throws IOException {
    PduBlock pdus = block(contextId);
    end = Deadline.after(silence.plusSeconds(bytes / SLOWEST_BYTES_PER_SECOND));
    long done = 0;
    while (done < bytes) {
      int length = (int) Math.min(pdus.capacity(), bytes - done);
      pdus.fill(source, length);
      done += length;
      writeInPieces(pdus.pdus(done == bytes));
    }
    pdus.restore();
    end = null;
  }

  /** Each piece may take as long as a write may stand still. */
  private void writeInPieces(ByteBuffer laid) throws IOException {
    int all = laid.limit();
    while (laid.position() < all) {
      long before = System.nanoTime();
      laid.limit(Math.min(all, laid.position() + pieceBytes));
      if (waiting.position() > 0) {
        write(waiting.flip(), laid);
        waiting.clear();
      } else {
        write(laid);
      }
      boolean quick = System.nanoTime() - before < QUICK_NANOS;
      pieceBytes = quick ? Math.min(2 * pieceBytes, MOST_PIECE_BYTES) : LEAST_PIECE_BYTES;
    }
  }

  private PduBlock block(int contextId) {
    PduBlock last = block;
    if (last == null || !last.isFor(contextId)) {
      last = new PduBlock(contextId, fragmentBytes);
      block = last;
    }
    return last;
  }

  /** Sends what is queued. */
  void flush() throws IOException {
    if (waiting.position() > 0) {
      write(waiting.flip());
      waiting.clear();
    }
  }

  private void write(ByteBuffer... parts) throws IOException {
    Deadline all = end;
    connection.allow(all == null ? silence : all.atMost(silence));
    connection.write(parts);
  }
}
