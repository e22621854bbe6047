package org.vestibule.dicom;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/** An unchanging run of bytes, compared by content. */
final class Bytes {

  static final Bytes NONE = new Bytes(new byte[0]);

  private final byte[] bytes;

  private Bytes(byte[] bytes) {
    this.bytes = bytes;
  }

  static Bytes copyOf(byte[] bytes) {
    return new Bytes(bytes.clone());
  }

  static Bytes copyOf(byte[] bytes, int from, int length) {
    return new Bytes(Arrays.copyOfRange(bytes, from, from + length));
  }

  /** Takes the bytes over without copying them. */
  static Bytes owning(byte[] bytes) {
    return new Bytes(bytes);
  }

  void copyTo(byte[] to, int at) {
    System.arraycopy(bytes, 0, to, at, bytes.length);
  }

  int length() {
    return bytes.length;
  }

  byte[] toArray() {
    return bytes.clone();
  }

  void writeTo(ByteArrayOutputStream out) {
    out.write(bytes, 0, bytes.length);
  }

  /** A little-endian view; never written to. */
  ByteBuffer view() {
    return ByteBuffer.wrap(bytes).asReadOnlyBuffer().order(ByteOrder.LITTLE_ENDIAN);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Bytes that && Arrays.equals(bytes, that.bytes);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return bytes.length + " bytes";
  }
}
