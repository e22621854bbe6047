package org.vestibule.encode;

import org.vestibule.dental.Code;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.jpeg.Transcoded;

/**
 * Where the picture comes from: ORIGINAL for a frame, DERIVED with a reference for a crop (General
 * Image, PS3.3 C.7.6.1; General Reference, C.12.4; Common Instance Reference, C.12.2).
 */
final class DerivationPart {

  /** PS3.16 CID 7202, edition 2026b. */
  private static final Code SOURCE_IMAGE =
      new Code("DCM", "121322", "Source image for image processing operation");

  private DerivationPart() {}

  static void frame(DataSet to, String part) {
    to.put(Tags.ImageType, "ORIGINAL", "PRIMARY");
    if (!part.isEmpty()) {
      to.put(
          Tags.DerivationDescription,
          "Sound part of a damaged file, nothing re-encoded: " + part + " as the file stores them");
    }
  }

  static void crop(DataSet to, ObjectIdentity frame, Transcoded picture) {
    to.put(Tags.ImageType, "DERIVED", "PRIMARY");
    to.put(
        Tags.DerivationDescription,
        "Lossless crop at block boundaries, nothing re-encoded: "
            + CropPlace.words(picture.effectiveCrop())
            + " of the source image");
    DataSet source =
        reference(frame).put(Tags.PurposeOfReferenceCodeSequence, CodeItems.item(SOURCE_IMAGE));
    to.put(Tags.SourceImageSequence, source);
    DataSet series =
        new DataSet()
            .put(Tags.SeriesInstanceUID, frame.seriesInstanceUid())
            .put(Tags.ReferencedInstanceSequence, reference(frame));
    to.put(Tags.ReferencedSeriesSequence, series);
  }

  private static DataSet reference(ObjectIdentity to) {
    return new DataSet()
        .put(Tags.ReferencedSOPClassUID, Recipe.SOP_CLASS)
        .put(Tags.ReferencedSOPInstanceUID, to.sopInstanceUid());
  }
}
