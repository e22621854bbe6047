package org.vestibule.intake;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.vestibule.jpeg.JpegSegment;
import org.vestibule.jpeg.JpegStructure;

/** The application segments of a picture, whose contents this room reads (ITU-T T.81 B.2.4.6). */
final class Segments {

  private static final int APP1 = 0xE1;
  private static final int MARKER_AND_LENGTH_BYTES = 4;
  private static final String EXIF = "Exif\0";
  private static final String XMP = "http://ns.adobe.com/x";

  private final byte[] bytes;
  private final JpegStructure structure;

  Segments(byte[] bytes, JpegStructure structure) {
    this.bytes = bytes;
    this.structure = structure;
  }

  JpegStructure structure() {
    return structure;
  }

  /** The values of the first Exif segment; none if there is no such segment. */
  ExifTags exif(List<String> warnings) {
    List<JpegSegment> found = starting(EXIF);
    if (found.isEmpty()) {
      return ExifTags.none();
    }
    if (found.size() > 1) {
      warnings.add("there are " + found.size() + " Exif segments, the first was read");
    }
    return ExifTags.ofSegment(data(found.get(0)));
  }

  /** All XMP packets as text. */
  String xmp() {
    return starting(XMP).stream()
        .map(segment -> new String(data(segment), StandardCharsets.UTF_8))
        .collect(Collectors.joining("\n"));
  }

  private List<JpegSegment> starting(String signature) {
    byte[] expected = signature.getBytes(StandardCharsets.ISO_8859_1);
    return structure.segments().stream()
        .filter(segment -> segment.marker() == APP1)
        .filter(
            segment -> {
              byte[] data = data(segment);
              return data.length >= expected.length
                  && Arrays.equals(data, 0, expected.length, expected, 0, expected.length);
            })
        .toList();
  }

  private byte[] data(JpegSegment segment) {
    int from = Math.toIntExact(segment.offsetBytes() + MARKER_AND_LENGTH_BYTES);
    return Arrays.copyOfRange(
        bytes, from, Math.toIntExact(segment.offsetBytes() + segment.lengthBytes()));
  }
}
