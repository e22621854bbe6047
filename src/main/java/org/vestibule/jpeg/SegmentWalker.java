package org.vestibule.jpeg;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Walks the marker segments of one picture from its SOI to its true end (ITU-T T.81 B.1, B.2.1).
 *
 * <p>A thumbnail's EOI inside an APPn segment is never met, because segments are skipped by length;
 * the picture's own EOI is looked for in the entropy-coded data only.
 */
final class SegmentWalker {

  private static final int MOST_SEGMENTS = 20_000;
  private static final int MOST_ZEROS = 64;
  private static final int MOST_STRAYS = 100;

  private static final VarHandle FIRST_LOWEST =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  private final byte[] bytes;
  private final List<JpegSegment> segments = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();
  private int at;
  private boolean scanSeen;
  private boolean endMarkerMissing;
  private @Nullable JpegFault fault;

  private SegmentWalker(byte[] bytes, int start) {
    this.bytes = bytes;
    this.at = start + 2;
  }

  /** Walks from the SOI at {@code start}, which the caller has seen. */
  static SegmentWalker walk(byte[] bytes, int start) {
    SegmentWalker walker = new SegmentWalker(bytes, start);
    boolean more = true;
    while (more) {
      more = walker.step();
    }
    return walker;
  }

  List<JpegSegment> segments() {
    return segments;
  }

  List<String> warnings() {
    return warnings;
  }

  /** Offset just past the picture's last byte. */
  int end() {
    return at;
  }

  boolean scanSeen() {
    return scanSeen;
  }

  boolean endMarkerMissing() {
    return endMarkerMissing;
  }

  /** Why the walk stopped early, or null if it did not. */
  @Nullable JpegFault fault() {
    return fault;
  }

  private boolean step() {
    int markerAt = nextMarker(at);
    if (markerAt < 0) {
      return stopWithoutEnd(bytes.length, "the file ends without an end marker (EOI)");
    }
    noteJunk(markerAt);
    int marker = Bytes.u8(bytes, markerAt + 1);
    if (marker == Markers.EOI) {
      at = markerAt + 2;
      return false;
    }
    if (marker == Markers.SOI) {
      return secondStart(markerAt);
    }
    if (Markers.isRestart(marker) || marker == Markers.TEM || Markers.isReserved(marker)) {
      warnings.add("a stray " + Markers.name(marker) + " at byte " + markerAt);
      at = markerAt + 2;
      return warnings.size() < MOST_STRAYS || tooManyStrays(markerAt);
    }
    return segment(markerAt, marker);
  }

  private boolean segment(int markerAt, int marker) {
    if (markerAt + 4 > bytes.length) {
      return cut(markerAt, marker, "its length");
    }
    int length = Bytes.u16(bytes, markerAt + 2);
    if (length < 2) {
      return stop(
          "the "
              + Markers.name(marker)
              + " segment at byte "
              + markerAt
              + " says it is "
              + length
              + " bytes long, at least 2 were expected");
    }
    if (length > bytes.length - markerAt - 2) {
      return cut(markerAt, marker, "its " + length + " bytes");
    }
    int end = markerAt + 2 + length;
    int codedEnd = end;
    if (marker == Markers.SOS) {
      scanSeen = true;
      codedEnd = codedEnd(end);
    }
    segments.add(new JpegSegment(marker, markerAt, length + 2L, codedEnd - (long) end));
    at = codedEnd;
    return segments.size() < MOST_SEGMENTS || tooMany(markerAt);
  }

  /** The index of the FF that is followed by a marker's second byte, or -1. */
  private int nextMarker(int from) {
    for (int i = from; i < bytes.length - 1; i++) {
      if (bytes[i] == (byte) 0xFF && bytes[i + 1] != 0 && bytes[i + 1] != (byte) 0xFF) {
        return i;
      }
    }
    return -1;
  }

  /**
   * The end of entropy-coded data: stuffed zeros and restart markers belong to it (T.81 B.1.1.5).
   */
  private int codedEnd(int from) {
    int i = from;
    while (i < bytes.length - 1) {
      i = nextFill(i);
      if (i >= bytes.length - 1) {
        break;
      }
      int next = Bytes.u8(bytes, i + 1);
      if (next != 0 && next != 0xFF && !Markers.isRestart(next)) {
        return i;
      }
      i++;
    }
    return withoutZeros(from);
  }

  /** Where the next FF stands, or the file's length. */
  private int nextFill(int from) {
    int i = from;
    while (i <= bytes.length - Long.BYTES) {
      long fill = ScanBits.fill((long) FIRST_LOWEST.get(bytes, i));
      if (fill != 0) {
        // The lowest mark is exact; those above it may come of the borrow.
        return i + Long.numberOfTrailingZeros(fill) / Byte.SIZE;
      }
      i += Long.BYTES;
    }
    while (i < bytes.length && bytes[i] != (byte) 0xFF) {
      i++;
    }
    return i;
  }

  /**
   * The end of data that no marker ends. A copy that broke off is often filled up with zeros, which
   * may well be codes of the picture's tables and would show as gray.
   */
  private int withoutZeros(int from) {
    int end = bytes.length;
    while (end > from && bytes[end - 1] == 0) {
      end--;
    }
    if (bytes.length - end < MOST_ZEROS) {
      return bytes.length;
    }
    warnings.add("the file ends in " + (bytes.length - end) + " zero bytes");
    return end;
  }

  private void noteJunk(int markerAt) {
    for (int i = at; i < markerAt; i++) {
      if (bytes[i] != (byte) 0xFF) {
        warnings.add((markerAt - at) + " stray bytes between segments at byte " + at);
        return;
      }
    }
  }

  private boolean secondStart(int markerAt) {
    if (scanSeen) {
      return stopWithoutEnd(markerAt, "a further picture starts before the first one's EOI");
    }
    warnings.add("a stray SOI at byte " + markerAt);
    at = markerAt + 2;
    return warnings.size() < MOST_STRAYS || tooManyStrays(markerAt);
  }

  private boolean stopWithoutEnd(int end, String warning) {
    endMarkerMissing = true;
    warnings.add(warning);
    at = end;
    return false;
  }

  private boolean cut(int markerAt, int marker, String what) {
    return stop(
        "the file ends at byte "
            + bytes.length
            + ", before "
            + what
            + " of the "
            + Markers.name(marker)
            + " segment at byte "
            + markerAt
            + " are complete");
  }

  private boolean tooMany(int markerAt) {
    return stop("more than " + MOST_SEGMENTS + " segments before byte " + markerAt);
  }

  private boolean tooManyStrays(int markerAt) {
    return stop(
        "the picture's data is damaged: "
            + MOST_STRAYS
            + " markers or bytes that don't belong there before byte "
            + markerAt);
  }

  private boolean stop(String reason) {
    fault = JpegFault.damaged(reason);
    endMarkerMissing = true;
    at = bytes.length;
    return false;
  }
}
