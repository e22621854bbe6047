package org.vestibule.dicom.net;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** Bounded big-endian reading inside one PDU: each step is checked before it is taken. */
final class BigEndian {

  private final byte[] bytes;
  private final int end;
  private final String peer;
  private int position;

  BigEndian(byte[] bytes, String peer) {
    this(bytes, 0, bytes.length, peer);
  }

  private BigEndian(byte[] bytes, int position, int end, String peer) {
    this.bytes = bytes;
    this.position = position;
    this.end = end;
    this.peer = peer;
  }

  int left() {
    return end - position;
  }

  int uint8() throws NetFailure {
    need(1);
    return bytes[position++] & 0xFF;
  }

  int uint16() throws NetFailure {
    int high = uint8();
    return high << 8 | uint8();
  }

  long uint32() throws NetFailure {
    long high = uint16();
    return high << 16 | uint16();
  }

  void skip(long count) throws NetFailure {
    need(count);
    position += (int) count;
  }

  /** The next bytes as a reading of their own; this one goes on behind them. */
  BigEndian part(long length) throws NetFailure {
    int start = position;
    skip(length);
    return new BigEndian(bytes, start, position, peer);
  }

  /** Text without the spaces and NULs around it. */
  String text(int length) throws NetFailure {
    int start = position;
    skip(length);
    return new String(bytes, start, length, StandardCharsets.US_ASCII).replace('\0', ' ').strip();
  }

  /** Moves what is left into the sink. */
  void copyTo(ByteArrayOutputStream sink) {
    sink.write(bytes, position, left());
    position = end;
  }

  private void need(long count) throws NetFailure {
    if (count > left()) {
      throw NetFailure.broken(
          NetFailure.Abort.INVALID_PARAMETER,
          peer
              + " sent a PDU in which a part claims "
              + count
              + " bytes but only "
              + left()
              + " are left");
    }
  }
}
