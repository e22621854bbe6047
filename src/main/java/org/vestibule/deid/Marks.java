package org.vestibule.deid;

import java.util.Optional;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Says in the copy what was done to it (PS3.15 E.1.1, E.2, E.3). */
final class Marks {

  private static final String METHOD = "DICOM PS3.15 Annex E, Table E.1-1 of 2024b";
  private static final String UNMODIFIED = "UNMODIFIED";

  private Marks() {}

  static void write(DataSet copy, DataSet original, Confidentiality profile) {
    copy.put(Tags.PatientIdentityRemoved, "YES")
        .put(Tags.DeidentificationMethod, METHOD)
        .put(Tags.DeidentificationMethodCodeSequence, profile.codes())
        .put(Tags.LongitudinalTemporalInformationModified, temporal(original, profile));
    if (profile.has(ProfileOption.CLEAN_PIXEL_DATA)) {
      copy.put(Tags.BurnedInAnnotation, "NO");
    }
    if (profile.has(ProfileOption.CLEAN_RECOGNIZABLE_VISUAL_FEATURES)) {
      copy.put(Tags.RecognizableVisualFeatures, "NO");
    }
  }

  /** Dates that somebody changed before don't become true ones by being kept. */
  private static String temporal(DataSet original, Confidentiality profile) {
    if (profile.has(ProfileOption.RETAIN_MODIFIED_DATES)) {
      return "MODIFIED";
    }
    if (!profile.has(ProfileOption.RETAIN_FULL_DATES)) {
      return "REMOVED";
    }
    Optional<String> before = original.string(Tags.LongitudinalTemporalInformationModified);
    return before
        .filter(said -> said.equals("MODIFIED") || said.equals("REMOVED"))
        .orElse(UNMODIFIED);
  }
}
