package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads the frame header and, where it leaves the height open, the DNL segment (T.81 B.2.2, B.2.5).
 */
final class FrameHeader {

  private FrameHeader() {}

  /** The picture's frame. */
  static JpegFrame read(byte[] bytes, List<JpegSegment> segments) throws JpegFault {
    JpegSegment header = null;
    for (JpegSegment segment : segments) {
      if (Markers.isFrame(segment.marker())) {
        header = segment;
        break;
      }
    }
    if (header == null) {
      throw JpegFault.damaged("no frame header (SOF) was found, so the picture has no size");
    }
    int start = header.dataStart();
    int count = header.dataLength() < 6 ? 0 : Bytes.u8(bytes, start + 5);
    if (count == 0 || header.dataLength() != 6 + 3 * count) {
      throw JpegFault.damaged(
          header.place()
              + " has "
              + header.dataLength()
              + " bytes of data for "
              + count
              + " components; 6 and 3 for each of at least one component were expected");
    }
    int height = Bytes.u16(bytes, start + 1);
    int width = Bytes.u16(bytes, start + 3);
    if (height == 0) {
      height = numberOfLines(bytes, segments, header);
    }
    if (width == 0) {
      throw JpegFault.damaged(header.place() + " says the picture is 0 samples wide");
    }
    return new JpegFrame(
        CodingProcess.ofMarker(header.marker()),
        Bytes.u8(bytes, start),
        new FrameSize(width, height),
        components(bytes, start + 6, count, header));
  }

  private static List<JpegComponent> components(
      byte[] bytes, int from, int count, JpegSegment header) throws JpegFault {
    List<JpegComponent> components = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int at = from + 3 * i;
      int sampling = Bytes.u8(bytes, at + 1);
      int table = Bytes.u8(bytes, at + 2);
      if (!isFactor(sampling >> 4) || !isFactor(sampling & 15) || table > 3) {
        throw JpegFault.damaged(
            header.place()
                + " gives component "
                + (i + 1)
                + " the sampling "
                + (sampling >> 4)
                + "x"
                + (sampling & 15)
                + " and quantisation table "
                + table
                + "; factors 1 to 4 and tables 0 to 3 were expected");
      }
      components.add(new JpegComponent(Bytes.u8(bytes, at), sampling >> 4, sampling & 15, table));
    }
    return components;
  }

  private static boolean isFactor(int value) {
    return value >= 1 && value <= 4;
  }

  private static int numberOfLines(
      byte[] bytes, List<JpegSegment> segments, @Nullable JpegSegment header) throws JpegFault {
    boolean scanSeen = false;
    for (JpegSegment segment : segments) {
      scanSeen |= segment.marker() == Markers.SOS;
      if (scanSeen && segment.marker() == Markers.DNL && segment.dataLength() == 2) {
        int lines = Bytes.u16(bytes, segment.dataStart());
        if (lines > 0) {
          return lines;
        }
      }
    }
    throw JpegFault.damaged(
        (header == null ? "the frame header" : header.place())
            + " says the picture is 0 samples high and no DNL segment gives the height");
  }
}
