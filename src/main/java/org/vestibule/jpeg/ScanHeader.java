package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;

/**
 * A scan header (ITU-T T.81 B.2.3).
 *
 * @param components what the scan carries, in its order
 * @param spectralStart first coefficient in zigzag order, 0 to 63
 * @param spectralEnd last coefficient
 * @param high bit position of the preceding scan, 0 for a first scan
 * @param low bit position of this scan
 */
record ScanHeader(List<Part> components, int spectralStart, int spectralEnd, int high, int low) {

  /**
   * One component of a scan.
   *
   * @param index place of the component in the frame header
   * @param dcTable DC Huffman table selector
   * @param acTable AC Huffman table selector
   */
  record Part(int index, int dcTable, int acTable) {}

  ScanHeader {
    components = List.copyOf(components);
  }

  static ScanHeader read(byte[] bytes, JpegSegment segment, JpegFrame frame) throws JpegFault {
    int start = segment.dataStart();
    int count = segment.dataLength() < 1 ? 0 : Bytes.u8(bytes, start);
    if (count < 1 || count > 4 || segment.dataLength() != 4 + 2 * count) {
      throw JpegFault.damaged(
          segment.place()
              + " has "
              + segment.dataLength()
              + " bytes of data for "
              + count
              + " components; 4 and 2 for each of 1 to 4 were expected");
    }
    boolean[] used = new boolean[frame.components().size()];
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int id = Bytes.u8(bytes, start + 1 + 2 * i);
      int tables = Bytes.u8(bytes, start + 2 + 2 * i);
      if ((tables >> 4) > 3 || (tables & 15) > 3) {
        throw JpegFault.damaged(
            segment.place()
                + " selects Huffman tables "
                + (tables >> 4)
                + " and "
                + (tables & 15)
                + ", 0 to 3 were expected");
      }
      parts.add(new Part(indexOf(id, frame, used, segment), tables >> 4, tables & 15));
    }
    int at = start + 1 + 2 * count;
    int approximation = Bytes.u8(bytes, at + 2);
    return new ScanHeader(
        parts,
        Bytes.u8(bytes, at),
        Bytes.u8(bytes, at + 1),
        approximation >> 4,
        approximation & 15);
  }

  /** Several components may bear one id; then their order decides. */
  private static int indexOf(int id, JpegFrame frame, boolean[] used, JpegSegment segment)
      throws JpegFault {
    for (int index = 0; index < used.length; index++) {
      if (!used[index] && frame.components().get(index).id() == id) {
        used[index] = true;
        return index;
      }
    }
    throw JpegFault.damaged(
        segment.place()
            + " names component "
            + id
            + ", which the frame does not have or the scan"
            + " already names");
  }

  boolean interleaved() {
    return components.size() > 1;
  }
}
