package org.vestibule.encode;

import org.jspecify.annotations.Nullable;
import org.vestibule.dicom.Tags;

/** Exif's flash value taken apart (CIPA DC-008, tag 0x9209, from memory; PS3.3 C.8.12.11). */
final class FlashPart {

  private FlashPart() {}

  static void write(AllowedDataSet out, @Nullable Integer flash) {
    if (flash == null) {
      return;
    }
    out.whole(Tags.FlashFiringStatus, flash & 1);
    out.whole(Tags.FlashReturnStatus, flash >> 1 & 3);
    out.whole(Tags.FlashMode, flash >> 3 & 3);
    out.whole(Tags.FlashFunctionPresent, flash >> 5 & 1);
    out.whole(Tags.FlashRedEyeMode, flash >> 6 & 1);
  }
}
