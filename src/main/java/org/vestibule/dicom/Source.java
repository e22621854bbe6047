package org.vestibule.dicom;

import java.nio.charset.StandardCharsets;

/** Bounded little-endian reading: each step is checked against the end before it is taken. */
final class Source {

  static final long UNDEFINED = 0xFFFFFFFFL;

  private final byte[] bytes;
  private final int end;
  private int position;

  Source(byte[] bytes, int position, int end) {
    this.bytes = bytes;
    this.position = position;
    this.end = end;
  }

  int position() {
    return position;
  }

  int end() {
    return end;
  }

  int tag() {
    int group = uint16();
    return group << 16 | uint16();
  }

  int uint16() {
    need(2);
    int value = (bytes[position] & 0xFF) | (bytes[position + 1] & 0xFF) << 8;
    position += 2;
    return value;
  }

  long uint32() {
    long low = uint16();
    return low | (long) uint16() << 16;
  }

  Bytes bytes(int length) {
    need(length);
    Bytes copy = Bytes.copyOf(bytes, position, length);
    position += length;
    return copy;
  }

  /** The two letters of an explicit value representation, and its reserved bytes if it has any. */
  Vr vr(int tag) {
    need(2);
    String letters = new String(bytes, position, 2, StandardCharsets.US_ASCII);
    Vr vr =
        Vr.of(letters)
            .orElseThrow(() -> refusal(Tags.text(tag) + " has no known value representation"));
    position += 2;
    if (vr.hasLongForm()) {
      uint16();
    }
    return vr;
  }

  /** The length of a delimiter, which must be 0. */
  void zeroLength() {
    long length = uint32();
    if (length != 0) {
      throw refusal("a delimiter has the length " + length + " instead of 0");
    }
  }

  /** Where a value of this length ends, which must not lie past the end of what holds it. */
  long stop(int tag, long length, long outerEnd) {
    long stop = Math.addExact((long) position, length);
    if (stop > outerEnd) {
      throw refusal(
          Tags.text(tag)
              + " says it is "
              + length
              + " bytes long but only "
              + (outerEnd - position)
              + " are left");
    }
    return stop;
  }

  private void need(int count) {
    if (count > end - position) {
      throw refusal("the bytes end in the middle of an element");
    }
  }

  Refusal refusal(String reason) {
    return new Refusal(
        "not a readable data set: " + reason + " (at byte " + position + ")",
        "the file is damaged or was cut; get it again from where it came");
  }
}
