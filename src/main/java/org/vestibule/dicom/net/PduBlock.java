package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.ScatteringByteChannel;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of a data set in memory, as the P-DATA-TF PDUs that carry it (PS3.8 9.3.5): header,
 * value, header, value. The values are read into their places between the headers, which are the
 * same in every block but the last and made once, so that one read and one write move it all.
 */
final class PduBlock {

  /**
   * So much is read at a time, far more than is written: the disk is asked seldom, and the memory
   * stays the same whatever is sent.
   */
  private static final int BLOCK_BYTES = 1 << 20;

  /** The longest body of a PDU of ours, where the other side takes such. */
  static final int MOST_BODY_BYTES = 1 << 17;

  static final int VALUE_HEADER_BYTES = 6;

  private static final int MOST_FRAGMENTS = 64;
  private static final int HEADER_BYTES = Pdu.HEADER_BYTES + VALUE_HEADER_BYTES;
  private static final int CONTEXT_AT = HEADER_BYTES - 2;
  private static final int LAST = 2;

  private final int contextId;
  private final int fragmentBytes;
  private final int pduBytes;
  private final ByteBuffer block;
  private final ByteBuffer[] values;
  private int fragments;
  private int lastBytes;

  /**
   * @param fragmentBytes how much of the data set one PDU carries; even
   */
  PduBlock(int contextId, int fragmentBytes) {
    this.contextId = contextId;
    this.fragmentBytes = fragmentBytes;
    this.pduBytes = HEADER_BYTES + fragmentBytes;
    int most = Math.min(MOST_FRAGMENTS, BLOCK_BYTES / fragmentBytes);
    this.block = ByteBuffer.allocateDirect(most * pduBytes);
    this.values = new ByteBuffer[most];
    for (int i = 0; i < most; i++) {
      values[i] = block.slice(i * pduBytes + HEADER_BYTES, fragmentBytes);
      header(i, fragmentBytes, 0);
    }
  }

  private void header(int fragment, int valueBytes, int control) {
    int at = fragment * pduBytes;
    block.put(at, (byte) Pdu.DATA).putInt(at + 2, valueBytes + VALUE_HEADER_BYTES);
    block.putInt(at + Pdu.HEADER_BYTES, valueBytes + 2);
    block.put(at + CONTEXT_AT, (byte) contextId).put(at + CONTEXT_AT + 1, (byte) control);
  }

  boolean isFor(int context) {
    return contextId == context;
  }

  /** How many bytes of a data set fit into it. */
  int capacity() {
    return values.length * fragmentBytes;
  }

  /** Reads this many bytes: as many as it holds, or at the end of a data set fewer. */
  void fill(ReadableByteChannel source, int length) throws SourceFailed {
    fragments = (length + fragmentBytes - 1) / fragmentBytes;
    lastBytes = length - (fragments - 1) * fragmentBytes;
    for (int i = 0; i < fragments; i++) {
      values[i].clear();
    }
    values[fragments - 1].limit(lastBytes);
    try {
      int open = 0;
      while (open < fragments) {
        if (read(source, open) < 0) {
          throw new SourceFailed(null);
        }
        while (open < fragments && !values[open].hasRemaining()) {
          open++;
        }
      }
    } catch (SourceFailed shorter) {
      throw shorter;
    } catch (IOException disk) {
      throw new SourceFailed(disk);
    }
  }

  private long read(ReadableByteChannel source, int from) throws IOException {
    return source instanceof ScatteringByteChannel file
        ? file.read(values, from, fragments - from)
        : source.read(values[from]);
  }

  /**
   * The PDUs of the bytes that were read.
   *
   * @param ends true if the data set ends with them
   */
  ByteBuffer pdus(boolean ends) {
    block.clear();
    if (ends) {
      header(fragments - 1, lastBytes, LAST);
    }
    return block.limit((fragments - 1) * pduBytes + HEADER_BYTES + lastBytes);
  }

  /** Undoes what {@link #pdus} changed for a last fragment. */
  void restore() {
    if (fragments > 0) {
      header(fragments - 1, fragmentBytes, 0);
    }
  }

  /** The object can't be read, or is shorter than was said when the sending began. */
  static final class SourceFailed extends IOException {
    private static final long serialVersionUID = 1L;

    SourceFailed(@Nullable IOException disk) {
      super("the object failed while it was sent", disk);
    }
  }
}
