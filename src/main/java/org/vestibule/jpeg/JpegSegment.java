package org.vestibule.jpeg;

import java.util.Locale;

/**
 * One marker segment of the first picture (ITU-T T.81 B.1.1.4).
 *
 * @param marker second byte of the marker, 0 to 255
 * @param offsetBytes where the marker's FF stands, from the start of the file
 * @param lengthBytes marker and parameters together
 * @param codedBytes entropy-coded bytes that follow a scan header; 0 for all others
 */
public record JpegSegment(int marker, long offsetBytes, long lengthBytes, long codedBytes) {

  /** The marker's name, for example {@code APP1}. */
  public String name() {
    return Markers.name(marker);
  }

  /** Name and place for a message, for example {@code DHT at byte 623}. */
  String place() {
    return String.format(Locale.ROOT, "%s at byte %d", name(), offsetBytes);
  }

  /** Offset of the first parameter byte, after marker and length. */
  int dataStart() {
    return Math.toIntExact(offsetBytes + 4);
  }

  /** Offset just past the last parameter byte. */
  int dataEnd() {
    return Math.toIntExact(offsetBytes + lengthBytes);
  }

  /** Number of parameter bytes. */
  int dataLength() {
    return dataEnd() - dataStart();
  }

  /** Offset just past the entropy-coded bytes. */
  int codedEnd() {
    return Math.toIntExact(offsetBytes + lengthBytes + codedBytes);
  }
}
