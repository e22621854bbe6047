package org.vestibule.jpeg;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Names what the APPn and COM segments of a picture carry; signatures are cited from memory. */
final class EmbeddedReader {

  private static final String EXIF = "Exif\0";
  private static final String XMP = "http://ns.adobe.com/xap/1.0/\0";
  private static final String EXTENDED_XMP = "http://ns.adobe.com/xmp/extension/\0";
  private static final String PHOTOSHOP = "Photoshop 3.0\0";
  private static final int IPTC_RESOURCE = 0x0404;
  private static final int OLD_THUMBNAIL_RESOURCE = 0x0409;
  private static final int THUMBNAIL_RESOURCE = 0x040C;
  private static final int JFIF_DATA_BYTES = 14;
  private static final int ADOBE_DATA_BYTES = 12;

  private final byte[] bytes;
  private final Set<Embedded> found = EnumSet.noneOf(Embedded.class);
  private @Nullable Integer adobeTransform;

  private EmbeddedReader(byte[] bytes) {
    this.bytes = bytes;
  }

  static EmbeddedReader read(byte[] bytes, List<JpegSegment> segments) {
    EmbeddedReader reader = new EmbeddedReader(bytes);
    for (JpegSegment segment : segments) {
      if (segment.marker() == Markers.COM) {
        reader.found.add(Embedded.COMMENT);
      } else if (segment.marker() >= Markers.APP0 && segment.marker() <= Markers.APP15) {
        reader.application(segment);
      }
    }
    return reader;
  }

  Set<Embedded> found() {
    return found;
  }

  /** The colour transform of the last Adobe APP14 segment, or null. */
  @Nullable Integer adobeTransform() {
    return adobeTransform;
  }

  private void application(JpegSegment segment) {
    int start = segment.dataStart();
    switch (segment.marker() - Markers.APP0) {
      case 0 -> jfif(segment);
      case 1 -> exifOrXmp(segment);
      case 2 -> {
        if (starts(segment, IccChunks.SIGNATURE)) {
          found.add(Embedded.ICC_PROFILE);
        } else {
          found.add(
              starts(segment, "MPF\0") ? Embedded.MULTI_PICTURE : Embedded.OTHER_APPLICATION_DATA);
        }
      }
      case 13 -> photoshop(segment);
      case 14 -> {
        if (starts(segment, "Adobe") && segment.dataLength() >= ADOBE_DATA_BYTES) {
          found.add(Embedded.ADOBE);
          adobeTransform = Bytes.u8(bytes, start + ADOBE_DATA_BYTES - 1);
        } else {
          found.add(Embedded.OTHER_APPLICATION_DATA);
        }
      }
      default -> found.add(Embedded.OTHER_APPLICATION_DATA);
    }
  }

  private void jfif(JpegSegment segment) {
    int start = segment.dataStart();
    if (starts(segment, "JFIF\0") && segment.dataLength() >= JFIF_DATA_BYTES) {
      found.add(Embedded.JFIF);
      if (bytes[start + 12] != 0 && bytes[start + 13] != 0) {
        found.add(Embedded.JFIF_THUMBNAIL);
      }
    } else {
      found.add(
          starts(segment, "JFXX\0") ? Embedded.JFIF_THUMBNAIL : Embedded.OTHER_APPLICATION_DATA);
    }
  }

  private void exifOrXmp(JpegSegment segment) {
    int start = segment.dataStart();
    if (starts(segment, EXIF)) {
      found.add(Embedded.EXIF);
      ExifPeek.look(bytes, start + EXIF.length() + 1, segment.dataEnd(), found);
    } else if (starts(segment, XMP) || starts(segment, EXTENDED_XMP)) {
      found.add(starts(segment, XMP) ? Embedded.XMP : Embedded.EXTENDED_XMP);
      if (Bytes.indexOf(bytes, start, segment.dataEnd(), "hdr-gain-map") >= 0
          || Bytes.indexOf(bytes, start, segment.dataEnd(), "HDRGainMap") >= 0) {
        found.add(Embedded.GAIN_MAP);
      }
    } else {
      found.add(Embedded.OTHER_APPLICATION_DATA);
    }
  }

  private void photoshop(JpegSegment segment) {
    if (!starts(segment, PHOTOSHOP)) {
      found.add(Embedded.OTHER_APPLICATION_DATA);
      return;
    }
    found.add(Embedded.PHOTOSHOP);
    int at = segment.dataStart() + PHOTOSHOP.length();
    int end = segment.dataEnd();
    while (end - at >= 12 && Bytes.startsWith(bytes, at, end, "8BIM")) {
      int id = Bytes.u16(bytes, at + 4);
      if (id == IPTC_RESOURCE) {
        found.add(Embedded.IPTC);
      } else if (id == THUMBNAIL_RESOURCE || id == OLD_THUMBNAIL_RESOURCE) {
        found.add(Embedded.PHOTOSHOP_THUMBNAIL);
      }
      int nameBytes = (Bytes.u8(bytes, at + 6) + 2) & ~1;
      long sizeAt = at + 6L + nameBytes;
      if (sizeAt + 4 > end) {
        return;
      }
      long next = sizeAt + 4 + ((Bytes.u32(bytes, (int) sizeAt) + 1) & ~1L);
      if (next > end) {
        return;
      }
      at = (int) next;
    }
  }

  private boolean starts(JpegSegment segment, String signature) {
    return Bytes.startsWith(bytes, segment.dataStart(), segment.dataEnd(), signature);
  }
}
