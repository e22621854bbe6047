package org.vestibule.release;

/** What a copy is written as. */
public enum Format {
  DICOM,
  JPEG
}
