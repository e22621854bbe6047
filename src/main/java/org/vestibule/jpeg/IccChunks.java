package org.vestibule.jpeg;

import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Puts an ICC profile together from its APP2 chunks (ICC.1:2022 Annex B.4; from memory). */
final class IccChunks {

  static final String SIGNATURE = "ICC_PROFILE\0";

  private static final int HEADER_BYTES = SIGNATURE.length() + 2;
  private static final int SMALLEST_PROFILE = 132;

  private final byte[] bytes;
  private final TreeMap<Integer, JpegSegment> chunks = new TreeMap<>();
  private int count;
  private @Nullable String trouble;

  private IccChunks(byte[] bytes) {
    this.bytes = bytes;
  }

  /** The profile, or null; what is wrong with its chunks is added to the warnings. */
  static @Nullable IccProfile read(
      byte[] bytes, List<JpegSegment> segments, List<String> warnings) {
    IccChunks chunks = new IccChunks(bytes);
    for (JpegSegment segment : segments) {
      if (segment.marker() == Markers.APP0 + 2
          && Bytes.startsWith(bytes, segment.dataStart(), segment.dataEnd(), SIGNATURE)) {
        chunks.add(segment);
      }
    }
    IccProfile profile = chunks.join();
    if (chunks.trouble != null) {
      warnings.add("the colour profile is left out: " + chunks.trouble);
    }
    return profile;
  }

  private void add(JpegSegment segment) {
    if (segment.dataLength() < HEADER_BYTES) {
      trouble = "its chunk in " + segment.place() + " is too short for a number";
      return;
    }
    int number = Bytes.u8(bytes, segment.dataStart() + SIGNATURE.length());
    int total = Bytes.u8(bytes, segment.dataStart() + SIGNATURE.length() + 1);
    if (chunks.isEmpty()) {
      count = total;
    }
    if (number == 0 || number > total || total != count) {
      trouble = "a chunk says it is number " + number + " of " + total;
    } else if (chunks.put(number, segment) != null) {
      trouble = "chunk " + number + " comes twice";
    }
  }

  private @Nullable IccProfile join() {
    if (chunks.isEmpty() || trouble != null) {
      return null;
    }
    if (chunks.size() != count) {
      trouble = "it has " + chunks.size() + " of " + count + " chunks";
      return null;
    }
    int length = 0;
    for (JpegSegment chunk : chunks.values()) {
      length = Math.addExact(length, chunk.dataLength() - HEADER_BYTES);
    }
    byte[] profile = new byte[length];
    int at = 0;
    for (JpegSegment chunk : chunks.values()) {
      int part = chunk.dataLength() - HEADER_BYTES;
      System.arraycopy(bytes, chunk.dataStart() + HEADER_BYTES, profile, at, part);
      at += part;
    }
    return checked(profile);
  }

  private @Nullable IccProfile checked(byte[] profile) {
    if (profile.length < SMALLEST_PROFILE || !Bytes.startsWith(profile, 36, 40, "acsp")) {
      trouble = "its " + profile.length + " bytes are no ICC profile (no 'acsp' at byte 36)";
      return null;
    }
    long stated = Bytes.u32(profile, 0);
    if (stated != profile.length) {
      trouble = "it says it has " + stated + " bytes but " + profile.length + " are there";
      return null;
    }
    return new IccProfile(profile);
  }
}
