package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of a data set in memory, with the headers that make P-DATA-TF PDUs of it (PS3.8 9.3.5)
 * beside it. Headers and places of a full block are always the same and made once.
 */
final class PduBlock {

  /** Small enough to stay in a processor's nearer cache between the disk and the line. */
  static final int BLOCK_BYTES = 1 << 16;

  static final int VALUE_HEADER_BYTES = 6;

  private static final int HEADER_BYTES = Pdu.HEADER_BYTES + VALUE_HEADER_BYTES;
  private static final int CONTEXT_AT = HEADER_BYTES - 2;
  private static final int LAST = 2;

  private final int fragmentBytes;
  private final ByteBuffer block;
  private final ByteBuffer[] parts;

  /**
   * @param fragmentBytes how much of the data set one PDU carries; even
   */
  PduBlock(int fragmentBytes) {
    this.fragmentBytes = fragmentBytes;
    int fragments = BLOCK_BYTES / fragmentBytes;
    this.block = ByteBuffer.allocateDirect(fragments * fragmentBytes);
    ByteBuffer headers = ByteBuffer.allocateDirect(fragments * HEADER_BYTES);
    this.parts = new ByteBuffer[2 * fragments];
    for (int i = 0; i < fragments; i++) {
      parts[2 * i] = headers.slice(i * HEADER_BYTES, HEADER_BYTES);
      parts[2 * i + 1] = block.slice(i * fragmentBytes, fragmentBytes);
      header(parts[2 * i], fragmentBytes);
    }
  }

  private static void header(ByteBuffer header, int valueBytes) {
    header.put(0, (byte) Pdu.DATA).putInt(2, valueBytes + VALUE_HEADER_BYTES);
    header.putInt(Pdu.HEADER_BYTES, valueBytes + 2);
  }

  int capacity() {
    return block.capacity();
  }

  /** Reads this many bytes, at most the capacity. */
  void fill(ReadableByteChannel source, int length) throws SourceFailed {
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
  }

  /**
   * The PDUs of the bytes that were read, in order: header, value, header, value.
   *
   * @param ends true if the data set ends with them
   */
  int lay(int contextId, boolean ends, ByteBuffer[] into, int at) {
    int length = block.position();
    int fragments = (length + fragmentBytes - 1) / fragmentBytes;
    for (int i = 0; i < fragments; i++) {
      boolean last = i == fragments - 1;
      int part = last ? length - i * fragmentBytes : fragmentBytes;
      ByteBuffer header = parts[2 * i];
      header.clear().put(CONTEXT_AT, (byte) contextId);
      header.put(CONTEXT_AT + 1, (byte) (last && ends ? LAST : 0));
      if (last) {
        header(header, part);
      }
      into[at + 2 * i] = header;
      into[at + 2 * i + 1] = parts[2 * i + 1].clear().limit(part);
    }
    return at + 2 * fragments;
  }

  /** Undoes what {@link #lay} changed for a last fragment that was not full. */
  void restore() {
    int fragments = (block.position() + fragmentBytes - 1) / fragmentBytes;
    if (fragments > 0) {
      header(parts[2 * (fragments - 1)], fragmentBytes);
    }
  }

  /** How many buffers {@link #lay} may give. */
  int mostParts() {
    return parts.length;
  }

  /** The object can't be read, or is shorter than was said when the sending began. */
  static final class SourceFailed extends IOException {
    private static final long serialVersionUID = 1L;

    SourceFailed(@Nullable IOException disk) {
      super("the object failed while it was sent", disk);
    }
  }
}
