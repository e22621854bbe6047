package org.vestibule.encode;

import org.jspecify.annotations.Nullable;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;

/** Fills a data set from the camera's facts, letting in what the allow-list names. */
final class AllowedDataSet {

  private static final int LO_CHARACTERS = 64;

  private final DataSet to;
  private final CameraFacts allowed;

  AllowedDataSet(DataSet to, CameraFacts allowed) {
    this.to = to;
    this.allowed = allowed;
  }

  void text(int tag, @Nullable String value) {
    if (value == null) {
      return;
    }
    String clean = value.replaceAll("[\\p{Cntrl}\\\\]", " ").strip();
    if (!clean.isEmpty()) {
      String fitting =
          clean.length() <= LO_CHARACTERS
              ? clean
              : clean.substring(0, clean.offsetByCodePoints(0, LO_CHARACTERS - 1));
      require(tag).put(tag, fitting);
    }
  }

  void number(int tag, @Nullable Double value) {
    if (value != null && Double.isFinite(value) && value > 0) {
      require(tag).put(tag, value.doubleValue());
    }
  }

  void whole(int tag, @Nullable Integer value) {
    if (value != null && value >= 0) {
      require(tag).put(tag, value.longValue());
    }
  }

  /** The data set to write this attribute into; a defect if the list does not name it. */
  DataSet require(int tag) {
    String keyword = Dictionary.keyword(tag);
    if (!allowed.mayEnter(keyword)) {
      throw new IllegalStateException("camera fact " + keyword + " is not on the allow-list");
    }
    return to;
  }
}
