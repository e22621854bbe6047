package org.vestibule.encode;

import org.jspecify.annotations.Nullable;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;

/** Fills a data set from the camera's facts, letting in what the allow-list names. */
final class AllowedDataSet {

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
      require(tag).put(tag, Fitting.cut(clean, Fitting.LO_CHARACTERS));
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
