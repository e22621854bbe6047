package org.vestibule.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;

/**
 * HEIC and AVIF pictures: their camera facts are kept, the picture waits and is never converted.
 */
final class HeifReader {

  private static final String ADVICE =
      "set the phone's camera to save JPEG (often called the most compatible format), take the"
          + " original again or let the phone itself share it as JPEG; this file keeps waiting";

  private HeifReader() {}

  static LeftOut leftOut(FoundFile file, byte[] bytes, ContentHash hash) {
    Optional<byte[]> exif = HeifExif.find(bytes);
    CaptureFacts facts =
        exif.map(tiff -> FactsReader.read(ExifTags.read(tiff, 0), warnings()).build()).orElse(null);
    boolean timeKnown = facts != null && facts.takenAt() != null;
    return new LeftOut(
        file.name(),
        LeftOutKind.HEIC,
        "it is a HEIC, HEIF or AVIF picture, only JPEG is taken; converting it would change the"
            + " picture"
            + (timeKnown ? "" : ", and its time can't be read"),
        ADVICE,
        hash,
        facts);
  }

  /** The picture isn't taken, so oddities of its Exif data have nobody to be told to. */
  private static List<String> warnings() {
    return new ArrayList<>();
  }
}
