package org.vestibule.encode;

import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * What a reader must know before the picture leaves the practice: whether a face may be recognised
 * in it (Recognizable Visual Features, General Image, PS3.3 C.7.6.1).
 */
public final class ReleasePart {

  /** Said of a whole frame that is kept beside its crop. */
  public static final String HOLD_BACK =
      "Whole frame kept beside its crop: it may show the face, hold it back.";

  private ReleasePart() {}

  /**
   * YES for a face, and on the safe side for a frame that was cropped: nobody looked at what was
   * cut away. Otherwise nothing is said, since nobody looked at the pixels.
   */
  static void write(DataSet to, View view, boolean heldBack) {
    if (view.showsFace() || heldBack) {
      to.put(Tags.RecognizableVisualFeatures, "YES");
    }
  }
}
