package org.vestibule.deid;

import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Vr;

/** Values that say nothing and are valid for their representation (PS3.5 6.2). */
final class Dummies {

  /** Word for what stood there; a whole value of CS, AE, SH, LO and the longer texts. */
  static final String TEXT = "REMOVED";

  private static final String DAY = "19000101";
  private static final String MIDNIGHT = "000000";

  private Dummies() {}

  /** Puts the dummy; UIDs and sequences have none of their own. */
  static void put(DataSet to, int tag, Vr vr) {
    switch (vr) {
      case AS -> to.put(tag, vr, "000Y");
      case DA -> to.put(tag, vr, DAY);
      case DT -> to.put(tag, vr, DAY + MIDNIGHT);
      case TM -> to.put(tag, vr, MIDNIGHT);
      case DS, IS -> to.put(tag, vr, "0");
      case UR -> to.put(tag, vr, "http://removed.invalid/");
      case UI, SQ ->
          throw new IllegalArgumentException("there is no dummy of " + vr + " by itself");
      default -> {
        if (vr.isText()) {
          to.put(tag, vr, TEXT);
        } else {
          to.put(tag, vr, new byte[Math.max(2, vr.unitBytes())]);
        }
      }
    }
  }
}
